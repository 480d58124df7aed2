package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"cutbrief/rules"
	"cutbrief/rules/system"
)

// offered is the range of systems to size with: the user's own, or the
// built-in invented one when there is none. A range with errors is refused: a
// page must not rest on a row that was not understood.
func (a *app) offered() (system.Range, error) {
	path, named := a.systemsFile(a.systems)
	if path == "" {
		return system.Demo(), nil
	}
	file, err := os.Open(path)
	if !named && errors.Is(err, fs.ErrNotExist) {
		return system.Demo(), nil
	}
	if err != nil {
		return system.Range{}, fail(fmt.Errorf("read systems %s: %w", path, reason(err)), "an example to start from: cutbrief systems template")
	}
	defer file.Close()
	offered, findings := examine(file, path)
	for _, f := range findings {
		if f.Severity == system.Error {
			return system.Range{}, fail(fmt.Errorf("systems %s: %s", path, f), "see every line with: cutbrief systems check %s", path)
		}
	}
	return offered, nil
}

// examine reads a range and judges every row of it, by itself and by whether
// an arc of its output can melt what its figures promise.
func examine(r io.Reader, path string) (system.Range, []system.Finding) {
	offered, findings := system.Read(r, filepath.Base(path))
	return offered, offered.Merge(findings, rules.Doubts(offered))
}
