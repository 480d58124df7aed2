package store

import (
	"fmt"
	"hash/fnv"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// suffix ends the name of every file that is being written, and of no other.
const suffix = ".cutbrief"

// longestFileName is the longest name that most systems take, in bytes.
const longestFileName = 255

// staleAge is when what a program left is taken to be that of one that crashed,
// on a disk that has no locks.
const staleAge = time.Minute

// beside is where the bytes of a file are while it is written. It depends on the
// name of the file alone; that of a very long one is shortened.
func beside(path string) string {
	name := filepath.Base(path)
	if len(name) > longestFileName-len(".")-len(suffix) {
		h := fnv.New64a()
		h.Write([]byte(name)) // never fails
		name = fmt.Sprintf("%x", h.Sum64())
	}
	return filepath.Join(filepath.Dir(path), "."+name+suffix)
}

// Sweep removes from a folder what programs that were killed left there: only
// regular files whose name has the form that this package gives, and that no
// program works on. What cannot be swept is left for the next time.
func Sweep(dir string) {
	files, err := os.ReadDir(dir)
	if err != nil {
		return
	}
	for _, f := range files {
		if Unfinished(f) {
			sweep(filepath.Join(dir, f.Name()))
		}
	}
}

// Unfinished reports whether a file in a folder is one that this package writes
// beside another, or left there: by its kind and the form of its name.
func Unfinished(f os.DirEntry) bool {
	name := f.Name()
	return f.Type().IsRegular() && strings.HasPrefix(name, ".") && len(name) > len("."+suffix) && strings.HasSuffix(name, suffix)
}

// sweep removes a file that no program works on any more.
func sweep(name string) bool {
	left, release := abandoned(name)
	defer release()
	return left && os.Remove(name) == nil
}

// old reports whether a file was written more than a minute from now, ahead of
// now too: the clock may have been put back since.
func old(name string) bool {
	info, err := os.Lstat(name)
	return err == nil && time.Since(info.ModTime()).Abs() > staleAge
}
