package rehearse

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/screen"
	"cutbrief/report"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// Title is the step's place in the plan and how it went, and how long the
// demonstration has run.
func (m *Model) Title() (left, right string) {
	w := m.window
	switch c := m.cuts[m.step]; {
	case m.state == opening:
		left = m.Bench.System
	case m.state == ticking:
		left = w.Say("Checklists")
	case c.Result != "" && m.state != closing:
		left = w.Say("Step {1} of {2}: {3}", message.Count(m.step+1), message.Count(len(m.Bench.Steps)), message.ID(c.Result))
	default:
		left = w.Say("Step {1} of {2}", message.Count(m.step+1), message.Count(len(m.Bench.Steps)))
	}
	if m.began.IsZero() {
		return left, m.Bench.Customer
	}
	s := int(max(0, m.now.Sub(m.began)) / time.Second)
	return left, fmt.Sprintf("%d:%02d", s/60, s%60)
}

// Body shows the present state; where there is no room, empty lines go first.
func (m *Model) Body(width, height int) []string {
	p := page{window: m.window, width: width - 1}
	switch m.state {
	case opening:
		m.viewOpening(&p)
	case ready:
		m.viewReady(&p)
	case timing:
		m.heading(&p)
		p.add(large(m.seconds(m.elapsed()))...)
		p.gap()
		p.say("Aim at {1}.", m.figure(m.at().Predicted.Or(0)))
	case timed:
		m.viewTimed(&p)
	case reasoning:
		m.heading(&p)
		p.say("Why? In a few words:")
		p.add(m.why.Lines(m.window.Look, screen.Focus, p.width)...)
	case ticking:
		return m.viewTicking(p.width, height)
	case closing:
		m.viewClosing(&p)
	}
	return squeeze(p.lines, height)
}

// squeeze takes empty lines away, the first ones first, until the rest has room.
func squeeze(body []string, room int) []string {
	over := len(body) - room
	return slices.DeleteFunc(body, func(line string) bool {
		if line != "" || over <= 0 {
			return false
		}
		over--
		return true
	})
}

// page is a body under way.
type page struct {
	window *screen.Window
	width  int
	lines  []string
}

func (p *page) add(lines ...string) { p.lines = append(p.lines, lines...) }
func (p *page) gap()                { p.add("") }
func (p *page) text(text string)    { p.add(screen.Wrap(text, p.width)...) }

func (p *page) say(id message.ID, args ...any) { p.text(p.window.Say(id, args...)) }

// styled adds a text in lines of one style.
func (p *page) styled(style func(...string) string, text string) {
	p.add(screen.Each(screen.Wrap(text, p.width), style)...)
}

func (m *Model) viewOpening(p *page) {
	look := m.window.Look
	p.gap()
	p.styled(look.Strong.Render, strings.ToUpper(m.Bench.System))
	p.text(m.Bench.Takes)
	p.gap()
	for i, s := range m.Bench.Steps {
		p.add(screen.Cut(fmt.Sprintf("%d  %s", i+1, s.Cut), p.width))
	}
	p.gap()
	p.styled(look.Dim.Render, m.window.Say("Checklists first: press c."))
}

// heading is the step's name and piece, the largest words on the screen.
func (m *Model) heading(p *page) {
	p.gap()
	p.styled(m.window.Look.Strong.Render, strings.ToUpper(m.at().Cut))
	p.text(m.at().Piece)
	p.gap()
}

func (m *Model) viewReady(p *page) {
	m.heading(p)
	if m.at().SetUp {
		p.styled(m.window.Look.Accent.Render, m.window.Say("Change the plate or the setting first."))
	}
	for _, t := range m.at().Torch {
		p.add(screen.Hang("- ", t, p.width)...)
	}
	p.gap()
	p.say("Look for: {1}", message.Name(m.at().See))
	m.graded(p)
}

