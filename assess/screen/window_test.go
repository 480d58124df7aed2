package screen

import (
	"strings"
	"testing"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"
	"github.com/muesli/termenv"
)

// sheet is a dialog with a text to scroll in, or a line to type in.
type sheet struct {
	Basic
	w      *Window
	text   Text
	field  *Field
	done   []string // by its commands
	passed []string // keys that were no command's
}

func newSheet(lines int) *sheet {
	lipgloss.SetColorProfile(termenv.Ascii)
	s := &sheet{}
	s.w = NewWindow(s, nil)
	s.text = NewText(s.w)
	s.text.Show(func(int) []string {
		text := make([]string, lines)
		for i := range text {
			text[i] = "line " + string(rune('A'+i))
		}
		return text
	})
	return s
}

func (s *sheet) Title() (string, string)  { return "left", "right" }
func (s *sheet) Help(int) []string        { return []string{"what it is about"} }
func (s *sheet) Body(int, int) []string   { return s.text.Lines("") }
func (s *sheet) does(what string) Command { return Command{s.binding(what), s.noting(what)} }

func (s *sheet) binding(what string) key.Binding {
	k := s.w.Keys
	return map[string]key.Binding{"list": k.List, "not known": k.NotKnown, "why": k.Why, "back": k.Back, "page": k.Page, "result": k.Result}[what]
}

func (s *sheet) noting(what string) func() tea.Cmd {
	return func() tea.Cmd {
		s.done = append(s.done, what)
		return nil
	}
}

func (s *sheet) Commands() []Command {
	return []Command{{s.w.Keys.Scroll, nil}, s.does("back"), s.does("not known"), s.does("list"),
		{s.w.Keys.Leave, func() tea.Cmd { return tea.Quit }}, s.does("why"), s.does("result")}
}

func (s *sheet) Typing() (string, bool) {
	if s.field == nil {
		return "", false
	}
	return s.field.Text(), true
}

func (s *sheet) Type(msg tea.KeyMsg) tea.Cmd {
	s.passed = append(s.passed, msg.String())
	if s.field != nil {
		s.field.Key(msg)
		return nil
	}
	s.text.Key(msg)
	return nil
}

func (s *sheet) press(keys ...string) {
	for _, k := range keys {
		msg := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(k)}
		for t := tea.KeyType(-60); t < 40; t++ {
			if t.String() == k {
				msg = tea.KeyMsg{Type: t}
			}
		}
		s.w.Update(msg)
	}
}

func (s *sheet) sees(t *testing.T, texts ...string) {
	t.Helper()
	for _, text := range texts {
		if view := ansi.Strip(s.w.View()); !strings.Contains(view, text) {
			t.Fatalf("%q is not on the screen:\n%s", text, view)
		}
	}
}

func TestLettersAreCommandsUnlessTyped(t *testing.T) {
	s := newSheet(5)
	s.sees(t, "n not known", "l list", "? all keys")
	s.press("n", "l", "ctrl+n", "wl")
	if got := strings.Join(s.done, ","); got != "not known,list,not known,why,list" {
		t.Fatalf("did %s", got)
	}
	f := NewField(s.w.Look, FieldSpec{Width: 40})
	s.field, s.done = &f, nil
	s.sees(t, "^N not known", "^L list", "? all keys")
	s.press("n", "l", "up", "ctrl+n")
	if got := strings.Join(s.done, ","); got != "not known" || f.Text() != "nl" {
		t.Fatalf("did %s, typed %q", got, f.Text())
	}
}

func TestTheFootHasFiveKeysAndAllAreBehindOne(t *testing.T) {
	s := newSheet(5)
	if view := s.w.View(); strings.Contains(view, "w why") {
		t.Fatalf("a sixth key:\n%s", view)
	}
	s.press("?")
	s.sees(t, "what it is about", "w", "why", "r, ^R", "result")
	s.press("w")
	if len(s.done) != 1 || s.done[0] != "why" || s.w.Helping {
		t.Fatalf("did %v", s.done)
	}
	s.press("f1", "esc", "?", "?")
	if len(s.done) != 1 || s.w.Helping {
		t.Fatalf("did %v, helping %v", s.done, s.w.Helping)
	}
}

