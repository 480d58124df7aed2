//go:build !(linux || darwin || windows)

package store

// FreeSpace is not known on this system.
func FreeSpace(string) (bytes uint64, told bool) { return 0, false }
