package store

import (
	"cmp"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"sort"
	"strings"
	"time"
)

// List returns the folder's visits, newest first; a folder that is not there
// has none. A file that cannot be read is listed with its reason, so that
// nothing goes missing in silence.
func (f Folder) List() ([]Entry, error) {
	files, err := os.ReadDir(f.Dir)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	var entries []Entry
	times := map[string]time.Time{}
	for _, file := range files {
		if file.IsDir() || !isVisit(file.Name()) {
			continue
		}
		e := open(filepath.Join(f.Dir, file.Name()))
		times[e.Path] = saved(e, file)
		entries = append(entries, e)
	}
	sort.SliceStable(entries, func(a, b int) bool { return times[entries[a].Path].After(times[entries[b].Path]) })
	return entries, nil
}

func isVisit(name string) bool {
	return strings.EqualFold(filepath.Ext(name), ".json") && !strings.HasPrefix(name, ".")
}

func open(path string) Entry {
	v, _, err := Load(path)
	if err != nil {
		return Entry{Path: path, Err: err}
	}
	return Entry{Path: path, Visit: v, Open: v.Open()}
}

// saved is when the visit was last saved; for a file that does not say, when
// the file was written.
func saved(e Entry, file fs.DirEntry) time.Time {
	if e.Visit != nil && !e.Visit.Updated.IsZero() {
		return e.Visit.Updated
	}
	info, err := file.Info()
	if err != nil {
		return time.Time{}
	}
	return info.ModTime()
}

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
