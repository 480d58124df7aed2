package review

import (
	"cutbrief/assess/screen"

	"github.com/charmbracelet/bubbles/key"
)

// keyMap holds every key with what it does.
type keyMap struct {
	move, open, filter, sort, group, due, flagged, measured, tally, splitBy, back, cancel, quit, leave key.Binding
	accept, clear                                                                                      key.Binding
	scroll, turn, page                                                                                 key.Binding
}

func newKeys() keyMap {
	return keyMap{
		move:     screen.Move(),
		open:     screen.Key("Enter", "open", "enter"),
		filter:   screen.Key("/", "filter", "/"),
		sort:     screen.Key("s", "sort", "s"),
		group:    screen.Key("g", "group", "g"),
		due:      screen.Key("d", "due", "d"),
		flagged:  screen.Key("f", "flagged", "f"),
		measured: screen.Key("m", "timed cuts", "m"),
		tally:    screen.Key("t", "tally", "t"),
		splitBy:  screen.Key("g", "group", "g"),
		back:     screen.Key("Esc", "back", "esc"),
		cancel:   screen.Key("Esc", "stop reading", "esc"),
		quit:     screen.Quit(),
		leave:    screen.Leave(),
		accept:   screen.Keep(),
		clear:    screen.Key("Esc", "show all", "esc"),
		scroll:   screen.Scroll(),
		turn:     screen.Key("Tab", "flags, brief, why, file", "tab"),
		page:     screen.Page(),
	}
}
