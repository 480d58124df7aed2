//go:build darwin || dragonfly || freebsd || linux || netbsd || openbsd

package store

import (
	"errors"
	"os"
	"syscall"
)

// lock takes the lock of an open file, or says at once why not. It belongs to
// this opening of the file, so that two of one program are told apart as well.
// Source: the manual page flock(2).
func lock(f *os.File) error {
	for {
		err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
		switch {
		case err == nil:
			return nil
		case errors.Is(err, syscall.EINTR): // a signal came between
		case errors.Is(err, syscall.EWOULDBLOCK):
			return errHeld
		default:
			return errNoLocks
		}
	}
}
