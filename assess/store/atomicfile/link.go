package atomicfile

import (
	"errors"
	"io/fs"
	"os"
)

// link gives the file a name that nobody has. Linking fails where the name is
// taken, so that no other program's file is lost between looking and writing;
// where the disk cannot link, we look first and then rename.
func link(f *os.File, to string) error {
	err := os.Link(f.Name(), to)
	switch {
	case err == nil:
		os.Remove(f.Name()) // if it stays, the next program sweeps it
		return nil
	case errors.Is(err, fs.ErrExist):
		return fs.ErrExist
	}
	if _, err := os.Lstat(to); err == nil {
		return fs.ErrExist
	}
	return rename(f, to)
}
