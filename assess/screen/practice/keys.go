package practice

import (
	"cutbrief/assess/casebook"
	"cutbrief/assess/screen"

	"github.com/charmbracelet/bubbles/key"
)

// keyMap is every key of the practice with its help. Notes are typed, so the
// keys beside a question are control keys. Where a terminal keeps one of them
// for itself, the word typed as a line does the same.
type keyMap struct {
	note, accept, later, back, unknown, list, done, leave key.Binding
	acts                                                  []actKey
	scroll, closeIt, why, quit                            key.Binding
}

// actKey is the key of one act.
type actKey struct {
	key.Binding
	act casebook.Act
}

func newKeys() keyMap {
	return keyMap{
		note:    screen.Key("Enter", "ask or note", "enter"),
		accept:  screen.Accept(),
		later:   screen.Later(),
		back:    screen.Back(),
		unknown: screen.NotKnown(),
		list:    screen.List(),
		done:    screen.Done(),
		leave:   screen.Leave(),
		acts: []actKey{
			{screen.Key("^A", "ask (1)", "ctrl+a", "f10"), casebook.Ask},
			{screen.Key("^F", "again (1)", "ctrl+f", "f11"), casebook.Again},
			{screen.Key("^K", "repeat back (1)", "ctrl+k", "f12"), casebook.Repeat},
			{screen.Key("^X", "explain (2)", "ctrl+x", "f1"), casebook.Explain},
			{screen.Key("^E", "measure (3)", "ctrl+e"), casebook.Measure},
			{screen.Key("^P", "read plate (3)", "ctrl+p"), casebook.Plate},
			{screen.Key("^B", "see breaker (3)", "ctrl+b"), casebook.Breaker},
		},
		scroll:  screen.Scroll(),
		closeIt: screen.Back("ctrl+l", "f5"),
		why:     screen.Why(),
		quit:    screen.Quit(),
	}
}
