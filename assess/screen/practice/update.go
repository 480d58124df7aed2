package practice

import (
	"strings"
	"unicode"

	"cutbrief/assess/screen"
	"cutbrief/assess/screen/talk"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
)

// leaveMsg asks the screen to leave, from outside.
type leaveMsg struct{}

// Update takes one message.
func (m *Model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.resize(msg.Width, msg.Height)
	case leaveMsg:
		return m, tea.Quit
	case tea.KeyMsg:
		switch {
		case key.Matches(msg, m.keys.leave):
			return m, tea.Quit
		case screen.Held(msg):
			return m, nil
		}
		cmd := m.key(msg)
		if m.talk.Stage() == talk.Left {
			cmd = tea.Quit
		}
		return m, cmd
	}
	return m, nil
}

// key takes one key in the present stage.
func (m *Model) key(msg tea.KeyMsg) tea.Cmd {
	switch {
	case m.talk.Stage() == talk.Marked:
		return m.updateMarked(msg)
	case m.talk.Stage() != talk.Talking, m.listed:
		return m.updateSheet(msg)
	}
	return m.updateTalking(msg)
}

func (m *Model) updateTalking(msg tea.KeyMsg) tea.Cmd {
	for _, a := range m.keys.acts {
		if key.Matches(msg, a.Binding) {
			m.line(string(a.act))
			return nil
		}
	}
	switch k := m.keys; {
	case key.Matches(msg, k.note), msg.Type == tea.KeyCtrlJ:
		m.enter()
	case key.Matches(msg, k.scroll) && m.input.Value() == "", msg.Type == tea.KeyUp, msg.Type == tea.KeyDown:
		m.scrollSaid(msg.String())
	case key.Matches(msg, k.later):
		m.line("next")
	case key.Matches(msg, k.back):
		m.line("back")
	case key.Matches(msg, k.unknown):
		m.line("not known")
	case key.Matches(msg, k.done):
		m.line("done")
	case key.Matches(msg, k.list):
		m.listed = true
		m.open(strings.TrimSpace(m.talk.Line("list")))
	default:
		m.edit(msg)
	}
	return nil
}

// enter notes what is typed; with nothing typed it asks what was not asked yet.
func (m *Model) enter() {
	text := strings.TrimSpace(m.input.Value())
	m.input.Reset()
	switch {
	case text != "":
		m.line(text)
	case !m.talk.Session.Asked(m.talk.Step().Asked()):
		m.line("ask")
	default:
		m.said = append(m.said, "Type what you understood, follow up, or go on with Tab.")
	}
}

// edit hands a key to the input, without what a terminal would not show as
// itself.
func (m *Model) edit(msg tea.KeyMsg) {
	if msg.Type == tea.KeyRunes {
		var kept []rune
		for _, r := range msg.Runes {
			if !unicode.IsControl(r) && !unicode.Is(unicode.Cf, r) {
				kept = append(kept, r)
			}
		}
		msg.Runes = kept
	}
	m.input, _ = m.input.Update(msg) // its command blinks a cursor that is not drawn
	if m.talk.Stage() != talk.Talking || m.listed {
		m.lay()
	}
}

// updateSheet takes a key at the list and at the three decisions.
func (m *Model) updateSheet(msg tea.KeyMsg) tea.Cmd {
	switch k := m.keys; {
	case key.Matches(msg, k.accept), msg.Type == tea.KeyCtrlJ:
		m.take()
	case key.Matches(msg, k.closeIt):
		m.input.Reset()
		if m.listed {
			m.listed = false
			return nil
		}
		m.line("back")
	case key.Matches(msg, k.scroll):
		m.scroll(msg)
	default:
		m.edit(msg)
	}
	return nil
}

// take takes the number typed.
func (m *Model) take() {
	text := strings.TrimSpace(m.input.Value())
	m.input.Reset()
	if text == "" {
		return
	}
	if m.listed {
		m.listed = false
		m.line("go " + strings.TrimPrefix(text, "go "))
		return
	}
	stage, shown := m.talk.Stage(), m.shown
	m.line(text)
	if m.talk.Stage() == stage { // not taken: the question stays, with what is wrong
		first, _, _ := strings.Cut(shown, "\n\n! ")
		m.open(first + "\n\n! " + m.shown)
		m.sheet.GotoBottom()
	}
}

// updateMarked takes a key at the mark.
func (m *Model) updateMarked(msg tea.KeyMsg) tea.Cmd {
	switch k := m.keys; {
	case key.Matches(msg, k.why):
		m.line("why")
	case key.Matches(msg, k.back):
		m.line("page")
	case key.Matches(msg, k.quit):
		return tea.Quit
	default:
		m.scroll(msg)
	}
	return nil
}

// scrollSaid moves about in what was said.
func (m *Model) scrollSaid(pressed string) {
	lines, room := len(m.saidLines()), m.saidRoom()
	by := map[string]int{"up": 1, "down": -1, "pgup": room - 1, "pgdown": 1 - room, "home": lines, "end": -lines}[pressed]
	m.up = max(0, min(m.up+by, lines-room))
}

// scroll moves about in the sheet; its commands are none.
func (m *Model) scroll(msg tea.KeyMsg) {
	switch msg.Type {
	case tea.KeyHome:
		m.sheet.GotoTop()
	case tea.KeyEnd:
		m.sheet.GotoBottom()
	default:
		m.sheet, _ = m.sheet.Update(msg)
	}
}
