// Package practice is the practice with an invented customer, in two views of one
// dialogue: on a full screen, or line by line, for pipes and simple terminals. In
// both, the trainee asks, listens, follows up and notes, then decides, and reads
// the mark.
package practice

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/assess/sanitize"
	"cutbrief/assess/screen"
	"cutbrief/report"
	"cutbrief/report/text"
	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// stage is what the practice is at.
type stage int

const (
	talking  stage = iota // with the customer
	deciding              // what the trainee concludes
	marked                // the page
	left                  // over
)

// dialogue is one practice. What it says is gathered in lines until a view takes
// them. Its methods run one at a time.
type dialogue struct {
	session *casebook.Session
	words   *message.Catalog
	width   int  // cells a line of the mark may have; 0 for 80
	typed   bool // words that are typed lead on, and not keys

	stage    stage
	step     assess.Step
	how      assess.State // the next note is known
	asked    int          // which of the decisions
	decision casebook.Decision
	mark     casebook.Mark
	out      []string
}

func newDialogue(s *casebook.Session, words *message.Catalog) *dialogue {
	return &dialogue{session: s, words: words, step: s.Steps()[0]}
}

// said takes what was said since it was last taken.
func (d *dialogue) said() []string {
	lines := d.out
	d.out = nil
	return lines
}

func (d *dialogue) print(text string) {
	d.out = append(d.out, strings.Split(strings.TrimRight(text, "\n"), "\n")...)
}
func (d *dialogue) tell(m message.Message)      { d.print(sanitize.Line(d.words.Print(m))) }
func (d *dialogue) say(id message.ID, a ...any) { d.tell(message.New(id, a...)) }

// quote is what the customer says.
func (d *dialogue) quote(m message.Message) { d.say(`"{1}"`, m) }

// greet is who the customer is, and their first words.
func (d *dialogue) greet() {
	c, unknown := d.session.Customer, message.New("not known")
	d.say("{1}, {2}.", c.Contact().Or(unknown), c.Place().Or(unknown))
	d.quote(d.session.Opening())
}

// act does something with the customer.
func (d *dialogue) act(a casebook.Act) {
	said, err := d.session.Do(a, d.step)
	if err != nil {
		d.say("Not done: {1}.", message.Of(err))
		return
	}
	d.quote(said)
	if d.session.Over() {
		d.quote(d.session.Farewell())
		d.say("The time is used up. You can still note what you heard; then type done.")
		return
	}
	d.tell(message.Counted(d.session.Left, "({1} minute left)", "({1} minutes left)"))
}

// options are the choices of the step in the words of the catalog.
func (d *dialogue) options() []screen.Choice {
	return screen.Choices(d.words, d.session.Notes.Options(d.step))
}

func (d *dialogue) list(options []screen.Choice) {
	for i, o := range options {
		d.print(fmt.Sprintf("%d. %s", i+1, o.Text))
	}
}

// noted is an answer in one line, as it was said or chosen.
func (d *dialogue) noted(s assess.Step, a assess.Answer) string {
	return d.words.Print(s.Question.Shown(a))
}

// goTo goes to a question by its place; false if there is none.
func (d *dialogue) goTo(place int) bool {
	steps := d.session.Steps()
	if place < 0 || place >= len(steps) {
		return false
	}
	d.step, d.how = steps[place], ""
	return true
}

// move goes to a neighbour of the question.
func (d *dialogue) move(by int) bool {
	at := slices.IndexFunc(d.session.Steps(), func(s assess.Step) bool { return s.Asked() == d.step.Asked() })
	moved := d.goTo(max(0, at) + by)
	if !moved {
		d.say("There is no further question in that direction. Type list to see all, or done.")
	}
	return moved
}

// note reads a line as the note to the step, just as the interview would. It stays
// at the question: a follow-up may be wanted.
func (d *dialogue) note(line string) {
	var a assess.Answer
	var echo message.Message
	var err error
	switch d.step.Question.Form {
	case assess.FormOne, assess.FormSeveral:
		a, err = d.session.Notes.Choose(d.step, screen.Chosen(d.options(), line))
	default:
		a, echo, err = d.session.Notes.Read(d.step, d.words.Answer(line))
	}
	if err != nil {
		d.refuse(err)
		return
	}
	if d.how != "" && a.State == assess.Told {
		a.State = d.how
	}
	d.keep(a, echo)
}

// keep keeps a note, and says it as it was understood where it was.
func (d *dialogue) keep(a assess.Answer, echo message.Message) {
	d.session.Notes.Set(a)
	if a.State == assess.Unknown {
		echo = message.Message{}
	}
	d.say("Noted: {1}.", echo.Or(d.step.Question.Shown(a)))
}

// notKnown notes that nobody knows.
func (d *dialogue) notKnown() { d.keep(assess.NotKnown(d.step), message.Message{}) }

// refuse says what is wrong with a note, and what would be taken.
func (d *dialogue) refuse(err error) {
	var mistake *assess.Mistake
	if !errors.As(err, &mistake) {
		d.say("Not noted: {1}.", message.Of(err))
		return
	}
	hint := mistake.Hint
	switch d.step.Question.Form {
	case assess.FormOne:
		hint = message.New("give its number, such as 1")
	case assess.FormSeveral:
		hint = message.New("give the numbers, such as 1, 3")
	}
	d.say("Not noted: {1}.", mistake.What())
	d.say("Hint: {1}.", hint)
}

