package rehearse

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"github.com/charmbracelet/bubbles/key"

	"cutbrief/assess"
	"cutbrief/assess/screen"
	"cutbrief/report"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/unit"
)

// View draws the screen; it is a pure function of the model.
func (m *Model) View() string {
	body, keys := m.content()
	foot := m.look.Keys(max(1, m.size.Width-2), keys...)
	body = squeeze(body, m.size.Room(len(foot)))
	return screen.Frame{Size: m.size, Look: m.look, Left: m.title(), Right: m.watch(), Body: body, Foot: foot, Wide: true}.Render()
}

// squeeze takes empty lines away, the first ones first, until the rest has room.
func squeeze(body []string, room int) []string {
	over := len(body) - room
	return slices.DeleteFunc(slices.Clone(body), func(line string) bool {
		if line != "" || over <= 0 {
			return false
		}
		over--
		return true
	})
}

func (m *Model) content() ([]string, []key.Binding) {
	switch m.state {
	case opening:
		return m.viewOpening(), []key.Binding{m.keys.begin, m.keys.lists, m.keys.quit}
	case timing:
		return m.viewTiming(), []key.Binding{m.keys.stop, m.keys.back, m.keys.leave}
	case timed:
		return m.viewTimed(), m.stepKeys(m.keys.again)
	case reasoning:
		return m.viewReasoning(), []key.Binding{m.keys.done, m.keys.leave}
	case bewaring:
		return m.viewBewaring(), []key.Binding{m.keys.closeIt, m.keys.leave}
	case ticking:
		return m.viewTicking(), m.tickKeys()
	case closing:
		return m.viewClosing(), []key.Binding{m.keys.keep, m.keys.drop, m.keys.back}
	}
	if m.isTimed() {
		return m.viewReady(), m.stepKeys(m.keys.timer)
	}
	return m.viewReady(), m.stepKeys()
}

func (m *Model) tickKeys() []key.Binding {
	return []key.Binding{m.keys.tick, m.keys.move, m.keys.other, m.keys.back, m.keys.leave}
}

// stepKeys are the keys of every step, behind those of its own.
func (m *Model) stepKeys(own ...key.Binding) []key.Binding {
	k := m.keys
	return append(own, k.next, k.good, k.fair, k.poor, k.beware, k.lists, k.back, k.quit)
}

// title is the step's place in the plan, and how it went.
func (m *Model) title() string {
	switch {
	case m.state == opening:
		return m.bench.System
	case m.state == ticking:
		return "Checklists"
	}
	title := fmt.Sprintf("Step %d of %d", m.step+1, len(m.bench.Steps))
	if c := m.cuts[m.step]; c.Result != "" && m.state != closing {
		title += ": " + string(c.Result)
	}
	return title
}

// watch is how long the demonstration has run.
func (m *Model) watch() string {
	if m.began.IsZero() {
		return m.bench.Customer
	}
	return clock(m.now.Sub(m.began))
}

// clock writes minutes and seconds.
func clock(d time.Duration) string {
	s := int(max(0, d) / time.Second)
	return fmt.Sprintf("%d:%02d", s/60, s%60)
}

func (m *Model) wrap(text string) []string { return screen.Wrap(text, max(1, m.size.Width-3)) }

// strong wraps a text in bold lines.
func (m *Model) strong(text string) []string {
	return screen.Each(m.wrap(text), m.look.Strong.Render)
}

func (m *Model) dim(text string) []string { return screen.Each(m.wrap(text), m.look.Dim.Render) }

func (m *Model) viewOpening() []string {
	body := append([]string{""}, m.strong(strings.ToUpper(m.bench.System))...)
	body = append(body, m.wrap(m.bench.Takes)...)
	body = append(body, "")
	for i, s := range m.bench.Steps {
		body = append(body, screen.Cut(fmt.Sprintf("%d  %s", i+1, s.Cut), m.size.Width-3))
	}
	return append(append(body, ""), m.dim("The checklists come first: c.")...)
}

// name is the step's name and piece, the largest words on the screen.
func (m *Model) name() []string {
	body := append([]string{""}, m.strong(strings.ToUpper(m.at().Cut))...)
	return append(body, m.wrap(m.at().Piece)...)
}

func (m *Model) viewReady() []string {
	body := append(m.name(), "")
	if m.at().SetUp {
		body = append(body, screen.Each(m.wrap("Change the plate or the setting first."), m.look.Accent.Render)...)
	}
	for _, t := range m.at().Torch {
		body = append(body, screen.Hang("- ", t, m.size.Width-3)...)
	}
	body = append(append(body, ""), m.wrap("Look for: "+m.at().See)...)
	return append(body, m.graded()...)
}

