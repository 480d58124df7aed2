// Package store keeps visits in a folder: whole or not at all, readable by
// their owner only. Screens get it as a small interface; only cmd knows the
// folder.
package store

import (
	"errors"

	"cutbrief/assess"
)

// Folder is a folder of visits.
type Folder struct{ Dir string }

// ErrChanged means another program saved the same visit meanwhile.
var ErrChanged = errors.New("the file was changed by another program")

// Entry is one file of a folder. Err is set for a file that cannot be read;
// it is listed all the same.
type Entry struct {
	Path  string
	Visit *assess.Visit
	Open  int // steps without an answer
	Err   error
}
