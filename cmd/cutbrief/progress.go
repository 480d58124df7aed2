package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"cutbrief/assess/casebook"
	"cutbrief/assess/store/atomicfile"
)

// progressFile is where the progress of practice is kept. It need not exist.
func (w *world) progressFile() (string, error) {
	base, err := w.userDir("XDG_DATA_HOME", ".local", "share")
	if err != nil {
		return "", fail(err, "set HOME: progress is kept in your data folder")
	}
	return filepath.Join(base, "cutbrief", "practice.json"), nil
}

// loadProgress reads the progress so far; none is no error. What cannot be read
// is never written over.
func loadProgress(path string) (casebook.Progress, error) {
	info, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return casebook.Progress{}, nil
	}
	var data []byte
	switch {
	case err != nil:
	case !info.Mode().IsRegular():
		err = errIrregular
	case info.Size() > casebook.ProgressMost:
		err = casebook.ErrNotProgress
	default:
		data, err = os.ReadFile(path)
	}
	var p casebook.Progress
	if err == nil {
		p, err = casebook.DecodeProgress(data)
	}
	if err != nil {
		return p, fail(fmt.Errorf("read %s: %w", path, reason(err)), "move the file away to begin anew")
	}
	return p, nil
}

// addProgress puts a practice behind those kept at path, also behind one that
// another program has kept meanwhile, and returns them all.
func addProgress(path string, one casebook.Practice) (p casebook.Progress, err error) {
	const hint = "free the folder or the file; the mark above is right all the same"
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return p, fail(fmt.Errorf("keep the progress in %s: %w", path, reason(err)), hint)
	}
	err = atomicfile.Replace(path, func() ([]byte, error) {
		if p, err = loadProgress(path); err != nil {
			return nil, err
		}
		p.Add(one)
		return p.Encode()
	})
	var worded *problem
	if err != nil && !errors.As(err, &worded) {
		err = fail(fmt.Errorf("keep the progress in %s: %w", path, reason(err)), hint)
	}
	return p, err
}

// reportProgress prints the progress for a trainer.
func (a *app) reportProgress(name string) error {
	form, err := among(practiceFormats, name)
	if err != nil {
		return err
	}
	path, err := a.progressFile()
	if err != nil {
		return err
	}
	p, err := loadProgress(path)
	if err != nil {
		return err
	}
	var data []byte
	switch form {
	case commaFormat:
		data, err = p.CSV()
	case jsonFormat:
		data, err = p.JSON()
	default:
		data = []byte(p.Text(nil))
	}
	if err != nil {
		return err
	}
	return put(a.out, data)
}
