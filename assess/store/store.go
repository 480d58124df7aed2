// Package store keeps visits in a folder, readable by their owner only. Screens get
// it as a small interface; only cmd knows the folder.
//
// It is the one package that creates, renames and removes files of a user, and puts
// them in place whole or not at all, the same way on every system: the bytes are
// safe on the disk under another name before the file gets its own. While a file is
// written, they are in ".NAME.cutbrief" beside it, locked by the program that writes
// them. The name keeps two programs from writing the same file at once, and the lock
// says whether the writer is still alive: the system gives it back when a program
// ends in any way. What a program that was killed left is swept by the next that
// writes there.
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
