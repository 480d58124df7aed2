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
	unknown, note, explain, list, skip, finish, how, why        key.Binding
	leave                                                       key.Binding
	move, scroll, newLine, done                                 key.Binding
	gotoItem, result, closeIt, page, change, overrule, nextOpen key.Binding
	derive, leaveOut                                            key.Binding
	quit, retry, stay, elsewhere                                key.Binding
}

func newKeys() keyMap {
	return keyMap{
		accept:  screen.Accept(),
		back:    screen.Back(),
		later:   screen.Later(),
		unknown: screen.NotKnown(),
		note:    screen.Key("^O", "note", "ctrl+o", "f3"),
		explain: screen.Explain(),
		list:    screen.List(),
		skip:    screen.Key("^G", "put off", "ctrl+g", "f6"),
		finish:  screen.Key("^T", "done", "ctrl+t", "f9"),
		how:     screen.Key("^R", "how", "ctrl+r", "f4"),
		why:     screen.Key("^Y", "why", "ctrl+y", "f7"),
		leave:   screen.Leave(),

		move:    screen.Move(),
		scroll:  screen.Scroll(),
		newLine: screen.Key("^J", "new line", "ctrl+j", "alt+enter"),
		done:    screen.Keep(),

		gotoItem: screen.Key("Enter", "go there", "enter"),
		result:   screen.Key("r", "result", "r"),
		closeIt:  screen.Back("enter", "ctrl+x", "f1"),
		page:     screen.Page(),
		change:   screen.Key("l", "list", "l", "ctrl+l", "f5"),
		overrule: screen.Key("o", "overrule what decides", "o"),
		derive:   screen.Why(),
		nextOpen: screen.Key("n", "next open question", "n"),
		leaveOut: screen.Key("x", "leave the group out", "x"),
		quit:     screen.Quit(),
		retry:    screen.Key("Enter", "try again", "enter"),
		stay:     screen.Key("Esc", "back to the questions", "esc"),

		elsewhere: screen.Key("^S", "another place", "ctrl+s", "f8"),
	}
}
