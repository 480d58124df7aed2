//go:build !windows

package store

import "os"

func rename(from, to string) error { return os.Rename(from, to) }

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
