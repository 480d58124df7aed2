package interview

import (
	"slices"

	"cutbrief/assess"
	"cutbrief/assess/screen"
	"cutbrief/rules/message"

	tea "github.com/charmbracelet/bubbletea"
)

// Commands are what can be done in the present state, what matters most first.
func (m *Model) Commands() []screen.Command {
	k := m.Keys
	leave := screen.Command{Binding: k.Quit, Do: m.leave}
	var list []screen.Command
	switch m.state {
	case asking:
		list = m.askingCommands()
	case noting:
		list = []screen.Command{{Binding: screen.Bind("keep", "enter"), Do: m.keepNote}, newLine,
			{Binding: k.Back, Do: m.keepNote}, leave} // nothing typed is lost
	case listing:
		list = []screen.Command{{Binding: k.Move}, {Binding: k.Open, Do: m.openRow}, {Binding: k.Result, Do: m.toResult},
			{Binding: k.Back, Do: m.closeList}, leave, {Binding: k.NextOpen, Do: m.goOpen}, {Binding: screen.Bind("skip the group", "x"), Do: m.skipRow},
			{Binding: k.Tell, Do: m.openSentence}}
	case reading:
		list = []screen.Command{{Binding: k.Page, Do: m.makePage}, {Binding: k.Why, Do: m.openWhy}, {Binding: k.List, Do: m.toList},
			{Binding: k.Back, Do: m.backToLast}, leave, {Binding: screen.Bind("what if", "i"), Do: m.openSupposing}, {Binding: k.Scroll},
			{Binding: screen.Bind("choose what decides", "y"), Do: m.openChoosing}, {Binding: k.Tell, Do: m.openSentence}}
		if m.open > 0 {
			list = append(list, screen.Command{Binding: k.NextOpen, Do: m.goOpen})
		}
	case deriving:
		list = []screen.Command{{Binding: k.Scroll}, {Binding: k.Back, Do: m.closeWhy}, leave, {Binding: k.Why, Do: m.closeWhy}}
	case supposing:
		list = []screen.Command{{Binding: screen.Bind("less, more", "left", "right")}, {Binding: k.Move}, {Binding: k.Accept, Do: m.keepSupposed},
			{Binding: k.Back, Do: m.backToResult}, leave}
	case choosing:
		list = []screen.Command{{Binding: k.Accept, Do: m.chooseRequirement}, {Binding: k.Move}, {Binding: k.Back, Do: m.backToResult}, leave}
	case reasoning:
		list = []screen.Command{{Binding: k.Accept, Do: m.keepReason}, {Binding: k.Back, Do: m.openChoosing}, leave}
	case placing:
		list = []screen.Command{{Binding: k.Accept, Do: m.keepElsewhere}, {Binding: k.Back, Do: m.closePlace}, leave}
	case telling:
		list = []screen.Command{{Binding: k.Accept, Do: m.hear}, {Binding: k.Back, Do: m.closeSentence}, leave}
	case offering:
		list = []screen.Command{{Binding: k.Accept, Do: m.takeFound}, {Binding: screen.Bind("refuse", "x"), Do: m.refuseFound}, {Binding: k.Back, Do: m.closeSentence}, leave}
	case leaving:
		if m.pending > 0 {
			return nil
		}
		list = []screen.Command{{Binding: screen.Bind("try again", "enter"), Do: m.save}, {Binding: screen.Bind("back to the questions", "esc"), Do: m.reopen},
			{Binding: screen.Bind("leave without saving", "ctrl+c"), Do: quit}}
	}
	place := screen.Command{Binding: screen.Bind("where to save", "ctrl+s"), Do: m.openPlace}
	if m.offersPlace() {
		return slices.Insert(list, 1, place)
	}
	if m.state == placing {
		return list
	}
	return append(list, screen.Command{Binding: screen.Bind("where to save", "ctrl+s"), Do: m.openPlace})
}

func quit() tea.Cmd { return tea.Quit }

// newLine is taken by the field.
var newLine = screen.Command{Binding: screen.Bind("new line", "ctrl+j", "alt+enter")}

// askingCommands are those at a question.
func (m *Model) askingCommands() []screen.Command {
	k := m.Keys
	accept := k.Accept
	if m.step.Question.Form == assess.FormLong {
		accept = screen.Bind("accept", "enter")
	}
	list := []screen.Command{
		{Binding: accept, Do: m.accept}, {Binding: k.Later, Do: m.goLater}, {Binding: k.NotKnown, Do: m.notKnown},
		{Binding: k.Back, Do: m.goBack}, {Binding: k.Quit, Do: m.leave}, {Binding: k.Note, Do: m.openNote},
		{Binding: k.List, Do: m.toList}, {Binding: k.Result, Do: m.toResult}, {Binding: k.Why, Do: m.openWhy},
		{Binding: k.Known, Do: m.turnKnown}, {Binding: k.PutOff, Do: func() tea.Cmd { return m.putOff("Esc") }}, {Binding: k.Tell, Do: m.openSentence},
	}
	if m.step.Question.Form == assess.FormLong {
		list = append(list, newLine)
	}
	return list
}

