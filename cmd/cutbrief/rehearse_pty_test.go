//go:build linux || darwin

package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestRehearseAndRecord: a cut is timed at the bench, kept, and the record goes
// on in the same terminal.
func TestRehearseAndRecord(t *testing.T) {
	term := open(t, "rehearse", "visit.json")
	term.Wrote("DEMO 45")
	term.Types("\r")
	term.Wrote("Space")
	term.Types("1q")
	term.Wrote("Keep it in the visit")
	term.Types("k")
	term.Wrote("How did it go?")
	term.Types("\r")
	term.Wrote("Why? In a few words")
	term.Types("quit\r")
	shown := term.end()
	if !strings.Contains(shown, "The record is in visit.json.") {
		t.Errorf("shows %q", shown)
	}
	data, err := os.ReadFile(filepath.Join(term.dir, "visit.json"))
	if err != nil || !strings.Contains(string(data), `"result": "good"`) {
		t.Errorf("the record is not in the file: %v", err)
	}
}

// TestRehearseAlone: what is not kept is said, and the file stays as it was.
func TestRehearseAlone(t *testing.T) {
	term := open(t, "rehearse", "visit.json")
	term.Wrote("DEMO 45")
	term.Types("\r")
	term.Wrote("Space")
	term.Types("1" + ctrlC)
	shown := term.end()
	for _, want := range []string{"Not kept in the visit:", "good", "To note it after all: cutbrief record visit.json"} {
		if !strings.Contains(shown, want) {
			t.Errorf("does not say %q: %q", want, shown)
		}
	}
	if data, err := os.ReadFile(filepath.Join(term.dir, "visit.json")); err != nil || strings.Contains(string(data), "showings") {
		t.Errorf("the file was changed: %v", err)
	}
}
