package store

import (
	"cmp"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
)

// lookedAt is how many files have their times looked at, the last by name: a name
// begins with the day of its visit.
const lookedAt = 40

// Newest returns the n visits written last, the last first, of the files that
// come last by name. Of all others only the names are looked at, so that a folder
// of any size costs little. A folder or file that cannot be read gives none.
func (f Folder) Newest(n int) []Entry {
	files, err := os.ReadDir(f.Dir)
	if err != nil {
		return nil
	}
	var found []fs.FileInfo
	for _, file := range slices.Backward(files) { // they are sorted by name
		if len(found) == lookedAt {
			break
		}
		if !isVisit(file.Name()) {
			continue
		}
		if info, err := file.Info(); err == nil && !file.IsDir() {
			found = append(found, info)
		}
	}
	slices.SortStableFunc(found, func(a, b fs.FileInfo) int {
		return cmp.Or(b.ModTime().Compare(a.ModTime()), cmp.Compare(b.Name(), a.Name()))
	})
	var newest []Entry
	for _, info := range found {
		if len(newest) == n {
			break
		}
		if e := open(filepath.Join(f.Dir, info.Name())); e.Err == nil {
			newest = append(newest, e)
		}
	}
	return newest
}
