//go:build linux || darwin

package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"cutbrief/assess/screen/screentest"
)

// TestReviewOnMuteTerminal: the list is there at once although the terminal answers
// nothing; a damaged file is a row, the tally and its page are made, and leaving
// ends well.
func TestReviewOnMuteTerminal(t *testing.T) {
	dir := t.TempDir()
	if err := os.Mkdir(filepath.Join(dir, "visits"), 0o700); err != nil {
		t.Fatal(err)
	}
	for name, data := range map[string][]byte{"a.json": invented(t), "torn.json": []byte(`{"format":`)} {
		if err := os.WriteFile(filepath.Join(dir, "visits", name), data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	cmd := exec.Command("cutbrief", "review", "visits")
	cmd.Dir = dir
	cmd.Env = append(os.Environ(), "TERM=xterm-256color", "HOME="+dir, "XDG_CONFIG_HOME="+dir, "XDG_CACHE_HOME="+dir)
	term := &terminal{screentest.Start(t, cmd, screentest.Options{Mute: true}), dir}
	term.Wrote("2 files, 1 unreadable")
	term.Wrote("damaged: torn.json")
	term.Types("t")
	term.Wrote("Where they stand")
	term.Types("p")
	term.Wrote("the page is in team.pdf")
	term.Types("q")
	term.end()
	if _, err := os.Stat(filepath.Join(term.dir, "team.pdf")); err != nil {
		t.Error(err)
	}
}
