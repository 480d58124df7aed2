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

// How long a save waits for another one to end, and, where files have no locks,
// when the file it left is taken to be that of a program that crashed.
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
	if err := replace(target, func() ([]byte, error) { return data, unchanged(target, v) }); err != nil {
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

// Replace puts what make returns in place of the file at path, whole or not at
// all, readable by its owner only. make runs while no other program can replace
// the same file, so that it may build on what is there; its error leaves the
// file as it was. A link is followed, so that it stays a link.
func Replace(path string, make func() ([]byte, error)) error {
	target, err := resolve(path)
	if err != nil {
		return err
	}
	return replace(target, make)
}

// replace puts what make returns in place of the file at path. The new bytes are
// safe on the disk under another name before the old ones go.
func replace(path string, make func() ([]byte, error)) (err error) {
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
	data, err := make()
	if err != nil {
		return err
	}
	if err := fill(f, data); err != nil {
		return err
	}
	if err := rename(f, path); err != nil {
		return err
	}
	syncFolder(filepath.Dir(path))
	return nil
}

// reserve creates the file that the new bytes go to. Its name depends on the
// target alone, so that it keeps two programs from saving the same visit at
// once; what a program that was killed left is swept.
func reserve(path string) (*os.File, error) {
	name := filepath.Join(filepath.Dir(path), "."+filepath.Base(path)+".saving")
	for n := 0; ; n++ {
		f, err := create(name)
		if !errors.Is(err, fs.ErrExist) {
			return f, err
		}
		if n == waits {
			return nil, fmt.Errorf("%w, which has not finished: %s", ErrChanged, name)
		}
		if !sweep(name) && n > 0 {
			time.Sleep(wait)
		}
	}
}

// create creates the file of a save and makes it ours; fs.ErrExist if another
// program was first.
func create(name string) (*os.File, error) {
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return nil, err
	}
	if !hold(f) {
		f.Close()
		return nil, fs.ErrExist
	}
	return f, nil
}

// sweep removes the file of a save that no program works on any more.
func sweep(name string) bool {
	left, release := abandoned(name)
	defer release()
	return left && os.Remove(name) == nil
}

// old reports whether a file was written more than a minute from now, ahead of
// now too: the clock may have been put back since.
func old(name string) bool {
	info, err := os.Lstat(name)
	return err == nil && time.Since(info.ModTime()).Abs() > staleAge
}

// fill writes the bytes and waits until they are on the disk.
func fill(f *os.File, data []byte) error {
	if _, err := f.Write(data); err != nil {
		return err
	}
	return f.Sync()
}
