package store

import (
	"io"
	"io/fs"
	"os"
	"strconv"

	"cutbrief/assess"
	"cutbrief/rules/message"
)

// Load reads one visit from a file, and lists what is in it that this program
// does not know. It reads regular files only, and never more than
// assess.MaxSize of one.
func Load(path string) (v *assess.Visit, unknown []string, err error) {
	data, err := read(path)
	if err != nil {
		return nil, nil, err
	}
	v, unknown, err = assess.Decode(data)
	if err != nil {
		return nil, nil, message.Errorf("{1}: {2}", message.Name(path), err)
	}
	return v, unknown, nil
}

// LoadRaw is Load, and returns the bytes of the file even where they are no visit.
func LoadRaw(path string) (*assess.Visit, []byte, error) {
	v, _, err := Load(path)
	raw, unread := read(path)
	if unread != nil {
		return v, nil, err
	}
	return v, raw, err
}

// read returns the bytes of a regular file. It looks before it opens, because
// opening a pipe waits for its other end.
func read(path string) ([]byte, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, err
	}
	if err := readable(path, info); err != nil {
		return nil, err
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close() // only read: nothing to lose
	data, err := io.ReadAll(io.LimitReader(f, assess.MaxSize+1))
	if err != nil {
		return nil, err
	}
	if len(data) > assess.MaxSize { // it grew while it was read
		return nil, message.Errorf("{1}: {2}", message.Name(path), assess.ErrTooLarge)
	}
	return data, nil
}

func readable(path string, info fs.FileInfo) error {
	switch {
	case info.IsDir():
		return message.Errorf("{1} is a folder; the file of a visit is expected", message.Name(path))
	case !info.Mode().IsRegular():
		return message.Errorf("{1} is not a regular file; the file of a visit is expected", message.Name(path))
	case info.Size() > assess.MaxSize:
		return message.Errorf("{1}: {2} bytes: {3}", message.Name(path), message.Figure(strconv.FormatInt(info.Size(), 10)), assess.ErrTooLarge)
	}
	return nil
}