// knownAs says how the note, or the next one, is known.
func (d *dialogue) knownAs(s assess.State) {
	d.how = s
	if a, has := d.session.Notes.Answer(d.step.Asked()); has && a.State != assess.Unknown {
		a.State = s
		d.session.Notes.Set(a)
	}
	d.say("Kept as {1}.", message.ID(s))
}

// listAll lists every question with its note.
func (d *dialogue) listAll() {
	group := assess.Group("")
	for i, s := range d.session.Steps() {
		if s.Question.Group != group {
			group = s.Question.Group
			d.tell(group.Title())
		}
		state := message.New("not asked")
		if a, has := d.session.Notes.Answer(s.Asked()); has {
			state = message.Text(d.noted(s, a))
		} else if d.session.Asked(s.Asked()) {
			state = message.New("asked, nothing noted")
		}
		d.say("{1}. {2}: {3}", message.Name(strconv.Itoa(i+1)), s.Name(), state)
	}
}

// decision is one thing the trainee concludes.
type decision struct {
	ask     message.ID
	hint    message.ID
	none    message.ID // what 0 stands for; "" if that is no choice
	options func(d *dialogue) []screen.Choice
	several bool
	take    func(d *casebook.Decision, chosen []string)
}

// decisions are asked one after the other. Where no system is offered, there is
// nothing to show.
var decisions = []decision{
	{ask: "Which requirement decides this sale?", hint: "Type one number, or back to go on asking.", options: requirements,
		take: func(d *casebook.Decision, chosen []string) { d.Decides = rules.Requirement(chosen[0]) }},
	{ask: "Which system would you offer?", hint: "Type one number.", none: "none of these fits", options: (*dialogue).systems,
		take: func(d *casebook.Decision, chosen []string) { d.System = chosen[0] }},
	{ask: "Which cuts would you show, in which order?", hint: "Type their numbers in order, such as 3, 1. Two or three are enough.", options: (*dialogue).cuts, several: true,
		take: func(d *casebook.Decision, chosen []string) { d.Cuts = chosen }},
}

func requirements(d *dialogue) []screen.Choice {
	var list []screen.Choice
	for _, r := range rules.Requirements() {
		list = append(list, screen.Choice{ID: string(r), Text: d.words.Print(report.RequirementName(r).Message())})
	}
	return list
}

// conclude asks for a decision.
func (d *dialogue) conclude(which int) {
	d.stage, d.asked = deciding, which
	one := decisions[which]
	d.print("")
	d.say(one.ask)
	if one.none != "" {
		d.print("0. " + d.words.Print(one.none.Message()))
	}
	d.list(one.options(d))
	d.say(one.hint)
}

// decide takes a line as the decision asked for.
func (d *dialogue) decide(line string) {
	one := decisions[d.asked]
	if line = strings.TrimSpace(line); one.none != "" && line == "0" {
		d.decision.System, d.decision.Cuts = "", nil
		d.finish()
		return
	}
	named := []string{line}
	if one.several {
		named = strings.Split(line, ",")
	}
	options := one.options(d)
	var chosen []string
	for _, n := range named {
		id, ok := screen.Named(options, strings.TrimSpace(n))
		if !ok {
			d.say("{1} is none of the numbers. {2}", message.Name(strconv.Quote(sanitize.Line(strings.TrimSpace(n)))), one.hint)
			return
		}
		if !slices.Contains(chosen, id) {
			chosen = append(chosen, id)
		}
	}
	one.take(&d.decision, chosen)
	if d.asked+1 < len(decisions) {
		d.conclude(d.asked + 1)
	} else {
		d.finish()
	}
}

// stepBack goes from a decision to the one before, or to the customer.
func (d *dialogue) stepBack() {
	if d.asked > 0 {
		d.conclude(d.asked - 1)
	} else {
		d.stage = talking
	}
}

// finish makes the mark and shows it.
func (d *dialogue) finish() {
	d.mark, d.stage = d.session.Mark(d.decision), marked
	d.print("")
	d.page()
}

func (d *dialogue) page() { d.print(d.mark.Page(d.words, d.width)) }

// why is how the right answer is derived.
func (d *dialogue) why() { d.print(text.Why(d.words, d.session.Why(d.words), d.width)) }

func (d *dialogue) leave() {
	if d.stage < marked {
		d.say("The practice was left before its mark, and is not counted.")
	}
	d.stage = left
}

// panel is what the notes mean so far.
func (d *dialogue) panel() report.Panel {
	return report.SoFar(d.words, d.session.Notes, d.session.Offered)
}

// systems are the choices of a system.
func (d *dialogue) systems() []screen.Choice {
	var list []screen.Choice
	style := d.session.Notes.Style()
	show := func(v float64, kind unit.Kind, r unit.Round) message.Figure {
		return message.Figure(unit.Show(unit.Quantity{Value: v, Kind: kind}, style, r))
	}
	for i := range d.session.Offered.Systems {
		s := &d.session.Offered.Systems[i]
		text := message.New("{1}: rated {2}, {3}, {4}", message.Name(sanitize.Line(s.Name)), show(float64(s.Rated), unit.Thickness, unit.Down),
			show(float64(s.OutputMax), unit.Current, unit.Nearest), show(float64(s.Weight), unit.Weight, unit.Up))
		list = append(list, screen.Choice{ID: s.ID, Text: d.words.Print(text)})
	}
	return list
}

// cuts are the choices of the demonstration.
func (d *dialogue) cuts() []screen.Choice {
	var list []screen.Choice
	for _, c := range d.session.Showable(d.decision.System) {
		list = append(list, screen.Choice{ID: c.ID, Text: d.words.Print(c.Name)})
	}
	return list
}
