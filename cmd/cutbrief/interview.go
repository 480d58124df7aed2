package main

import (
	"cmp"
	"os"
	"strings"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/screen"
	"cutbrief/assess/screen/interview"
	"cutbrief/assess/screen/rehearse"
	"cutbrief/assess/store"
	"cutbrief/report"
	"cutbrief/report/export"
	"cutbrief/report/pdf"
	"cutbrief/report/text"
	"cutbrief/rules"
	"cutbrief/rules/message"
)

var interviewFlags = []option{
	{name: "plain", value: false, usage: "ask line by line, without drawing a screen"},
	paperFlag,
	{name: "dir", value: "", usage: "`folder` that new visits are kept in (default: CUTBRIEF_DIR, else in your data folder)"},
	{name: "learn-from", value: "", usage: "`folder` of visits whose answers are counted to order the questions (default: the one named in learn-from.txt in your configuration folder)"},
}

// holdInterview runs one interview from the first question to the farewell.
func holdInterview(c *call) error {
	about, err := c.subject(export.FormatText)
	if err != nil {
		return err
	}
	s, err := c.openSession(c.arg(0))
	if err != nil {
		return err
	}
	s.Range, s.Watch = about.offered, assess.NewStopwatch(s.Visit, c.now())
	if c.arg(0) == "" {
		if lines := s.Folder.Unfinished(); lines != nil {
			if err := c.putLines(append(lines, message.Message{})); err != nil {
				return err
			}
		}
	}
	usual, learned, err := c.learn()
	if err != nil {
		return err
	}
	ctx, stop := untilInterrupted()
	defer stop()
	plain := c.on("plain") || c.wantsPlain()
	o := interview.Options{
		Visit: s.Visit, Range: s.Range, Prices: about.options.Prices, Path: s.SavedAt(), Suggest: c.suggest(s.Folder, !plain || isTerminal(c.in)),
		Saver: s, Pager: &pager{about: about, paper: c.choice("paper"), path: func() string { return s.Path }}, Words: about.options.Words, Input: c.in, Output: c.out,
		InOrder: !isTerminal(c.in), Usual: usual, Learned: learned,
	}
	if plain {
		o.Input = screen.UntilDone(ctx, c.in) // an interrupt leaves the interview like the end of the input
		return c.holdPlain(s, o)
	}
	end, err := interview.Run(ctx, o)
	if err != nil {
		return message.WithHint(message.Errorf("draw the interview: {1}", err), "try cutbrief interview --plain")
	}
	return c.farewell(s, end.Open, end.Unkept, end.Unsaved)
}

// learnFrom is the file in the configuration folder that names the folder to learn
// from, where the flag names none.
const learnFrom = "learn-from.txt"

// learn counts the answers of a folder of visits, which then order the questions;
// learned says so. Without a folder nothing is learned.
func (c *call) learn() (usual assess.Priors, learned message.Message, err error) {
	dir := c.text("learn-from")
	if dir == "" {
		path, _ := c.files().Find(store.ConfigFolder, learnFrom)
		data, err := os.ReadFile(path)
		if dir = strings.TrimSpace(string(data)); err != nil || dir == "" {
			return nil, learned, nil
		}
	}
	return store.Learn(dir)
}

// openSession finds the visit to go on with, or begins one. It creates nothing.
func (c *call) openSession(file string) (*store.Session, error) {
	begin := func() *assess.Visit { return assess.New(c.newID(), c.now()) }
	s := &store.Session{}
	switch file {
	case "-":
		return nil, misuse(message.ID("name one, or leave it out for a new visit").Message(), "an interview needs a file to keep the draft in")
	case "":
		dir, err := c.files().Visits(c.text("dir"))
		if err != nil {
			return nil, err
		}
		s = &store.Session{Visit: begin(), Folder: store.Folder{Dir: dir}}
	default:
		var unknown []string
		var err error
		s, unknown, err = store.Open(file, begin)
		if err != nil {
			return nil, message.WithHint(err, "{1}", store.LoadHint(err))
		}
		c.noteUnknown(file, unknown)
	}
	s.Now, s.Home = c.now, c.getenv("HOME")
	return s, nil
}

// suggest is what is typed in beforehand: today's date and, where a person
// answers, what is usual in the folder. Nothing of it is an answer before the rep
// accepts it. What a script says must not hang on what lies in a folder.
func (c *call) suggest(folder store.Folder, person bool) map[rules.Fact]string {
	list := map[rules.Fact]string{}
	if person {
		list = folder.Usual()
	}
	list[assess.FactDate] = c.now().Format(time.DateOnly)
	return list
}

// pager makes the pages of an interview in the current folder. A page made
// earlier in the same interview is written over, anything else is not.
type pager struct {
	about subject
	paper string
	path  func() string // of the visit
	page  string        // made last
}

// Page makes the page and says where it is.
func (p *pager) Page(v *assess.Visit) (string, error) {
	made, err := pdf.Render(report.Build(v, p.about.offered, p.about.options), pdf.Paper(p.paper))
	switch path := p.path(); {
	case err != nil:
		return "", err
	case p.page != "":
		return p.page, store.WriteFile(p.page, made, true)
	case path != "":
		p.page, err = store.WriteNext(export.NameAfter(path, export.FormatPDF), made)
	default:
		p.page, err = store.WriteNext("brief.pdf", made)
	}
	return p.page, err
}

