package interview

import (
	"strings"

	"github.com/charmbracelet/bubbles/viewport"
	tea "github.com/charmbracelet/bubbletea"

	"cutbrief/assess"
	"cutbrief/assess/sanitize"
	"cutbrief/assess/screen/words"
	"cutbrief/rules"
	"cutbrief/rules/cost"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
)

// openResult shows what the answers come to.
func (m *Model) openResult() {
	m.state = reading
	m.wrong = nil
	m.layResult()
	m.result.GotoTop()
}

// readable is the longest line, in cells, that reads well.
const readable = 100

// layResult words the result, or how it was reached, for the window's width.
func (m *Model) layResult() {
	var word func(*message.Catalog, *assess.Visit, system.Range, *cost.PriceList, int) string
	switch m.state {
	case reading:
		word = words.Result
	case deriving:
		word = words.Why
	default:
		return
	}
	at := m.result.YOffset
	m.result = viewport.New(max(1, m.size.Width-2), m.size.Room(len(m.foot()))-1)
	m.result.SetContent(word(m.words, m.visit, m.offered, m.prices, min(m.result.Width, readable)))
	m.result.SetYOffset(at)
}

// openWhy shows how the result so far was reached. What is typed stays.
func (m *Model) openWhy() {
	m.asked, m.state = m.state, deriving
	m.layResult()
	m.result.GotoTop()
}

// closeWhy goes back to where the question why came up.
func (m *Model) closeWhy() {
	if m.asked == reading {
		m.openResult()
		return
	}
	m.state = m.asked
}

// scroll moves about in the result; its commands are none.
func (m *Model) scroll(msg tea.KeyMsg) {
	switch msg.String() {
	case "home", "g":
		m.result.GotoTop()
	case "end", "G":
		m.result.GotoBottom()
	default:
		m.result, _ = m.result.Update(msg)
	}
}

func (m *Model) makePage() tea.Cmd {
	if m.pager == nil {
		m.told = "no page can be made from here"
		return nil
	}
	m.told = "making the page …"
	m.change++
	return pageCmd(m.writer, m.pager, m.visit, m.change)
}

func (m *Model) hasPaged(msg pagedMsg) {
	m.saved = max(m.saved, msg.change)
	if msg.err != nil {
		m.told, m.fault = "", "the page was not made: "+outside(msg.err.Error())
		return
	}
	m.page, m.fault = msg.path, ""
	m.told = "the page is in " + outside(msg.path)
}

func (m *Model) openOverrule() {
	var has draft
	if o := m.visit.Overrule; o != nil {
		has.chosen = []string{string(o.Requirement)}
	}
	m.state, m.wrong = overruling, nil
	m.field = m.requirementField(has)
}

func (m *Model) requirementField(has draft) field {
	var stored []string
	if o := m.visit.Overrule; o != nil {
		stored = []string{string(o.Requirement)}
	}
	return newField(m.look, fieldSpec{
		kind: assess.FormOne, options: words.In(m.words, words.Requirements()), stored: stored, has: has,
		open: m.say("let the answers decide"), width: m.size.Main(),
	})
}

// chooseRequirement asks for the reason of a choice, or lets the answers
// decide again.
func (m *Model) chooseRequirement() tea.Cmd {
	d := m.field.draft()
	if !d.empty() {
		m.requirement = rules.Requirement(d.chosen[0])
		m.openReason()
		return nil
	}
	had := m.visit.Overrule != nil
	m.visit.Overrule = nil
	m.think()
	m.openResult()
	if !had {
		return nil
	}
	m.told = "the answers decide again"
	return m.save()
}

func (m *Model) openReason() {
	var has draft
	if o := m.visit.Overrule; o != nil && o.Requirement == m.requirement {
		has.text = sanitize.Line(o.Reason)
	}
	m.state = reasoning
	m.field = newField(m.look, fieldSpec{kind: assess.FormText, has: has, width: m.size.Main()})
}

func (m *Model) keepReason() tea.Cmd {
	reason := strings.TrimSpace(sanitize.Line(*m.field.typed))
	if reason == "" {
		m.wrong = []string{"a choice against the evidence needs its reason", "say in a few words what you saw or heard; it is kept and printed"}
		return nil
	}
	m.visit.Overrule = &rules.Overrule{Requirement: m.requirement, Reason: reason}
	m.think()
	m.openResult()
	m.told = "your choice and its reason are kept"
	return m.save()
}
