package interview

import (
	"cutbrief/assess/gate"
	"cutbrief/assess/phrase"
	"cutbrief/assess/screen"
)

// say puts a text into the words of the book. What a view shows goes through
// here, or through one of the three below that lay it out too.
func (m *Model) say(text string) string { return m.words.Say(text) }

func (m *Model) wrap(text string, width int) []string { return screen.Wrap(m.say(text), width) }

func (m *Model) hang(first, text string, width int) []string {
	return screen.Hang(m.say(first), m.say(text), width)
}

func (m *Model) cut(line string, width int) string { return screen.Cut(m.say(line), width) }

// outside passes a text that is not ours through the gate and marks it, so that
// it is shown as it is.
func outside(text string) string { return phrase.Keep(gate.Line(text)) }
