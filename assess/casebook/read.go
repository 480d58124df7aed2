package casebook

import (
	"bytes"
	_ "embed"
	"errors"
	"io"
	"slices"
	"strconv"
	"strings"
	"time"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/tabular"
)

// The built-in cases, all in the made-up Velmoor district: every firm, person
// and figure is invented for the demo.
//
//go:embed cases.txt
var casesText []byte

//go:embed template.txt
var templateText string

// Cases returns the built-in cases, the easiest first, new each time.
func Cases() []Customer {
	list, _ := Read(bytes.NewReader(casesText)) // a test holds it to no finding
	for i := range list {
		list[i].ours = true
	}
	return list
}

// Names are those of the built-in cases.
func Names() (names []string) {
	for _, c := range Cases() {
		names = append(names, c.Name)
	}
	return names
}

// Template is a file of one case to start from, with its format explained.
func Template() string { return templateText }

// Limits of a case. They keep a slip of the keys from making a practice that
// nobody can end.
const (
	levelMost   = 5
	minutesMost = 180
	casesMost   = 200
)

// Read reads cases from a file of "name: value" lines; Template describes it.
// A case with an error is left out. It never fails as a whole but by a finding.
func Read(r io.Reader) ([]Customer, []tabular.Finding) {
	text, err := tabular.Load(r)
	if err != nil {
		return nil, []tabular.Finding{{Severity: tabular.Error, Problem: message.Of(err)}}
	}
	f := &reader{names: map[string]bool{}}
	for i, line := range strings.Split(text, "\n") {
		f.line(i+1, strings.TrimSpace(line))
	}
	f.end()
	if len(f.customers) == 0 && len(f.findings) == 0 {
		f.fault(entry{}, message.New("holds no case"), message.New("a line such as case: bench-top"))
	}
	return f.customers, f.findings
}

// reader is a file while it is read.
type reader struct {
	customers []Customer
	findings  []tabular.Finding
	names     map[string]bool
	now       *draft
}

// draft is a case while it is read: answers wait until all of it is there, as
// one depends on another.
type draft struct {
	Customer
	about  map[string][]entry // by the word they begin with; "" for true answers
	seen   map[string]bool    // keys, as written
	faulty bool
}

// entry is one line.
type entry struct {
	line  int
	key   string // as written
	asked rules.Asked
	value string
}

func (r *reader) fault(e entry, problem, accepted message.Message) {
	f := tabular.Finding{Line: e.line, Column: e.key, Severity: tabular.Error, Problem: problem, Accepted: accepted}
	if r.now != nil {
		f.Row, r.now.faulty = r.now.Name, true
	}
	r.findings = append(r.findings, f)
}

// line takes one line.
func (r *reader) line(n int, line string) {
	if tabular.Skipped(line) {
		return
	}
	key, value, ok := strings.Cut(line, ":")
	e := entry{line: n, key: spaced(key), value: strings.TrimSpace(value)}
	flaw := tabular.Flaw(line)
	switch {
	case !flaw.IsEmpty():
		r.fault(entry{line: n}, flaw, message.New("plain text of at most 300 characters a line"))
	case !ok:
		r.fault(entry{line: n}, message.New("{1} is no line of a case", message.Name(tabular.Quoted(line))), message.New("name: value, such as level: 2"))
	case e.value == "":
		r.fault(e, message.New("has no value"), message.New("a value behind the colon; leave the line out if the customer does not know"))
	case e.key == "case":
		r.begin(e)
	case r.now == nil:
		r.fault(e, message.New("stands before the first case"), message.New("a line such as case: bench-top"))
	default:
		r.take(e)
	}
}

// spaced is a key in small letters with one space between its words.
func spaced(key string) string { return strings.Join(strings.Fields(strings.ToLower(key)), " ") }

// begin begins a case.
func (r *reader) begin(e entry) {
	r.end()
	if len(r.customers) >= casesMost {
		r.fault(e, message.New("is more than {1} in one file", message.Count(casesMost)), message.New("a second file"))
		return
	}
	r.now = &draft{about: map[string][]entry{}, seen: map[string]bool{}, Customer: Customer{Line: e.line, Name: e.value}}
	switch {
	case !isName(e.value):
		r.fault(e, message.New("{1} is no name", message.Name(tabular.Quoted(e.value))), message.New("small letters, figures and dashes, such as bench-top"))
	case r.names[e.value]:
		r.fault(e, message.New("has the name of a case above"), message.New("another name"))
	}
	r.names[e.value] = true
}

func isName(s string) bool {
	return len(s) > 0 && len(s) <= 40 && strings.Trim(s, "abcdefghijklmnopqrstuvwxyz0123456789-") == "" && s[0] != '-'
}

// take takes a line within a case.
func (r *reader) take(e entry) {
	d := r.now
	if d.seen[e.key] && e.key != "unclear" {
		r.fault(e, message.New("stands in this case already"), message.New("one line for each"))
		return
	}
	d.seen[e.key] = true
	switch e.key {
	case "level":
		d.Level = r.whole(e, levelMost)
	case "minutes":
		d.Minutes = r.whole(e, minutesMost)
	case "manner":
		if d.Manner = Manner(strings.ToLower(e.value)); !d.Manner.known() {
			r.fault(e, message.New("{1} is no manner of speaking", message.Name(tabular.Quoted(e.value))), message.New("one of {1}", message.Name(mannerNames())))
		}
	case "opening":
		d.Opening = e.value
	case "unclear":
		for _, part := range strings.Split(e.value, ",") {
			r.about(entry{line: e.line, key: "unclear", value: spaced(part)}, "unclear", spaced(part))
		}
	default: // about a question: what is true, what is first heard of it, or the words it is first answered in
		word, named, _ := strings.Cut(e.key, " ")
		if word != "wrong" && word != "says" {
			word, named = "", e.key
		}
		r.about(e, word, named)
	}
}

