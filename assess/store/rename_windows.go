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

// rename closes the file, as only a closed one can be renamed here, and gives
// it the name of what it replaces. It tries again for about 200 ms while
// another program holds that.
func rename(f *os.File, to string) error {
	err := f.Close()
	if err != nil {
		return err
	}
	for n := 0; n < waits; n++ {
		err = os.Rename(f.Name(), to)
		if !errors.Is(err, accessDenied) && !errors.Is(err, sharingViolation) {
			return err
		}
		time.Sleep(wait)
	}
	return err
}

// syncFolder does nothing: Windows has no such thing for folders.
func syncFolder(string) {}
