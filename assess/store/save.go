package store

import (
	"errors"
	"fmt"
	"io/fs"
	"time"

	"cutbrief/assess"
)

// Save writes v to path, whole or not at all, and raises its revision. It
// refuses with ErrChanged if the file there holds a revision it has not seen,
// and leaves v as it was when it fails. A link is followed, so that it stays a
// link.
func Save(path string, v *assess.Visit, now time.Time) error {
	next := *v
	next.Revision++
	next.Updated = now.Truncate(time.Second)
	data, err := next.Encode()
	if err != nil {
		return err
	}
	err = ReplaceFile(path, func() ([]byte, error) { return data, unchanged(path, v) })
	if errors.Is(err, ErrBusy) {
		err = fmt.Errorf("%w: %w", ErrChanged, err)
	}
	if err != nil {
		return fmt.Errorf("save %s: %w", path, err)
	}
	v.Revision, v.Updated = next.Revision, next.Updated
	return nil
}

// unchanged reports ErrChanged unless the file is gone or is the very revision
// of this visit that v was read from.
func unchanged(path string, v *assess.Visit) error {
	there, _, err := Load(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return fmt.Errorf("%w, and cannot be read any more: %w", ErrChanged, err)
	case there.ID != v.ID || there.Revision != v.Revision:
		return ErrChanged
	}
	return nil
}
