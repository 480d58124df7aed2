//go:build linux || darwin

package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"cutbrief/assess/screen/screentest"
)

// TestHostileScreens goes through the screens of an interview about a record
// full of control characters. The terminal only ever draws: no bell, no title,
// no request to it; and nothing on it is invisible or turned round.
func TestHostileScreens(t *testing.T) {
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "visit.json"), hostile(t), 0o600); err != nil {
		t.Fatal(err)
	}
	d := draw(t, dir, "interview", "visit.json")
	d.Sees("<U+202E>turned", "make the page")
	walk(d, []step{
		{"\x1b[F", "q leave", "more below"},                  // the end of the result
		{"w", "rule: ", "make the page"},                     // why
		{"\x1b", "make the page", "rule: "},                  // the result
		{"l", "Enter open", "make the page"},                 // the list
		{"\x1b[A\r", "accept", "Enter open"},                 // a question
		{"\x0f", "note for this question", "not known"},      // its note
		{evil + "\r", "accept", "note for this question"},    // pasted into it
		{"\x0c", "Enter open", "accept"},                     // the list again
		{"r", "make the page", "Enter open"},                 // the result again
		{"p", "the page is in visit.pdf", "making the page"}, // the page
	})
	d.Tries("q")
	d.Ends()
	onlyDrew(d)
}

// TestHostileReview does the same with the list of visits, in a folder whose
// name is as bad.
func TestHostileReview(t *testing.T) {
	dir := t.TempDir()
	below := filepath.Join(dir, "visits", strings.ReplaceAll(strings.ReplaceAll(evil, "\x00", ""), "/", ""))
	if err := os.MkdirAll(below, 0o700); err != nil {
		t.Skip("no such name here:", err)
	}
	for path, data := range map[string][]byte{
		filepath.Join(dir, "visits", "a.json"): hostile(t), filepath.Join(below, "b.json"): []byte(evil), filepath.Join(dir, "visits", "c.json"): shown(t),
	} {
		if err := os.WriteFile(path, data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	d := draw(t, dir, "review", "visits")
	d.Sees("<U+202E>turned", "filter")
	walk(d, []step{
		{"\r", "Cutting recommendation", "filter"}, // one visit: its page
		{"\t", "Tab", "Cutting recommendation"},    // why
		{"\t", `{"answers"`, ""},                   // its file
		{"\t", "needs a second look", ""},          // its flags
		{"\x1b", "filter", "needs a second look"},  // the list
		{"b", "grouped by rep", ""},
	})
	d.Tries("q")
	d.Ends()
	onlyDrew(d)
}

// TestHostileRehearsal does the same with the steps of a demonstration.
func TestHostileRehearsal(t *testing.T) {
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "visit.json"), hostile(t), 0o600); err != nil {
		t.Fatal(err)
	}
	d := draw(t, dir, "rehearse", "visit.json")
	d.Sees("begin")
	walk(d, []step{
		{"c", "tick", ""},
		{"\t", "tick", ""},
		{"\x1b", "begin", "tick"},
		{"\r", "How it went", "begin"},
		{"?", "It can fail", ""},
		{"\r", "How it went", "It can fail"},
	})
	d.Tries(ctrlC)
	d.Ends()
	onlyDrew(d)
}

// TestHostileAnswers types the evil text at every question of a record, of an
// interview in plain lines, and of a practice.
func TestHostileAnswers(t *testing.T) {
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "visit.json"), hostile(t), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{
		{"record", "visit.json"}, {"interview", "--plain", "new.json"}, {"interview", "--plain", "visit.json"}, {"practice", "--plain", "--case", "gate-maker"},
	} {
		cmd := exec.Command("cutbrief", args...)
		cmd.Stdin = strings.NewReader(strings.Repeat(evil+" 3\n", 40) + "result\nwhy\nlist\nquit\n")
		cmd.Dir, cmd.Env = dir, append(os.Environ(), "HOME="+dir, "XDG_DATA_HOME="+dir, "XDG_CONFIG_HOME="+dir)
		out, err := cmd.CombinedOutput()
		if len(out) < 500 {
			t.Errorf("%q: %v: %s", args, err, out)
		}
		if bad := append(dangers(string(out)), stirred(string(out))...); len(bad) > 0 {
			t.Errorf("%q: %q", args, bad)
		}
	}
}

// step is some keys, and what the screen shows after them, and does not.
type step struct{ keys, sees, not string }

// walk goes through steps and looks at every screen.
func walk(d *screentest.Terminal, steps []step) {
	d.T.Helper()
	for _, step := range steps {
		d.Tries(step.keys)
		d.Until(func(s string) bool {
			return strings.Contains(s, step.sees) && (step.not == "" || !strings.Contains(s, step.not))
		})
		if bad := dangers(d.Text()); len(bad) > 0 {
			d.T.Errorf("after %q the screen holds %q", step.keys, bad)
		}
	}
}

// onlyDrew fails if the terminal was made to do anything but draw.
func onlyDrew(d *screentest.Terminal) {
	d.T.Helper()
	if rung := d.Rung(); len(rung) > 0 {
		d.T.Errorf("the terminal did %q", rung)
	}
	for _, sequence := range []string{"\x1b]", "\x1bP", "\x1b_", "\x1b^", "\x1bX", "\x07", "\u009b", "\u009d", "\u202e"} {
		if strings.Contains(d.Written(), sequence) {
			d.T.Errorf("%q is written", sequence)
		}
	}
}
