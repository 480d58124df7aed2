package record

import (
	"bufio"
	"fmt"
	"io"
	"strconv"
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/sanitize"
	"cutbrief/report"
)

// Saver keeps a visit and says where.
type Saver interface {
	Save(v *assess.Visit) (path string, err error)
}

// Options are what a record is given. Visit and Saver are needed.
type Options struct {
	Visit *assess.Visit
	Bench report.Bench // the demonstration as planned
	Date  string       // the day it was held: 2026-11-25
	Rep   string       // offered as the owner of the next step
	Saver Saver
}

// Outcome says how the record ended.
type Outcome struct {
	Path     string // where it is kept, "" if nothing was noted
	InputEnd bool   // the input ended before the last question
	Unsaved  error  // why it is not saved, nil if it is
}

// session is one record being made.
type session struct {
	Options
	in      *bufio.Reader
	out     io.Writer
	showing *assess.Demonstration
	changed bool // since the last save
	kept    Outcome
	over    bool  // the input has ended, or the rep said quit
	ended   bool  // the input has ended
	err     error // of reading, other than its end
}

// Run asks what was shown and what came of it. Whatever is given is saved before the
// next question, so that no way of leaving loses it; the error is that of reading
// the input.
func Run(in io.Reader, out io.Writer, o Options) (Outcome, error) {
	before := len(o.Visit.Demonstrations)
	s := &session{Options: o, in: bufio.NewReader(in), out: out, showing: o.Visit.DemonstrationOn(o.Date)}
	s.say("The demonstration on %s. One line each; Enter leaves a line as it is,\nquit saves and leaves.", o.Date)
	s.cuts()
	s.afterwards()
	s.save()
	if s.kept.Path == "" && s.kept.Unsaved == nil && before < len(o.Visit.Demonstrations) {
		o.Visit.DropDemonstration(o.Date)
	}
	s.kept.InputEnd = s.ended
	return s.kept, s.err
}

// save keeps what was given since the last save; what could not be saved is tried
// again with the next.
func (s *session) save() {
	if s.changed {
		s.kept.Path, s.kept.Unsaved = s.Saver.Save(s.Visit)
		s.changed = s.kept.Unsaved != nil
	}
}

func (s *session) say(format string, args ...any) { fmt.Fprintf(s.out, format+"\n", args...) }

// ask puts a question, with what stands there now in brackets, and returns what
// was typed; "" leaves it as it is.
func (s *session) ask(question, now string) string {
	if s.over {
		return ""
	}
	s.save()
	if now != "" {
		question += " [" + now + "]"
	}
	fmt.Fprintf(s.out, "%s\n> ", question)
	line, err := s.in.ReadString('\n')
	if err != nil {
		s.over, s.ended = true, true
		if err != io.EOF {
			s.err = err
		}
	}
	line = sanitize.Line(line)
	if strings.EqualFold(line, "quit") {
		s.over = true
		return ""
	}
	return line
}

// keep stores a text in place of another, if one was typed.
func (s *session) keep(into *string, typed string) {
	if typed != "" && typed != *into {
		*into, s.changed = typed, true
	}
}

// choice is one word that can be answered, with what it stands for.
type choice struct{ id, text string }

// choose asks until one of some words is typed, in full, by its first letters or
// by its number; "" leaves it as it is.
func (s *session) choose(question, now string, choices []choice) string {
	for {
		typed := s.ask(question, now)
		if typed == "" {
			return ""
		}
		for i, c := range choices {
			if strings.HasPrefix(c.text, strings.ToLower(typed)) || c.id == typed || strconv.Itoa(i+1) == typed {
				return c.id
			}
		}
		var texts []string
		for _, c := range choices {
			texts = append(texts, c.text)
		}
		s.say("  %q is none of these: %s.", typed, strings.Join(texts, ", "))
	}
}
