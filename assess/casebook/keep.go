package casebook

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"cutbrief/assess/store/atomicfile"
	"cutbrief/rules/message"
)

// LoadProgress reads the progress so far; none is no error.
func LoadProgress(path string) (p Progress, err error) {
	info, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return p, nil
	}
	var data []byte
	switch {
	case err != nil:
	case !info.Mode().IsRegular():
		err = atomicfile.ErrIrregular
	case info.Size() > ProgressMost:
		err = ErrNotProgress
	default:
		data, err = os.ReadFile(path)
	}
	if err == nil {
		p, err = DecodeProgress(data)
	}
	if err != nil {
		return p, message.Errorf("read {1}: {2}", message.Name(path), atomicfile.Cause(err))
	}
	return p, nil
}

// AddProgress puts a practice behind those kept at path, also behind one that
// another program has kept meanwhile, and returns them all. What cannot be read
// is never written over.
func AddProgress(path string, one Practice) (p Progress, err error) {
	var unread error
	if err = os.MkdirAll(filepath.Dir(path), 0o700); err == nil {
		err = atomicfile.Replace(path, func() ([]byte, error) {
			if p, unread = LoadProgress(path); unread != nil {
				return nil, unread
			}
			p.Add(one)
			return p.Encode()
		})
	}
	if err != nil && unread == nil {
		err = message.Errorf("keep the progress in {1}: {2}", message.Name(path), atomicfile.Cause(err))
	}
	return p, err
}
