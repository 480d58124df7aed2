package main

import (
	"errors"
	"io"
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/screen"
	"cutbrief/assess/store"
	"cutbrief/report"
	"cutbrief/report/export"
	"cutbrief/report/text"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
	"cutbrief/rules/tabular"
	"cutbrief/rules/unit"
)

// openVisit reads the visit in a file, or on standard input for "-", and reports
// on standard error what it did not know.
func (c *call) openVisit(file string) (*assess.Visit, error) {
	v, unknown, err := c.load(file)
	if err != nil {
		return nil, message.WithHint(err, "{1}", store.LoadHint(err))
	}
	c.noteUnknown(file, unknown)
	return v, nil
}

func (c *call) noteUnknown(file string, unknown []string) {
	if len(unknown) > 0 {
		note := message.New("note: {1} has fields this version does not know; they stay as they are: {2}", message.Name(file), message.Name(strings.Join(unknown, ", ")))
		io.WriteString(c.err, tidy(c.helpWords().Print(note))+"\n")
	}
}

// load reads a visit; every error names where it came from.
func (c *call) load(file string) (*assess.Visit, []string, error) {
	if file != "-" {
		v, unknown, err := store.Load(file)
		if cause := store.Cause(err); cause != err {
			err = message.Errorf("read {1}: {2}", message.Name(file), cause)
		}
		return v, unknown, err
	}
	ctx, stop := untilInterrupted()
	defer stop()
	data, err := io.ReadAll(io.LimitReader(screen.UntilDone(ctx, c.in), assess.MaxSize+1))
	switch {
	case ctx.Err() != nil:
		return nil, nil, errInterrupted
	case err != nil:
		return nil, nil, message.Errorf("standard input: {1}", err)
	}
	v, unknown, err := assess.Decode(data)
	if err != nil {
		err = message.Errorf("standard input: {1}", err)
	}
	return v, unknown, err
}

// readVisit reads a visit for a page. What it says but cannot mean is refused: a
// page with a hole where an answer was would mislead.
func (c *call) readVisit(file string) (*assess.Visit, error) {
	v, err := c.openVisit(file)
	if err != nil {
		return nil, err
	}
	_, problems := v.Job()
	if len(problems) == 0 {
		return v, nil
	}
	err = message.Errorf("{1}: {2}", message.Name(file), problems[0].Text)
	if n := len(problems) - 1; n > 0 {
		err = message.Errorf("{1} (and {2} more)", err, message.Count(n))
	}
	return nil, message.WithHint(err, "correct it in the file, or answer anew with: cutbrief interview {1}", shellName(file))
}

// subject is what commands about visits work with: the lists in use, and the
// words and units of what they print.
type subject struct {
	offered system.Range
	options report.Options
}

func (c *call) subject(f export.Format) (s subject, err error) {
	if c.flags.Lookup("units") != nil && c.text("units") != "" {
		s.options.Style, _ = unit.ParseStyle(c.text("units")) // the flag was checked
	}
	for _, extra := range c.list("with") {
		s.options.Add(normal(extra))
	}
	if s.offered, err = c.systems(); err != nil {
		return s, err
	}
	if s.options.Prices, err = c.prices(); err != nil {
		return s, err
	}
	s.options.Words, err = c.wordsFor(f)
	return s, err
}

// about is subject, and the visit that the first argument names.
func (c *call) about(f export.Format) (s subject, v *assess.Visit, err error) {
	if s, err = c.subject(f); err == nil {
		v, err = c.readVisit(c.args[0])
	}
	return s, v, err
}

func isStyle(s string) bool {
	_, err := unit.ParseStyle(s)
	return err == nil
}

// document is what a command says about a visit, in the formats it can be had in.
type document struct {
	text func(width int) string
	json func() ([]byte, error)
	csv  func() ([]byte, error)
	book func() []tabular.Table
}

// showing is a command that works something out about a visit and shows it. A
// workbook is called after the command.
func showing(about func(*call, *assess.Visit, subject) (document, error)) func(*call) error {
	return func(c *call) error {
		if err := c.onlyBook(); err != nil {
			return err
		}
		s, v, err := c.about(c.form())
		if err != nil {
			return err
		}
		d, err := about(c, v, s)
		if err != nil {
			return err
		}
		return c.show(d)
	}
}

// show writes a document in the format asked for.
func (c *call) show(d document) error {
	switch c.form() {
	case export.FormatJSON:
		return c.putData(d.json())
	case export.FormatCSV:
		return c.putData(d.csv())
	case export.FormatWorkbook:
		return c.deliverBook(c.row.Name()+".xlsx", d.book()...)
	}
	return c.put(d.text(c.form().Width()))
}

