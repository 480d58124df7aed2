package store

import (
	"os"
	"path/filepath"
	"strconv"
	"testing"
	"time"

	"cutbrief/assess"
)

func TestNewestComeFirst(t *testing.T) {
	dir := t.TempDir()
	at := time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC)
	for i, name := range []string{"c.json", "a.json", "b.json"} {
		path := filepath.Join(dir, name)
		if err := Save(path, assess.New(strconv.Itoa(i), at), at); err != nil {
			t.Fatal(err)
		}
		if err := os.Chtimes(path, at, at.Add(time.Duration(i)*time.Hour)); err != nil {
			t.Fatal(err)
		}
	}
	for _, other := range []string{"d.json", "notes.txt", ".hidden.json"} { // the first is no visit, and the newest
		if err := os.WriteFile(filepath.Join(dir, other), []byte("{"), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	got := Folder{Dir: dir}.Newest(2)
	if len(got) != 2 || filepath.Base(got[0].Path) != "b.json" || filepath.Base(got[1].Path) != "a.json" {
		t.Errorf("newest %v", got)
	}
	if got := (Folder{Dir: filepath.Join(dir, "none")}).Newest(2); got != nil {
		t.Errorf("of no folder: %v", got)
	}
}
