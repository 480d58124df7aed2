package interview

import (
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/sanitize"
	"cutbrief/assess/screen"
	"cutbrief/rules/message"

	"github.com/charmbracelet/bubbles/key"
)

// say puts a text into the words of the book. What a view shows goes through
// here, or through one of the three below that lay it out too.
func (m *Model) say(text string) string { return m.words.Say(text) }

func (m *Model) wrap(text string, width int) []string { return screen.Wrap(m.say(text), width) }

func (m *Model) hang(first, text string, width int) []string {
	return screen.Hang(first, m.say(text), width)
}

func (m *Model) cut(line string, width int) string { return screen.Cut(m.say(line), width) }

// keysSaid are keys with their words put into the words of the book.
func (m *Model) keysSaid(keys []key.Binding) []key.Binding {
	said := make([]key.Binding, len(keys))
	for i, k := range keys {
		k.SetHelp(k.Help().Key, m.say(k.Help().Desc))
		said[i] = k
	}
	return said
}

// moreSaid are lines with the marks of what goes on outside the window put into
// the words of the book.
func (m *Model) moreSaid(lines []string) []string {
	said := strings.NewReplacer(screen.MoreAbove, m.say(screen.MoreAbove), screen.MoreBelow, m.say(screen.MoreBelow))
	shown := make([]string, len(lines))
	for i, l := range lines {
		shown[i] = said.Replace(l)
	}
	return shown
}

// heard is what is typed for a step as it is read: a quantity in the words of the
// book is turned round.
func (m *Model) heard(s assess.Step, typed string) string {
	if s.Question.Form != assess.FormQuantity {
		return typed
	}
	return m.words.Answer(typed)
}

// outside passes a text that is not ours through the gate and marks it, so that
// it is shown as it is.
func outside(text string) string { return message.Keep(sanitize.Line(text)) }