// costOf is what cutting costs.
func costOf(_ *call, v *assess.Visit, s subject) (document, error) {
	sheet := report.Costs(v, s.offered, s.options)
	return document{
		text: func(width int) string { return text.CostSheet(sheet, width) },
		json: func() ([]byte, error) { return export.CostSheet(sheet) },
		csv:  func() ([]byte, error) { return export.CostCSV(sheet) },
		book: func() []tabular.Table { return export.CostTables(sheet) },
	}, nil
}

// comparisonOf is systems side by side.
func comparisonOf(c *call, v *assess.Visit, s subject) (document, error) {
	beside, err := report.Compare(v, s.offered, s.options, c.list("only"))
	if unknown, is := errors.AsType[*report.UnknownSystemError](err); is {
		err = misuse(message.New("its systems: {1}", message.Name(strings.Join(s.offered.IDs(), ", "))), "the range has no system {1}", message.Name(strings.Join(unknown.IDs, ", ")))
	}
	return document{
		text: func(width int) string { return text.Comparison(beside, width) },
		json: func() ([]byte, error) { return export.JSON(beside) },
		book: func() []tabular.Table {
			inOurs := s.options
			inOurs.Words = nil
			plain, _ := report.Compare(v, s.offered, inOurs, c.list("only")) // as it was above
			return export.ComparisonTables(plain, beside)
		},
	}, err
}

// derivationOf is how everything follows, or one topic.
func derivationOf(c *call, v *assess.Visit, s subject) (document, error) {
	list, err := reasons(c.arg(1), v, s)
	return document{
		text: func(width int) string { return text.Why(s.options.Words, list, width) },
		json: func() ([]byte, error) { return export.List(list) },
	}, err
}

// reasons derives everything, or one topic.
func reasons(topic string, v *assess.Visit, s subject) ([]report.Reason, error) {
	if topic == "" {
		return report.Why(v, s.offered, s.options), nil
	}
	one, here := report.About(v, s.offered, s.options, topic)
	switch {
	case one == nil && report.IsTopic(topic):
		return nil, message.WithHint(message.Errorf("{1} does not matter in this visit", message.Name(topic)), "topics here: {1}", message.Name(strings.Join(here, ", ")))
	case one == nil:
		return nil, misuse(oneOf(here), "{1} is not a topic", quoted(topic))
	}
	return one, nil
}

// questionsOf is what is open and could change the recommendation.
func questionsOf(_ *call, v *assess.Visit, s subject) (document, error) {
	lines := report.Next(s.options.Words, v, s.offered)
	return document{
		text: func(width int) string { return text.Next(s.options.Words, lines, width) },
		json: func() ([]byte, error) { return export.List(lines) },
	}, nil
}

// redact writes a copy that names nobody.
func redact(c *call) error {
	v, err := c.readVisit(c.args[0])
	if err != nil {
		return err
	}
	copied, err := assess.Redact(v, c.newID()).Encode()
	if err != nil {
		return message.WithHint(err, "shorten the visit")
	}
	return c.deliver(output{c.text("out"), copied})
}

// followUp writes the letters or the calendar of some visits. Nothing is written
// before everything is made.
func followUp(c *call) error {
	s, err := c.subject(c.form())
	if err != nil {
		return err
	}
	var list []report.FollowUp
	for _, file := range c.args {
		v, err := c.readVisit(file)
		if err != nil {
			return err
		}
		f, err := report.Follow(v, s.offered, report.Options{Words: s.options.Words})
		if err != nil {
			return message.WithHint(message.Errorf("{1}: {2}", message.Name(file), err), "record it with: cutbrief record {1}", shellName(file))
		}
		list = append(list, f)
	}
	if c.form() == export.FormatText {
		return c.deliver(output{c.text("out"), []byte(text.Letters(list, text.DefaultWidth))})
	}
	calendar, err := export.Calendar(list)
	if at, is := errors.AsType[*export.CalendarError](err); is {
		file := c.args[at.Entry]
		if errors.Is(err, export.ErrTwice) {
			return misuse(message.ID("name one of them").Message(), "{1} and {2} hold the same visit", message.Name(c.args[at.Other]), message.Name(file))
		}
		return message.WithHint(message.Errorf("{1}: {2}", message.Name(file), at.Err), at.Hint(), shellName(file))
	}
	if err != nil {
		return err
	}
	return c.deliver(output{c.text("out"), calendar})
}
