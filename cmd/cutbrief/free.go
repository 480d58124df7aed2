package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"cutbrief/assess/store/atomicfile"
)

// mostNames is how many names are tried before giving up.
const mostNames = 1000

// writeFree writes data to path, or, where another file has that name, to the
// next free one (page-2.pdf). It returns the path taken. A file that holds the
// same bytes already is left as it is.
func writeFree(path string, data []byte) (string, error) {
	atomicfile.Sweep(filepath.Dir(path))
	for n := 1; n <= mostNames; n++ {
		try := numbered(path, n)
		if old, err := os.ReadFile(try); err == nil && bytes.Equal(old, data) {
			return try, nil
		}
		err := writeFile(try, data, false)
		if !errors.Is(err, errExists) {
			return try, err
		}
	}
	return "", fail(fmt.Errorf("write %s: %w, and so do %d more of its kind", path, errExists, mostNames-1), "clear some away")
}

// numbered is the n-th name to try for a path.
func numbered(path string, n int) string {
	if n == 1 {
		return path
	}
	ending := filepath.Ext(path)
	return fmt.Sprintf("%s-%d%s", strings.TrimSuffix(path, ending), n, ending)
}
