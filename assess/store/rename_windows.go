package store

import (
	"errors"
	"os"
	"syscall"
	"time"
)

// Error codes of a file that a scanner or editor holds for a moment. Source:
// Windows system error codes, from memory.
const (
	accessDenied     syscall.Errno = 5
	sharingViolation syscall.Errno = 32
)

// rename replaces a file, and tries again for about 200 ms while another
// program holds it.
func rename(from, to string) error {
	var err error
	for n := 0; n < waits; n++ {
		err = os.Rename(from, to)
		if !errors.Is(err, accessDenied) && !errors.Is(err, sharingViolation) {
			return err
		}
		time.Sleep(wait)
	}
	return err
}

// syncFolder does nothing: Windows has no such thing for folders.
func syncFolder(string) {}
