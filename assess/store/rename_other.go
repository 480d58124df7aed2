//go:build !windows

package store

import "os"

// rename gives the file the name of what it replaces. Its lock goes last, so
// that no other save begins before this one has ended.
func rename(f *os.File, to string) error {
	if err := os.Rename(f.Name(), to); err != nil {
		return err
	}
	f.Close() // all of it is on the disk already
	return nil
}

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
