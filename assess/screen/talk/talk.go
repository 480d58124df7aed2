package talk

import (
	"fmt"
	"strconv"
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/assess/sanitize"
	texts "cutbrief/assess/screen/words"
	"cutbrief/report"
	"cutbrief/rules"
	"cutbrief/rules/message"
)

// Stage is what the talk is at.
type Stage int

// The stages, in order.
const (
	Talking  Stage = iota // with the customer
	Deciding              // what decides?
	Offering              // which system?
	Showing               // which cuts?
	Marked                // the page
	Left                  // over
)

// Talk is one practice. Its methods run one at a time.
type Talk struct {
	Session *casebook.Session
	Width   int  // cells a line of the mark may have; 0 for 80
	Keys    bool // keys lead on from a list and from the mark, not words

	stage    Stage
	step     assess.Step
	how      assess.State // of the next note
	decision casebook.Decision
	mark     casebook.Mark
	out      strings.Builder
}

// New begins a talk. Opening or Greeting is what to show before the first line,
// one of them once.
func New(s *casebook.Session, width int) *Talk {
	t := &Talk{Session: s, Width: width}
	t.step = s.Steps()[0]
	return t
}

const welcome = `Practice, in plain lines. This customer is invented, and so is every figure.
Ask, listen, and note what you understood; the notes are those of a real
interview. What costs the customer's time:
  ask 1 minute, again 1 (for a figure or a better answer), repeat 1 (your note,
  read back), explain 2, measure 3 (a caliper on the piece), plate 3 (the
  compressor's), breaker 3.
What costs none: a note (type the answer itself), not known, measured, clear,
next or an empty line, back, go and a number, list, so far, help, quit.
Say done when you know enough.`

// Opening is the first text: how it works, who the customer is, and what they
// say.
func (t *Talk) Opening() string {
	t.say(welcome)
	t.say("")
	for _, line := range t.Greeting() {
		t.say("%s", line)
	}
	t.question()
	return t.flush()
}

// Greeting is who the customer is, how long they stay, and their first words.
func (t *Talk) Greeting() []string {
	c := t.Session.Customer
	who := fmt.Sprintf("%s, %s.", sanitize.Line(of(c, assess.FactContact)), sanitize.Line(of(c, assess.FactPlace)))
	if !t.Keys { // a screen has them at its top
		who = fmt.Sprintf("%s. %s Time: %d minutes.", sanitize.Line(of(c, assess.FactCompany)), who, c.Minutes)
	}
	return []string{who, fmt.Sprintf("%q", sanitize.Line(t.Session.Opening().String()))}
}

func of(c *casebook.Customer, f rules.Fact) string {
	if a, has := c.Facts.Answer(rules.Asked{Fact: f}); has {
		return a.Said
	}
	return "not known"
}

// Stage says what the talk is at.
func (t *Talk) Stage() Stage { return t.stage }

// Step is the question shown.
func (t *Talk) Step() assess.Step { return t.step }

// Mark is the mark; false before it is made.
func (t *Talk) Mark() (casebook.Mark, bool) {
	return t.mark, t.stage >= Marked && t.mark.Customer != nil
}

func (t *Talk) say(format string, args ...any) { fmt.Fprintf(&t.out, format+"\n", args...) }

// spoken is what the customer says, in quotes.
func (t *Talk) spoken(words string) { t.say("%q", sanitize.Line(words)) }

func (t *Talk) flush() string {
	text := t.out.String()
	t.out.Reset()
	return text
}

// Line takes one line and returns what comes back.
func (t *Talk) Line(line string) string {
	switch t.stage {
	case Talking:
		t.talk(line)
	case Deciding:
		t.decide(line)
	case Offering:
		t.offer(line)
	case Showing:
		t.show(line)
	case Marked:
		t.marked(line)
	}
	return t.flush()
}

// talk takes a line while the customer is there.
func (t *Talk) talk(line string) {
	w, rest := parse(line)
	switch w {
	case act:
		t.act(casebook.Act(rest))
	case next:
		t.move(1)
	case back:
		t.move(-1)
	case goTo:
		t.jump(rest)
	case list:
		t.list()
	case soFar:
		t.soFar()
	case help:
		t.help()
	case unknown:
		t.keep(assess.NotKnown(t.step), "")
	case how:
		t.setHow(assess.State(rest))
	case clear:
		t.Session.Notes.Clear(t.step.Asked())
		t.say("The note is taken back.")
	case done:
		t.conclude()
	case quit:
		t.leave()
	default:
		t.note(rest)
	}
}

// act does something with the customer.
func (t *Talk) act(a casebook.Act) {
	words, err := t.Session.Do(a, t.step)
	if err != nil {
		t.say("Not done: %s.", err)
		return
	}
	t.spoken(words.String())
	if t.Session.Over() {
		t.spoken(t.Session.Farewell().String())
		t.say("The time is used up. You can still note what you heard; then say done.")
		return
	}
	t.say("(%s left)", minutes(t.Session.Left()))
}

