package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"cutbrief/assess/casebook"
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

// saveProgress puts the progress in place, whole or not at all, for its owner
// only.
func saveProgress(path string, p *casebook.Progress) error {
	data, err := p.Encode()
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return fail(fmt.Errorf("keep the progress in %s: %w", path, reason(err)), "free the folder; the mark above is right all the same")
	}
	return writeFile(path, data, true)
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
		data = []byte(p.Text())
	}
	if err != nil {
		return err
	}
	return put(a.out, data)
}
