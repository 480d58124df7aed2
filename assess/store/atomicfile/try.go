package atomicfile

import (
	"errors"
	"io/fs"
	"path/filepath"
)

// Try reports why no file can be made in a folder, or nil: it makes an empty
// one, as for a file that is to be written, and takes it away again.
func Try(dir string) error {
	f, err := create(beside(filepath.Join(dir, "try")))
	if errors.Is(err, fs.ErrExist) {
		return nil // another program can, at this moment
	}
	if err != nil {
		return err
	}
	defer f.Close()
	discard(f)
	return nil
}
