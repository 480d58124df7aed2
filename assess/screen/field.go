package screen

import (
	"slices"
	"strconv"
	"strings"
	"unicode"

	"cutbrief/assess"
	"cutbrief/rules/message"

	"github.com/charmbracelet/bubbles/textarea"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
)

const (
	lineMost = 200  // runes of a one-line text
	longMost = 4000 // runes of a text of several lines
	longTall = 5    // lines of it shown
)

// FieldKind is what a field takes.
type FieldKind int

// The kinds of fields.
const (
	OneLine   FieldKind = iota // a text
	ManyLines                  // a text of several lines
	One                        // one choice, or none
	Several                    // any number of choices
)

// Choice is a choice of a list: what it is stored as, and what is shown.
type Choice struct{ ID, Text string }

// Choices are the options of a question in the words of a catalog.
func Choices(words *message.Catalog, options []assess.Option) []Choice {
	list := make([]Choice, len(options))
	for i, o := range options {
		list[i] = Choice{ID: o.ID, Text: words.Print(o.Text.Message())}
	}
	return list
}

// Draft is what is in a field: a text, or the choices taken.
type Draft struct {
	Text   string
	Chosen []string
}

// Empty reports whether nothing stands there.
func (d Draft) Empty() bool { return strings.TrimSpace(d.Text) == "" && len(d.Chosen) == 0 }

// Equal reports whether two drafts mean the same.
func (d Draft) Equal(e Draft) bool {
	return strings.TrimSpace(d.Text) == strings.TrimSpace(e.Text) && slices.Equal(d.Chosen, e.Chosen)
}

// FieldSpec is what a field is built from.
type FieldSpec struct {
	Kind    FieldKind
	Choices []Choice
	Stored  []string // choices stored already, marked as such
	None    string   // words of the choice of none, in a list of one
	Has     Draft
	Row     int // that has the focus in a list of several
	Width   int
}

// Field is what a question is answered in. It shows and edits; when to go on and
// where to is decided outside.
type Field struct {
	Spec    FieldSpec // what it was built from
	Touched bool      // a key has reached it

	look    Look
	line    Line
	text    *textarea.Model
	row     int      // of a list, with the focus; in a list of one the first stands for none
	ordered []string // ticked, in the order of ticking
}

// NewField builds a field with the focus on it.
func NewField(look Look, s FieldSpec) Field {
	f := Field{Spec: s, look: look, ordered: slices.Clone(s.Has.Chosen)}
	switch s.Kind {
	case OneLine:
		f.line = NewLine(s.Has.Text)
	case ManyLines:
		f.text = new(textarea.New())
		f.text.ShowLineNumbers, f.text.Prompt, f.text.CharLimit = false, "", longMost
		f.text.FocusedStyle, f.text.Cursor.Style = textarea.Style{}, look.Cursor
		f.text.KeyMap.InsertNewline.SetKeys("ctrl+j", "alt+enter")
		f.text.SetHeight(longTall)
		f.text.SetValue(s.Has.Text)
		f.text.SetWidth(s.Width - ansi.StringWidth(Focus))
		f.text.Focus()
		f.text.View() // the library scrolls in what was last shown
	case One:
		if len(s.Has.Chosen) > 0 {
			f.row = 1 + f.place(s.Has.Chosen[0])
		}
	case Several:
		f.row = s.Row
	}
	return f
}

// Resized is the field with what stands in it, for another width.
func (f *Field) Resized(look Look, width int) Field {
	s := f.Spec
	s.Has, s.Row, s.Width = f.Draft(), f.row, width
	resized := NewField(look, s)
	resized.Touched = f.Touched
	return resized
}

// place is where a choice stands, −1 if it is none.
func (f *Field) place(id string) int {
	return slices.IndexFunc(f.Spec.Choices, func(c Choice) bool { return c.ID == id })
}

// rows are how many a list has.
func (f *Field) rows() int {
	if f.Spec.Kind == One {
		return 1 + len(f.Spec.Choices)
	}
	return len(f.Spec.Choices)
}

// Key takes a key, without what a terminal would not show as itself. A number in a
// list takes its choice.
func (f *Field) Key(msg tea.KeyMsg) {
	if f.IsList() && msg.Type == tea.KeyRunes {
		if picked := f.Numbers(string(msg.Runes)); len(picked) > 0 || len(msg.Runes) > 1 {
			for _, n := range picked {
				f.Pick(n)
			}
			return
		}
	}
	f.Touched = true
	switch f.Spec.Kind {
	case OneLine:
		f.line.Key(msg)
	case ManyLines:
		*f.text, _ = f.text.Update(printable(msg)) // its command blinks the cursor
	default:
		f.listKey(msg.String())
	}
}

// listKey moves the focus, in a list of one around its ends, or ticks.
func (f *Field) listKey(key string) {
	last := f.rows() - 1
	switch key {
	case "up", "k":
		f.row--
	case "down", "j":
		f.row++
	case "home", "g":
		f.row = 0
	case "end", "G":
		f.row = last
	case " ", "x":
		f.tick()
	}
	switch around := f.Spec.Kind == One; {
	case f.row < 0 && around:
		f.row = last
	case f.row > last && around:
		f.row = 0
	}
	f.row = max(0, min(f.row, last))
}

