package practice

import (
	"cutbrief/assess/casebook"
	"cutbrief/assess/screen"

	"github.com/charmbracelet/bubbles/key"
)

// keyMap is every key of the practice with its help. Notes are typed, so the
// keys beside a question are control keys, each with a function key for
// terminals that keep the control key for themselves.
type keyMap struct {
	enter, next, back, unknown, list, done, leave key.Binding
	acts                                          []actKey
	scroll, closeIt, take, why, page, quit        key.Binding
}

// actKey is the key of one act.
type actKey struct {
	key.Binding
	act casebook.Act
}

func newKeys() keyMap {
	return keyMap{
		enter:   screen.Key("Enter", "note", "enter", "ctrl+j"),
		next:    screen.Key("Tab", "next", "tab"),
		back:    screen.Key("Esc", "back", "esc", "shift+tab"),
		unknown: screen.Key("^N", "not known", "ctrl+n", "f9"),
		list:    screen.Key("^L", "list", "ctrl+l", "f8"),
		done:    screen.Key("^D", "done", "ctrl+d", "f10"),
		leave:   screen.Key("^C", "leave", "ctrl+c"),
		acts: []actKey{
			{screen.Key("^A", "ask (1)", "ctrl+a", "f2"), casebook.Ask},
			{screen.Key("^G", "again (1)", "ctrl+g", "f3"), casebook.Again},
			{screen.Key("^R", "repeat back (1)", "ctrl+r", "f4"), casebook.Repeat},
			{screen.Key("^X", "explain (2)", "ctrl+x", "f1"), casebook.Explain},
			{screen.Key("^E", "caliper (3)", "ctrl+e", "f5"), casebook.Measure},
			{screen.Key("^T", "plate (3)", "ctrl+t", "f6"), casebook.Plate},
			{screen.Key("^B", "breaker (3)", "ctrl+b", "f7"), casebook.Breaker},
		},
		scroll:  screen.Key("↑↓", "scroll", "up", "down", "pgup", "pgdown"),
		closeIt: screen.Key("Esc", "back", "esc", "shift+tab", "ctrl+l", "f8"),
		take:    screen.Key("Enter", "take", "enter", "ctrl+j"),
		why:     screen.Key("w", "why", "w"),
		page:    screen.Key("p", "the mark", "p"),
		quit:    screen.Key("q", "leave", "q"),
	}
}
