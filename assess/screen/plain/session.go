package plain

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/sanitize"
	texts "cutbrief/assess/screen/words"
	"cutbrief/rules"
	"cutbrief/rules/message"
)

// session is one interview under way.
type session struct {
	Options
	lines
	out io.Writer

	course  assess.Course // which question comes next
	trail   []rules.Asked // those asked before, the last one last
	step    assess.Step
	how     map[assess.Step]assess.State // turned before there was an answer
	changed bool                         // since the last save
	outcome Outcome
}

// Run asks until the rep says quit or the input ends. Every answer is saved as
// it is taken; the error is that of reading the input.
func Run(in io.Reader, out io.Writer, o Options) (Outcome, error) {
	s := &session{Options: o, lines: lines{in: bufio.NewReader(in)}, out: out, how: map[assess.Step]assess.State{}}
	s.outcome.Path = o.Path
	s.say(welcome)
	next, open := s.course.First(s.Visit, s.soFar())
	if open {
		s.ask(next)
	} else {
		s.finish()
	}
	s.close()
	return s.outcome, s.ended()
}

const welcome = `cutbrief interview, in plain lines.
Answer each question on one line. These words work at every question:
back, help, not known, note followed by text, later (the rest of the group),
skip (leave it out), list, go followed by a number, clear, measured, assumed,
told, result, quit.
An empty line leaves the question open and goes on.`

// say prints a text in the words of the book.
func (s *session) say(format string, args ...any) {
	fmt.Fprintln(s.out, s.Words.Say(fmt.Sprintf(format, args...)))
}

// outside passes a text that is not ours through the gate and marks it, so that
// it is printed as it is.
func outside(text string) string { return message.Keep(sanitize.Line(text)) }

// ask asks from one step on, until the questions or the input are over.
func (s *session) ask(from assess.Step) {
	s.step = from
	again := true
	for {
		if again {
			s.question()
		}
		line, ok := s.next()
		if !ok {
			s.outcome.InputEnd = true
			return
		}
		w, rest := s.parse(line)
		if w == quit {
			return
		}
		var on move
		on, again = s.take(w, rest)
		if !s.move(on) {
			s.finish()
			return
		}
	}
}

// parse tells a word of the book from an answer. An answer stays as it was typed,
// also where it begins like a word.
func (s *session) parse(line string) (w word, rest string) {
	w, rest = parse(s.Words.Word(line))
	if _, named := s.elsewhere(rest); w == answer && !named {
		rest = strings.TrimSpace(line)
	}
	return w, rest
}

// move is where to go after a line.
type move int

const (
	stay move = iota
	ahead
	behind
	pastGroup
	outOfGroup
	toResult
)

// take does what a line asks for; again is whether the question is to be
// printed again.
func (s *session) take(w word, rest string) (on move, again bool) {
	switch w {
	case nothing:
		return s.takeNothing(), true
	case back:
		if len(s.trail) == 0 && s.place() == 0 {
			s.say("This is the first question. Say quit to leave.")
			return stay, false
		}
		return behind, true
	case help:
		s.help()
	case list:
		s.list()
	case goTo:
		return stay, s.jump(rest)
	case unknown:
		s.keep(assess.NotKnown(s.step))
		return ahead, true
	case note:
		s.note(rest)
	case how:
		s.setHow(assess.State(rest))
	case clear:
		s.clear()
	case later:
		return pastGroup, true
	case skip:
		return outOfGroup, true
	case result:
		return toResult, true
	default:
		if place, named := s.elsewhere(rest); named {
			s.keepIn(place)
			return stay, true
		}
		if s.answer(rest) {
			return ahead, true
		}
	}
	return stay, false
}

// takeNothing is an empty line: it takes what is suggested, else leaves the
// question as it is.
func (s *session) takeNothing() move {
	if _, has := s.Visit.Answer(s.step.Asked()); has {
		return ahead
	}
	if usual := s.Suggest[s.step.Question.ID]; usual != "" {
		s.answer(usual)
		return ahead
	}
	s.say("Left open.")
	return ahead
}

// answer takes a line as the answer; false if it has to be asked again.
func (s *session) answer(line string) bool {
	if o, offered := s.Visit.Offered(s.step); offered && line == "=" {
		s.say("Taken: %s", texts.SaidSo(s.step.Question, o.Text()))
		s.keep(s.turned(o.Answer))
		return true
	}
	a, echo, err := s.read(line)
	if err != nil {
		complaint := texts.Complained(err)
		s.say("Not taken: %s.", complaint[0])
		for _, hint := range complaint[1:] {
			s.say("Hint: %s.", hint)
		}
		fmt.Fprint(s.out, "> ")
		return false
	}
	if echo != "" {
		s.say("Understood: %s", outside(s.Words.Say(echo)))
	}
	s.keep(s.turned(a))
	return true
}

// turned is an answer as the rep said beforehand that it is known.
func (s *session) turned(a assess.Answer) assess.Answer {
	if h, said := s.how[s.step]; said && a.State == assess.Told {
		a.State = h
	}
	return a
}

// read checks a line as the answer to the step.
func (s *session) read(line string) (assess.Answer, string, error) {
	switch s.step.Question.Form {
	case assess.FormOne, assess.FormSeveral:
		a, err := s.Visit.Choose(s.step, texts.Choices(texts.In(s.Words, s.Visit.Options(s.step)), line))
		return a, "", err
	case assess.FormLong:
		a, echo, err := s.Visit.Read(s.step, s.text(line))
		return a, echo.String(), err
	case assess.FormQuantity:
		line = s.Words.Answer(line)
	}
	a, echo, err := s.Visit.Read(s.step, line)
	return a, echo.String(), err
}

// keep stores an answer beside the note there is already, and saves.
func (s *session) keep(a assess.Answer) {
	if old, has := s.Visit.Answer(a.Asked()); has && a.Note == "" {
		a.Note = old.Note
	}
	s.Visit.Set(a)
	s.save()
}

func (s *session) save() {
	s.changed = true
	path, err := s.Saver.Save(s.Visit)
	s.outcome.Unsaved = err
	if err != nil {
		s.say("Not saved: %s. The answers are kept while this runs; the next one tries again.", outside(err.Error()))
		if _, able := s.Saver.(Mover); able {
			s.say("For another place say save in, and a folder or the name of a new file.")
		}
		return
	}
	s.changed, s.outcome.Path = false, path
}

// close saves what no save has reached, and says how it ended.
func (s *session) close() {
	if s.changed {
		s.save()
	}
	s.outcome.Open = s.Visit.Open()
	s.outcome.Finished = s.outcome.Open == 0
	if !s.outcome.InputEnd {
		return
	}
	if s.outcome.Path == "" {
		s.say("\nThe input has ended. Nothing was answered, so nothing is saved.")
		return
	}
	if s.outcome.Unsaved == nil {
		s.say("\nThe input has ended. All answers taken are saved in %s.", outside(s.outcome.Path))
	}
}
