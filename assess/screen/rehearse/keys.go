package rehearse

import (
	"cutbrief/assess/screen"

	"github.com/charmbracelet/bubbles/key"
)

// keyMap is every key with its help: big keys, to be hit with gloves on.
type keyMap struct {
	begin, next, back, timer, stop, again  key.Binding
	good, fair, poor                       key.Binding
	beware, lists, leave, quit             key.Binding
	move, tick, other, closeIt, keep, drop key.Binding
	done                                   key.Binding
}

func newKeys() keyMap {
	return keyMap{
		begin:   screen.Key("Enter", "begin", "enter"),
		next:    screen.Key("Enter", "next", "enter", "right", "pgdown"),
		back:    screen.Back("left", "pgup", "backspace"),
		timer:   screen.Key("Space", "start the time", " "),
		stop:    screen.Key("Space", "stop the time", " "),
		again:   screen.Key("Space", "take it again", " "),
		good:    screen.Key("1", "good", "1"),
		fair:    screen.Key("2", "fair", "2"),
		poor:    screen.Key("3", "poor", "3"),
		beware:  screen.Key("b", "beware", "b", "?"),
		lists:   screen.Key("c", "checklists", "c"),
		quit:    screen.Quit(),
		leave:   screen.Leave(),
		move:    screen.Move(),
		tick:    screen.Key("Space", "tick", " ", "x"),
		other:   screen.Key("Tab", "the other list", "tab"),
		closeIt: screen.Back("enter", "b", "?"),
		keep:    screen.Key("k", "keep it and note the rest", "k"),
		drop:    screen.Key("q", "leave without keeping", "q"),
		done:    screen.Keep(),
	}
}
