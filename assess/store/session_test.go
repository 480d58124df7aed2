package store

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"cutbrief/assess"
	"cutbrief/rules/system"
)

// still is one invented afternoon.
func still() time.Time { return time.Date(2026, 3, 12, 14, 30, 0, 0, time.UTC) }

// Two programs edit one visit: the second to save goes on in a file beside the
// first one's, and neither loses an answer.
func TestBothEditsAreKept(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.json")
	v := assess.New("x", still())
	v.Set(assess.Answer{Question: assess.FactCompany, Said: "A", State: assess.Told})
	if err := Save(path, v, still()); err != nil {
		t.Fatal(err)
	}
	open := func(rep string) (*Session, *assess.Visit) {
		mine, _, err := Load(path)
		if err != nil {
			t.Fatal(err)
		}
		mine.Set(assess.Answer{Question: assess.FactRep, Said: rep, State: assess.Told})
		return &Session{Now: still, Range: system.Demo(), Path: path, Folder: Folder{Dir: dir}}, mine
	}
	first, mine := open("first")
	second, yours := open("second")
	if _, err := first.Save(mine); err != nil {
		t.Fatal(err)
	}
	for range 2 {
		where, err := second.Save(yours)
		if err != nil || where == path || second.Other != path {
			t.Fatalf("%s %v", where, err)
		}
	}
	for file, rep := range map[string]string{path: "first", second.Path: "second"} {
		kept, _, err := Load(file)
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
	start, passed := still(), time.Duration(0)
	v := assess.New("x", start)
	path := filepath.Join(t.TempDir(), "a.json")
	s := &Session{Now: func() time.Time { return start.Add(passed) }, Range: system.Demo(), Path: path, Watch: assess.NewStopwatch(v, start)}
	save := func(after time.Duration) {
		passed += after
		if _, err := s.Save(v); err != nil {
			t.Fatal(err)
		}
	}
	save(time.Minute)
	save(30 * time.Second)
	s.Watch = nil
	save(time.Minute)
	if kept, _, err := Load(path); err != nil || kept.InterviewTime == nil || kept.InterviewTime.Seconds.Or(0) != 90 || kept.InterviewTime.Sessions != 1 {
		t.Errorf("%v %+v", err, kept.InterviewTime)
	}
}
