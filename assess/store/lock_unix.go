//go:build linux || darwin

package store

import (
	"errors"
	"os"
	"syscall"
)

// hold takes the lock of a file just created, and reports whether the file is
// ours: a sweep may have taken it for a leftover between its creation and now.
// The system gives the lock back when the program ends in any way, so that a
// lock says for certain whether a save is under way. Where a disk has no locks,
// that the file was created by us must do.
func hold(f *os.File) bool {
	if err := lock(f); err != nil {
		return !errors.Is(err, syscall.EWOULDBLOCK)
	}
	return inPlace(f)
}

// abandoned reports whether the file of a save belongs to no program any more,
// and keeps it locked until release, so that nobody begins with it meanwhile.
// It opens neither links nor pipes, whoever put them there.
func abandoned(name string) (is bool, release func()) {
	f, err := os.OpenFile(name, os.O_RDWR|syscall.O_NOFOLLOW|syscall.O_NONBLOCK, 0)
	if err != nil {
		return false, func() {}
	}
	release = func() { f.Close() }
	switch err := lock(f); {
	case err == nil:
		return inPlace(f), release
	case errors.Is(err, syscall.EWOULDBLOCK):
		return false, release
	}
	return old(name), release
}

func lock(f *os.File) error {
	return syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
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
