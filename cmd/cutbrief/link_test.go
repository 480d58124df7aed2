package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestOutputStaysInItsFolder: a link that stands where a page or a copy is to
// be written is not followed out of the folder, whether it leads somewhere or
// not; nothing is written over.
func TestOutputStaysInItsFolder(t *testing.T) {
	dir := t.TempDir()
	t.Chdir(dir)
	if err := os.WriteFile("visit.json", shown(t), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile("victim", []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir("pages", 0o700); err != nil {
		t.Fatal(err)
	}
	for _, target := range []string{"victim", "nothing"} {
		link := filepath.Join("pages", "visit.pdf")
		if err := os.Symlink(filepath.Join(dir, target), link); err != nil {
			t.Skip("no links here:", err)
		}
		for _, args := range [][]string{
			{"brief", "visit.json", "--out", "pages"}, {"brief", "visit.json", "--out", link}, {"redact", "visit.json", "--out", link},
			{"followup", "visit.json", "--out", link},
		} {
			if status, _, said := ranWith(args...); status != exitFailed || said == "" {
				t.Errorf("%q over a link to %s: status %d", args, target, status)
			}
		}
		if err := os.Remove(link); err != nil {
			t.Fatal(err)
		}
	}
	if data, _ := os.ReadFile("victim"); string(data) != "mine" {
		t.Errorf("the file behind the link holds %q", data)
	}
	if _, err := os.Lstat("nothing"); err == nil {
		t.Error("a file was made behind the link")
	}
	if left, _ := os.ReadDir("pages"); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}

// TestPagesOfLookAlikes: visits whose names some system takes for one do not
// write over one another's page, even when asked to write over what is there.
func TestPagesOfLookAlikes(t *testing.T) {
	t.Chdir(t.TempDir())
	files := []string{"Caf\u00e9.json", "cafe\u0301.json", "CAF\u00c9.json"}
	for i, file := range files {
		dir := string(rune('a' + i))
		if err := os.Mkdir(dir, 0o700); err != nil {
			t.Fatal(err)
		}
		files[i] = filepath.Join(dir, file)
		if err := os.WriteFile(files[i], invented(t), 0o600); err != nil {
			t.Skip("no such name here:", err)
		}
	}
	if err := os.Mkdir("pages", 0o700); err != nil {
		t.Fatal(err)
	}
	for _, other := range files[1:] {
		if status, _, said := ranWith("brief", files[0], other, "--out", "pages", "--force"); status != exitUsage || !strings.Contains(said, "would both be written") {
			t.Errorf("%q: status %d: %s", other, status, said)
		}
	}
	if left, _ := os.ReadDir("pages"); len(left) > 0 {
		t.Errorf("written: %v", left)
	}
}