// graded says how the cut went, and before that is noted, which keys note it.
func (m *Model) graded(p *page) {
	p.gap()
	c := m.cuts[m.step]
	switch {
	case c.Result == "":
		p.styled(m.window.Look.Dim.Render, m.window.Say("How it went: 1 good, 2 fair, 3 poor. What can go wrong: ?"))
	case c.Why == "":
		p.say("Noted: {1}", message.ID(c.Result))
	default:
		p.say("Noted: {1}, {2}", message.ID(c.Result), message.Name(c.Why))
	}
}

func (m *Model) viewTimed(p *page) {
	m.heading(p)
	look, c := m.window.Look, m.shown()
	took := c.Took.Or(0)
	p.add(large(m.seconds(took))...)
	pace, ok := demonstration.Compare(took, c.Predicted.Or(0))
	if !ok {
		return
	}
	style := look.Bad
	if pace == demonstration.OnTheMark {
		style = look.Good
	}
	p.gap()
	p.add(m.window.Say("{1}: {2} predicted", message.Name(style.Render(strings.ToUpper(m.window.Say(message.ID(pace))))), m.figure(c.Predicted.Or(0))))
	p.text(m.window.Print(pace.Change()))
	m.graded(p)
}

// figure is a time taken by hand, in s to a tenth.
func (m *Model) figure(t unit.Second) message.Figure {
	return message.Figure(fmt.Sprintf("%.1f s", math.Round(float64(t)*10)/10))
}

func (m *Model) seconds(t unit.Second) string { return m.window.Say("{1}", m.figure(t)) }

// Help says how the step can fail, and what helps against it.
func (m *Model) Help(width int) []string {
	if m.state == opening || m.state == ticking || m.state == closing {
		return nil
	}
	p := page{window: m.window, width: width - 1}
	p.say("It can fail: {1}.", message.Name(m.at().Fails))
	p.say("So: {1}.", message.Name(m.at().Avoid))
	p.say("Bring: {1}.", message.Name(m.at().Bring))
	return p.lines
}

func (m *Model) viewTicking(width, height int) []string {
	title := []message.ID{"Before leaving", "At the site, before the first arc"}[m.list]
	var rows []string
	focus, ticked := 0, 0
	for i, l := range m.lines() {
		lead, mark := "  ", screen.Free
		if m.ticks[m.list][i] {
			mark = screen.Ticked
			ticked++
		}
		if i == int(m.row) {
			lead, focus = screen.Focus, len(rows)
		}
		rows = append(rows, screen.Hang(lead+mark, l.Value+source(l), width)...)
	}
	head := []string{
		m.window.Look.Strong.Render(strings.ToUpper(m.window.Say(title))),
		m.window.Say("{1} of {2} ticked", message.Count(ticked), message.Count(len(m.lines()))), "",
	}
	return append(head, m.window.Rows(rows, focus, height-len(head))...)
}

// source is where a line is from, in brackets.
func source(l report.Line) string {
	if l.Source == "" || l.Source == l.Trust {
		return ""
	}
	return " [" + l.Source + "]"
}

func (m *Model) viewClosing(p *page) {
	heading := message.ID("That is the demonstration")
	if m.step < len(m.Bench.Steps)-1 {
		heading = "So far"
	}
	p.gap()
	p.styled(m.window.Look.Strong.Render, strings.ToUpper(m.window.Say(heading)))
	for i, s := range m.Bench.Steps {
		if c, noted := m.cuts[i]; noted {
			p.text(fmt.Sprintf("%d  %s: %s", i+1, s.Cut, m.window.Print(m.went(c))))
		}
	}
	if len(m.cuts) == 0 {
		p.say("Nothing was measured or noted.")
	}
	p.gap()
	p.say("Keep it in the visit (k), or leave without keeping (q)?")
}

// went is how a cut went, in a few words.
func (m *Model) went(c assess.ShownCut) message.Message {
	parts := []message.Message{message.ID(c.Result).Message()}
	if took, ok := c.Took.Get(); ok {
		parts = append(parts, message.New("{1}", m.figure(took)))
		if pace, ok := demonstration.Compare(took, c.Predicted.Or(0)); ok {
			parts = append(parts, message.ID(pace).Message())
		}
	}
	return message.Join(", ", parts...)
}
