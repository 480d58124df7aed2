package store

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"sync"
	"testing"
)

func replaced(path, data string) error {
	return ReplaceFile(path, func() ([]byte, error) { return []byte(data), nil })
}

// holds fails unless the file at path holds a text.
func holds(t *testing.T, path, want string) {
	t.Helper()
	if got, err := os.ReadFile(path); err != nil || string(got) != want {
		t.Errorf("%s holds %q, %v; want %q", path, got, err, want)
	}
}

// left fails unless a folder holds these files and no others.
func left(t *testing.T, dir string, want ...string) {
	t.Helper()
	files, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, f := range files {
		names = append(names, f.Name())
	}
	if strings.Join(names, "|") != strings.Join(want, "|") {
		t.Errorf("the folder holds %q, want %q", names, want)
	}
}

// Programs that build on what is there, at the same time, lose nothing of one
// another.
func TestReplaceLosesNothing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "count")
	const writers = 6
	var all sync.WaitGroup
	for range writers {
		all.Go(func() {
			err := ReplaceFile(path, func() ([]byte, error) {
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
	holds(t, path, strconv.Itoa(writers))
}

// Of many programs that create the same file at once, one does, and the others
// are told.
func TestOneOfManyCreates(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "page")
	var all sync.WaitGroup
	won := make(chan string, 8)
	for i := range cap(won) {
		all.Go(func() {
			switch err := CreateFile(path, []byte(strconv.Itoa(i))); {
			case err == nil:
				won <- strconv.Itoa(i)
			case !errors.Is(err, fs.ErrExist) && !errors.Is(err, ErrBusy):
				t.Error(err)
			}
		})
	}
	all.Wait()
	if len(won) != 1 {
		t.Fatalf("%d created it", len(won))
	}
	holds(t, path, <-won)
	left(t, dir, "page")
}

func TestReplaceLeavesTheFileAloneOnAnError(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "file")
	if err := os.WriteFile(path, []byte("old"), 0o600); err != nil {
		t.Fatal(err)
	}
	bad := errors.New("no")
	if err := ReplaceFile(path, func() ([]byte, error) { return []byte("new"), bad }); err != bad {
		t.Errorf("got %v", err)
	}
	holds(t, path, "old")
	left(t, dir, "file")
}

// A folder in place of the target cannot be renamed over.
func TestAFolderIsNotReplaced(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.json")
	if err := os.Mkdir(path, 0o700); err != nil {
		t.Fatal(err)
	}
	if replaced(path, "x") == nil {
		t.Error("a folder was replaced")
	}
	if err := CreateFile(path, nil); !errors.Is(err, fs.ErrExist) {
		t.Errorf("created over a folder: %v", err)
	}
	left(t, dir, "a.json")
}

// A link whose file is there stays a link; one to nothing is not written through.
func TestLinks(t *testing.T) {
	dir := t.TempDir()
	file, link, astray := filepath.Join(dir, "file"), filepath.Join(dir, "link"), filepath.Join(dir, "astray")
	if err := os.WriteFile(file, []byte("old"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(os.Symlink("file", link), os.Symlink("nothing", astray)); err != nil {
		t.Skip("no links here:", err)
	}
	if err := replaced(link, "new"); err != nil {
		t.Error(err)
	}
	if info, _ := os.Lstat(link); info.Mode()&os.ModeSymlink == 0 {
		t.Error("the link became a file")
	}
	for _, path := range []string{link, astray} {
		if err := CreateFile(path, []byte("x")); !errors.Is(err, fs.ErrExist) {
			t.Errorf("created through %s: %v", path, err)
		}
	}
	if replaced(astray, "x") == nil {
		t.Error("written through a link to nothing")
	}
	holds(t, file, "new")
	left(t, dir, "astray", "file", "link")
}

// Only the owner reads what is written, whatever was there before.
func TestOnlyTheOwnerReads(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("Windows keeps rights in another way")
	}
	dir := t.TempDir()
	open, page := filepath.Join(dir, "open"), filepath.Join(dir, "page")
	if err := os.WriteFile(open, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(replaced(open, "x"), CreateFile(page, nil)); err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{open, page} {
		if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o600 {
			t.Errorf("%s: %v %v, want that only the owner reads it", path, info.Mode(), err)
		}
	}
}

// A name as long as the system takes leaves no room for a longer one beside it.
func TestALongName(t *testing.T) {
	dir := t.TempDir()
	name := strings.Repeat("n", longestFileName)
	if err := replaced(filepath.Join(dir, name), "x"); err != nil {
		t.Fatal(err)
	}
	left(t, dir, name)
}
