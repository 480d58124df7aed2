//go:build linux || darwin

package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
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
	for _, step := range []struct{ keys, sees, not string }{
		{"\x1b[F", "q leave", "more below"},                  // the end of the result
		{"w", "rule: ", "make the page"},                     // why
		{"\x1b", "make the page", "rule: "},                  // the result
		{"l", "go there", "make the page"},                   // the list
		{"\x1b[A\r", "accept", "go there"},                   // a question
		{"\x0f", "a note to", "not known"},                   // its note
		{evil + "\r", "accept", "a note to"},                 // pasted into it
		{"\x0c", "go there", "accept"},                       // the list again
		{"r", "make the page", "go there"},                   // the result again
		{"p", "the page is in visit.pdf", "making the page"}, // the page
	} {
		d.Tries(step.keys)
		d.Until(func(s string) bool { return strings.Contains(s, step.sees) && !strings.Contains(s, step.not) })
		if bad := dangers(d.Text()); len(bad) > 0 {
			t.Errorf("after %q the screen holds %q", step.keys, bad)
		}
	}
	d.Tries("q")
	d.Ends()
	if rung := d.Rung(); len(rung) > 0 {
		t.Errorf("the terminal did %q", rung)
	}
	for _, sequence := range []string{"\x1b]", "\x1bP", "\x1b_", "\x1b^", "\x1bX", "\x07", "\u009b", "\u009d", "\u202e"} {
		if strings.Contains(d.Written(), sequence) {
			t.Errorf("%q is written", sequence)
		}
	}
}
