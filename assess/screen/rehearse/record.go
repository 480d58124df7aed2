package rehearse

import (
	"errors"
	"io"
	"strconv"
	"strings"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/sanitize"
	"cutbrief/assess/screen"
	"cutbrief/report"
	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// Saver keeps a visit and says where.
type Saver interface {
	Save(v *assess.Visit) (path string, err error)
}

// RecordOptions are what a record is given. Visit and Saver are needed.
type RecordOptions struct {
	Visit *assess.Visit
	Bench report.Bench     // the demonstration as planned
	Date  string           // the day it was held: 2026-11-25
	Rep   string           // offered as the owner of the next step
	Words *message.Catalog // the language of the questions; nil for English
	Saver Saver
}

// RecordOutcome says how a record ended.
type RecordOutcome struct {
	Path     string // where it is kept, "" if nothing was noted
	InputEnd bool   // the input ended before the last question
	Unsaved  error  // why it is not saved, nil if it is
}

// record is one record being made, line by line.
type record struct {
	RecordOptions
	*screen.Lines
	held    *assess.Demonstration
	changed bool // since the last save
	kept    RecordOutcome
	over    bool // the input has ended, or the rep said quit
}

// Record asks what was shown and what came of it. Whatever is given is saved before
// the next question, so that no way of leaving loses it; the error is that of
// reading the input.
func Record(in io.Reader, out io.Writer, o RecordOptions) (RecordOutcome, error) {
	before := len(o.Visit.Demonstrations)
	r := &record{RecordOptions: o, Lines: screen.NewLines(in, out, o.Words), held: o.Visit.DemonstrationOn(o.Date)}
	r.Put("The demonstration on {1}. Answer on one line. An empty line changes nothing; quit saves and leaves.", message.Name(o.Date))
	r.cuts()
	r.afterwards()
	r.save()
	if r.kept.Path == "" && r.kept.Unsaved == nil && before < len(o.Visit.Demonstrations) {
		o.Visit.DropDemonstration(o.Date)
	}
	return r.kept, r.Err()
}

// save keeps what was given since the last save; what could not be saved is tried
// again with the next.
func (r *record) save() {
	if r.changed {
		r.kept.Path, r.kept.Unsaved = r.Saver.Save(r.Visit)
		r.changed = r.kept.Unsaved != nil
	}
}

// ask puts a question, with what is there now in brackets, and returns what was
// typed; "" leaves it as it is.
func (r *record) ask(question message.Message, now string) string {
	if r.over {
		return ""
	}
	r.save()
	if now != "" {
		question = message.New("{1} [{2}]", question, message.Name(now))
	}
	r.Say(question)
	line, more := r.Ask()
	if !more {
		r.over, r.kept.InputEnd = true, true
	}
	line = sanitize.Line(line)
	if strings.EqualFold(r.Lines.Words.Word(line), "quit") {
		r.over = true
		return ""
	}
	return line
}

// text asks for a text, and stores it in place of the present one.
func (r *record) text(into *string, question message.ID) {
	r.keep(into, r.ask(question.Message(), *into))
}

func (r *record) keep(into *string, typed string) {
	if typed != "" && typed != *into {
		*into, r.changed = typed, true
	}
}

// option is one of the answers to a question: what it is kept as, its words, and
// what they mean where one word says too little.
type option struct {
	id          string
	text, means message.ID
}

// choose asks until one of some answers is typed, by its first letters or by its
// number; "" leaves it as it is.
func (r *record) choose(question message.ID, now string, options []option) string {
	words := r.Lines.Words
	var texts, numbered []message.Message
	for i, o := range options {
		if o.id == now {
			now = words.Print(o.text.Message())
		}
		texts = append(texts, o.text.Message())
		text := o.text.Message()
		if o.means != "" {
			text = message.New("{1} ({2})", text, o.means)
		}
		numbered = append(numbered, message.New("{1} {2}", message.Name(strconv.Itoa(i+1)), text))
	}
	for {
		typed := r.ask(message.New("{1} {2}", question, message.Or(numbered...)), now)
		if typed == "" {
			return ""
		}
		for i, o := range options {
			if begins(words.Print(texts[i]), typed) || begins(o.id, typed) || begins(string(o.text), typed) || strconv.Itoa(i+1) == typed {
				return o.id
			}
		}
		r.Put("{1} is none of these: {2}.", message.Name(strconv.Quote(typed)), message.Join(", ", texts...))
	}
}

// begins reports whether a text begins with what is typed, in any case of letters.
func begins(text, typed string) bool {
	return strings.HasPrefix(strings.ToLower(text), strings.ToLower(typed))
}

const notShown = "not shown"

// grades are how a cut can have gone.
func grades() []option {
	return []option{{string(assess.Good), "good", ""}, {string(assess.Fair), "fair", ""}, {string(assess.Poor), "poor", ""}, {notShown, notShown, ""}}
}

// cuts asks after each cut of the plan.
func (r *record) cuts() {
	if r.Bench.SystemID != "" && len(r.held.Cuts) == 0 {
		r.held.System = r.Bench.SystemID
	}
	for i := range r.Bench.Steps {
		if !r.over {
			r.cut(i+1, &r.Bench.Steps[i])
		}
	}
}

func (r *record) cut(number int, step *report.Step) {
	c, known := r.held.Find(step.ID)
	now := notShown
	if known {
		now = string(c.Result)
	}
	r.Print("")
	r.Put("{1} of {2}. {3}: {4}", message.Count(number), message.Count(len(r.Bench.Steps)), message.Name(step.Cut), message.Name(step.Piece))
	typed := r.choose("How did it go?", now, grades())
	if typed == notShown && known {
		r.held.Drop(step.ID)
		r.changed = true
	}
	if typed == notShown || typed == "" && !known {
		return
	}
	if !known {
		c = step.Shown()
	}
	if typed != "" {
		c.Result = assess.Result(typed)
	}
	r.shown(c)
	r.text(&c.Why, "Why? In a few words")
	r.shown(c)
	if step.Timed {
		r.time(&c, step)
	}
}

// shown puts a cut into the record.
func (r *record) shown(c assess.ShownCut) {
	r.held.Keep(c)
	r.changed = true
}

// time asks for the length and the seconds, and says at once how they compare.
func (r *record) time(c *assess.ShownCut, step *report.Step) {
	if v, ok := r.quantity("How long was the cut?", written(c.Length, unit.Thickness, r.Bench.Style), unit.Thickness); ok {
		c.Length = unit.Known(unit.Millimetre(v))
		c.Predicted = step.For(unit.Millimetre(v))
		r.shown(*c)
	}
	if v, ok := r.quantity("How many seconds did it take?", written(c.Took, unit.Time, r.Bench.Style), unit.Time); ok {
		c.Took = unit.Known(unit.Second(v))
		r.shown(*c)
	}
	if m := report.Measured(*c, r.Bench.Style); !m.IsEmpty() {
		r.Put("It {1}.", m)
	}
}

// written is what is there now, "" if nothing is.
func written[T ~float64](m unit.Maybe[T], k unit.Kind, style unit.Style) string {
	v, known := m.Get()
	if !known {
		return ""
	}
	return unit.Show(unit.Quantity{Value: float64(v), Kind: k}, style, unit.Nearest)
}

// quantity asks until a figure above 0 is typed; false leaves it as it is.
func (r *record) quantity(question message.ID, now string, k unit.Kind) (float64, bool) {
	for {
		typed := r.ask(question.Message(), now)
		if typed == "" {
			return 0, false
		}
		read, err := unit.Read(r.Lines.Words.Answer(typed), k, r.Bench.Style, "")
		var refused *unit.ReadError
		switch {
		case err == nil && read.Quantity.Value > 0 && read.Quantity.Value <= assess.FigureMost:
			return read.Quantity.Value, true
		case errors.As(err, &refused):
			r.Say(message.New("{1} {2}; {3}.", message.Name(strconv.Quote(sanitize.Line(refused.Said))), refused.Wrong(), refused.Hint()))
		default:
			r.Put("A figure above 0 is needed.")
		}
	}
}

// afterwards asks what was said and what comes next.
func (r *record) afterwards() {
	if r.over {
		return
	}
	d := r.held
	r.Print("")
	r.text(&d.Words, "What did the customer say, in their own words?")
	r.objections()
	if typed := r.choose("How did it end?", string(d.Outcome), outcomes()); typed != "" {
		d.Outcome, r.changed = assess.Outcome(typed), true
	}
	r.against()
	r.text(&d.Because, "Why?")
	r.next()
}

func outcomes() []option {
	return []option{{string(assess.Ordered), "order", ""}, {string(assess.Quote), "quote", ""}, {string(assess.SecondVisit), "second visit", ""}, {string(assess.No), "no", ""}}
}

// against asks what weighed most where the outcome is no. It is counted over many
// visits, and so is one of few words.
func (r *record) against() {
	d := r.held
	if d.Outcome != assess.No {
		r.changed = r.changed || d.Against != ""
		d.Against = ""
		return
	}
	if typed := r.choose("What weighed most against it?", string(d.Against), reasons()); typed != "" {
		d.Against, r.changed = assess.Against(typed), true
	}
}

func reasons() []option {
	return []option{
		{string(assess.AgainstPrice), "price", ""}, {string(assess.AgainstHabit), "habit", "they keep today's way"},
		{string(assess.AgainstCut), "cut", "it did not convince"}, {string(assess.AgainstSite), "site", "supply, air, room"},
		{string(assess.AgainstElsewhere), "elsewhere", "they buy something else"}, {string(assess.AgainstLater), "later", "no money or time now"},
		{string(assess.AgainstOther), "other", ""},
	}
}

// objections asks for what spoke against it, until nothing more is typed.
func (r *record) objections() {
	d := r.held
	for _, o := range d.Objections {
		r.Put("Noted already: {1}. Answered: {2}.", message.Name(strings.TrimSuffix(o.Said, ".")), message.Name(strings.TrimSuffix(o.Answer, ".")))
	}
	for !r.over && len(d.Objections) < assess.ObjectionsMost {
		said := r.ask(message.New("What spoke against it? An empty line means nothing more"), "")
		if said == "" {
			return
		}
		d.Objections, r.changed = append(d.Objections, assess.Objection{Said: said}), true
		r.text(&d.Objections[len(d.Objections)-1].Answer, "What was the answer?")
	}
}

// next asks for the next step, its owner and its date.
func (r *record) next() {
	n := &r.held.Next
	r.text(&n.Step, "What is the next step?")
	if n.Step == "" {
		return
	}
	owner := n.Owner
	if owner == "" {
		owner = r.Rep
	}
	typed := r.ask(message.New("By whom?"), owner)
	if typed == "" && !r.over {
		typed = owner
	}
	r.keep(&n.Owner, typed)
	for {
		typed := r.ask(message.New("By when? Year, month and day"), n.Date)
		if _, err := time.Parse(time.DateOnly, typed); typed == "" || err == nil {
			r.keep(&n.Date, typed)
			return
		}
		r.Put("{1} is not a date; give it like 2026-11-25.", message.Name(strconv.Quote(typed)))
	}
}

// NotKept says what was measured and not kept, so that nothing is lost unseen;
// again is what to type to note it after all.
func NotKept(words *message.Catalog, cuts []assess.ShownCut, bench report.Bench, again message.Name) string {
	if len(cuts) == 0 {
		return words.Print(message.ID("Nothing was measured or noted.").Message()) + "\n"
	}
	lines := []string{words.Print(message.ID("Not kept in the visit:").Message())}
	for _, c := range cuts {
		cut := message.Join(" ", message.New("{1}:", message.ID(c.Name)), message.ID(c.Result).Message(), report.Measured(c, bench.Style))
		if c.Why != "" {
			cut = message.New("{1} ({2})", cut, message.Name(sanitize.Line(c.Why)))
		}
		lines = append(lines, "  "+words.Print(cut))
	}
	next := message.New("To note it after all: {1}", again)
	return strings.Join(append(lines, words.Print(next)), "\n") + "\n"
}
