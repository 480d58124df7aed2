package store

import (
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"testing"
)

func TestWrite(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "page.pdf")
	write := func(data string, force bool, want error) {
		t.Helper()
		if err := WriteFile(path, []byte(data), force); !errors.Is(err, want) {
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
	write("second", false, ErrExists)
	holds("first")
	write("second", true, nil)
	holds("second")
	if left, _ := os.ReadDir(dir); len(left) != 1 {
		t.Errorf("left behind: %v", left)
	}
}

func TestWriteNowhere(t *testing.T) {
	dir := t.TempDir()
	err := WriteFile(filepath.Join(dir, "missing", "page.pdf"), []byte("x"), false)
	if !errors.Is(err, os.ErrNotExist) {
		t.Errorf("got %v, want that the folder does not exist", err)
	}
	if _, err := os.Stat(filepath.Join(dir, "missing")); err == nil {
		t.Error("the folder was made")
	}
}

// TestWriteOverLink: a link stays a link, and what it points at is
// replaced; a folder and a device are left alone.
func TestWriteOverLink(t *testing.T) {
	dir := t.TempDir()
	file, link := filepath.Join(dir, "file"), filepath.Join(dir, "link")
	if err := os.WriteFile(file, []byte("old"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(file, link); err != nil {
		t.Skip("no links here:", err)
	}
	if err := WriteFile(link, []byte("new"), true); err != nil {
		t.Fatal(err)
	}
	if got, _ := os.ReadFile(file); string(got) != "new" {
		t.Errorf("the file holds %q", got)
	}
	if info, err := os.Lstat(link); err != nil || info.Mode()&os.ModeSymlink == 0 {
		t.Errorf("the link is %v, %v", info, err)
	}
	if err := WriteFile(dir, []byte("new"), true); !errors.Is(err, ErrIrregular) {
		t.Errorf("over a folder: got %v", err)
	}
}

func TestWriteIsPrivate(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("Windows keeps rights in another way")
	}
	path := filepath.Join(t.TempDir(), "page.pdf")
	if err := WriteFile(path, []byte("x"), false); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("got %v, %v; want that only the owner reads it", info.Mode(), err)
	}
}
