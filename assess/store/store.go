// Package store keeps visits in a folder: whole or not at all, readable by
// their owner only. Screens get it as a small interface; only cmd knows the
// folder.
package store

import (
	"errors"
	"time"

	"cutbrief/assess"
)

// File is a visit and where it is kept.
type File struct {
	Path string // "" until first saved by a Folder
}

// Folder is a folder of visits.
type Folder struct{ Dir string }

// ErrChanged means another program saved the same visit meanwhile.
var ErrChanged = errors.New("the file was changed by another program")

// Save writes v to path, whole or not at all, and raises its revision. It
// refuses with ErrChanged if the file there holds a revision it has not seen.
func Save(path string, v *assess.Visit, now time.Time) error { return errors.New("not written yet") }

// Load reads one visit from a file.
func Load(path string) (v *assess.Visit, unknown []string, err error) {
	return nil, nil, errors.New("not written yet")
}

// NewPath returns a free file name in the folder for v: date, company, ".json".
func (f Folder) NewPath(v *assess.Visit) (string, error) { return "", errors.New("not written yet") }

// Entry is one file of a folder. Err is set for a file that cannot be read;
// it is listed all the same.
type Entry struct {
	Path  string
	Visit *assess.Visit
	Open  int // steps without an answer
	Err   error
}

// List returns the folder's visits, newest first.
func (f Folder) List() ([]Entry, error) { return nil, errors.New("not written yet") }
