package interview

import (
	"fmt"
	"slices"
	"strings"

	"cutbrief/assess/screen/words"

	tea "github.com/charmbracelet/bubbletea"
)

// unpaste takes pasted text apart into lines.
func unpaste(pasted []rune) []string {
	text := strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(string(pasted))
	return strings.Split(text, "\n")
}

// pasted hands on pasted lines, each but the last with an Enter. What follows a
// line that is not taken waits until that one is put right.
func (m *Model) pasted(lines []string) tea.Cmd {
	var cmds []tea.Cmd
	for i, line := range lines {
		at := m.step
		cmds = append(cmds, m.line(line))
		if i == len(lines)-1 {
			break
		}
		if len(m.wrong) == 0 && m.step == at { // "=" goes on by itself
			m.picked = false
			cmds = append(cmds, m.key(tea.KeyMsg{Type: tea.KeyCtrlJ}))
		}
		if len(m.wrong) > 0 {
			m.paste = slices.DeleteFunc(lines[i+1:], func(s string) bool { return strings.TrimSpace(s) == "" })
			break
		}
	}
	return tea.Batch(cmds...)
}

// line puts one pasted line where it belongs: into a list by number or text, else
// as typed.
func (m *Model) line(text string) tea.Cmd {
	if text == "" {
		return nil
	}
	if m.state != asking || !m.field.isList() {
		return m.key(asText(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text)}))
	}
	chosen := m.choices(text)
	if _, err := m.visit.Choose(m.step, chosen); err != nil {
		m.wrong = words.Complained(err)
		return nil
	}
	m.wrong = nil
	m.field = m.fieldFor(draft{chosen: chosen}, 0)
	return nil
}

// choices are the options that a line names: by number, as digits together where
// several can be chosen, or by text.
func (m *Model) choices(text string) []string {
	options := words.In(m.words, m.visit.Options(m.step))
	if chosen := words.Choices(options, text); len(chosen) != 1 || m.field.hovered != nil {
		return chosen
	}
	var chosen []string
	for _, n := range numbers([]rune(text), len(options)) {
		if n >= 1 && n <= len(options) {
			chosen = append(chosen, options[n-1].ID)
		}
	}
	if len(chosen) == 0 {
		return words.Choices(options, text)
	}
	return chosen
}

// onward goes on with pasted lines that waited, once the question they waited for
// is behind.
func (m *Model) onward(done tea.Cmd) tea.Cmd {
	if len(m.wrong) > 0 || len(m.paste) == 0 {
		return done
	}
	lines := append(m.paste, "")
	m.paste = nil
	return tea.Batch(done, m.pasted(lines))
}

// dropPaste gives up the lines that wait, as the rep goes elsewhere, and says so.
func (m *Model) dropPaste() {
	if len(m.paste) > 0 {
		m.told = waitingLines(m.paste) + " not taken: " + outside(strings.Join(m.paste, " / "))
		m.paste = nil
	}
}

// waitingLines counts pasted lines.
func waitingLines(lines []string) string {
	if len(lines) == 1 {
		return "1 more pasted line"
	}
	return fmt.Sprintf("%d more pasted lines", len(lines))
}
