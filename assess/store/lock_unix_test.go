//go:build linux || darwin

package store

import (
	"os"
	"path/filepath"
	"syscall"
	"testing"
	"time"
)

// A leftover is swept at once: its lock went with the program that was killed.
func TestALeftoverIsSweptAtOnce(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.json")
	begun(t, path, time.Now())
	save(t, path, visit(t, "A"))
	onlyFile(t, dir, "a.json")
}

// A link or a pipe in place of the file of a save is not followed, not waited
// for and not removed, and what the link points at stays as it is.
func TestAStrangeFileInPlaceOfASave(t *testing.T) {
	dir := t.TempDir()
	path, victim := filepath.Join(dir, "a.json"), filepath.Join(dir, "victim")
	name := filepath.Join(dir, ".a.json.saving")
	if err := os.WriteFile(victim, []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	for what, put := range map[string]func() error{
		"link": func() error { return os.Symlink(victim, name) },
		"pipe": func() error { return syscall.Mkfifo(name, 0o600) },
	} {
		if err := put(); err != nil {
			t.Skip("none here:", err)
		}
		if err := Save(path, visit(t, "A"), now); err == nil {
			t.Errorf("%s: saved", what)
		}
		if err := os.Remove(name); err != nil {
			t.Errorf("%s: %v", what, err)
		}
	}
	if data, _ := os.ReadFile(victim); string(data) != "mine" {
		t.Errorf("the file behind the link holds %q", data)
	}
}
