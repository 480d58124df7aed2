package store

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"cutbrief/rules/message"
)

// ErrExists means a file would be written over.
var ErrExists = errors.New("the file exists already")

// ErrIrregular means a path names no ordinary file: renaming over a device or
// a folder would do harm.
var ErrIrregular = errors.New("it is not a regular file")

// WriteFile puts data at path whole or not at all, for its owner's eyes only.
// Without force it refuses to write over anything, with ErrExists; with it, a
// link is followed and stays a link. The error names the path, and what to do.
func WriteFile(path string, data []byte, force bool) error {
	return unwritten(path, write(path, data, force))
}

func unwritten(path string, err error) error {
	hint := message.ID("choose another place with --out")
	switch {
	case err == nil:
		return nil
	case errors.Is(err, ErrExists):
		hint = "--force writes over it, --out names another file"
	}
	return message.WithHint(message.Errorf("write {1}: {2}", message.Name(path), Cause(err)), hint)
}

func write(path string, data []byte, force bool) (err error) {
	if !force {
		err = CreateFile(path, data)
	} else if info, missing := os.Stat(path); missing == nil && !info.Mode().IsRegular() {
		err = ErrIrregular
	} else {
		err = ReplaceFile(path, func() ([]byte, error) { return data, nil })
	}
	switch {
	case errors.Is(err, fs.ErrExist):
		return ErrExists
	case errors.Is(err, ErrBusy):
		return ErrBusy // the name it has meanwhile helps nobody
	}
	return err
}

// namesTried is how many names WriteNext tries before it gives up.
const namesTried = 1000

// WriteNext writes data to path, or, where another file has that name, to the
// next free one (page-2.pdf). It returns the path taken, or the one it failed at.
// A file that holds the same bytes already is left as it is. What a program that
// was killed left in the folder goes first.
func WriteNext(path string, data []byte) (string, error) {
	Sweep(filepath.Dir(path))
	ending := filepath.Ext(path)
	next := path
	for n := 2; ; n++ {
		if old, err := os.ReadFile(next); err == nil && bytes.Equal(old, data) {
			return next, nil
		}
		if err := write(next, data, false); !errors.Is(err, ErrExists) || n > namesTried {
			return next, unwritten(next, err)
		}
		next = fmt.Sprintf("%s-%d%s", strings.TrimSuffix(path, ending), n, ending)
	}
}

// Cause drops the path and the call from an error of the file system: who names
// the path already says it once, and a temporary name helps nobody.
func Cause(err error) error {
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
