package store

import (
	"errors"
	"os"
	"path/filepath"
	"strconv"
	"sync"
	"testing"
)

// Programs that build on what is there, at the same time, lose nothing of one
// another.
func TestReplaceLosesNothing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "count")
	const writers = 6
	var all sync.WaitGroup
	for range writers {
		all.Go(func() {
			err := Replace(path, func() ([]byte, error) {
				old, _ := os.ReadFile(path)
				n, _ := strconv.Atoi(string(old))
				return []byte(strconv.Itoa(n + 1)), nil
			})
			if err != nil {
				t.Error(err)
			}
		})
	}
	all.Wait()
	if data, _ := os.ReadFile(path); string(data) != strconv.Itoa(writers) {
		t.Errorf("counted to %s, want %d", data, writers)
	}
}

func TestReplaceLeavesTheFileAloneOnAnError(t *testing.T) {
	path := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(path, []byte("old"), 0o600); err != nil {
		t.Fatal(err)
	}
	bad := errors.New("no")
	if err := Replace(path, func() ([]byte, error) { return []byte("new"), bad }); err != bad {
		t.Errorf("got %v", err)
	}
	if data, _ := os.ReadFile(path); string(data) != "old" {
		t.Errorf("the file holds %q", data)
	}
	if left, _ := os.ReadDir(filepath.Dir(path)); len(left) != 1 {
		t.Errorf("%d files are left", len(left))
	}
}
