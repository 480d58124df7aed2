package review

import (
	"slices"
	"strings"

	"cutbrief/assess/review"
	"cutbrief/assess/screen"
	"cutbrief/rules/message"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
)

// Commands are those of the present state.
func (m *Model) Commands() []screen.Command {
	k := m.window.Keys
	quit := screen.Command{Binding: k.Quit, Do: m.Leave}
	back := screen.Command{Binding: k.Back, Do: m.backToList}
	page := func(do func() tea.Cmd) screen.Command { return screen.Command{Binding: k.Page, Do: do} }
	group := screen.Bind("group", "b")
	switch m.state {
	case filtering:
		return []screen.Command{{Binding: screen.Bind("keep", "enter", "ctrl+j"), Do: m.keepFilter}, {Binding: screen.Bind("show all", "esc"), Do: m.dropFilter},
			{Binding: k.Move}, {Binding: k.Leave, Do: m.Leave}}
	case reading:
		return []screen.Command{{Binding: k.Scroll}, {Binding: screen.Bind("flags, brief, why, file", "tab"), Do: m.turn}, page(m.printVisit), back, quit}
	case counting:
		return []screen.Command{{Binding: k.Scroll}, {Binding: group, Do: next(&m.split, len(splits), m.count)}, page(m.printCounts), back, quit}
	case measuring:
		return []screen.Command{{Binding: k.Scroll}, back, quit}
	}
	again := func() tea.Cmd { return m.refresh(true) }
	list := []screen.Command{
		{Binding: screen.Bind("open the visit", "enter", "ctrl+j"), Do: m.openRow}, {Binding: screen.Bind("filter", "/"), Do: m.typeFilter},
		{Binding: screen.Bind("sort", "s"), Do: next(&m.sorted, len(m.sorts), again)}, quit,
		{Binding: group, Do: next(&m.group, len(groups), again)}, {Binding: k.Move}, m.filterKey("flagged", "f", "flags != ?"), m.filterKey("due", "d", "due <= today and outcome != order and outcome != no"),
		{Binding: screen.Bind("summary", "t"), Do: m.count}, {Binding: screen.Bind("timed cuts", "m"), Do: m.measure},
	}
	var esc key.Binding
	var do func() tea.Cmd
	switch {
	case m.filter != "":
		esc, do = screen.Bind("show all", "esc"), m.dropFilter
	case m.unfinished():
		esc, do = screen.Bind("stop reading", "esc"), m.stopReading
	default:
		return list
	}
	return slices.Insert(list, 2, screen.Command{Binding: esc, Do: do})
}

// next goes on to the next of so many, and does what that asks for.
func next(place *int, of int, do func() tea.Cmd) func() tea.Cmd {
	return func() tea.Cmd {
		*place = (*place + 1) % of
		return do()
	}
}

// Leave stops reading and leaves.
func (m *Model) Leave() tea.Cmd {
	m.stop()
	return tea.Quit
}

func (m *Model) stopReading() tea.Cmd {
	m.stop()
	m.stage = stopped
	return m.refresh(true)
}

func (m *Model) backToList() tea.Cmd {
	m.state, m.open, m.visit, m.raw, m.worded, m.split = listing, nil, nil, nil, "", 0
	return nil
}

// turn goes on to the next part of the visit.
func (m *Model) turn() tea.Cmd {
	m.part = (m.part + 1) % parts
	m.text.Show(m.visitLines)
	return nil
}

// filterKey is a key for one filter; pressed again it shows all.
func (m *Model) filterKey(does message.ID, key, filter string) screen.Command {
	return screen.Command{Binding: screen.Bind(does, key), Do: func() tea.Cmd {
		if m.filter == filter {
			return m.filterBy("")
		}
		return m.filterBy(filter)
	}}
}

func (m *Model) filterBy(text string) tea.Cmd {
	m.filter, m.at, m.moved = text, 0, false
	return m.refresh(true)
}

func (m *Model) typeFilter() tea.Cmd {
	m.state, m.typed = filtering, screen.NewLine(m.filter)
	return nil
}

func (m *Model) keepFilter() tea.Cmd {
	m.state = listing
	return nil
}

func (m *Model) dropFilter() tea.Cmd {
	m.state = listing
	return m.filterBy("")
}

// Typing is the filter.
func (m *Model) Typing() (string, bool) { return m.typed.Text(), m.state == filtering }

// Type moves in the list, scrolls in a text, or edits the filter, which the list
// follows.
func (m *Model) Type(msg tea.KeyMsg) tea.Cmd {
	if m.state != listing && m.state != filtering {
		m.text.Key(msg)
		return nil
	}
	isRow := func(line int) bool { return m.list.Head(line) == nil }
	moves := msg.Type != tea.KeyHome && msg.Type != tea.KeyEnd || m.state == listing
	if moves && m.at.Key(msg, len(m.list.Lines), m.pageTall(), isRow) {
		m.moved = true
		return nil
	}
	if m.state != filtering {
		return nil
	}
	m.typed.Key(msg)
	if m.typed.Text() == m.filter {
		return nil
	}
	return m.filterBy(m.typed.Text())
}

// where is the filter as the rows are held against it.
func (m *Model) where() review.Where { return review.Find(m.ours(m.filter), m.Today) }

// ours is a filter with the names of columns and what is in them as files have
// them: with German words "Stand = offen" asks for what "verdict = open" does.
func (m *Model) ours(filter string) string {
	if m.Words == nil {
		return filter
	}
	var pairs []string
	for _, c := range columns {
		f := c.field()
		pairs = append(pairs, m.window.Say(c.id), f.ID)
		for _, value := range f.Vocabulary() {
			pairs = append(pairs, f.Worded(m.Words, value), value)
		}
	}
	return replaceWords(filter, pairs)
}

// replaceWords puts the second of each pair of words in place of the first, in any
// capitals, where that is a whole word.
func replaceWords(text string, pairs []string) string {
	words := strings.Fields(text)
	for n := len(words); n > 0; n-- {
		for from := 0; from+n <= len(words); from++ {
			phrase := strings.Join(words[from:from+n], " ")
			for i := 0; i < len(pairs); i += 2 {
				if strings.EqualFold(pairs[i], phrase) {
					words = slices.Replace(words, from, from+n, pairs[i+1])
					break
				}
			}
			if from+n > len(words) {
				break
			}
		}
	}
	return strings.Join(words, " ")
}