func (m *Model) toList() tea.Cmd {
	m.openList()
	return nil
}

func (m *Model) closeWhy() tea.Cmd {
	m.close()
	return nil
}

func (m *Model) backToResult() tea.Cmd {
	m.openResult()
	return nil
}

// Typing is the text typed at a question, in a note, a reason or a place.
func (m *Model) Typing() (string, bool) {
	switch m.state {
	case asking, noting, reasoning, placing, telling:
		return m.field.Text(), !m.field.IsList()
	}
	return "", false
}

// Type takes a key that is no command's.
func (m *Model) Type(msg tea.KeyMsg) tea.Cmd {
	switch m.state {
	case asking:
		if msg.Paste && slices.ContainsFunc(msg.Runes, func(r rune) bool { return r == '\n' || r == '\r' }) {
			return m.pasted(unpaste(msg.Runes))
		}
		return m.letters(msg)
	case listing:
		m.at.Key(msg, len(m.rows), 10, func(i int) bool { return m.rows[i].opens() })
	case reading, deriving:
		m.text.Key(msg)
	case supposing:
		m.suppose(msg)
	case noting, choosing, reasoning, placing, telling:
		m.wrong = nil
		for i, line := range unpaste(msg.Runes) {
			if i > 0 {
				m.field.Key(tea.KeyMsg{Type: tea.KeyCtrlJ}) // a new line where there may be some
			}
			msg.Runes = []rune(line)
			m.field.Key(msg)
		}
	}
	return nil
}

// letters hands typed text to the question: the number of one option takes it at
// once, "=" takes what is offered, and all else is edited.
func (m *Model) letters(msg tea.KeyMsg) tea.Cmd {
	typed := msg.Type == tea.KeyRunes && len(msg.Runes) > 0
	switch {
	case typed && m.field.IsList() && msg.Paste && !isDigit(msg.Runes[0]):
		return m.line(string(msg.Runes))
	case typed && m.field.Spec.Kind == screen.One && len(m.field.Spec.Choices) <= oneDigit && isDigit(msg.Runes[0]):
		return m.choose(msg)
	}
	return m.typeAnswer(msg)
}

// oneDigit is the longest list of which a single digit names every option.
const oneDigit = 9

func isDigit(r rune) bool { return r >= '0' && r <= '9' }

// typeAnswer edits what is typed as the answer. What is only suggested makes way
// for what is typed; any other key first keeps it, to be edited.
func (m *Model) typeAnswer(msg tea.KeyMsg) tea.Cmd {
	if m.step.Question.Form == assess.FormQuantity && string(msg.Runes) == "=" {
		return m.onward(m.takeOffer())
	}
	m.wrong, m.picked = nil, false
	_, has := m.answer()
	usual := m.Suggest[m.step.Question.ID]
	if !has && !m.field.Touched && msg.Type == tea.KeyRunes && usual != "" && m.field.Text() == usual {
		m.field = m.fieldFor(screen.Draft{})
	}
	m.field.Key(msg)
	m.understand()
	return nil
}

// choose takes the option of a number and goes on, which Esc undoes. Digits typed
// ahead behind it are for the next question.
func (m *Model) choose(msg tea.KeyMsg) tea.Cmd {
	number, asked, choices := int(msg.Runes[0]-'0'), m.step, m.field.Spec.Choices
	if number < 1 || number > len(choices) {
		m.wrong = []message.Message{message.New("there is no number {1} here", message.Count(number)), message.New("choose a number from 1 to {1}", message.Count(len(choices)))}
		return nil
	}
	m.wrong, m.picked = nil, false
	m.field.Pick(number)
	save := m.accept()
	if len(m.wrong) > 0 {
		return save
	}
	m.picked = true
	m.Told = message.New("{1}: {2} (Esc goes back)", asked.Name(), message.Name(choices[number-1].Text))
	msg.Runes, msg.Paste = msg.Runes[1:], false
	if len(msg.Runes) == 0 {
		return save
	}
	return tea.Batch(save, m.Press(screen.AsText(msg)))
}

// Receive takes the outcome of a save, a page made, and the window's size.
func (m *Model) Receive(msg tea.Msg) tea.Cmd {
	switch msg := msg.(type) {
	case savedMsg:
		return m.hasSaved(msg)
	case pagedMsg:
		m.hasPaged(msg)
	case tea.WindowSizeMsg:
		m.resize()
	}
	return nil
}

// resize fits the field to the window; what is typed stays.
func (m *Model) resize() { m.field = m.field.Resized(m.Look, m.Size.Main()) }
