package casebook

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"time"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/csvfile"
	"cutbrief/rules/metal"
)

// Limits of a case. They keep a slip of the keys from making a practice that
// nobody can end.
const (
	levelMost   = 5
	minutesMost = 180
	casesMost   = 200
)

// Read reads cases from a file of "name: value" lines; Format describes it.
// A case with an error is left out. It never fails as a whole but by a finding.
func Read(r io.Reader) ([]Customer, []csvfile.Finding) {
	text, err := csvfile.Load(r)
	if err != nil {
		return nil, []csvfile.Finding{{Severity: csvfile.Error, Problem: err.Error()}}
	}
	b := &book{names: map[string]bool{}}
	for i, line := range strings.Split(text, "\n") {
		b.line(i+1, strings.TrimSpace(line))
	}
	b.close()
	if len(b.customers) == 0 && len(b.findings) == 0 {
		b.fault(0, "", "holds no case", "a line such as case: bench-top")
	}
	return b.customers, b.findings
}

// book is a file while it is read.
type book struct {
	customers []Customer
	findings  []csvfile.Finding
	names     map[string]bool
	now       *draft
}

// draft is a case while it is read: answers wait until all of it is there, as
// one depends on another.
type draft struct {
	Customer
	line    int // of "case"
	answers []entry
	wrongs  []entry
	unclear []entry
	seen    map[string]bool // keys, as written
	clean   bool
}

type entry struct {
	line  int
	key   string // as written
	asked rules.Asked
	value string
}

func (b *book) fault(line int, column, problem, accepted string) {
	f := csvfile.Finding{Line: line, Column: column, Severity: csvfile.Error, Problem: problem, Accepted: accepted}
	if b.now != nil {
		f.Row = b.now.Name
		b.now.clean = false
	}
	b.findings = append(b.findings, f)
}

// line takes one line.
func (b *book) line(n int, line string) {
	if csvfile.Skipped(line) {
		return
	}
	key, value, ok := strings.Cut(line, ":")
	key, value = strings.Join(strings.Fields(strings.ToLower(key)), " "), strings.TrimSpace(value)
	if flaw := csvfile.Flaw(line); flaw != "" {
		b.fault(n, "", flaw, "plain text of at most 300 characters a line")
		return
	}
	switch {
	case !ok:
		b.fault(n, "", csvfile.Quoted(line)+" is no line of a case", "name: value, such as level: 2")
	case value == "":
		b.fault(n, key, "has no value", "a value behind the colon; leave the line out if the customer does not know")
	case key == "case":
		b.open(n, value)
	case b.now == nil:
		b.fault(n, key, "stands before the first case", "a line such as case: bench-top")
	default:
		b.entry(n, key, value)
	}
}

// open begins a case.
func (b *book) open(n int, name string) {
	b.close()
	if len(b.customers) >= casesMost {
		b.fault(n, "case", fmt.Sprintf("is more than %d in one file", casesMost), "a second file")
		return
	}
	b.now = &draft{line: n, clean: true, seen: map[string]bool{}}
	b.now.Line, b.now.Name, b.now.Says = n, name, map[rules.Asked]string{}
	switch {
	case !isName(name):
		b.fault(n, "case", csvfile.Quoted(name)+" is no name", "small letters, figures and dashes, such as bench-top")
	case b.names[name]:
		b.fault(n, "case", "has the name of a case above", "another name")
	}
	b.names[name] = true
}

func isName(s string) bool {
	return len(s) > 0 && len(s) <= 40 && strings.Trim(s, "abcdefghijklmnopqrstuvwxyz0123456789-") == "" && s[0] != '-'
}

// entry takes a line within a case.
func (b *book) entry(n int, key, value string) {
	d := b.now
	if d.seen[key] && key != "unclear" {
		b.fault(n, key, "stands in this case already", "one line for each")
		return
	}
	d.seen[key] = true
	switch first, rest, _ := strings.Cut(key, " "); {
	case key == "level":
		d.Level = b.whole(n, key, value, levelMost)
	case key == "minutes":
		d.Minutes = b.whole(n, key, value, minutesMost)
	case key == "manner":
		if d.Manner = Manner(strings.ToLower(value)); !d.Manner.known() {
			b.fault(n, key, csvfile.Quoted(value)+" is no manner of speaking", "one of "+mannerNames())
		}
	case key == "opening":
		d.Opening = value
	case key == "unclear":
		for _, part := range strings.Split(value, ",") {
			part = strings.Join(strings.Fields(strings.ToLower(part)), " ")
			if a, ok := b.asked(n, part); ok {
				d.unclear = append(d.unclear, entry{n, "unclear", a, part})
			}
		}
	case first == "wrong":
		if a, ok := b.asked(n, rest); ok {
			d.wrongs = append(d.wrongs, entry{n, key, a, value})
		}
	case first == "says":
		if a, ok := b.asked(n, rest); ok {
			d.Says[a] = value
		}
	default:
		if a, ok := b.asked(n, key); ok {
			d.answers = append(d.answers, entry{n, key, a, value})
		}
	}
}

func (b *book) whole(n int, key, value string, most int) int {
	v, err := strconv.Atoi(value)
	if err != nil || v < 1 || v > most {
		b.fault(n, key, csvfile.Quoted(value)+" is out of range", fmt.Sprintf("a whole number from 1 to %d", most))
	}
	return v
}

