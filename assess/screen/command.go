package screen

import (
	"slices"
	"strings"
	"unicode/utf8"

	"cutbrief/rules/message"

	"github.com/charmbracelet/bubbles/help"
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"
)

// Command is something that can be done now, and its keys.
type Command struct {
	key.Binding
	Do func() tea.Cmd // nil: the dialog takes the key as it comes
}

// Keys are the keys that mean the same on every screen that has them. Where a
// text is typed, a letter is text: then the key with Ctrl does the same, or the
// letter while all keys are shown.
type Keys struct {
	Accept, Open, Back, Later, Leave, Quit, Help                           key.Binding
	Move, Scroll                                                           key.Binding
	NotKnown, Note, List, Result, Why, Page, PutOff, Known, NextOpen, Tell key.Binding
}

// NewKeys returns the keys of all screens.
func NewKeys() Keys {
	return Keys{
		Accept:   Bind("accept", "enter", "ctrl+j"),
		Open:     Bind("open", "enter", "ctrl+j"),
		Back:     Bind("back", "esc", "shift+tab"),
		Later:    Bind("skip", "tab"),
		Leave:    Bind("leave", "ctrl+c", "alt+ctrl+c"), // right behind Esc it comes in one piece with it
		Quit:     Bind("leave", "q", "ctrl+c", "alt+ctrl+c"),
		Help:     Bind("all keys", "?", "f1"),
		Move:     Bind("move", "up", "down", "pgup", "pgdown", "home", "end"),
		Scroll:   Bind("scroll", "up", "down", "pgup", "pgdown", "home", "end"),
		NotKnown: Bind("not known", "n", "ctrl+n"),
		Note:     Bind("note", "o", "ctrl+o"),
		List:     Bind("list", "l", "ctrl+l"),
		Result:   Bind("result", "r", "ctrl+r"),
		Why:      Bind("why", "w"),
		Page:     Bind("make the page", "p"),
		PutOff:   Bind("ask the group later", "g", "ctrl+g"),
		Known:    Bind("how it is known", "h", "ctrl+y"),
		NextOpen: Bind("next open question", "tab"),
		Tell:     Bind("tell in a sentence", "f2"),
	}
}

// Bind is a binding of keys, by their names in Bubble Tea, and what they do in one
// to four words. A letter stands first; the key for it while a text is typed
// follows.
func Bind(does message.ID, keys ...string) key.Binding {
	return key.NewBinding(key.WithKeys(keys...), key.WithHelp(label(keys, false), string(does)))
}

// label names the key of a binding; while a text is typed, one that is no letter.
func label(keys []string, typing bool) string {
	for _, k := range keys {
		if typing && isLetter(k) && k != "?" {
			continue
		}
		if ctrl, is := strings.CutPrefix(k, "ctrl+"); is {
			return "^" + strings.ToUpper(ctrl)
		}
		if name, named := names[k]; named {
			return name
		}
		return k
	}
	return ""
}

// names are how keys are called that are no letters.
var names = map[string]string{"enter": "Enter", "esc": "Esc", "tab": "Tab", " ": "Space", "up": "↑↓", "left": "←→", "f1": "F1", "f2": "F2"}

func isLetter(k string) bool { return utf8.RuneCountInString(k) == 1 }

// pressed reports whether a key is one of a binding's; while a text is typed, a
// letter is none.
func pressed(msg tea.KeyMsg, b key.Binding, typing bool) bool {
	return key.Matches(msg, b) && !(typing && isLetter(msg.String()))
}

const (
	footMost = 5 // commands at the foot, besides the key for all
	between  = "  "
)

// foot lists the first commands, and the key that shows all.
func (w *Window) foot() []string {
	text, typing := w.dialog.Typing()
	var keys []key.Binding
	leads := false // out
	for _, c := range w.dialog.Commands() {
		switch k := w.shown(c.Binding, typing); {
		case k.Help().Key == "":
		case len(keys) < footMost:
			keys = append(keys, k)
			leads = leads || leaves(c.Binding)
		case !leads && leaves(c.Binding):
			keys[footMost-1], leads = k, true
		}
	}
	if w.Helping {
		keys = []key.Binding{w.shown(w.Keys.Scroll, false), w.shown(w.Keys.Back, false), w.shown(w.Keys.Leave, false)}
	} else if help := w.Keys.Help; typing && text != "" {
		keys = append(keys, w.shown(Bind("all keys", "f1"), true))
	} else {
		keys = append(keys, w.shown(help, typing))
	}
	return w.Look.Keys(w.Size.Width-2, keys...)
}

func leaves(b key.Binding) bool {
	return slices.Contains(b.Keys(), "q") || slices.Contains(b.Keys(), "ctrl+c")
}

// shown is a binding as it is listed, in the window's language.
func (w *Window) shown(b key.Binding, typing bool) key.Binding {
	b.SetHelp(label(b.Keys(), typing), w.Say(message.ID(b.Help().Desc)))
	return b
}

// allKeys lists every command with its keys, in two columns where there is room:
// the letter, and the key with Ctrl that does the same.
func (w *Window) allKeys(width int) []string {
	var keys []key.Binding
	for _, c := range w.dialog.Commands() {
		b := w.shown(c.Binding, false)
		if also := label(c.Keys(), true); also != b.Help().Key && also != "" {
			b.SetHelp(b.Help().Key+", "+also, b.Help().Desc)
		}
		keys = append(keys, b)
	}
	view := w.Look.help(0)
	half := (len(keys) + 1) / 2
	text := view.FullHelpView([][]key.Binding{keys[:half], keys[half:]})
	if lipgloss.Width(text) > width {
		text = view.FullHelpView([][]key.Binding{keys})
	}
	return strings.Split(text, "\n")
}

// help is the library's view of keys in this look.
func (l Look) help(width int) help.Model {
	return help.Model{Width: width, ShortSeparator: between, FullSeparator: "    ", Styles: help.Styles{
		ShortKey: l.Accent, ShortDesc: l.Dim, FullKey: l.Accent, FullDesc: l.Dim,
	}}
}

// Keys lists bindings in as few lines as the width allows. A key and its word
// are never parted.
func (l Look) Keys(width int, keys ...key.Binding) []string {
	var lines []string
	view := l.help(0)
	from, used := 0, 0
	for i, k := range keys {
		w := ansi.StringWidth(k.Help().Key) + 1 + ansi.StringWidth(k.Help().Desc)
		if i > from && used+len(between)+w > width {
			lines = append(lines, view.ShortHelpView(keys[from:i]))
			from, used = i, 0
		}
		if i > from {
			used += len(between)
		}
		used += w
	}
	return append(lines, view.ShortHelpView(keys[from:]))
}
