package screen

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
)

// Key is a binding with how it is shown and what it does, in one or two words.
func Key(shown, does string, keys ...string) key.Binding {
	return key.NewBinding(key.WithKeys(keys...), key.WithHelp(shown, does))
}

// The keys below mean the same on every screen that has them. Where letters are
// typed, a control key stands for the letter, each with a function key for
// terminals that keep the control key for themselves.

// Held reports a letter hit with Alt held down. It is no text, and nobody's key.
func Held(msg tea.KeyMsg) bool { return msg.Alt && msg.Type == tea.KeyRunes }

// Accept takes what has the focus or is typed.
func Accept() key.Binding { return Key("Enter", "accept", "enter") }

// Keep takes a text and goes back to where it was asked for.
func Keep() key.Binding { return Key("Enter", "keep", "enter") }

// Back goes one step back. Keys in also do the same.
func Back(also ...string) key.Binding {
	return Key("Esc", "back", append([]string{"esc", "shift+tab"}, also...)...)
}

// Leave leaves from anywhere, also while letters are typed. Right behind Esc the
// key comes as another: a terminal sends both in one piece.
func Leave() key.Binding { return Key("^C", "leave", "ctrl+c", "alt+ctrl+c") }

// Quit leaves where no letters are typed.
func Quit() key.Binding { return Key("q", "leave", "q") }

// Move moves the focus in a list.
func Move() key.Binding {
	return Key("↑↓", "move", "up", "down", "k", "j", "pgup", "pgdown", "home", "end")
}

// Scroll moves in a text longer than the screen.
func Scroll() key.Binding {
	return Key("↑↓", "scroll", "up", "down", "pgup", "pgdown", "home", "end")
}

// Later leaves a question for later.
func Later() key.Binding { return Key("Tab", "later", "tab") }

// NotKnown answers that nobody knows.
func NotKnown() key.Binding { return Key("^N", "not known", "ctrl+n", "f2") }

// Explain says more about a question.
func Explain() key.Binding { return Key("^X", "explain", "ctrl+x", "f1") }

// List shows all questions.
func List() key.Binding { return Key("^L", "list", "ctrl+l", "f5") }

// Done ends the questions and goes on to what they come to.
func Done() key.Binding { return Key("^T", "done", "ctrl+t", "f9") }

// Why says how a result was reached.
func Why() key.Binding { return Key("w", "why", "w", "ctrl+y", "f7") }

// Page makes the printed page.
func Page() key.Binding { return Key("p", "make the page", "p") }
