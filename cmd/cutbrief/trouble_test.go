//go:build linux || darwin

package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/screen/screentest"
	"cutbrief/assess/store"
	"cutbrief/rules"
)

// keptSays fails unless the draft at path holds these answers, in this order.
func keptSays(t *testing.T, path string, want ...string) {
	t.Helper()
	v, _, err := store.Load(path)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, a := range v.Answers {
		got = append(got, strings.Join(append(slices.Clone(a.Chosen), a.Said), ""))
	}
	if strings.Join(got, "|") != strings.Join(want, "|") {
		t.Errorf("%s holds %q, want %q", path, got, want)
	}
}

// interviewed starts an interview in a folder and answers its first question.
func interviewed(t *testing.T, home string, file string) *screentest.Terminal {
	t.Helper()
	d := draw(t, home, "interview", file)
	d.Sees("millimetres or inches", "left")
	d.Tries("1")
	d.Sees("Which metals")
	d.Until(func(s string) bool { return !strings.Contains(s, "saving ·") })
	return d
}

// TestFolderRemoved: the folder of the draft is removed during the interview.
// The screen says so with the next answer, and another place takes everything.
func TestFolderRemoved(t *testing.T) {
	home := t.TempDir()
	visits, stick := filepath.Join(home, "visits"), filepath.Join(home, "stick")
	for _, dir := range []string{visits, stick} {
		if err := os.Mkdir(dir, 0o700); err != nil {
			t.Fatal(err)
		}
	}
	d := interviewed(t, home, "visits/a.json")
	if err := os.RemoveAll(visits); err != nil {
		t.Fatal(err)
	}
	d.Tries("1\r")
	d.Sees("NOT SAVED", "no such file", "^S where to save")
	d.Tries("12")
	d.Sees("› 12")
	d.Tries("\x13")
	d.Sees("Where else should the visit be saved?")
	d.Tries("stick\r")
	d.Sees("› 12")
	d.Until(func(s string) bool { return !strings.Contains(s, "NOT SAVED") && !strings.Contains(s, "saving ·") })
	d.Tries(" mm\r")
	d.Sees("Is this repair work")
	d.Tries(ctrlC)
	d.Ends()
	files, err := os.ReadDir(stick)
	if err != nil || len(files) != 1 {
		t.Fatalf("the other place holds %v, %v", files, err)
	}
	keptSays(t, filepath.Join(stick, files[0].Name()), "mm", "mild-steel", "12 mm")
}

// TestReadOnlyFolder: as long as the folder cannot be written the answers stay
// in memory; once it can, the next answer saves all of them.
func TestReadOnlyFolder(t *testing.T) {
	user := plainUser(t)
	visits := user.folder(t, "visits")
	d := drawAs(t, user.home, user.command("interview", "visits/a.json"))
	d.Sees("millimetres or inches", "left")
	d.Tries("1")
	d.Sees("Which metals")
	d.Until(func(s string) bool { return !strings.Contains(s, "saving ·") })
	os.Chmod(visits, 0o500)
	d.Tries("1\r")
	d.Sees("NOT SAVED", "permission denied")
	os.Chmod(visits, 0o700)
	savedAfter(d, filepath.Join(visits, "a.json"))
}

// TestReadOnlyOutput: a page for a folder that cannot be written is refused in
// two lines, a new visit in such a folder is not lost without a word, and
// nothing is left there.
func TestReadOnlyOutput(t *testing.T) {
	user := plainUser(t)
	pages := user.folder(t, "pages")
	if err := os.WriteFile(filepath.Join(user.home, "visit.json"), shown(t), 0o644); err != nil {
		t.Fatal(err)
	}
	os.Chmod(pages, 0o500)
	for _, args := range [][]string{
		{"brief", "visit.json", "--out", "pages"}, {"brief", "visit.json", "--out", "pages", "--force"}, {"redact", "visit.json", "--out", "pages/case.json"},
		{"interview", "--plain", "pages/a.json"}, {"interview", "--plain", "--dir", "pages"},
	} {
		cmd := user.command(args...)
		cmd.Dir, cmd.Stdin = user.home, strings.NewReader("Alder Vale\nquit\n")
		out, err := cmd.CombinedOutput()
		if err == nil || !strings.Contains(string(out), "permission denied") {
			t.Errorf("%q: %v: %s", args, err, out)
		}
	}
	if left, err := os.ReadDir(pages); err != nil || len(left) > 0 {
		t.Errorf("left behind: %v %v", left, err)
	}
}

// TestClockJumps: the clock is put back a year, and then far ahead, as after a
// battery that was empty. Every save counts all the same, and a new visit gets
// a free name.
func TestClockJumps(t *testing.T) {
	w := fixedEnvironment()
	at := w.now()
	w.now = func() time.Time { return at }
	dir := t.TempDir()
	s := &store.Session{Now: w.now, Folder: store.Folder{Dir: dir}}
	v := assess.New("x", at)
	s.Watch = assess.NewStopwatch(v, at)
	for i, words := range []string{"A", "B", "C", "D"} {
		v.Set(assess.Answer{Question: assess.FactNotes, Said: words, State: assess.Told})
		path, err := s.Save(v)
		if err != nil {
			t.Fatal(err)
		}
		keptSays(t, path, words)
		if v.Revision != i+1 {
			t.Errorf("revision %d after %d saves", v.Revision, i+1)
		}
		at = at.AddDate([]int{-1, 40, -20, 0}[i], 0, 0)
	}
	if files, err := os.ReadDir(dir); err != nil || len(files) != 1 {
		t.Errorf("the folder holds %v, %v", files, err)
	}
}

