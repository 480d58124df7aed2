package main

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/store"
	"cutbrief/rules/system"
)

// Two programs edit one visit: the second to save goes on in a file beside the
// first one's, and neither loses an answer.
func TestBothEditsAreKept(t *testing.T) {
	w := stillWorld()
	a := &app{world: w}
	dir := t.TempDir()
	path := filepath.Join(dir, "a.json")
	v := assess.New("x", w.now())
	v.Set(assess.Answer{Question: assess.FactCompany, Said: "A", State: assess.Told})
	if err := store.Save(path, v, w.now()); err != nil {
		t.Fatal(err)
	}
	sit := func(rep string) (*sitting, *assess.Visit) {
		mine, _, err := store.Load(path)
		if err != nil {
			t.Fatal(err)
		}
		mine.Set(assess.Answer{Question: assess.FactRep, Said: rep, State: assess.Told})
		return &sitting{app: a, offered: system.Demo(), path: path, folder: store.Folder{Dir: dir}}, mine
	}
	first, mine := sit("first")
	second, yours := sit("second")
	if _, err := first.Save(mine); err != nil {
		t.Fatal(err)
	}
	for range 2 {
		where, err := second.Save(yours)
		if err != nil || where == path || second.beside != path {
			t.Fatalf("%s %v", where, err)
		}
	}
	for file, rep := range map[string]string{path: "first", second.path: "second"} {
		kept, _, err := store.Load(file)
		if err != nil || said(kept, assess.FactRep) != rep || kept.Recommended == nil {
			t.Errorf("%s: %v", file, err)
		}
	}
	if files, _ := os.ReadDir(dir); len(files) != 2 {
		t.Errorf("%d files", len(files))
	}
}

// An interview notes how long it took, here 60 s and 30 s; a record of the
// demonstration afterwards adds nothing.
func TestAnInterviewNotesItsTime(t *testing.T) {
	w := stillWorld()
	start, passed := w.now(), time.Duration(0)
	w.now = func() time.Time { return start.Add(passed) }
	a := &app{world: w}
	v := assess.New("x", start)
	path := filepath.Join(t.TempDir(), "a.json")
	s := &sitting{app: a, offered: system.Demo(), path: path, watch: assess.NewStopwatch(v, start)}
	save := func(after time.Duration) {
		passed += after
		if _, err := s.Save(v); err != nil {
			t.Fatal(err)
		}
	}
	save(time.Minute)
	save(30 * time.Second)
	s.watch = nil
	save(time.Minute)
	if kept, _, err := store.Load(path); err != nil || kept.Spent == nil || kept.Spent.Seconds.Or(0) != 90 || kept.Spent.Sittings != 1 {
		t.Errorf("%v %+v", err, kept.Spent)
	}
}
