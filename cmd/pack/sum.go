package main

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"io"
	"os"
	"path/filepath"
)

// sumsFile is read by sha256sum --check, and by shasum -a 256 --check.
const sumsFile = "SHA256SUMS"

// summed writes the checksums of every file in dir, by name, and tells out what
// was made.
func summed(dir string, out io.Writer) error {
	entries, err := os.ReadDir(dir) // sorted by name
	if err != nil {
		return err
	}
	var sums bytes.Buffer
	for _, e := range entries {
		data, err := os.ReadFile(filepath.Join(dir, e.Name()))
		if err != nil {
			return err
		}
		fmt.Fprintf(&sums, "%x  %s\n", sha256.Sum256(data), e.Name())
		fmt.Fprintf(out, "%5.1f MB  %s\n", float64(len(data))/1e6, filepath.Join(dir, e.Name()))
	}
	return os.WriteFile(filepath.Join(dir, sumsFile), sums.Bytes(), 0o644)
}
