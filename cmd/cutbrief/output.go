package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// errExists means a file would be written over.
var errExists = errors.New("the file exists already")

// errIrregular means a path names no ordinary file: renaming over a device or
// a folder would do harm.
var errIrregular = errors.New("it is not a regular file")

// writeFile puts data at path whole or not at all, through a file beside it,
// for its owner's eyes only: it is about a customer. Without force it refuses
// to write over anything; with it, a link is followed and stays a link.
func writeFile(path string, data []byte, force bool) error {
	err := write(path, data, force)
	if err == nil {
		return nil
	}
	hint := "choose another place with --out"
	if errors.Is(err, errExists) {
		hint = "--force writes over it, --out names another file"
	}
	return fail(fmt.Errorf("write %s: %w", path, reason(err)), "%s", hint)
}

func write(path string, data []byte, force bool) error {
	if force {
		var err error
		if path, err = overwritten(path); err != nil {
			return err
		}
	}
	tmp, err := writeBeside(path, data)
	if err != nil {
		return err
	}
	if err := place(tmp, path, force); err != nil {
		os.Remove(tmp)
		return err
	}
	return nil
}

// overwritten is the file that writing over path would replace.
func overwritten(path string) (string, error) {
	info, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return path, nil
	}
	if err != nil {
		return path, err
	}
	if !info.Mode().IsRegular() {
		return path, errIrregular
	}
	return filepath.EvalSymlinks(path)
}

// writeBeside writes data to a new file in path's folder and returns its name.
// It leaves nothing behind when it fails.
func writeBeside(path string, data []byte) (string, error) {
	f, err := os.CreateTemp(filepath.Dir(path), ".cutbrief-*")
	if err != nil {
		return "", err
	}
	_, err = f.Write(data)
	// The bytes must be on the disk before the name is, or a power cut leaves an empty page.
	err = errors.Join(err, f.Sync(), f.Close())
	if err != nil {
		os.Remove(f.Name())
		return "", err
	}
	return f.Name(), nil
}

// place gives the finished file its name. Linking fails where the name is
// taken, so that no other program's file is lost between looking and writing;
// where the disk cannot link, we look first and then rename.
func place(tmp, path string, force bool) error {
	if force {
		return os.Rename(tmp, path)
	}
	err := os.Link(tmp, path)
	switch {
	case err == nil:
		return os.Remove(tmp)
	case errors.Is(err, fs.ErrExist):
		return errExists
	}
	if _, err := os.Lstat(path); err == nil {
		return errExists
	}
	return os.Rename(tmp, path)
}

// reason drops the path and the call from an error of the file system: the
// path is named once already, and a temporary name helps nobody.
func reason(err error) error {
	var p *fs.PathError
	if errors.As(err, &p) {
		return p.Err
	}
	var l *os.LinkError
	if errors.As(err, &l) {
		return l.Err
	}
	return err
}
