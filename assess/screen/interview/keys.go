package interview

import (
	"cutbrief/assess/screen"

	"github.com/charmbracelet/bubbles/key"
)

// keyMap is every key of the interview with its help. Letters are typed into
// answers, so the keys beside a question are control keys, each with a function
// key for terminals that keep the control key for themselves.
type keyMap struct {
	accept, back, later                                         key.Binding
	unknown, note, explain, list, skip, how, why                key.Binding
	leave                                                       key.Binding
	move, scroll, newLine, done                                 key.Binding
	gotoItem, result, closeIt, page, change, overrule, nextOpen key.Binding
	derive                                                      key.Binding
	quit, retry, stay, elsewhere                                key.Binding
}

func newKeys() keyMap {
	return keyMap{
		accept:  screen.Key("Enter", "accept", "enter"),
		back:    screen.Key("Esc", "back", "esc", "shift+tab"),
		later:   screen.Key("Tab", "later", "tab"),
		unknown: screen.Key("^N", "not known", "ctrl+n", "f2"),
		note:    screen.Key("^O", "note", "ctrl+o", "f3"),
		explain: screen.Key("^X", "explain", "ctrl+x", "f1"),
		list:    screen.Key("^L", "list", "ctrl+l", "f5"),
		skip:    screen.Key("^G", "skip group", "ctrl+g", "f6"),
		how:     screen.Key("^R", "how known", "ctrl+r", "f4"),
		why:     screen.Key("^Y", "why", "ctrl+y", "f7"),
		leave:   screen.Key("^C", "leave", "ctrl+c"),

		move:    screen.Key("↑↓", "move", "up", "down"),
		scroll:  screen.Key("↑↓", "scroll", "up", "down", "pgup", "pgdown"),
		newLine: screen.Key("^J", "new line", "ctrl+j", "alt+enter"),
		done:    screen.Key("Enter", "keep", "enter"),

		gotoItem: screen.Key("Enter", "go there", "enter"),
		result:   screen.Key("r", "result", "r"),
		closeIt:  screen.Key("Esc", "back", "esc", "shift+tab", "enter", "ctrl+x", "f1"),
		page:     screen.Key("p", "make the page", "p"),
		change:   screen.Key("l", "list, to change answers", "l", "ctrl+l", "f5"),
		overrule: screen.Key("o", "overrule what decides", "o"),
		derive:   screen.Key("w", "why", "w", "ctrl+y", "f7"),
		nextOpen: screen.Key("n", "next open question", "n"),
		quit:     screen.Key("q", "save and leave", "q"),
		retry:    screen.Key("Enter", "try again", "enter"),
		stay:     screen.Key("Esc", "back to the questions", "esc"),

		elsewhere: screen.Key("^S", "another place", "ctrl+s", "f8"),
	}
}
