//go:build !(linux || darwin || windows)

package atomicfile

// Free is not known on this system.
func Free(string) (bytes uint64, told bool) { return 0, false }
