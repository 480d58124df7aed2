package store

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"cutbrief/assess"
)

// How long a save waits for another one to end, and when the file it left is
// taken to be that of a program that crashed.
const (
	waits    = 20
	wait     = 10 * time.Millisecond
	staleAge = time.Minute
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
	target, err := resolve(path)
	if err != nil {
		return fmt.Errorf("save %s: %w", path, err)
	}
	if err := replace(target, data, func() error { return unchanged(target, v) }); err != nil {
		return fmt.Errorf("save %s: %w", path, err)
	}
	v.Revision, v.Updated = next.Revision, next.Updated
	return nil
}

// resolve follows links to the file that is to be replaced. Renaming over a
// link would turn it into a file.
func resolve(path string) (string, error) {
	if _, err := os.Lstat(path); errors.Is(err, fs.ErrNotExist) {
		return path, nil
	}
	return filepath.EvalSymlinks(path)
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

// replace puts data in place of the file at path, if allowed says so. The new
// bytes are safe on the disk under another name before the old ones go.
func replace(path string, data []byte, allowed func() error) (err error) {
	f, err := reserve(path)
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			f.Close() // closed already on most paths
			os.Remove(f.Name())
		}
	}()
	if err := allowed(); err != nil {
		return err
	}
	if err := fill(f, data); err != nil {
		return err
	}
	if err := rename(f.Name(), path); err != nil {
		return err
	}
	syncFolder(filepath.Dir(path))
	return nil
}

// reserve creates the file that the new bytes go to. Its name depends on the
// target alone, so that it keeps two programs from saving the same visit at
// once; what a crashed program left is swept. Its age is told by the system's
// clock, as that is what dates files.
func reserve(path string) (*os.File, error) {
	name := filepath.Join(filepath.Dir(path), "."+filepath.Base(path)+".saving")
	for n := 0; ; n++ {
		f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
		if !errors.Is(err, fs.ErrExist) {
			return f, err
		}
		if info, err := os.Lstat(name); err == nil && time.Since(info.ModTime()) > staleAge {
			os.Remove(name) // if this fails, so will the next try
		}
		if n == waits {
			return nil, fmt.Errorf("%w, which has not finished: %s", ErrChanged, name)
		}
		if n > 0 {
			time.Sleep(wait)
		}
	}
}

// fill writes the bytes and waits until they are on the disk. Windows renames
// closed files only.
func fill(f *os.File, data []byte) error {
	if _, err := f.Write(data); err != nil {
		return err
	}
	if err := f.Sync(); err != nil {
		return err
	}
	return f.Close()
}