// about finds the question that is named as "thickest-clean mild-steel", and
// keeps the line for it.
func (r *reader) about(e entry, word, named string) {
	fact, id, _ := strings.Cut(named, " ")
	q, ok := assess.Find(rules.Fact(fact))
	_, known := metal.Find(metal.ID(id))
	at := entry{line: e.line, key: named}
	switch {
	case !ok:
		r.fault(at, message.New("{1} is no question of the interview", message.Name(tabular.Quoted(fact))), message.New("case, level, manner, minutes, opening, unclear, wrong, says, or a question such as thickest-clean mild-steel"))
	case q.PerMetal && !known:
		r.fault(at, message.New("is asked for each metal, and {1} is none", message.Name(tabular.Quoted(id))), message.New("the question and a metal, such as {1}", message.Name(fact+" mild-steel")))
	case !q.PerMetal && id != "":
		r.fault(at, message.New("is not asked for each metal"), message.Text(fact))
	default:
		e.asked = rules.Asked{Fact: q.ID, Metal: metal.ID(id)}
		r.now.about[word] = append(r.now.about[word], e)
	}
}

func (r *reader) whole(e entry, most int) int {
	v, err := strconv.Atoi(e.value)
	if err != nil || v < 1 || v > most {
		r.fault(e, message.New("{1} is out of range", message.Name(tabular.Quoted(e.value))), message.New("a whole number from 1 to {1}", message.Count(most)))
	}
	return v
}

func mannerNames() string {
	return message.Join(", ", message.Each(manners, func(m manner) message.Message { return message.Text(string(m.id)) })...).String()
}

// invented is the day all cases are dated, so that the same file gives the same
// customers.
var invented = time.Date(2026, 9, 1, 9, 0, 0, 0, time.UTC)

// end ends the case under way: its answers are read in the order of the
// interview, then what is first heard.
func (r *reader) end() {
	d := r.now
	if d == nil {
		return
	}
	d.Facts = assess.New("case-"+d.Name, invented)
	d.Facts.Demo = true
	d.Wrong, d.Unclear, d.Says = map[rules.Asked]assess.Answer{}, map[rules.Asked]bool{}, map[rules.Asked]string{}
	need := func(missing bool, key string, example message.Message) {
		if missing {
			r.fault(entry{line: d.Line, key: key}, message.New("is missing in this case"), example)
		}
	}
	need(d.Level == 0, "level", message.New("level: 1, easy, to 5, hard"))
	need(d.Manner == "", "manner", message.New("manner: one of {1}", message.Name(mannerNames())))
	need(d.Minutes == 0, "minutes", message.Text("minutes: 45"))
	r.facts(d)
	for _, e := range d.about["wrong"] { // what is first heard in place of an answer
		truth, known := d.truth(e.asked)
		if !known {
			r.fault(e, message.New("is first heard of a question without a true answer"), message.New("the true answer on a line of its own"))
			continue
		}
		step := stepOf(e.asked)
		a, ok := r.answer(d, step, e)
		if ok && alike(d.Facts, step, a, truth) {
			r.fault(e, message.New("is the same as the true answer"), message.New("something the customer says that is not so"))
		} else if ok {
			d.Wrong[e.asked] = a
		}
	}
	for _, e := range d.about["unclear"] {
		if _, known := d.truth(e.asked); !known {
			r.fault(e, message.New("{1} has no answer in this case", message.Name(e.value)), message.New("questions the customer can answer"))
			continue
		}
		d.Unclear[e.asked] = true
	}
	for _, e := range d.about["says"] {
		d.Says[e.asked] = e.value
	}
	if !d.faulty {
		r.customers = append(r.customers, d.Customer)
	}
	r.now = nil
}

// facts reads the answers in the order of the interview, again as long as one
// brings up further questions; then those that do not come up are reported.
func (r *reader) facts(d *draft) {
	left := slices.Clone(d.about[""])
	find := func(list []entry, a rules.Asked) int {
		return slices.IndexFunc(list, func(e entry) bool { return e.asked == a })
	}
	for found := true; found; {
		found = false
		for _, s := range d.Facts.Steps() {
			if i := find(left, s.Asked()); i >= 0 {
				if a, ok := r.answer(d, s, left[i]); ok {
					d.Facts.Set(a)
				}
				left, found = slices.Delete(left, i, i+1), true
			}
		}
	}
	steps := d.Facts.Steps()
	for _, a := range d.Facts.Answers { // one that a later answer made pointless
		if !slices.ContainsFunc(steps, func(s assess.Step) bool { return s.Asked() == a.Asked() }) {
			left = append(left, d.about[""][find(d.about[""], a.Asked())])
		}
	}
	for _, e := range left {
		r.fault(e, message.New("does not come up with the other answers of this case"), message.New("leave the line out, or name the metal under metals"))
	}
}

// answer reads one answer to a step.
func (r *reader) answer(d *draft, s assess.Step, e entry) (a assess.Answer, ok bool) {
	var err error
	switch s.Question.Form {
	case assess.FormOne, assess.FormSeveral:
		chosen := strings.Split(e.value, ",")
		for i := range chosen {
			chosen[i] = strings.TrimSpace(chosen[i])
		}
		a, err = d.Facts.ChooseSaved(s, chosen)
	default:
		a, _, err = d.Facts.Read(s, e.value)
	}
	var m *assess.Mistake
	switch {
	case errors.As(err, &m):
		r.fault(e, message.New("{1} {2}", message.Name(tabular.Quoted(e.value)), m.Wrong), m.Hint)
	case err != nil:
		r.fault(e, message.Of(err), message.Message{})
	}
	return a, err == nil
}
