package store

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
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
