package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"cutbrief/assess/store"
)

// MoveTo keeps the visit in another place from the next save on: in a folder
// under a name of its own, or in a file that is not there yet. What was saved
// before stays where it is.
func (s *sitting) MoveTo(place string) error {
	if below, atHome := strings.CutPrefix(place, "~/"); atHome && s.app.env("HOME") != "" {
		place = filepath.Join(s.app.env("HOME"), below)
	}
	if place == "" {
		return errors.New("no place is named")
	}
	if isFolder(place) {
		s.folder, s.path = store.Folder{Dir: filepath.Clean(place)}, ""
	} else if err := free(place); err != nil {
		return fmt.Errorf("%s: %w", place, err)
	} else {
		s.path = place
	}
	s.kept, s.beside = false, ""
	return nil
}

// free reports why a new file cannot be put at path, nil if it can.
func free(path string) error {
	if _, err := os.Lstat(path); err == nil {
		return errExists
	}
	if info, err := os.Stat(filepath.Dir(path)); err != nil || !info.IsDir() {
		return fmt.Errorf("there is no folder %s", filepath.Dir(path))
	}
	return nil
}
