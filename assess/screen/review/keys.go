package review

import (
	"cutbrief/assess/screen"

	"github.com/charmbracelet/bubbles/key"
)

// keyMap holds every key with what it does.
type keyMap struct {
	move, open, filter, sort, group, due, flagged, measured, back, cancel, quit, leave key.Binding
	accept, clear                                                                      key.Binding
	scroll, turn, page                                                                 key.Binding
}

func newKeys() keyMap {
	return keyMap{
		move:     screen.Key("↑↓", "move", "up", "down", "k", "j", "pgup", "pgdown", "home", "end"),
		open:     screen.Key("Enter", "open", "enter"),
		filter:   screen.Key("/", "filter", "/"),
		sort:     screen.Key("s", "sort", "s"),
		group:    screen.Key("g", "group", "g"),
		due:      screen.Key("d", "due", "d"),
		flagged:  screen.Key("f", "flagged", "f"),
		measured: screen.Key("m", "timed cuts", "m"),
		back:     screen.Key("Esc", "back", "esc"),
		cancel:   screen.Key("Esc", "stop reading", "esc"),
		quit:     screen.Key("q", "leave", "q"),
		leave:    screen.Key("^C", "leave", "ctrl+c"),
		accept:   screen.Key("Enter", "keep", "enter"),
		clear:    screen.Key("Esc", "show all", "esc"),
		scroll:   screen.Key("↑↓", "scroll", "up", "down", "pgup", "pgdown", "home", "end"),
		turn:     screen.Key("Tab", "flags, brief, why, file", "tab"),
		page:     screen.Key("p", "write page", "p"),
	}
}
