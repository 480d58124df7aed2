package practice

import (
	"io"
	"strconv"
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/assess/sanitize"
	"cutbrief/assess/screen"
	"cutbrief/rules/message"
)

// Lines holds the practice line by line until the trainee leaves or the input
// ends. marked is false if it ended before the mark; the error is that of reading
// the input.
func Lines(in io.Reader, out io.Writer, s *casebook.Session, words *message.Catalog) (m casebook.Mark, isMarked bool, err error) {
	d := newDialogue(s, words)
	d.typed = true
	d.welcome()
	lines := screen.NewLines(in, out, words)
	for {
		for _, line := range d.said() {
			lines.Print(line)
		}
		if d.stage == left {
			break
		}
		line, more := lines.Ask()
		if !more {
			lines.Print("")
			if d.stage != marked {
				lines.Put("The input has ended before the mark. The practice is not counted.")
			}
			break
		}
		d.line(line)
	}
	return d.mark, d.mark.Customer != nil, lines.Err()
}

// welcome says how it works, who the customer is, and what they say.
func (d *dialogue) welcome() {
	c := d.session.Customer
	wrap := func(id message.ID) { d.out = append(d.out, screen.Wrap(d.words.Print(id.Message()), 80)...) }
	wrap("Practice, in plain lines. This customer is invented, and so is every figure.")
	wrap("Ask, listen, and note what you understood; the notes are those of a real interview.")
	wrap("These cost the customer's time, in minutes:")
	for _, a := range acts {
		d.say("- {1} {2}: {3}", a.word, message.Name(strconv.Itoa(a.act.Minutes())), a.says)
	}
	wrap("These cost none: a note (type the answer itself), not known, measured, clear, next or an empty line, back, go and a number, list, so far, help, quit.")
	wrap("Type done when you know enough.")
	d.print("")
	d.say("{1}. Time: {2} minutes.", message.Name(c.Company()), message.Name(strconv.Itoa(c.Minutes)))
	d.greet()
	d.question()
}

// acts are what can be done with the customer.
var acts = []struct {
	act  casebook.Act
	word message.ID
	says message.ID
	key  string
}{
	{casebook.Ask, "ask", "ask the question", "ctrl+a"},
	{casebook.Again, "again", "ask for a figure or a better answer", "ctrl+f"},
	{casebook.Repeat, "repeat", "read your note back", "ctrl+k"},
	{casebook.Explain, "explain", "explain what the question means", "ctrl+x"},
	{casebook.Measure, "measure", "hold a caliper to the piece", "ctrl+e"},
	{casebook.Plate, "plate", "read the compressor's plate", "ctrl+p"},
	{casebook.Breaker, "breaker", "look at the breaker", "ctrl+b"},
}

// question shows the step, how it can be noted, and the note there is.
func (d *dialogue) question() {
	at, of := d.step.PlaceInGroup(d.session.Steps())
	d.print("")
	d.say("{1}, {2} of {3}. {4}", d.step.Question.Group.Title(), message.Count(at), message.Count(of), message.Counted(d.session.Left, "{1} minute left.", "{1} minutes left."))
	d.tell(d.step.Text())
	d.list(d.options())
	if a, has := d.session.Notes.Answer(d.step.Asked()); has {
		d.say("Noted: {1}.", d.step.Question.Shown(a))
	}
}

// command is what a line asks for, if it is no note.
type command struct {
	word message.ID // as typed, in any capitals, in English or in the words of the catalog
	do   func()
}

// commands are those of the present stage.
func (d *dialogue) commands() []command {
	quit := command{"quit", d.leave}
	switch d.stage {
	case deciding:
		return []command{quit, {"back", func() {
			if d.stepBack(); d.stage == talking {
				d.question()
			}
		}}}
	case marked:
		return []command{quit, {"why", d.why}, {"page", d.page}, {"done", d.leave}}
	}
	move := func(by int) func() {
		return func() {
			if d.move(by) {
				d.question()
			}
		}
	}
	list := []command{
		quit, {"next", move(1)}, {"", move(1)}, {"back", move(-1)}, {"help", d.help}, {"?", d.help}, {"list", d.listAll}, {"so far", d.soFar},
		{"not known", d.notKnown}, {"-", d.notKnown}, {"done", func() { d.conclude(0) }},
		{"clear", func() {
			d.session.Notes.Clear(d.step.Asked())
			d.say("The note is removed.")
		}},
	}
	for _, a := range acts {
		list = append(list, command{a.word, func() { d.act(a.act) }})
	}
	for _, s := range []assess.State{assess.Told, assess.Measured, assess.Assumed} {
		list = append(list, command{message.ID(s), func() { d.knownAs(s) }})
	}
	return list
}

// isWord reports whether something typed is a word, in English or as it is called in
// the catalog.
func (d *dialogue) isWord(typed string, word message.ID) bool {
	return strings.EqualFold(typed, string(word)) || strings.EqualFold(typed, d.words.Print(word.Message()))
}

// line takes one line.
func (d *dialogue) line(line string) {
	line = strings.TrimSpace(line)
	for _, c := range d.commands() {
		if d.isWord(line, c.word) {
			c.do()
			return
		}
	}
	first, rest, _ := strings.Cut(line, " ")
	switch {
	case d.stage == deciding:
		d.decide(line)
	case d.stage == marked:
	case d.isWord(first, "go"):
		d.jump(strings.TrimSpace(rest))
	default:
		d.note(line)
	}
	if d.stage == marked && d.typed {
		d.say("Type why for how the right answer is derived, page for this page again, or quit.")
	}
}

func (d *dialogue) jump(number string) {
	if n, _ := strconv.Atoi(number); !d.goTo(n - 1) {
		d.say("There is no question {1}. Type list to see their numbers.", message.Name(sanitize.Line(number)))
	} else if d.typed {
		d.question()
	}
}

// soFar says what the notes mean so far, as the interview's panel does.
func (d *dialogue) soFar() {
	p := d.panel()
	d.say("Capacity needed so far: {1}. Deciding requirement: {2}.", message.Name(p.Need), message.Name(p.Critical))
	for _, f := range p.Flags {
		d.say("Check these answers: {1}", message.Name(f))
	}
}

func (d *dialogue) help() {
	q := d.step.Question
	d.tell(q.Why.Message())
	if q.Help != "" {
		d.tell(q.Help.Message())
	}
	d.say("A note is such as: {1}", q.Example)
}
