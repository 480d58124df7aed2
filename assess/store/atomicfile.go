package store

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"time"
)

// ErrBusy means another program is writing the same file.
var ErrBusy = errors.New("another program is writing the file")

// How long a program waits for another one to end its writing.
const (
	waits = 20
	wait  = 10 * time.Millisecond
)

// CreateFile puts data at path, readable by its owner only. It never writes over
// anything, nor through a link: fs.ErrExist says that the name is taken.
func CreateFile(path string, data []byte) error {
	if _, err := os.Lstat(path); err == nil {
		return fs.ErrExist // said before anything is written
	}
	return put(path, func() ([]byte, error) { return data, nil }, link)
}

// ReplaceFile puts what make returns in place of the file at path, readable by its
// owner only. make runs while no other program can write the same file, so that
// it may build on what is there; its error leaves the file as it was. A link is
// followed, so that it stays a link.
func ReplaceFile(path string, make func() ([]byte, error)) error {
	target, err := resolve(path)
	if err != nil {
		return err
	}
	return put(target, make, rename)
}

// resolve follows links to the file that is to be replaced. Renaming over a
// link would turn it into a file.
func resolve(path string) (string, error) {
	if _, err := os.Lstat(path); errors.Is(err, fs.ErrNotExist) {
		return path, nil
	}
	return filepath.EvalSymlinks(path)
}

// put writes a file beside path, and lets place give it its name. It leaves
// nothing behind when it fails.
func put(path string, make func() ([]byte, error), place func(f *os.File, to string) error) error {
	f, err := reserve(path)
	if err != nil {
		return err
	}
	defer f.Close() // gives the lock back; all of it is on the disk by then
	data, err := make()
	if err == nil {
		err = fill(f, data)
	}
	if err == nil && !inPlace(f) {
		err = ErrBusy // swept by a program on another machine, which sees no lock of ours
	}
	if err == nil {
		err = place(f, path)
	}
	if err != nil {
		discard(f)
		return err
	}
	syncFolder(filepath.Dir(path))
	return nil
}

// discard removes a file of ours that came to nothing.
func discard(f *os.File) {
	if inPlace(f) {
		os.Remove(f.Name())
	}
}

// fill writes the bytes and waits until they are on the disk: if the name were
// there first, a power cut could leave an empty file.
func fill(f *os.File, data []byte) error {
	if _, err := f.Write(data); err != nil {
		return err
	}
	return f.Sync()
}

// reserve creates the file that the new bytes go to, and holds it.
func reserve(path string) (*os.File, error) {
	name := beside(path)
	for n := 0; ; n++ {
		f, err := create(name)
		if !errors.Is(err, fs.ErrExist) {
			return f, err
		}
		if n == waits {
			return nil, fmt.Errorf("%w, and has not finished: %s", ErrBusy, name)
		}
		if !sweep(name) && n > 0 {
			time.Sleep(wait)
		}
	}
}

// create creates the file of a save and makes it ours; fs.ErrExist if another
// program was first.
func create(name string) (*os.File, error) {
	f, err := createShared(name)
	if err != nil {
		return nil, err
	}
	if !hold(f) {
		f.Close()
		return nil, fs.ErrExist
	}
	return f, nil
}

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

// TryFolder reports why no file can be made in a folder, or nil: it makes an empty
// one, as for a file that is to be written, and takes it away again.
func TryFolder(dir string) error {
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
