package screen

import (
	"slices"
	"strconv"
	"strings"
	"unicode"

	"cutbrief/assess"
	"cutbrief/rules/message"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/huh"
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

// Field is a form of one question. The form shows and edits; when to go on and
// where to is decided outside.
type Field struct {
	Spec    FieldSpec // what it was built from
	Touched bool      // a key has reached it

	form    *huh.Form
	typed   *string
	hovered *string
	ticked  *[]string
	order   []string // ticked, in the order of ticking
	several *huh.MultiSelect[string]
}

// NewField builds a field with the focus on it.
func NewField(look Look, s FieldSpec) Field {
	f := Field{Spec: s}
	width := s.Width
	if s.Kind == ManyLines {
		width -= ansi.StringWidth(Focus)
	}
	tall := longTall + 3*len(s.Choices) + 1 // more lines than the field can need
	f.form = huh.NewForm(huh.NewGroup(f.input())).WithTheme(look.Theme()).WithKeyMap(fieldKeys()).
		WithShowHelp(false).WithShowErrors(false).WithWidth(width).WithHeight(tall)
	f.form.Init() // focuses; its commands only blink the cursor
	if s.Row > 0 {
		f.moveTo(s.Row)
	}
	return f
}

// Resized is the field with what stands in it, for another width.
func (f *Field) Resized(look Look, width int) Field {
	s := f.Spec
	s.Has, s.Row, s.Width = f.Draft(), f.row(), width
	resized := NewField(look, s)
	resized.Touched = f.Touched
	return resized
}

// input builds the form's only input and binds it to the draft.
func (f *Field) input() huh.Field {
	switch f.Spec.Kind {
	case One:
		return f.selectOne()
	case Several:
		return f.selectSeveral()
	case ManyLines:
		f.typed = &f.Spec.Has.Text
		return huh.NewText().Lines(longTall).CharLimit(longMost).Value(f.typed)
	}
	f.typed = &f.Spec.Has.Text
	return huh.NewInput().Prompt(Focus).CharLimit(lineMost).Value(f.typed)
}

// selectOne is a list of which one is chosen. Its first row stands for none, so
// that going through never makes an answer up.
func (f *Field) selectOne() huh.Field {
	hovered := ""
	if len(f.Spec.Has.Chosen) > 0 {
		hovered = f.Spec.Has.Chosen[0]
	}
	f.hovered = &hovered
	rows := []huh.Option[string]{huh.NewOption("    "+f.Spec.None, "")}
	for i, c := range f.Spec.Choices {
		mark := "( ) "
		if slices.Contains(f.Spec.Stored, c.ID) {
			mark = "(x) "
		}
		rows = append(rows, huh.NewOption(numbered(mark, i, c.Text, f.Spec.Width-2), c.ID))
	}
	return huh.NewSelect[string]().Options(rows...).Value(f.hovered)
}

func (f *Field) selectSeveral() huh.Field {
	ticked := slices.Clone(f.Spec.Has.Chosen)
	f.ticked, f.order = &ticked, slices.Clone(f.Spec.Has.Chosen)
	var rows []huh.Option[string]
	for i, c := range f.Spec.Choices {
		rows = append(rows, huh.NewOption(numbered("", i, c.Text, f.Spec.Width-6), c.ID))
	}
	f.several = huh.NewMultiSelect[string]().Options(rows...).Filterable(false).Value(f.ticked)
	return f.several
}

// numbered is a choice's row: mark, number, text, wrapped beside them.
func numbered(mark string, i int, text string, width int) string {
	return strings.Join(Hang(mark+strconv.Itoa(i+1)+" ", text, width), "\n")
}

// fieldKeys are the form's own keys: moving and editing. All others are the
// dialog's.
func fieldKeys() *huh.KeyMap {
	k := huh.NewDefaultKeyMap()
	k.Select.Filter.SetEnabled(false)
	k.MultiSelect.Filter.SetEnabled(false)
	k.Text.NewLine = key.NewBinding(key.WithKeys("ctrl+j", "alt+enter"))
	k.Text.Editor.SetEnabled(false)
	return k
}

// Key hands a key to the form, without what a terminal would not show as itself.
// A number in a list takes its choice. The form's commands are dropped: they blink
// the cursor and move between fields, of which there is one.
func (f *Field) Key(msg tea.KeyMsg) {
	if f.IsList() && msg.Type == tea.KeyRunes {
		if picked := f.Numbers(string(msg.Runes)); len(picked) > 0 || len(msg.Runes) > 1 {
			for _, n := range picked {
				f.Pick(n)
			}
			return
		}
	}
	f.update(printable(msg))
}

func (f *Field) update(msg tea.Msg) {
	f.Touched = true
	model, _ := f.form.Update(msg)
	if form, ok := model.(*huh.Form); ok {
		f.form = form
	}
	if f.ticked != nil {
		f.order = reorder(f.order, *f.ticked)
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
	case f.ticked != nil:
		return Draft{Chosen: slices.Clone(f.order)}
	case f.hovered != nil && *f.hovered != "":
		return Draft{Chosen: []string{*f.hovered}}
	}
	return Draft{Text: f.Text()}
}

// Text is what is typed, "" in a list.
func (f *Field) Text() string {
	if f.typed == nil {
		return ""
	}
	return *f.typed
}

// IsList reports whether the field is a list to choose from.
func (f *Field) IsList() bool { return f.Spec.Kind == One || f.Spec.Kind == Several }

// Pick is what a number does in a list: it moves to that choice, and ticks or
// clears it where several can be taken.
func (f *Field) Pick(number int) {
	if number < 1 || number > len(f.Spec.Choices) {
		return
	}
	if f.ticked == nil {
		f.moveTo(number) // below the row for none
		return
	}
	f.moveTo(number - 1)
	f.update(tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{' '}})
}

// moveTo puts the focus on a row of a list, counted from 0.
func (f *Field) moveTo(row int) {
	f.update(tea.KeyMsg{Type: tea.KeyHome})
	for range row {
		f.update(tea.KeyMsg{Type: tea.KeyDown})
	}
}

// row is the row of a list of several that has the focus.
func (f *Field) row() int {
	if f.several == nil {
		return 0
	}
	id, _ := f.several.Hovered()
	return max(0, slices.IndexFunc(f.Spec.Choices, func(c Choice) bool { return c.ID == id }))
}

// lead marks the focus on a text of several lines, which has no mark of its own.
func (f *Field) lead(line int) string {
	switch {
	case f.Spec.Kind != ManyLines:
		return ""
	case line == 0:
		return Focus
	}
	return strings.Repeat(" ", ansi.StringWidth(Focus))
}

// Lines are the field in lines, and which of them has the focus.
func (f *Field) Lines() (lines []string, focus int) {
	lines = strings.Split(strings.TrimRight(f.form.View(), " \n"), "\n")
	for i := range lines {
		lines[i] = f.lead(i) + strings.TrimRight(lines[i], " ")
		if strings.HasPrefix(ansi.Strip(lines[i]), Focus) {
			focus = i
		}
	}
	return lines, focus
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
