package interview

import (
	"unicode"

	"cutbrief/assess"
	"cutbrief/assess/screen"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
)

// Update takes one message. It does no I/O: saving and the page are commands.
func (m *Model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.resize(msg.Width, msg.Height)
	case savedMsg:
		return m, m.hasSaved(msg)
	case pagedMsg:
		m.hasPaged(msg)
	case leaveMsg:
		m.forced = true
		return m, m.leave()
	case tea.KeyMsg:
		return m, m.typed(msg)
	}
	return m, nil
}

// typed hands on keys one by one, so that what was typed ahead or pasted with
// line ends reaches the question it belongs to.
func (m *Model) typed(msg tea.KeyMsg) tea.Cmd {
	if screen.Held(msg) {
		return nil
	}
	if !msg.Paste {
		return m.key(asText(msg))
	}
	return m.pasted(unpaste(msg.Runes))
}

// asText marks letters that came together as text, so that words such as "up",
// "end" or "enter" are not taken for the keys of that name.
func asText(msg tea.KeyMsg) tea.KeyMsg {
	msg.Paste = msg.Type == tea.KeyRunes && len(msg.Runes) > 1
	return msg
}

// key takes one key in the present state.
func (m *Model) key(msg tea.KeyMsg) tea.Cmd {
	if key.Matches(msg, m.keys.leave) && m.state != leaving {
		return m.leave()
	}
	m.told = ""
	if key.Matches(msg, m.keys.elsewhere) && m.state != placing {
		m.elsewhere()
		return nil
	}
	switch m.state {
	case noting:
		return m.updateNoting(msg)
	case explaining:
		return m.updateExplaining(msg)
	case listing:
		return m.updateListing(msg)
	case reading:
		return m.updateReading(msg)
	case deriving:
		return m.updateDeriving(msg)
	case overruling:
		return m.updateOverruling(msg)
	case reasoning:
		return m.updateReasoning(msg)
	case leaving:
		return m.updateLeaving(msg)
	case placing:
		return m.updatePlacing(msg)
	}
	return m.updateAsking(msg)
}

func (m *Model) updateAsking(msg tea.KeyMsg) tea.Cmd {
	picked := m.picked
	m.picked = false
	switch k := m.keys; {
	case key.Matches(msg, k.accept), msg.Type == tea.KeyCtrlJ && m.field.kind != assess.FormLong:
		if picked {
			m.told = pickedAlready
			return nil
		}
		return m.onward(m.accept())
	case key.Matches(msg, k.back):
		return m.goBack()
	case key.Matches(msg, k.later):
		return m.onward(m.goLater())
	case key.Matches(msg, k.unknown):
		return m.onward(m.notKnown())
	case key.Matches(msg, k.note):
		m.openNote()
	case key.Matches(msg, k.explain):
		m.from, m.state = asking, explaining
	case key.Matches(msg, k.list):
		m.openList()
	case key.Matches(msg, k.skip):
		return m.putOff()
	case key.Matches(msg, k.finish):
		return m.toResult()
	case key.Matches(msg, k.how):
		return m.turnHow()
	case key.Matches(msg, k.why):
		m.openWhy()
	default:
		return m.letters(msg)
	}
	return nil
}

// edit hands a key to the field. A number in a list picks that option.
func (m *Model) edit(msg tea.KeyMsg) {
	m.wrong = nil
	if m.field.isList() && msg.Type == tea.KeyRunes {
		if picked := numbers(msg.Runes, len(m.field.options)); len(picked) > 0 || len(msg.Runes) > 1 {
			for _, n := range picked {
				m.field.pick(n)
			}
			return
		}
	}
	m.typeOver(msg)
	m.field.update(printable(msg))
	m.understand()
}

// typeOver takes away what is only suggested once something else is typed or
// pasted; any other key first keeps it, to be edited.
func (m *Model) typeOver(msg tea.KeyMsg) {
	_, has := m.visit.Answer(m.step.Asked())
	usual := m.suggest[m.step.Question.ID]
	if !has && !m.field.touched && msg.Type == tea.KeyRunes && usual != "" && m.field.draft().text == usual {
		m.field = m.fieldFor(draft{}, 0)
	}
}

