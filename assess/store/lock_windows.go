package store

import (
	"errors"
	"os"

	"golang.org/x/sys/windows"
)

// farAway is the upper half of the position of the byte that is locked. A lock
// keeps others from reading what it covers, so it covers a byte no file has.
const farAway = 0x7fffffff

// lock takes the lock of an open file, or says at once why not. It belongs to
// this opening of the file; the system gives it back when the program ends in
// any way. Source: the documentation of LockFileEx, from memory.
func lock(f *os.File) error {
	const how = windows.LOCKFILE_EXCLUSIVE_LOCK | windows.LOCKFILE_FAIL_IMMEDIATELY
	err := windows.LockFileEx(windows.Handle(f.Fd()), how, 0, 1, 0, &windows.Overlapped{OffsetHigh: farAway})
	switch {
	case err == nil:
		return nil
	case errors.Is(err, windows.ERROR_LOCK_VIOLATION), errors.Is(err, windows.ERROR_IO_PENDING):
		return errHeld
	}
	return errNoLocks
}