// holdPlain asks line by line.
func (c *call) holdPlain(s *store.Session, o interview.Options) error {
	end, err := interview.RunLines(o)
	if err != nil {
		return message.WithHint(message.Errorf("read the answers: {1}", err), "what was answered is saved; go on with: cutbrief interview {1}", shellName(s.SavedAt()))
	}
	if end.InputEnd && end.Unsaved == nil {
		_, next := store.WhereItIs(end.Path, end.Open)
		return c.putLines([]message.Message{next}) // the rest was said when the input ended
	}
	// The prompt is still open where the answers come from a pipe.
	if err := c.put("\n"); err != nil {
		return err
	}
	return c.farewell(s, end.Open, nil, end.Unsaved)
}

// farewell says goodbye, and what could not be kept. Leaving is no error.
func (c *call) farewell(s *store.Session, open int, unkept []string, unsaved error) error {
	lines, err := s.Farewell(open, unkept, unsaved)
	return cmp.Or(c.putLines(lines), err)
}

// holdRehearsal runs the demonstration of a visit, or prints it.
func holdRehearsal(c *call) error {
	s, bench, err := c.atBench(export.FormatText)
	if err != nil {
		return err
	}
	file := message.Name(s.Path)
	switch {
	case len(bench.Steps) == 0 && bench.System == "":
		return message.WithHint(message.Errorf("{1}: nothing to show: {2}", file, message.Worded(bench.Headline)), "what is missing: cutbrief next {1}", shellName(s.Path))
	case len(bench.Steps) == 0:
		return message.WithHint(message.Errorf("{1}: no cut fits the time given", file), "give the demonstration more time: cutbrief interview {1}", shellName(s.Path))
	case c.on("plain") || c.wantsPlain():
		return c.put(text.Bench(bench, text.DefaultWidth))
	}
	ctx, stop := untilInterrupted()
	defer stop()
	end, err := rehearse.Run(ctx, rehearse.Options{Bench: bench, Words: bench.Words, Now: c.now, Input: c.in, Output: c.out})
	if err != nil {
		return message.WithHint(message.Errorf("draw the demonstration: {1}", err), "try cutbrief rehearse --plain {1}", shellName(s.Path))
	}
	if !end.Keep || len(end.Cuts) == 0 {
		return c.putWords(func(words *message.Catalog) string {
			return rehearse.NotKept(words, end.Cuts, bench, "cutbrief record "+shellName(s.Path))
		})
	}
	day := c.now().Format(time.DateOnly)
	showing := s.Visit.DemonstrationOn(day)
	showing.System = bench.SystemID
	for _, cut := range end.Cuts {
		showing.Keep(cut)
	}
	if _, err := s.Save(s.Visit); err != nil {
		return message.WithHint(message.Errorf("what was measured is not saved: {1}", err), "make the file writable, then note it with: cutbrief record {1}", shellName(s.Path))
	}
	return c.askRecord(s, bench, day)
}

// atBench reads the visit to demonstrate to, in the words of a format.
func (c *call) atBench(f export.Format) (*store.Session, report.Bench, error) {
	about, v, err := c.about(f)
	if err != nil {
		return nil, report.Bench{}, err
	}
	s := &store.Session{Visit: v, Path: c.args[0], Saved: true, Range: about.offered, Now: c.now, Home: c.getenv("HOME")}
	return s, report.AtBench(v, about.offered, report.Options{Words: about.options.Words}), nil
}

// holdRecord asks what was shown on a day and what came of it.
func holdRecord(c *call) error {
	day := c.text("date")
	if day == "" {
		day = c.now().Format(time.DateOnly)
	}
	if _, err := time.Parse(time.DateOnly, day); err != nil {
		return misuse(message.ID("year, month and day, such as 2026-12-01").Message(), "--date {1} is not a day", quoted(day))
	}
	s, bench, err := c.atBench(export.FormatText)
	if err != nil {
		return err
	}
	return c.askRecord(s, bench, day)
}

// askRecord runs the questions of a record and says where the answers are.
func (c *call) askRecord(s *store.Session, bench report.Bench, day string) error {
	ctx, stop := untilInterrupted()
	defer stop()
	rep, _ := s.Visit.Answer(rules.Asked{Fact: assess.FactRep})
	words, err := c.words()
	if err != nil {
		return err
	}
	end, err := rehearse.Record(screen.UntilDone(ctx, c.in), c.out, rehearse.RecordOptions{Visit: s.Visit, Bench: bench, Date: day, Rep: tidy(rep.Said), Words: words, Saver: s})
	switch {
	case err != nil:
		return message.WithHint(message.Errorf("read the answers: {1}", err), "what was given is saved; go on with: cutbrief record {1}", shellName(s.Path))
	case end.Unsaved != nil:
		return message.WithHint(message.Errorf("the record is not saved: {1}", end.Unsaved), "make the file writable, then note it again")
	}
	return cmp.Or(c.put("\n"), c.putLines(store.WhereRecordIs(end.Path)))
}
