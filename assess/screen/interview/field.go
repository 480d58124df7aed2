package interview

import (
	"slices"
	"strconv"
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/screen"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/huh"
	"github.com/charmbracelet/x/ansi"
)

const (
	lineMost = 200  // runes of a one-line answer
	longMost = 4000 // runes of an answer of several lines, or of a note
	longTall = 5    // lines of it shown
)

// draft is what stands in a field: text, or the options chosen.
type draft struct {
	text   string
	chosen []string
}

func (d draft) empty() bool { return strings.TrimSpace(d.text) == "" && len(d.chosen) == 0 }

func (d draft) equal(e draft) bool {
	return strings.TrimSpace(d.text) == strings.TrimSpace(e.text) && slices.Equal(d.chosen, e.chosen)
}

// field is a form of one question. The form shows and edits; when to go on and
// where to is decided outside.
type field struct {
	kind    assess.Form
	form    *huh.Form
	typed   *string
	hovered *string
	ticked  *[]string
	order   []string // ticked, in the order of ticking
	several *huh.MultiSelect[string]
	options []assess.Option
	touched bool // a key has reached it
}

// fieldSpec is what a field is built from.
type fieldSpec struct {
	kind    assess.Form
	options []assess.Option
	stored  []string // options stored as the answer, marked as such
	open    string   // words of the choice that leaves the question open
	has     draft
	row     int // that has the focus in a list of several
	width   int
}

func newField(look screen.Look, s fieldSpec) field {
	f := field{kind: s.kind, options: s.options}
	if s.kind == assess.FormLong {
		s.width -= ansi.StringWidth(screen.Focus)
	}
	input := f.input(s)
	f.form = huh.NewForm(huh.NewGroup(input)).WithTheme(look.Theme()).WithKeyMap(fieldKeys()).
		WithShowHelp(false).WithShowErrors(false).WithWidth(s.width).WithHeight(f.tall())
	f.form.Init() // focuses; its commands only blink the cursor
	if s.row > 0 {
		f.moveTo(s.row)
	}
	return f
}

// input builds the form's only input and binds it to the draft.
func (f *field) input(s fieldSpec) huh.Field {
	switch s.kind {
	case assess.FormOne:
		return f.selectOne(s)
	case assess.FormSeveral:
		return f.selectSeveral(s)
	case assess.FormLong:
		f.typed = &s.has.text
		return huh.NewText().Lines(longTall).CharLimit(longMost).Value(f.typed)
	}
	f.typed = &s.has.text
	return huh.NewInput().Prompt(screen.Focus).CharLimit(lineMost).Value(f.typed)
}

// selectOne is a list of which one is chosen. Its first row stands for "no
// answer", so that going through never makes one up.
func (f *field) selectOne(s fieldSpec) huh.Field {
	hovered := ""
	if len(s.has.chosen) > 0 {
		hovered = s.has.chosen[0]
	}
	f.hovered = &hovered
	rows := []huh.Option[string]{huh.NewOption("    "+s.open, "")}
	for i, o := range s.options {
		mark := "( ) "
		if slices.Contains(s.stored, o.ID) {
			mark = "(x) "
		}
		rows = append(rows, huh.NewOption(label(mark, i, string(o.Text), s.width-2), o.ID))
	}
	return huh.NewSelect[string]().Options(rows...).Value(f.hovered)
}

func (f *field) selectSeveral(s fieldSpec) huh.Field {
	ticked := slices.Clone(s.has.chosen)
	f.ticked, f.order = &ticked, slices.Clone(s.has.chosen)
	var rows []huh.Option[string]
	for i, o := range s.options {
		rows = append(rows, huh.NewOption(label("", i, string(o.Text), s.width-6), o.ID))
	}
	f.several = huh.NewMultiSelect[string]().Options(rows...).Filterable(false).Value(f.ticked)
	return f.several
}

// label is an option's row: mark, number, text, wrapped beside them.
func label(mark string, i int, text string, width int) string {
	return strings.Join(screen.Hang(mark+strconv.Itoa(i+1)+" ", text, width), "\n")
}

// fieldKeys are the form's own keys: moving and editing. All others are the
// screen's.
func fieldKeys() *huh.KeyMap {
	k := huh.NewDefaultKeyMap()
	k.Select.Filter.SetEnabled(false)
	k.MultiSelect.Filter.SetEnabled(false)
	k.Text.NewLine = key.NewBinding(key.WithKeys("ctrl+j", "alt+enter"))
	k.Text.Editor.SetEnabled(false)
	return k
}

// tall is more lines than the field can need.
func (f *field) tall() int { return longTall + 3*len(f.options) + 1 }

// update hands a key to the form. The form's commands are dropped: they blink
// the cursor and move between fields, of which there is one.
func (f *field) update(msg tea.Msg) {
	f.touched = true
	if form, ok := first(f.form.Update(msg)).(*huh.Form); ok {
		f.form = form
	}
	if f.ticked != nil {
		f.order = reorder(f.order, *f.ticked)
	}
}

func first(m tea.Model, _ tea.Cmd) tea.Model { return m }

// reorder keeps the order of ticking: what stays, then what is new.
func reorder(order, ticked []string) []string {
	kept := slices.DeleteFunc(slices.Clone(order), func(id string) bool { return !slices.Contains(ticked, id) })
	for _, id := range ticked {
		if !slices.Contains(kept, id) {
			kept = append(kept, id)
		}
	}
	return kept
}

// draft is what stands in the field now.
func (f *field) draft() draft {
	switch {
	case f.ticked != nil:
		return draft{chosen: slices.Clone(f.order)}
	case f.hovered != nil && *f.hovered != "":
		return draft{chosen: []string{*f.hovered}}
	case f.typed != nil:
		return draft{text: *f.typed}
	}
	return draft{}
}

// isList reports whether the field is a list to choose from.
func (f *field) isList() bool { return f.hovered != nil || f.ticked != nil }

// pick is what a number does in a list: it moves to that option, and ticks or
// clears it where several can be chosen.
func (f *field) pick(number int) {
	if number < 1 || number > len(f.options) {
		return
	}
	if f.ticked == nil {
		f.moveTo(number) // below the row for no answer
		return
	}
	f.moveTo(number - 1)
	f.update(tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{' '}})
}

// moveTo puts the focus on a row of a list, counted from 0.
func (f *field) moveTo(row int) {
	f.update(tea.KeyMsg{Type: tea.KeyHome})
	for range row {
		f.update(tea.KeyMsg{Type: tea.KeyDown})
	}
}

// row is the row of a list of several that has the focus.
func (f *field) row() int {
	if f.several == nil {
		return 0
	}
	id, _ := f.several.Hovered()
	return max(0, slices.IndexFunc(f.options, func(o assess.Option) bool { return o.ID == id }))
}

// lead marks the focus on a text of several lines, which has no mark of its own.
func (f *field) lead(line int) string {
	switch {
	case f.kind != assess.FormLong:
		return ""
	case line == 0:
		return screen.Focus
	}
	return strings.Repeat(" ", ansi.StringWidth(screen.Focus))
}

// view is the field in lines, and the line that has the focus.
func (f *field) view() (lines []string, focus int) {
	lines = strings.Split(strings.TrimRight(f.form.View(), " \n"), "\n")
	for i := range lines {
		lines[i] = f.lead(i) + strings.TrimRight(lines[i], " ")
		if strings.HasPrefix(ansi.Strip(lines[i]), screen.Focus) {
			focus = i
		}
	}
	return lines, focus
}
