package store

import (
	"os"
	"path/filepath"
	"testing"
	"time"
)

func TestListNewestFirst(t *testing.T) {
	f := Folder{t.TempDir()}
	for i, company := range []string{"Old", "New", "Middle"} {
		at := now.Add([]time.Duration{0, 2 * time.Hour, time.Hour}[i])
		v := visit(t, company)
		path, err := f.NewPath(v)
		if err != nil {
			t.Fatal(err)
		}
		if err := Save(path, v, at); err != nil {
			t.Fatal(err)
		}
	}
	entries, err := f.List()
	if err != nil || len(entries) != 3 {
		t.Fatalf("%v %v", entries, err)
	}
	for i, want := range []string{"2026-11-25-new.json", "2026-11-25-middle.json", "2026-11-25-old.json"} {
		if got := filepath.Base(entries[i].Path); got != want {
			t.Errorf("%d: %s, want %s", i, got, want)
		}
	}
	if entries[0].Open == 0 {
		t.Error("a visit with two answers has no open steps")
	}
}

// What cannot be read is listed with its reason; what is no visit by its name
// is not.
func TestListShowsWhatCannotBeRead(t *testing.T) {
	dir := t.TempDir()
	for name, content := range map[string]string{"torn.json": `{"format":"cutbrief-vi`, "notes.txt": "x", ".a.json.cutbrief": "{", ".hidden.json": "{"} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(content), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Mkdir(filepath.Join(dir, "folder.json"), 0o700); err != nil {
		t.Fatal(err)
	}
	entries, err := Folder{dir}.List()
	if err != nil || len(entries) != 1 || entries[0].Err == nil || filepath.Base(entries[0].Path) != "torn.json" {
		t.Errorf("%+v %v", entries, err)
	}
}

func TestListOfMissingFolder(t *testing.T) {
	entries, err := Folder{filepath.Join(t.TempDir(), "no")}.List()
	if err != nil || len(entries) != 0 {
		t.Errorf("%v %v", entries, err)
	}
}
