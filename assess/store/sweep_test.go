package store

import (
	"errors"
	"os"
	"path/filepath"
	"testing"
	"time"
)

// begun leaves the file of a writing that was begun at some time, by a program
// that is no more.
func begun(t *testing.T, name string, at time.Time) {
	t.Helper()
	if err := errors.Join(os.WriteFile(name, []byte("{"), 0o600), os.Chtimes(name, at, at)); err != nil {
		t.Fatal(err)
	}
}

// What a killed program left is swept at once, however far off its time: its
// lock went with it. That holds also when the clock was put back since, and the
// file comes from the future.
func TestWhatACrashLeftIsSwept(t *testing.T) {
	for _, ago := range []time.Duration{0, time.Hour, -time.Hour, 365 * 24 * time.Hour} {
		dir := t.TempDir()
		path := filepath.Join(dir, "a.json")
		begun(t, beside(path), time.Now().Add(-ago))
		if err := replaced(path, "new"); err != nil {
			t.Fatal(err)
		}
		left(t, dir, "a.json")
	}
}

// Sweep takes what has the form of our own names, is a file and belongs to no
// program; nothing else, however much alike.
func TestSweep(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "held.pdf")
	held, err := reserve(path)
	if err != nil {
		t.Fatal(err)
	}
	defer held.Close()
	for _, name := range []string{".a.json.cutbrief", ".page.pdf.cutbrief", ".cutbrief", "a.cutbrief", ".a.cutbrief.json", ".a.cutbrief~", ".notes"} {
		begun(t, filepath.Join(dir, name), time.Now().Add(-time.Hour))
	}
	if err := os.Mkdir(filepath.Join(dir, ".folder.cutbrief"), 0o700); err != nil {
		t.Fatal(err)
	}
	Sweep(dir)
	left(t, dir, ".a.cutbrief.json", ".a.cutbrief~", ".cutbrief", ".folder.cutbrief", ".held.pdf.cutbrief", ".notes", "a.cutbrief")
	Sweep(filepath.Join(dir, "missing"))
}

// What another program is writing is waited for, and then left alone.
func TestAWritingUnderWayIsLeftAlone(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.json")
	other, err := reserve(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := replaced(path, "x"); !errors.Is(err, ErrBusy) {
		t.Errorf("replaced: %v", err)
	}
	if err := CreateFile(path, nil); !errors.Is(err, ErrBusy) {
		t.Errorf("created: %v", err)
	}
	left(t, dir, ".a.json.cutbrief")
	other.Close()
	if err := replaced(path, "x"); err != nil {
		t.Error(err)
	}
	left(t, dir, "a.json")
}

// The lock tells two openings of one file apart, and is given back by closing.
func TestLock(t *testing.T) {
	name := filepath.Join(t.TempDir(), "file")
	first, err := create(name)
	if err != nil {
		t.Fatal(err)
	}
	second, err := openShared(name)
	if err != nil {
		t.Fatal(err)
	}
	defer second.Close()
	if err := lock(second); err == errNoLocks {
		t.Skip("no locks here")
	} else if err != errHeld {
		t.Errorf("locked twice: %v", err)
	}
	first.Close()
	if err := lock(second); err != nil {
		t.Errorf("not given back: %v", err)
	}
}

// Without locks age decides, ahead of now as well.
func TestOld(t *testing.T) {
	name := filepath.Join(t.TempDir(), "file")
	for ago, want := range map[time.Duration]bool{0: false, 30 * time.Second: false, -30 * time.Second: false, 2 * time.Minute: true, -2 * time.Minute: true} {
		begun(t, name, time.Now().Add(-ago))
		if got := old(name); got != want {
			t.Errorf("written %v ago: %v", ago, got)
		}
	}
}
