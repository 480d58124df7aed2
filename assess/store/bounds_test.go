package store

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"cutbrief/assess"
)

// What names a folder: one that is there, or any path with a separator at its end.
func TestIsFolder(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string]bool{
		"": false, dir: true, file: false, filepath.Join(dir, "none"): false,
		"none" + string(filepath.Separator): true, "a": false, string(filepath.Separator): true,
	} {
		if got := IsFolder(path); got != want {
			t.Errorf("%q: %v", path, got)
		}
	}
}

// By the rules of quoting of POSIX, XCU 2.2: nothing within single quotes is
// special, and a single quote is written outside them, behind a backslash.
func TestShellWord(t *testing.T) {
	if filepath.Separator != '/' {
		t.Skip("the rules are those of a POSIX shell")
	}
	for path, want := range map[string]string{"a/b.json": "a/b.json", "a b": "'a b'", "it's": `'it'\''s'`, "$x": "'$x'", "~": "'~'"} {
		if got := ShellWord(path); got != want {
			t.Errorf("%s: %s, want %s", path, got, want)
		}
	}
}

// A visit moves to a folder, to a file that is not there, and nowhere else; what a
// tilde stands for is the home that is told.
func TestMoveTo(t *testing.T) {
	dir := t.TempDir()
	there := filepath.Join(dir, "there.json")
	if err := os.WriteFile(there, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	fresh := filepath.Join(dir, "new.json")
	for _, test := range []struct {
		place, home  string
		folder, path string
		fails        bool
	}{
		{place: "", fails: true},
		{place: dir, folder: dir},
		{place: dir + string(filepath.Separator), folder: dir},
		{place: fresh, path: fresh},
		{place: there, fails: true},
		{place: filepath.Join(dir, "none", "new.json"), fails: true},
		{place: filepath.Join(there, "new.json"), fails: true},
		{place: "~/new.json", home: dir, path: fresh},
		{place: "~/new.json", fails: true},
		{place: "new.json", home: dir, path: "new.json"},
	} {
		s := &Session{Path: "old.json", Home: test.home, Saved: true, Other: "other.json"}
		err := s.MoveTo(test.place)
		if test.fails {
			if err == nil || s.Path != "old.json" || !s.Saved {
				t.Errorf("%q: %v, at %q", test.place, err, s.Path)
			}
			continue
		}
		if err != nil || s.Path != test.path || s.Folder.Dir != test.folder || s.Saved || s.Other != "" || s.SavedAt() != "" {
			t.Errorf("%q with home %q: %v, %+v", test.place, test.home, err, s)
		}
	}
}

// The first free name is taken, from -2 on; one that holds the same bytes is that
// file; and where the folder is not there, nothing is.
func TestWriteNext(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "page.pdf")
	for _, test := range []struct{ data, name string }{
		{"a", "page.pdf"}, {"b", "page-2.pdf"}, {"c", "page-3.pdf"}, {"a", "page.pdf"}, {"b", "page-2.pdf"},
	} {
		if got, err := WriteNext(path, []byte(test.data)); err != nil || filepath.Base(got) != test.name {
			t.Errorf("%s: %s, %v", test.data, got, err)
		}
	}
	if _, err := WriteNext(filepath.Join(dir, "none", "page.pdf"), []byte("a")); !errors.Is(err, fs.ErrNotExist) {
		t.Error(err)
	}
}

// Every file is done once, one that fails or panics stops no other, and the errors
// come in the order of the files.
func TestBatch(t *testing.T) {
	files := []string{"a", "b", "panics", "c", "fails", "d"}
	done := make(chan string, 2*len(files))
	most, told := 0, 0
	failed := Batch(files, func(file string) error {
		done <- file
		switch file {
		case "panics":
			panic("fault")
		case "fails":
			return errors.New("failed")
		}
		return nil
	}, func(n int) { most, told = max(most, n), told+1 })
	close(done)
	var got []string
	for file := range done {
		got = append(got, file)
	}
	slices.Sort(got)
	if !slices.Equal(got, slices.Sorted(slices.Values(files))) || most != len(files) || told != len(files) {
		t.Errorf("%q done, %d of %d told", got, told, most)
	}
	if len(failed) != 2 || !strings.Contains(failed[0].Error(), "fault") || failed[1].Error() != "failed" {
		t.Errorf("%q", failed)
	}
}

// Visits are regular files by their ending, below the folder too, hidden ones
// apart; a folder that is not there is an error.
func TestVisits(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"b.json", "a/c.json", "text.txt", ".hidden.json", "folder.json/d.json"} {
		path := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, nil, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	files, err := Visits(dir)
	var got []string
	for _, file := range files {
		below, _ := filepath.Rel(dir, file) // made from the same folder
		got = append(got, filepath.ToSlash(below))
	}
	if want := []string{"a/c.json", "b.json", "folder.json/d.json"}; err != nil || !slices.Equal(got, want) {
		t.Errorf("%q, %v", got, err)
	}
	if _, err := Visits(filepath.Join(dir, "none")); err == nil {
		t.Error("a folder that is not there has visits")
	}
}

// A file as large as is accepted is read, one byte more is not.
func TestTheLargestFile(t *testing.T) {
	for size, refused := range map[int]bool{assess.MaxSize: false, assess.MaxSize + 1: true} {
		path := filepath.Join(t.TempDir(), "v.json")
		const visit = `{"format":"cutbrief-visit","version":2,"answers":[]}`
		if err := os.WriteFile(path, []byte(visit+strings.Repeat(" ", size-len(visit))), 0o600); err != nil {
			t.Fatal(err)
		}
		if _, _, err := Load(path); refused == (err == nil) {
			t.Errorf("%d bytes: %v", size, err)
		}
	}
}

// Letters and digits stay, at both ends of the alphabet; a name as long as is
// accepted stays whole, and a longer one is cut.
func TestSlugAtItsLimits(t *testing.T) {
	for text, want := range map[string]string{
		"az09": "az09", "A z": "a-z", " a": "a", "-a-": "a", "": "visit",
		strings.Repeat("a", longestName):   strings.Repeat("a", longestName),
		strings.Repeat("a", longestName+1): strings.Repeat("a", longestName),
	} {
		if got := slug(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