func mannerNames() string {
	var list []string
	for _, m := range Manners() {
		list = append(list, string(m))
	}
	return strings.Join(list, ", ")
}

// asked reads "thickest-clean mild-steel".
func (b *book) asked(n int, key string) (rules.Asked, bool) {
	fact, id, _ := strings.Cut(key, " ")
	q, ok := assess.Find(rules.Fact(fact))
	if !ok {
		b.fault(n, key, csvfile.Quoted(fact)+" is no question of the interview", "case, level, manner, minutes, opening, unclear, wrong, says, or a question such as thickest-clean mild-steel")
		return rules.Asked{}, false
	}
	_, known := metal.Find(metal.ID(id))
	switch {
	case q.PerMetal && !known:
		b.fault(n, key, "is asked for each metal, and "+csvfile.Quoted(id)+" is none", "the question and a metal, such as "+fact+" mild-steel")
		return rules.Asked{}, false
	case !q.PerMetal && id != "":
		b.fault(n, key, "is not asked for each metal", fact)
		return rules.Asked{}, false
	}
	return rules.Asked{Fact: q.ID, Metal: metal.ID(id)}, true
}

// invented is the day all cases are dated, so that the same file gives the same
// customers.
var invented = time.Date(2026, 9, 1, 9, 0, 0, 0, time.UTC)

// close ends the case under way: its answers are read in the order of the
// interview, then what is first heard.
func (b *book) close() {
	d := b.now
	if d == nil {
		return
	}
	d.Facts = assess.New("case-"+d.Name, invented)
	d.Facts.Demo = true
	b.demands(d)
	b.facts(d)
	d.Wrong, d.Unclear = map[rules.Asked]assess.Answer{}, map[rules.Asked]bool{}
	for _, e := range d.wrongs {
		b.wrong(d, e)
	}
	for _, e := range d.unclear {
		if _, known := d.truth(e.asked); !known {
			b.fault(e.line, "unclear", e.value+" has no answer in this case", "questions the customer can answer")
			continue
		}
		d.Unclear[e.asked] = true
	}
	if d.clean {
		b.customers = append(b.customers, d.Customer)
	}
	b.now = nil
}

// demands reports what every case needs.
func (b *book) demands(d *draft) {
	for _, need := range []struct {
		key     string
		missing bool
		example string
	}{
		{"level", d.Level == 0, "level: 1, easy, to 5, hard"},
		{"manner", d.Manner == "", "manner: one of " + mannerNames()},
		{"minutes", d.Minutes == 0, "minutes: 45"},
	} {
		if need.missing {
			b.fault(d.line, need.key, "is missing in this case", need.example)
		}
	}
}

// facts reads the answers in the order of the interview, again as long as one
// brings up further questions; then those that do not come up are reported.
func (b *book) facts(d *draft) {
	left := slices.Clone(d.answers)
	for found := true; found; {
		found = false
		for _, s := range d.Facts.Steps() {
			i := slices.IndexFunc(left, func(e entry) bool { return e.asked == s.Asked() })
			if i < 0 {
				continue
			}
			if a, ok := b.read(d, s, left[i]); ok {
				d.Facts.Set(a)
			}
			left, found = slices.Delete(left, i, i+1), true
		}
	}
	steps := d.Facts.Steps()
	for _, a := range d.Facts.Answers { // one that a later answer made pointless
		if !slices.ContainsFunc(steps, func(s assess.Step) bool { return s.Asked() == a.Asked() }) {
			left = append(left, d.answers[slices.IndexFunc(d.answers, func(e entry) bool { return e.asked == a.Asked() })])
		}
	}
	for _, e := range left {
		b.fault(e.line, e.key, "does not come up with the other answers of this case", "leave the line out, or name the metal under metals")
	}
}

// read reads one answer to a step.
func (b *book) read(d *draft, s assess.Step, e entry) (assess.Answer, bool) {
	var a assess.Answer
	var err error
	switch s.Question.Form {
	case assess.FormOne, assess.FormSeveral:
		var chosen []string
		for _, part := range strings.Split(e.value, ",") {
			chosen = append(chosen, strings.TrimSpace(part))
		}
		a, err = d.Facts.ChooseSaved(s, chosen)
	default:
		a, _, err = d.Facts.Read(s, e.value)
	}
	if err == nil {
		return a, true
	}
	var m *assess.Mistake
	if errors.As(err, &m) {
		b.fault(e.line, e.key, csvfile.Quoted(e.value)+" "+m.Wrong, m.Hint)
	} else {
		b.fault(e.line, e.key, err.Error(), "")
	}
	return a, false
}

// wrong reads what is first heard in place of an answer.
func (b *book) wrong(d *draft, e entry) {
	truth, known := d.truth(e.asked)
	if !known {
		b.fault(e.line, e.key, "is first heard of a question without a true answer", "the true answer on a line of its own")
		return
	}
	q, _ := assess.Find(e.asked.Fact)
	s := assess.Step{Question: q, Metal: e.asked.Metal}
	a, ok := b.read(d, s, e)
	if !ok {
		return
	}
	if alike(d.Facts, s, a, truth) {
		b.fault(e.line, e.key, "is the same as the true answer", "something the customer says that is not so")
		return
	}
	d.Wrong[e.asked] = a
}
