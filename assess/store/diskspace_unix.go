//go:build linux || darwin

package store

import "syscall"

// FreeSpace is the room on the disk of a folder that this user may fill, in bytes,
// if the system tells.
func FreeSpace(dir string) (bytes uint64, told bool) {
	var s syscall.Statfs_t
	if err := syscall.Statfs(dir, &s); err != nil || s.Bsize <= 0 {
		return 0, false
	}
	return s.Bavail * uint64(s.Bsize), true
}
