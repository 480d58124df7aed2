package store

import (
	"fmt"
	"io/fs"
	"path/filepath"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"cutbrief/rules/message"
)

// Visits are the files of visits in a folder and below, in the order of their
// paths. It fails where a folder cannot be read.
func Visits(dir string) (files []string, err error) {
	err = filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err == nil && d.Type().IsRegular() && isVisit(d.Name()) {
			files = append(files, path)
		}
		return err
	})
	return files, err
}

// Batch does something with every file, on all processors, and tells after each
// how many are done. One that fails, or panics, does not stop the rest. The
// errors are in the order of the files.
func Batch(files []string, do func(file string) error, tell func(done int)) []error {
	var (
		next    atomic.Int64
		telling sync.Mutex
		done    int
		failed  = make([]error, len(files))
		workers sync.WaitGroup
	)
	for range min(runtime.GOMAXPROCS(0), len(files)) {
		workers.Go(func() {
			for i := int(next.Add(1)) - 1; i < len(files); i = int(next.Add(1)) - 1 {
				failed[i] = guarded(files[i], do)
				telling.Lock()
				done++
				tell(done)
				telling.Unlock()
			}
		})
	}
	workers.Wait()
	return slices.DeleteFunc(failed, func(err error) bool { return err == nil })
}

// guarded makes an error of a fault of ours.
func guarded(file string, do func(string) error) (err error) {
	defer func() {
		if r := recover(); r != nil {
			err = message.Errorf("{1}: a fault in the program: {2}", message.Name(file), message.Name(fmt.Sprint(r)))
		}
	}()
	return do(file)
}