func minutes(n int) string {
	if n == 1 {
		return "1 minute"
	}
	return fmt.Sprintf("%d minutes", n)
}

// question shows the step, how it can be noted, and the note there is.
func (t *Talk) question() {
	at, of := texts.Place(t.Session.Steps(), t.step)
	t.say("\n%s, %d of %d. %s left.", texts.GroupTitle(t.step.Question.Group), at, of, capital(minutes(t.Session.Left())))
	t.say("%s", t.step.Text())
	for i, o := range t.Session.Notes.Options(t.step) {
		t.say("%d. %s", i+1, o.Text)
	}
	if a, has := t.Session.Notes.Answer(t.step.Asked()); has {
		t.say("Noted: %s.", texts.Said(t.step.Question, a))
	}
}

func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// move goes to a neighbour of the step.
func (t *Talk) move(by int) {
	steps := t.Session.Steps()
	at := t.place(steps) + by
	if at < 0 || at >= len(steps) {
		t.say("There is no further question in that direction. Say list to see all, or done.")
		return
	}
	t.step = steps[at]
	t.how = ""
	t.question()
}

func (t *Talk) place(steps []assess.Step) int {
	for i, s := range steps {
		if s.Asked() == t.step.Asked() {
			return i
		}
	}
	return 0
}

func (t *Talk) jump(number string) {
	n, _ := strconv.Atoi(number)
	steps := t.Session.Steps()
	if n < 1 || n > len(steps) {
		t.say("There is no question %s. Say list to see their numbers.", sanitize.Line(number))
		return
	}
	t.step, t.how = steps[n-1], ""
	t.question()
}

// note reads a line as the note to the step, just as the interview would.
func (t *Talk) note(line string) {
	var a assess.Answer
	var echo string
	var err error
	notes := t.Session.Notes
	switch t.step.Question.Form {
	case assess.FormOne, assess.FormSeveral:
		a, err = notes.Choose(t.step, texts.Choices(notes.Options(t.step), line))
	default:
		var heard message.Message
		a, heard, err = notes.Read(t.step, line)
		echo = heard.String()
	}
	if err != nil {
		t.refuse(err)
		return
	}
	t.keep(a, echo)
}

// refuse says what is wrong with a note, and what would be taken.
func (t *Talk) refuse(err error) {
	complaint := texts.Complaint(err)
	t.say("Not noted: %s.", complaint[0])
	hint := strings.Join(complaint[1:], "; ")
	switch t.step.Question.Form {
	case assess.FormOne:
		hint = "give its number, such as 1"
	case assess.FormSeveral:
		hint = "give the numbers, such as 1, 3"
	}
	t.say("Hint: %s. Or say ask, again, explain, repeat, measure, plate, breaker.", hint)
}

// keep notes an answer and stays at the question: a follow-up may be wanted.
func (t *Talk) keep(a assess.Answer, echo string) {
	if t.how != "" && a.State == assess.Told {
		a.State = t.how
	}
	t.Session.Note(a)
	text := texts.Said(t.step.Question, a)
	if echo != "" && a.State != assess.Unknown {
		text = sanitize.Line(echo)
	}
	t.say("Noted: %s.", text)
}

func (t *Talk) setHow(s assess.State) {
	t.how = s
	if a, has := t.Session.Notes.Answer(t.step.Asked()); has && a.State != assess.Unknown {
		a.State = s
		t.Session.Note(a)
	}
	t.say("Kept as %s.", s)
}

func (t *Talk) list() {
	if t.Keys {
		t.say("Type a number to go to that question.")
	}
	group := assess.Group("")
	for i, s := range t.Session.Steps() {
		if s.Question.Group != group {
			group = s.Question.Group
			t.say("%s", texts.GroupTitle(group))
		}
		t.say("%d. %s: %s", i+1, s.Name(), t.state(s))
	}
	if !t.Keys {
		t.say("Say go and a number to go to a question.")
	}
}

func (t *Talk) state(s assess.Step) string {
	if a, has := t.Session.Notes.Answer(s.Asked()); has {
		return texts.Said(s.Question, a)
	}
	if t.Session.Asked(s.Asked()) {
		return "asked, nothing noted"
	}
	return "not asked"
}

// soFar says what the notes mean so far, as the interview's panel does.
func (t *Talk) soFar() {
	p := report.SoFar(t.Session.Notes, t.Session.Offered)
	t.say("Needed so far: %s. What decides: %s.", p.Need, p.Critical)
	for _, f := range p.Flags {
		t.say("Look again: %s", f)
	}
}

func (t *Talk) help() {
	t.say("%s", t.step.Question.Why)
	if t.step.Question.Help != "" {
		t.say("%s", t.step.Question.Help)
	}
	t.say("A note is such as: %s", t.step.Question.Example)
}

func (t *Talk) leave() {
	t.stage = Left
	t.say("The practice was left before its mark, and is not counted.")
}
