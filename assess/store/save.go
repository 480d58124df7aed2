package store

import (
	"errors"
	"io/fs"
	"time"

	"cutbrief/assess"
	"cutbrief/rules/message"
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
		err = message.Errorf("{1}: {2}", ErrChanged, err)
	}
	if err != nil {
		return message.Errorf("save {1}: {2}", message.Name(path), err)
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
		return message.Errorf("{1}, and cannot be read any more: {2}", ErrChanged, err)
	case there.ID != v.ID || there.Revision != v.Revision:
		return ErrChanged
	}
	return nil
}
