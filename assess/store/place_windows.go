package store

import (
	"errors"
	"io/fs"
	"os"
	"time"

	"golang.org/x/sys/windows"
)

// createShared creates a file that is not there yet. Others may read, rename and
// remove it while it is open, as on other systems, so that it can get its name
// while we hold it.
func createShared(name string) (*os.File, error) {
	f, err := openHandle(name, windows.CREATE_NEW)
	if errors.Is(err, windows.ERROR_ACCESS_DENIED) || errors.Is(err, windows.ERROR_SHARING_VIOLATION) {
		if _, gone := os.Lstat(name); gone == nil {
			return nil, fs.ErrExist // it is there, or about to go
		}
	}
	return f, err
}

// openShared opens a file that is there, and neither what a link points at nor
// anything else than a file on a disk.
func openShared(name string) (*os.File, error) {
	return openHandle(name, windows.OPEN_EXISTING)
}

func openHandle(name string, how uint32) (*os.File, error) {
	path, err := windows.UTF16PtrFromString(name)
	if err != nil {
		return nil, &fs.PathError{Op: "open", Path: name, Err: err}
	}
	const share = windows.FILE_SHARE_READ | windows.FILE_SHARE_WRITE | windows.FILE_SHARE_DELETE
	const flags = windows.FILE_ATTRIBUTE_NORMAL | windows.FILE_FLAG_OPEN_REPARSE_POINT
	h, err := windows.CreateFile(path, windows.GENERIC_READ|windows.GENERIC_WRITE, share, nil, how, flags, 0)
	if err != nil {
		return nil, &fs.PathError{Op: "open", Path: name, Err: err}
	}
	return os.NewFile(uintptr(h), name), nil
}

// rename gives the file the name of what it replaces, for about 200 ms while
// another program, such as a scanner or an editor, holds that.
func rename(f *os.File, to string) error {
	for n := 0; ; n++ {
		err := os.Rename(f.Name(), to)
		if n == waits || !errors.Is(err, windows.ERROR_ACCESS_DENIED) && !errors.Is(err, windows.ERROR_SHARING_VIOLATION) {
			return err
		}
		time.Sleep(wait)
	}
}

// syncFolder does nothing: Windows has no such thing for folders.
func syncFolder(string) {}
