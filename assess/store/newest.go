package store

import (
	"cmp"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
)

// Newest returns the n visits of the folder whose files were written last, the
// last first. Of the others only the times are looked at, so that a folder of any
// size costs little. A folder or file that cannot be read gives none.
func (f Folder) Newest(n int) []Entry {
	files, err := os.ReadDir(f.Dir)
	if err != nil {
		return nil
	}
	var found []fs.FileInfo
	for _, file := range files {
		if info, err := file.Info(); err == nil && !file.IsDir() && isVisit(file.Name()) {
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
