package main

import (
	"os"
	"path/filepath"
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
			if status, _, said := ranWith(args...); status != failed || said == "" {
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
