package screentest

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
)

// Driver sends messages to a model and runs what it asks for, one after the
// other, as the loop would with nothing else going on.
type Driver struct {
	T     testing.TB
	Model tea.Model
	Words func(view string) string // how a view is read; nil joins what is wrapped
	Quit  bool                     // the model has asked to leave
}

// Send gives one message to the model, and then all that comes of it.
func (d *Driver) Send(msg tea.Msg) {
	_, cmd := d.Model.Update(msg)
	d.Run(cmd)
}

// Run runs a command, which may be nil, and sends on what it brings.
func (d *Driver) Run(cmd tea.Cmd) {
	if cmd == nil {
		return
	}
	switch msg := cmd().(type) {
	case nil:
	case tea.QuitMsg:
		d.Quit = true
	case tea.BatchMsg:
		for _, c := range msg {
			d.Run(c)
		}
	default:
		d.Send(msg)
	}
}

// Keys sends named keys and texts, in order.
func (d *Driver) Keys(keys ...string) {
	for _, k := range keys {
		d.Send(Key(k))
	}
}

// Paste sends a text as one that was pasted.
func (d *Driver) Paste(text string) {
	d.Send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text), Paste: true})
}

// Resize gives the window a size, in cells.
func (d *Driver) Resize(width, height int) { d.Send(tea.WindowSizeMsg{Width: width, Height: height}) }

// View is what the model draws, without styles.
func (d *Driver) View() string { return ansi.Strip(d.Model.View()) }

// Sees fails unless all the texts are on the screen.
func (d *Driver) Sees(texts ...string) {
	d.T.Helper()
	for _, text := range texts {
		if !strings.Contains(d.words(), text) {
			d.T.Fatalf("%q is not on the screen:\n%s", text, d.View())
		}
	}
}

// SeesNot fails if the text is on the screen.
func (d *Driver) SeesNot(text string) {
	d.T.Helper()
	if strings.Contains(d.words(), text) {
		d.T.Fatalf("%q is on the screen:\n%s", text, d.View())
	}
}

func (d *Driver) words() string {
	if d.Words != nil {
		return d.Words(d.View())
	}
	return Unwrapped(d.View())
}

// Unwrapped joins what is wrapped, with single spaces.
func Unwrapped(s string) string { return strings.Join(strings.Fields(s), " ") }

// Failing is a test, or a round of one with drawn values.
type Failing interface {
	Helper()
	Fatalf(format string, args ...any)
}

// Framed fails unless the view fills a window, in cells, and stays inside it.
func Framed(t Failing, view string, width, height int) {
	t.Helper()
	if lines := strings.Count(view, "\n") + 1; lines != height {
		t.Fatalf("%d lines in a window of %d:\n%s", lines, height, view)
	}
	Inside(t, view, width, height)
}

// Inside fails unless the view is no higher than a window and no wider.
func Inside(t Failing, view string, width, height int) {
	t.Helper()
	lines := strings.Split(view, "\n")
	if len(lines) > height {
		t.Fatalf("%d lines in a window of %d:\n%s", len(lines), height, view)
	}
	for _, l := range lines {
		if w := ansi.StringWidth(l); w > width {
			t.Fatalf("%d cells in a window of %d: %q", w, width, l)
		}
	}
}
