package interview

import (
	"cutbrief/assess/screen"
	"cutbrief/assess/screen/words"
)

// turn says why a question comes when it does, where that is not plain.
func (m *Model) turn() string {
	switch {
	case m.visit.Idle(m.step, &m.panel.Result):
		return " · no longer decides"
	case m.course.Last():
		return " · put off before"
	}
	return ""
}

// offerLines say what one key takes.
func (m *Model) offerLines() []string {
	o, offered := m.visit.Offered(m.step)
	if !offered {
		return nil
	}
	return screen.Each(m.hang(m.say("= takes "), words.SaidSo(m.step.Question, o.Text())+": "+string(o.Why), m.size.Main()), m.look.Dim.Render)
}

// settledLines say that the interview may end here.
func (m *Model) settledLines() []string {
	if m.open == 0 || !m.visit.Settled(&m.panel.Result) {
		return nil
	}
	return screen.Each(m.wrap(words.Settled+": ^T shows the result", m.size.Main()), m.look.Good.Render)
}

// pasteLines say that pasted lines wait for this question.
func (m *Model) pasteLines() []string {
	if len(m.paste) == 0 {
		return nil
	}
	return m.wrap(waitingLines(m.paste)+" will follow this answer", m.size.Main())
}
