//go:build !windows

package store

import (
	"os"
	"syscall"
)

// createShared creates a file that is not there yet.
func createShared(name string) (*os.File, error) {
	return os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
}

// openShared opens a file that is there, and neither what a link points at nor a
// pipe, which would wait for its other end.
func openShared(name string) (*os.File, error) {
	return os.OpenFile(name, os.O_RDWR|syscall.O_NOFOLLOW|syscall.O_NONBLOCK, 0)
}

// rename gives the file the name of what it replaces. Its lock goes with its
// closing, later, so that no other program begins before this one has ended.
func rename(f *os.File, to string) error { return os.Rename(f.Name(), to) }

// syncFolder makes the new name last through a power cut. The new bytes are in
// place already, so a file system that cannot do this is no reason to fail.
func syncFolder(dir string) {
	f, err := os.Open(dir)
	if err != nil {
		return
	}
	defer f.Close()
	f.Sync()
}
