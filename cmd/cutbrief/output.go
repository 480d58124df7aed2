package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"

	"cutbrief/assess/store/atomicfile"
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
	switch {
	case err == nil:
		return nil
	case errors.Is(err, fs.ErrExist):
		err = errExists
	case errors.Is(err, atomicfile.ErrBusy):
		err = atomicfile.ErrBusy // the name it has meanwhile helps nobody
	}
	hint := "choose another place with --out"
	if errors.Is(err, errExists) {
		hint = "--force writes over it, --out names another file"
	}
	return fail(fmt.Errorf("write %s: %w", path, reason(err)), "%s", hint)
}

func write(path string, data []byte, force bool) error {
	if !force {
		return atomicfile.Create(path, data)
	}
	if info, err := os.Stat(path); err == nil && !info.Mode().IsRegular() {
		return errIrregular
	}
	return atomicfile.Replace(path, func() ([]byte, error) { return data, nil })
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