// graded says how the cut went, once that is noted.
func (m *Model) graded() []string {
	c, noted := m.cuts[m.step]
	if !noted || c.Result == "" {
		return nil
	}
	text := "Noted: " + string(c.Result)
	if c.Why != "" {
		text += ", " + c.Why
	}
	return append([]string{""}, m.wrap(text)...)
}

func (m *Model) viewTiming() []string {
	body := append(m.name(), "")
	body = append(body, large(seconds(m.elapsed()))...)
	return append(append(body, ""), m.wrap("Aim at "+seconds(m.at().Predicted.Or(0))+".")...)
}

// seconds writes a time taken by hand, in s to a tenth.
func seconds(t unit.Second) string { return fmt.Sprintf("%.1f s", math.Round(float64(t)*10)/10) }

func (m *Model) viewTimed() []string {
	c := m.shown()
	took := c.Took.Or(0)
	body := append(m.name(), "")
	body = append(body, large(seconds(took))...)
	pace, ok := demonstration.Compare(took, c.Predicted.Or(0))
	if !ok {
		return body
	}
	style := m.look.Bad
	if pace == demonstration.OnTheMark {
		style = m.look.Good
	}
	body = append(body, "", style.Render(strings.ToUpper(string(pace)))+": "+seconds(c.Predicted.Or(0))+" predicted")
	body = append(body, m.wrap(pace.Change().String())...)
	return append(body, m.graded()...)
}

func (m *Model) viewReasoning() []string {
	body := append(m.name(), "", "Why? In a few words:")
	return append(body, m.look.Typed(m.why, len(m.why), m.size.Width-3)...)
}

func (m *Model) viewBewaring() []string {
	body := append(m.name(), "")
	body = append(body, m.wrap("It can fail: "+m.at().Fails+".")...)
	body = append(body, m.wrap("So: "+m.at().Avoid+".")...)
	return append(append(body, ""), m.wrap("Bring: "+m.at().Bring+".")...)
}

func (m *Model) viewTicking() []string {
	title := []string{"BEFORE LEAVING", "AT THE SITE, BEFORE THE FIRST ARC"}[m.list]
	var rows []string
	focus := 0
	for i, l := range m.lines() {
		mark := screen.Free
		if m.ticks[m.list][i] {
			mark = screen.Ticked
		}
		lead := "  "
		if i == m.row {
			lead, focus = screen.Focus, len(rows)
		}
		rows = append(rows, screen.Hang(lead+mark, l.Value+source(l), m.size.Width-3)...)
	}
	head := append([]string{m.look.Strong.Render(title)}, fmt.Sprintf("%d of %d ticked", m.ticked(), len(m.lines())), "")
	foot := len(m.look.Keys(max(1, m.size.Width-2), m.tickKeys()...))
	return append(head, screen.Around(rows, focus, m.size.Room(foot)-len(head))...)
}

// source is what a line rests on, in brackets.
func source(l report.Line) string {
	if l.Source == "" || l.Source == l.Trust {
		return ""
	}
	return " [" + l.Source + "]"
}

func (m *Model) ticked() int {
	n := 0
	for _, yes := range m.ticks[m.list] {
		if yes {
			n++
		}
	}
	return n
}

func (m *Model) viewClosing() []string {
	heading := "THAT IS THE DEMONSTRATION"
	if m.step < len(m.bench.Steps)-1 {
		heading = "SO FAR"
	}
	body := append([]string{""}, m.strong(heading)...)
	for i, s := range m.bench.Steps {
		c, noted := m.cuts[i]
		if !noted {
			continue
		}
		body = append(body, m.wrap(fmt.Sprintf("%d  %s: %s", i+1, s.Cut, went(c)))...)
	}
	if len(m.cuts) == 0 {
		body = append(body, m.wrap("Nothing was measured or noted.")...)
	}
	return append(append(body, ""), m.wrap("Keep it in the visit (k), or leave without keeping (q)?")...)
}

// went is how a cut went, in a few words.
func went(c assess.Shown) string {
	var parts []string
	if c.Result != "" {
		parts = append(parts, string(c.Result))
	}
	if took, ok := c.Took.Get(); ok {
		parts = append(parts, seconds(took))
		if pace, ok := demonstration.Compare(took, c.Predicted.Or(0)); ok {
			parts = append(parts, string(pace))
		}
	}
	return strings.Join(parts, ", ")
}
