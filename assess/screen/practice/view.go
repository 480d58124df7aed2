package practice

import (
	"fmt"
	"strings"

	"cutbrief/assess/gate"
	"cutbrief/assess/screen"
	"cutbrief/assess/screen/talk"
	"cutbrief/assess/screen/words"

	"github.com/charmbracelet/bubbles/key"
)

// View draws the present stage. It is a function of the model alone.
func (m *Model) View() string {
	s := m.talk.Session
	f := screen.Frame{
		Size: m.size, Look: m.look, Foot: m.foot(), Side: m.side(),
		Left:  "Practice · " + gate.Line(s.Customer.Company()) + " · invented",
		Right: fmt.Sprintf("%d of %d min left", s.Left(), s.Customer.Minutes),
	}
	room := m.size.Room(len(f.Foot))
	if m.talk.Stage() != talk.Talking || m.listed {
		f.Wide = true
		f.Body = m.viewSheet()
		return f.Render()
	}
	f.Body = m.viewTalking(room)
	return f.Render()
}

// foot lists the keys of the present stage.
func (m *Model) foot() []string {
	k := m.keys
	var keys []key.Binding
	switch {
	case m.talk.Stage() == talk.Marked:
		keys = []key.Binding{k.scroll, k.why, k.back, k.quit}
	case m.talk.Stage() != talk.Talking || m.listed:
		keys = []key.Binding{k.accept, k.scroll, k.closeIt, k.leave}
	default:
		keys = []key.Binding{k.accept}
		for _, a := range k.acts {
			keys = append(keys, a.Binding)
		}
		keys = append(keys, k.later, k.back, k.unknown, k.list, k.done, k.leave)
	}
	return m.look.Keys(m.size.Width-2, keys...)
}

// viewTalking shows the question, what was said as far as there is room, and the
// line for the note.
func (m *Model) viewTalking(room int) []string {
	width := m.size.Main()
	top := m.question(width)
	const saidLeast, inputLines = 3, 2
	if most := max(1, room-saidLeast-inputLines); len(top) > most {
		top = append(top[:most-1], m.look.Dim.Render("… ^L lists all"))
	}
	var said []string
	for _, l := range m.said {
		lines := screen.Wrap(l, width)
		if !strings.HasPrefix(l, `"`) {
			lines = screen.Each(lines, m.look.Dim.Render)
		}
		said = append(said, lines...)
	}
	left := max(0, room-len(top)-inputLines)
	said = said[max(0, len(said)-left):]
	body := append(top, "")
	body = append(body, said...)
	for len(body) < room-1 {
		body = append(body, "")
	}
	return append(body[:max(0, room-1)], m.input.View())
}

// question is the step with its choices, and what is noted.
func (m *Model) question(width int) []string {
	t, q := m.talk, m.talk.Step().Question
	at, of := words.Place(t.Session.Steps(), t.Step())
	lines := []string{m.look.Dim.Render(fmt.Sprintf("%s · %d of %d", words.GroupTitle(q.Group), at, of))}
	lines = append(lines, screen.Each(screen.Wrap(t.Step().Text(), width), m.look.Strong.Render)...)
	a, noted := t.Session.Notes.Answer(t.Step().Asked())
	for i, o := range t.Session.Notes.Options(t.Step()) {
		lines = append(lines, screen.Hang(fmt.Sprintf("%d ", i+1), o.Text, width)...)
	}
	if noted {
		return append(lines, screen.Each(screen.Hang(screen.Ticked, words.Said(q, a), width), m.look.Good.Render)...)
	}
	return append(lines, screen.Free+"nothing noted yet")
}

// side is the time, what the notes mean so far, and the notes.
func (m *Model) side() []string {
	width := m.size.Side()
	if width == 0 {
		return nil
	}
	s := m.talk.Session
	const marks = 20
	full := (s.Left()*marks + s.Customer.Minutes - 1) / s.Customer.Minutes
	lines := []string{m.look.Strong.Render("Time left"), strings.Repeat("#", full) + strings.Repeat(".", marks-full), ""}
	lines = append(lines, screen.Hang("Needed: ", m.panel.Need, width)...)
	lines = append(lines, screen.Hang("Decides: ", m.panel.Critical, width)...)
	for _, flag := range m.panel.Flags {
		lines = append(lines, screen.Each(screen.Hang("! ", flag, width), m.look.Bad.Render)...)
	}
	lines = append(lines, "", m.look.Strong.Render("Notes"))
	for _, step := range s.Steps() {
		if a, noted := s.Notes.Answer(step.Asked()); noted {
			lines = append(lines, screen.Cut(step.Name()+": "+words.Said(step.Question, a), width))
		}
	}
	return lines
}

// viewSheet is the list, a decision or the mark, with the line for an answer.
func (m *Model) viewSheet() []string {
	lines := strings.Split(m.sheet.View(), "\n")
	more := ""
	if !m.sheet.AtBottom() {
		more = m.look.Dim.Render("more below ↓")
	}
	lines = append(lines, more)
	if m.talk.Stage() != talk.Marked {
		lines = append(lines, m.input.View())
	}
	return lines
}