// A question mark is a command where nothing is typed yet, and text behind text.
func TestAQuestionMarkBehindTextIsText(t *testing.T) {
	s := newSheet(5)
	f := NewField(s.w.Look, FieldSpec{Width: 40})
	s.field = &f
	s.press("?")
	if !s.w.Helping {
		t.Fatal("no help")
	}
	s.press("l") // the letter of the list, though a text is typed beneath
	s.press("12", "?")
	if s.w.Helping || f.Text() != "12?" || strings.Join(s.done, ",") != "list" {
		t.Fatalf("typed %q, did %v", f.Text(), s.done)
	}
	s.sees(t, "F1 all keys")
}

func TestATextScrolls(t *testing.T) {
	s := newSheet(26)
	s.w.Update(tea.WindowSizeMsg{Width: 60, Height: 12})
	s.sees(t, "line A", MoreBelow)
	s.press("down")
	s.sees(t, "line B", MoreAbove+"  "+MoreBelow)
	s.w.Update(tea.MouseMsg{Button: tea.MouseButtonWheelDown, Action: tea.MouseActionPress})
	s.sees(t, "line E")
	s.press("end")
	s.sees(t, "line Z", MoreAbove)
	s.press("home", "pgdown")
	if view := s.w.View(); strings.Contains(view, "line A") {
		t.Fatalf("not a page down:\n%s", view)
	}
}

func TestFocusPassesOverHeadings(t *testing.T) {
	heading := map[int]bool{0: true, 3: true, 5: true}
	choosable := func(i int) bool { return !heading[i] }
	for _, test := range []struct {
		from Focused
		key  tea.KeyType
		want Focused
	}{{1, tea.KeyDown, 2}, {2, tea.KeyDown, 4}, {4, tea.KeyUp, 2}, {1, tea.KeyUp, 1}, {4, tea.KeyEnd, 4}, {4, tea.KeyHome, 1}, {1, tea.KeyPgDown, 4}} {
		at := test.from
		if !at.Key(tea.KeyMsg{Type: test.key}, 6, 2, choosable) || at != test.want {
			t.Errorf("%v from %d: at %d, want %d", test.key, test.from, at, test.want)
		}
	}
}

// A window of any size is filled and never left.
func TestTheWindowIsFilled(t *testing.T) {
	s := newSheet(26)
	for _, size := range [][2]int{{1, 1}, {20, 5}, {60, 20}, {80, 24}, {120, 40}} {
		s.w.Update(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
		for _, keys := range []string{"", "?", "esc"} {
			s.press(keys)
			lines := strings.Split(ansi.Strip(s.w.View()), "\n")
			if len(lines) != size[1] {
				t.Fatalf("%d lines in a window of %d", len(lines), size[1])
			}
			for _, l := range lines {
				if ansi.StringWidth(l) > size[0] {
					t.Fatalf("%q in a window of %d", l, size[0])
				}
			}
		}
	}
}

// Keys are never two things: no key of one command is a key of another, apart
// from those whose meaning follows the focus.
func TestKeysAreOneThingEach(t *testing.T) {
	k := NewKeys()
	of := map[string]string{}
	for _, b := range []key.Binding{k.Accept, k.Back, k.Later, k.Leave, k.Help, k.Move, k.NotKnown, k.Note, k.List, k.Result, k.Why, k.Page, k.PutOff, k.Known} {
		for _, name := range b.Keys() {
			if before, taken := of[name]; taken {
				t.Errorf("%s is %q and %q", name, before, b.Help().Desc)
			}
			of[name] = b.Help().Desc
		}
	}
}
