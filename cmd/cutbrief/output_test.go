package main

import (
	"errors"
	"os"
	"path/filepath"
	"testing"
)

func TestWriteFile(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "page.pdf")
	write := func(data string, force bool, want error) {
		t.Helper()
		if err := writeFile(path, []byte(data), force); !errors.Is(err, want) {
			t.Fatalf("write %q: got %v, want %v", data, err, want)
		}
	}
	holds := func(want string) {
		t.Helper()
		if got, err := os.ReadFile(path); err != nil || string(got) != want {
			t.Fatalf("the file holds %q, %v; want %q", got, err, want)
		}
	}
	write("first", false, nil)
	holds("first")
	write("second", false, errExists)
	holds("first")
	write("second", true, nil)
	holds("second")
	if left, _ := os.ReadDir(dir); len(left) != 1 {
		t.Errorf("left behind: %v", left)
	}
}

func TestWriteFileNowhere(t *testing.T) {
	dir := t.TempDir()
	err := writeFile(filepath.Join(dir, "missing", "page.pdf"), []byte("x"), false)
	if !errors.Is(err, os.ErrNotExist) {
		t.Errorf("got %v, want that the folder does not exist", err)
	}
	if _, err := os.Stat(filepath.Join(dir, "missing")); err == nil {
		t.Error("the folder was made")
	}
}
