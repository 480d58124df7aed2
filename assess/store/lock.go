package store

import (
	"errors"
	"os"
)

// Reasons why a file is not locked.
var (
	errHeld    = errors.New("another program holds the lock")
	errNoLocks = errors.New("there are no locks here")
)

// hold takes the lock of a file just created, and reports whether the file is
// ours: a sweep may have taken it for a leftover between its creation and now.
// Where a disk has no locks, that the file was created by us must do.
func hold(f *os.File) bool {
	switch err := lock(f); {
	case err == nil:
		return inPlace(f)
	case errors.Is(err, errHeld):
		return false
	}
	return true
}

// abandoned reports whether a file belongs to no program any more, and keeps it
// locked until release, so that nobody begins with it meanwhile. It opens
// neither links nor pipes, whoever put them there. Where a disk has no locks,
// the age of the file decides.
//
// A folder on the network may keep locks to one machine (a mount that says so)
// or have none. With none, age decides as said; the clocks of the two machines
// may then differ by less than a minute. With locks of one machine only, a
// program on another one may sweep a file that is being written: its writer
// notices before it gives the file its name, and says that it is not saved.
// Nothing that was in place is lost by that.
func abandoned(name string) (is bool, release func()) {
	f, err := openShared(name)
	if err != nil {
		return false, func() {}
	}
	release = func() { f.Close() } // only locked: nothing to lose
	switch err := lock(f); {
	case err == nil:
		return inPlace(f), release
	case errors.Is(err, errHeld):
		return false, release
	}
	return old(name), release
}

// inPlace reports whether the file is still the one of its name.
func inPlace(f *os.File) bool {
	ours, err := f.Stat()
	if err != nil || !ours.Mode().IsRegular() {
		return false
	}
	there, err := os.Lstat(f.Name())
	return err == nil && os.SameFile(ours, there)
}
