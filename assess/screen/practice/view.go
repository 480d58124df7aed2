package practice

import (
	"fmt"
	"slices"
	"strings"

	"cutbrief/assess/sanitize"
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
		Left:  "Practice · " + sanitize.Line(s.Customer.Company()) + " · invented",
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
		keys = []key.Binding{k.note}
		for _, a := range k.acts {
			keys = append(keys, a.Binding)
		}
		keys = append(keys, k.later, k.back, k.unknown, k.list, k.scroll, k.done, k.leave)
	}
	return m.look.Keys(m.size.Width-2, keys...)
}

// viewTalking shows the question, what was said as far as there is room, and the
// line for the note.
func (m *Model) viewTalking(room int) []string {
	top, input := m.asked(room), m.typed(m.size.Main())
	body := append(append(top, ""), m.window(m.saidLines(), m.saidRoom())...)
	above := max(0, room-len(input))
	for len(body) < above {
		body = append(body, "")
	}
	return append(body[:above], input...)
}

// asked is the question, as far as there is room beside what was said.
func (m *Model) asked(room int) []string {
	const saidLeast = 3
	top := m.question(m.size.Main())
	if most := max(1, room-saidLeast-1-len(m.typed(m.size.Main()))); len(top) > most {
		top = append(top[:most-1], m.look.Dim.Render("… ^L lists all"))
	}
	return top
}

// saidLines are what was said and done, wrapped.
func (m *Model) saidLines() []string {
	var said []string
	for _, l := range m.said {
		lines := screen.Wrap(l, m.size.Main())
		if !strings.HasPrefix(l, `"`) {
			lines = screen.Each(lines, m.look.Dim.Render)
		}
		said = append(said, lines...)
	}
	return said
}

// saidRoom is how many lines of that are shown.
func (m *Model) saidRoom() int {
	room := m.size.Room(len(m.foot()))
	return max(0, room-len(m.asked(room))-1-len(m.typed(m.size.Main())))
}

// window is the last room lines, less those scrolled up by. It says where there
// is more.
func (m *Model) window(lines []string, room int) []string {
	if len(lines) <= room {
		return lines
	}
	end := max(room, len(lines)-m.up)
	shown := slices.Clone(lines[end-room : end])
	if room < 3 {
		return shown
	}
	if end > room {
		shown[0] = m.look.Dim.Render(screen.MoreAbove)
	}
	if end < len(lines) {
		shown[room-1] = m.look.Dim.Render(screen.MoreBelow)
	}
	return shown
}

// question is the step with its choices, and what is noted.
func (m *Model) question(width int) []string {
	t, q := m.talk, m.talk.Step().Question
	at, of := words.Place(t.Session.Steps(), t.Step())
	lines := []string{m.look.Dim.Render(fmt.Sprintf("%s · %d of %d", words.GroupTitle(q.Group), at, of))}
	lines = append(lines, screen.Each(screen.Wrap(t.Step().Text().String(), width), m.look.Strong.Render)...)
	a, noted := t.Session.Notes.Answer(t.Step().Asked())
	for i, o := range t.Session.Notes.Options(t.Step()) {
		lines = append(lines, screen.Hang(fmt.Sprintf("%d ", i+1), string(o.Text), width)...)
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
	lines = append(lines, m.look.Strong.Render("Capacity needed"))
	lines = append(lines, screen.Wrap(m.panel.Need, width)...)
	lines = append(lines, m.look.Strong.Render("What decides"))
	lines = append(lines, screen.Wrap(m.panel.Critical, width)...)
	for _, flag := range m.panel.Flags {
		lines = append(lines, screen.Each(screen.Hang("! ", flag, width), m.look.Bad.Render)...)
	}
	lines = append(lines, "", m.look.Strong.Render("Notes"))
	for _, step := range s.Steps() {
		if a, noted := s.Notes.Answer(step.Asked()); noted {
			lines = append(lines, screen.Cut(words.Said(step.Question, a)+" · "+step.Name().String(), width))
		}
	}
	return lines
}

// viewSheet is the list, a decision or the mark, with the line for an answer.
func (m *Model) viewSheet() []string {
	lines := strings.Split(m.sheet.View(), "\n")
	lines = append(lines, m.look.Dim.Render(screen.More(m.sheet.AtTop(), m.sheet.AtBottom())))
	if m.talk.Stage() != talk.Marked {
		lines = append(lines, m.typed(m.size.Width-2)...)
	}
	return lines
}
