//go:build unix

package store

import (
	"errors"
	"os"
	"path/filepath"
	"syscall"
	"testing"
	"time"
)

// A link or a pipe in place of the file of a save is not followed, not waited
// for and not removed, and what the link points at stays as it is.
func TestAStrangeFileInPlaceOfASave(t *testing.T) {
	dir := t.TempDir()
	path, victim := filepath.Join(dir, "a.json"), filepath.Join(dir, "victim")
	name := beside(path)
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
		if err := replaced(path, "new"); err == nil {
			t.Errorf("%s: saved", what)
		}
		Sweep(dir)
		if err := os.Remove(name); err != nil {
			t.Errorf("%s: %v", what, err)
		}
	}
	if data, _ := os.ReadFile(victim); string(data) != "mine" {
		t.Errorf("the file behind the link holds %q", data)
	}
}

// A writer whose file was swept, as a program on another machine may do where
// it sees no lock of ours, says so and gives nobody else's file a name.
func TestASweptWriterNotices(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.json")
	err := ReplaceFile(path, func() ([]byte, error) {
		if err := os.Remove(beside(path)); err != nil {
			t.Fatal(err)
		}
		begun(t, beside(path), time.Now())
		return []byte("mine"), nil
	})
	if !errors.Is(err, ErrBusy) {
		t.Errorf("got %v", err)
	}
	left(t, dir, ".a.json.cutbrief")
}
