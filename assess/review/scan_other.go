//go:build !linux

package review

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// stamp looks at a file of the folder.
func (d *directory) stamp(name string) (stamp, error) {
	info, err := os.Stat(filepath.Join(d.f.Name(), name))
	if err != nil {
		return stamp{}, plainly(err)
	}
	return stampOf(info), regular(info)
}

func stampOf(info fs.FileInfo) stamp {
	return stamp{size: info.Size(), modified: info.ModTime().UnixNano()}
}

func regular(info fs.FileInfo) error {
	if !info.Mode().IsRegular() {
		return errRegular
	}
	return nil
}

// read reads a file of the folder. It looks before it opens, because opening a
// pipe waits for its other end.
func (d *directory) read(name string, most int64, buf *[]byte, stamp *stamp) ([]byte, error) {
	var err error
	if *stamp, err = d.stamp(name); err != nil {
		return nil, err
	}
	f, err := os.Open(filepath.Join(d.f.Name(), name))
	if err != nil {
		return nil, plainly(err)
	}
	defer f.Close() // only read: nothing to lose
	return fill(f.Read, stamp.size, most, buf)
}

// plainly drops the path: the row names it already.
func plainly(err error) error {
	var p *fs.PathError
	if errors.As(err, &p) {
		return p.Err
	}
	return err
}
