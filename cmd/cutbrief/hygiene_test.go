package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// banned are texts that belong to somebody's machine or tools and not to the
// project. They are put together here so that this file does not hold them.
func banned() []string {
	return []string{
		"/wo" + "rk/", "/tm" + "p/", "/ho" + "me/", "/Us" + "ers/",
		"clau" + "de", "anthro" + "pic", "chat" + "gpt", "open" + "ai", "copi" + "lot",
		"language mo" + "del", "sub" + "agent", "ai-gene" + "rated",
	}
}

// TestHygiene reads every text file that is tracked and looks for them, in
// names too.
func TestHygiene(t *testing.T) {
	for _, name := range tracked(t) {
		data, err := os.ReadFile(filepath.Join("..", "..", name))
		if os.IsNotExist(err) {
			continue // removed from the tree, not yet from the index
		}
		if err != nil {
			t.Fatal(err)
		}
		if bytes.IndexByte(data, 0) >= 0 {
			data = nil // not a text
		}
		text := strings.ToLower("/" + name + "\n" + string(data))
		for _, word := range banned() {
			if strings.Contains(text, strings.ToLower(word)) {
				t.Errorf("%s mentions %q", name, word)
			}
		}
	}
}

// tracked lists the files of the repository; without one there is nothing to
// tell the project's files from the user's, and the test is skipped.
func tracked(t *testing.T) []string {
	t.Helper()
	cmd := exec.Command("git", "ls-files", "-z")
	cmd.Dir = filepath.Join("..", "..")
	out, err := cmd.Output()
	if err != nil {
		t.Skip("not a git checkout:", err)
	}
	return strings.Split(strings.TrimRight(string(out), "\x00"), "\x00")
}