// savedAfter gives one more answer, and looks that all are saved.
func savedAfter(d *screentest.Terminal, path string) {
	d.T.Helper()
	d.Sees("What is the thickest mild steel")
	d.Tries("12 mm\r")
	d.Sees("Is this repair work")
	d.Until(func(s string) bool { return !strings.Contains(s, "NOT SAVED") && !strings.Contains(s, "saving ·") })
	keptSays(d.T, path, "mm", "mild-steel", "12 mm")
}

// TestTerminalClosed: the window is closed, which hangs up. What was typed and
// can be understood is kept as well.
func TestTerminalClosed(t *testing.T) {
	dir := t.TempDir()
	d := interviewed(t, dir, "a.json")
	d.Tries("1\r12")
	d.Sees("› 12")
	d.Hangup()
	d.Ends()
	keptSays(t, filepath.Join(dir, "a.json"), "mm", "mild-steel", "12")
}

// TestTerminalClosedPlain: in plain lines every answer that was taken is kept.
func TestTerminalClosedPlain(t *testing.T) {
	dir := t.TempDir()
	d := draw(t, dir, "interview", "--plain", "a.json")
	d.Sees("millimetres or inches")
	d.Tries("1\r")
	d.Sees("Which metals")
	d.Hangup()
	d.Ends()
	keptSays(t, filepath.Join(dir, "a.json"), "mm")
}

// TestAsleep: the program is stopped for a while, as on a laptop that sleeps,
// and goes on where it was.
func TestAsleep(t *testing.T) {
	dir := t.TempDir()
	d := interviewed(t, dir, "a.json")
	d.Cmd.Process.Signal(syscall.SIGSTOP)
	d.Tries("1\r") // waits for it to wake up
	d.Cmd.Process.Signal(syscall.SIGCONT)
	savedAfter(d, filepath.Join(dir, "a.json"))
}

// TestTwoPrograms: two programs go on with one draft. Both drafts are kept, and
// the second to save says where its own is.
func TestTwoPrograms(t *testing.T) {
	dir := t.TempDir()
	interviewed(t, dir, "a.json").Kill()
	first, second := draw(t, dir, "interview", "a.json"), draw(t, dir, "interview", "a.json")
	for _, d := range []*screentest.Terminal{first, second} {
		d.Sees("Which metals")
	}
	first.Tries("1\r")
	first.Sees("What is the thickest mild steel")
	first.Until(func(s string) bool { return !strings.Contains(s, "saving ·") })
	second.Tries("3\r")
	second.Sees("What is the thickest stainless")
	for _, d := range []*screentest.Terminal{first, second} {
		d.Tries(ctrlC)
		d.Ends()
	}
	keptSays(t, filepath.Join(dir, "a.json"), "mm", "mild-steel")
	others, _ := filepath.Glob(filepath.Join(dir, "2*.json"))
	if len(others) != 1 {
		t.Fatalf("%d drafts beside", len(others))
	}
	keptSays(t, others[0], "mm", "stainless")
	if !strings.Contains(second.Written(), "Both are kept") {
		t.Errorf("the second says %q", second.Written())
	}
}

// TestMoveTo: a place is a folder or a new file; nothing is written over, and
// nothing is made before it is needed.
func TestMoveTo(t *testing.T) {
	w := fixedEnvironment()
	home := t.TempDir()
	there := filepath.Join(home, "there.json")
	if err := os.WriteFile(there, []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	s := &store.Session{Now: w.now, Home: home, Path: "before.json"}
	for _, bad := range []string{"", there, filepath.Join(home, "no", "a.json")} {
		if err := s.MoveTo(bad); err == nil || s.Path != "before.json" {
			t.Errorf("moved to %q", bad)
		}
	}
	v := assess.New("x", w.now())
	v.Set(assess.Answer{Question: assess.FactCompany, Said: "A", State: assess.Told})
	for place, want := range map[string]string{
		home: "2026-03-12-a.json", "~/b.json": "b.json", filepath.Join(home, "new") + "/": "new/2026-03-12-a.json",
	} {
		if err := s.MoveTo(place); err != nil {
			t.Fatal(err)
		}
		got, err := s.Save(v)
		if err != nil || got != filepath.Join(home, want) {
			t.Errorf("%s: kept in %s, %v", place, got, err)
		}
	}
	if a, ok := v.Answer(rules.Asked{Fact: assess.FactCompany}); !ok || a.Said != "A" {
		t.Error("the answer is gone")
	}
}

// saidOf is what a visit says to one of its own questions.
func saidOf(v *assess.Visit, f rules.Fact) string {
	a, _ := v.Answer(rules.Asked{Fact: f})
	return a.Said
}