// tick ticks or clears the row with the focus where several can be taken.
func (f *Field) tick() {
	if f.Spec.Kind != Several || f.row >= len(f.Spec.Choices) {
		return
	}
	id := f.Spec.Choices[f.row].ID
	if i := slices.Index(f.ordered, id); i >= 0 {
		f.ordered = slices.Delete(slices.Clone(f.ordered), i, i+1)
	} else {
		f.ordered = append(slices.Clone(f.ordered), id)
	}
}

// printable leaves out of typed text what a terminal or a page would not show as
// itself.
func printable(msg tea.KeyMsg) tea.KeyMsg {
	if msg.Type != tea.KeyRunes {
		return msg
	}
	var kept []rune
	for _, r := range msg.Runes {
		switch {
		case r == '\t':
			kept = append(kept, ' ')
		case !unicode.IsControl(r) && !unicode.Is(unicode.Cf, r):
			kept = append(kept, r)
		}
	}
	msg.Runes = kept
	return msg
}

// Numbers are the numbers in what was typed, such as "1, 3". In a list of up to
// nine each digit is one, so that "134" typed ahead ticks three.
func (f *Field) Numbers(typed string) []int {
	var found []int
	inside := false
	for _, r := range typed {
		if !isDigit(r) {
			inside = false
			continue
		}
		if !inside || len(f.Spec.Choices) < 10 {
			found = append(found, 0)
		}
		last := len(found) - 1
		found[last] = min(found[last]*10+int(r-'0'), 1000)
		inside = true
	}
	return found
}

// Draft is what stands in the field now.
func (f *Field) Draft() Draft {
	switch {
	case f.Spec.Kind == Several:
		return Draft{Chosen: slices.Clone(f.ordered)}
	case f.Spec.Kind == One && f.row > 0:
		return Draft{Chosen: []string{f.Spec.Choices[f.row-1].ID}}
	}
	return Draft{Text: f.Text()}
}

// Text is what is typed, "" in a list.
func (f *Field) Text() string {
	switch f.Spec.Kind {
	case OneLine:
		return f.line.Text()
	case ManyLines:
		return f.text.Value()
	}
	return ""
}

// IsList reports whether the field is a list to choose from.
func (f *Field) IsList() bool { return f.Spec.Kind == One || f.Spec.Kind == Several }

// Pick is what a number does in a list: it moves to that choice, and ticks or
// clears it where several can be taken.
func (f *Field) Pick(number int) {
	if number < 1 || number > len(f.Spec.Choices) {
		return
	}
	f.Touched, f.row = true, number
	if f.Spec.Kind == Several {
		f.row-- // there is no row for none
		f.tick()
	}
}

// Lines are the field in lines, and which of them has the focus.
func (f *Field) Lines() (lines []string, focus int) {
	switch f.Spec.Kind {
	case OneLine:
		lines = f.line.Lines(f.look, Focus, f.Spec.Width)
		return lines, len(lines) - 1
	case ManyLines:
		lines = strings.Split(strings.TrimRight(f.text.View(), " \n"), "\n")
		lead := Focus // the text has no mark of its own
		for i := range lines {
			lines[i] = lead + strings.TrimRight(lines[i], " ")
			lead = strings.Repeat(" ", ansi.StringWidth(Focus))
		}
		return lines, 0
	}
	for row := range f.rows() {
		if row == f.row {
			focus = len(lines)
		}
		lines = append(lines, f.rowLines(row)...)
	}
	return lines, focus
}

// rowLines are a row of a list: focus, mark, number and text, wrapped beside them.
func (f *Field) rowLines(row int) []string {
	lead, mark, at := "  ", "", row
	if row == f.row {
		lead = f.look.Accent.Render(Focus)
	}
	if f.Spec.Kind == One {
		at--
		mark = "( ) "
	}
	if at < 0 {
		return Hang(lead, "    "+f.Spec.None, f.Spec.Width)
	}
	choice := f.Spec.Choices[at]
	switch {
	case f.Spec.Kind == One && slices.Contains(f.Spec.Stored, choice.ID):
		mark = "(x) "
	case f.Spec.Kind == Several && slices.Contains(f.ordered, choice.ID):
		mark = f.look.Accent.Render(Ticked)
	case f.Spec.Kind == Several:
		mark = Free
	}
	return Hang(lead+mark+strconv.Itoa(at+1)+" ", choice.Text, f.Spec.Width)
}

// Chosen are the choices named in a line, by number, identifier or text, with
// commas between. What names none stays as it is, to be complained of.
func Chosen(choices []Choice, line string) []string {
	if id, ok := Named(choices, line); ok {
		return []string{id}
	}
	var chosen []string
	for part := range strings.SplitSeq(line, ",") {
		if part = strings.TrimSpace(part); part == "" {
			continue
		}
		id, _ := Named(choices, part)
		chosen = append(chosen, id)
	}
	return chosen
}

// Named is the choice with a number, identifier or text; false and the text itself if
// there is none.
func Named(choices []Choice, by string) (string, bool) {
	if n, err := strconv.Atoi(by); err == nil && n >= 1 && n <= len(choices) {
		return choices[n-1].ID, true
	}
	for _, c := range choices {
		if strings.EqualFold(c.ID, by) || strings.EqualFold(c.Text, by) {
			return c.ID, true
		}
	}
	return by, false
}
