package store

import "golang.org/x/sys/windows"

// FreeSpace is the room on the disk of a folder that this user may fill, in bytes,
// if the system tells.
func FreeSpace(dir string) (bytes uint64, told bool) {
	name, err := windows.UTF16PtrFromString(dir)
	if err != nil {
		return 0, false
	}
	err = windows.GetDiskFreeSpaceEx(name, &bytes, nil, nil)
	return bytes, err == nil
}