// numbers are the numbers in what was typed, such as "1, 3". In a list of up to
// nine each digit is one, so that "134" typed ahead ticks three.
func numbers(typed []rune, options int) []int {
	var found []int
	inside := false
	for _, r := range typed {
		if r < '0' || r > '9' {
			inside = false
			continue
		}
		if !inside || options < 10 {
			found = append(found, 0)
		}
		last := len(found) - 1
		found[last] = min(found[last]*10+int(r-'0'), 1000)
		inside = true
	}
	return found
}

// printable leaves out of typed text what a terminal or a page would not show
// as itself.
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

func (m *Model) updateNoting(msg tea.KeyMsg) tea.Cmd {
	switch k := m.keys; {
	case key.Matches(msg, k.done):
		return m.keepNote()
	case key.Matches(msg, k.back):
		return m.keepNote() // nothing typed is lost
	default:
		m.field.update(printable(msg))
	}
	return nil
}

func (m *Model) updateExplaining(msg tea.KeyMsg) tea.Cmd {
	switch k := m.keys; {
	case key.Matches(msg, k.quit):
		return m.leave()
	case key.Matches(msg, k.closeIt):
		m.state = m.from
	}
	return nil
}

func (m *Model) updateListing(msg tea.KeyMsg) tea.Cmd {
	switch k := m.keys; {
	case key.Matches(msg, k.gotoItem), msg.Type == tea.KeyCtrlJ:
		return m.openRow()
	case key.Matches(msg, k.result):
		m.openResult()
	case key.Matches(msg, k.nextOpen):
		m.goOpen()
	case key.Matches(msg, k.leaveOut):
		return m.leaveOut()
	case key.Matches(msg, k.back):
		m.closeList()
	case key.Matches(msg, k.quit):
		return m.leave()
	default:
		m.moveInList(msg.String())
	}
	return nil
}

func (m *Model) updateReading(msg tea.KeyMsg) tea.Cmd {
	switch k := m.keys; {
	case key.Matches(msg, k.page):
		return m.makePage()
	case key.Matches(msg, k.change):
		m.openList()
	case key.Matches(msg, k.overrule):
		m.openOverrule()
	case key.Matches(msg, k.nextOpen):
		m.goOpen()
	case key.Matches(msg, k.derive):
		m.openWhy()
	case key.Matches(msg, k.quit):
		return m.leave()
	case key.Matches(msg, k.back):
		m.backToLast()
	default:
		m.scroll(msg)
	}
	return nil
}

func (m *Model) updateDeriving(msg tea.KeyMsg) tea.Cmd {
	switch k := m.keys; {
	case key.Matches(msg, k.quit):
		return m.leave()
	case key.Matches(msg, k.back), key.Matches(msg, k.derive):
		m.closeWhy()
	default:
		m.scroll(msg)
	}
	return nil
}

func (m *Model) updateOverruling(msg tea.KeyMsg) tea.Cmd {
	switch k := m.keys; {
	case key.Matches(msg, k.accept), msg.Type == tea.KeyCtrlJ:
		return m.chooseRequirement()
	case key.Matches(msg, k.back):
		m.openResult()
	default:
		m.edit(msg)
	}
	return nil
}

func (m *Model) updateReasoning(msg tea.KeyMsg) tea.Cmd {
	switch k := m.keys; {
	case key.Matches(msg, k.accept), msg.Type == tea.KeyCtrlJ:
		return m.keepReason()
	case key.Matches(msg, k.back):
		m.openOverrule()
	default:
		m.wrong = nil
		m.field.update(printable(msg))
	}
	return nil
}

func (m *Model) updatePlacing(msg tea.KeyMsg) tea.Cmd {
	switch k := m.keys; {
	case key.Matches(msg, k.accept), msg.Type == tea.KeyCtrlJ:
		return m.keepElsewhere()
	case key.Matches(msg, k.back):
		m.closePlace()
	default:
		m.field.update(printable(msg))
	}
	return nil
}

func (m *Model) updateLeaving(msg tea.KeyMsg) tea.Cmd {
	if m.pending > 0 {
		return nil
	}
	switch k := m.keys; {
	case key.Matches(msg, k.leave):
		return tea.Quit
	case key.Matches(msg, k.retry):
		return m.save()
	case key.Matches(msg, k.stay):
		m.reopen()
	}
	return nil
}
