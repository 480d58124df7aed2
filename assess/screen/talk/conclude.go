package talk

import (
	"fmt"
	"slices"
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/assess/sanitize"
	texts "cutbrief/assess/screen/words"
	"cutbrief/report/text"
	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// conclude begins the three decisions.
func (t *Talk) conclude() {
	t.stage = Deciding
	t.say("\nWhat decides this sale?")
	t.options(texts.Requirements())
	t.leads("Say one number, or back to go on asking.", "Type one number.")
}

func (t *Talk) options(list []assess.Option) {
	for i, o := range list {
		t.say("%d. %s", i+1, o.Text)
	}
}

// aside takes the words that work at every decision; true if it was one.
func (t *Talk) aside(line string, before func()) bool {
	switch w, _ := parse(line); w {
	case quit:
		t.leave()
		return true
	case back:
		before()
		return true
	}
	return false
}

func (t *Talk) decide(line string) {
	if t.aside(line, func() { t.stage = Talking; t.question() }) {
		return
	}
	id, ok := texts.Choice(texts.Requirements(), strings.TrimSpace(line))
	if !ok {
		t.say("Say one of the numbers.")
		return
	}
	t.decision.Decides = rules.Requirement(id)
	t.askSystem()
}

// systems are the choices of a system.
func (t *Talk) systems() []assess.Option {
	var list []assess.Option
	offered := t.Session.Offered
	for i := range offered.Systems {
		s := &offered.Systems[i]
		style := t.Session.Notes.Style()
		rated := unit.Show(unit.Quantity{Value: float64(s.Rated), Kind: unit.Thickness}, style, unit.Down)
		weighs := unit.Show(unit.Quantity{Value: float64(s.Weight), Kind: unit.Weight}, style, unit.Up)
		list = append(list, assess.Option{ID: s.ID, Text: message.ID(fmt.Sprintf("%s: rated %s, %.0f A, %s", sanitize.Line(s.Name), rated, float64(s.OutputMax), weighs))})
	}
	return list
}

func (t *Talk) askSystem() {
	t.stage = Offering
	t.say("\nWhich system would you offer?")
	t.say("0. none of these fits")
	t.options(t.systems())
	t.leads("Say one number.", "Type one number.")
}

func (t *Talk) offer(line string) {
	if t.aside(line, t.conclude) {
		return
	}
	t.decision.System = ""
	if strings.TrimSpace(line) == "0" {
		t.finish(nil)
		return
	}
	id, ok := texts.Choice(t.systems(), strings.TrimSpace(line))
	if !ok {
		t.say("Say one of the numbers, 0 if none fits.")
		return
	}
	t.decision.System = id
	t.askShowing()
}

func (t *Talk) cuts() []assess.Option {
	var list []assess.Option
	for _, c := range t.Session.Showable(t.decision.System) {
		list = append(list, assess.Option{ID: c.ID, Text: message.ID(c.Name.String())})
	}
	return list
}

func (t *Talk) askShowing() {
	t.stage = Showing
	t.say("\nWhich cuts would you show, in which order?")
	t.options(t.cuts())
	t.leads("Say their numbers in order, such as 3, 1. Two or three are enough.", "Type their numbers in order, such as 3, 1. Two or three are enough.")
}

func (t *Talk) show(line string) {
	if t.aside(line, t.askSystem) {
		return
	}
	list := t.cuts()
	var chosen []string
	for _, named := range strings.Split(line, ",") {
		id, ok := texts.Choice(list, strings.TrimSpace(named))
		if !ok {
			t.say("Not taken: %q is none of the numbers.", sanitize.Line(named))
			return
		}
		if !slices.Contains(chosen, id) {
			chosen = append(chosen, id)
		}
	}
	t.finish(chosen)
}

// finish makes the mark and shows it.
func (t *Talk) finish(cuts []string) {
	t.decision.Cuts = cuts
	t.mark = t.Session.Mark(t.decision)
	t.stage = Marked
	t.say("\n%s", t.mark.Page(nil, t.Width))
	t.leads("Say why for how the right answer is derived, page for this page again, or quit.", "")
}

// marked takes a line after the mark.
func (t *Talk) marked(line string) {
	switch strings.ToLower(strings.TrimSpace(line)) {
	case "why":
		t.say("%s", strings.TrimRight(text.Why(t.mark.Why, t.Width), "\n"))
	case "page":
		t.say("%s", strings.TrimRight(t.mark.Page(nil, t.Width), "\n"))
	case "quit", "done":
		t.stage = Left
		return
	}
	t.leads("Say why, page or quit.", "")
}

// leads names what leads on: the words to be said, or what to type where keys do
// the rest.
func (t *Talk) leads(say, typed string) {
	if t.Keys {
		say = typed
	}
	if say != "" {
		t.say("%s", say)
	}
}

// Decision is what was decided so far.
func (t *Talk) Decision() casebook.Decision { return t.decision }
