package interview

import (
	"reflect"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/rules"
)

// mostKeys is how many key presses a typical interview may take. It is our own
// aim, no source.
const mostKeys = 120

// typist gives the answers of one visit to the full screen by the shortest keys
// it offers, and counts.
type typist struct {
	*driver
	from    *assess.Visit
	keys    int // every key press but letters
	letters int // of the customer's own text: names, places, their words, notes
}

// press sends keys one by one. Each is one key press, a character of a text too.
func (p *typist) press(keys ...string) {
	p.T.Helper()
	for _, k := range keys {
		p.Keys(k)
		p.keys++
	}
}

// spell types the customer's own text, whose letters are counted apart.
func (p *typist) spell(text string) {
	for i, line := range strings.Split(text, "\n") {
		if i > 0 {
			p.Keys("<ctrl+j>")
		}
		p.Keys(line)
	}
	p.letters += utf8.RuneCountInString(text)
}

func (p *typist) typed(text string) {
	for _, r := range text {
		if r == ' ' {
			p.press("<space>")
			continue
		}
		p.press(string(r))
	}
}

// give answers the question on the screen as the visit does.
func (p *typist) give() {
	p.T.Helper()
	s := p.m.step
	a, has := p.from.Answer(s.Asked())
	switch {
	case !has && p.rest() == 0:
		p.press("<ctrl+r>")
		return
	case !has:
		p.press("<tab>")
		return
	case a.Note != "":
		p.press("<ctrl+o>")
		p.spell(a.Note)
		p.press("<enter>")
	}
	if a.State == assess.Unknown {
		p.press("<ctrl+n>")
		return
	}
	if !guessed(s, a) {
		for range slices.Index(states[:], a.State) {
			if p.m.field.IsList() {
				p.press("h")
				continue
			}
			p.press("<ctrl+y>")
		}
	}
	p.say(s, a)
}

// rest counts the answers that the visit holds and the screen has not got yet.
func (p *typist) rest() (n int) {
	for _, a := range p.from.Answers {
		if _, has := p.m.Visit.Answer(a.Asked()); !has {
			n++
		}
	}
	return n
}

// guessed reports a figure that can be typed as a guess, with "?" behind it.
func guessed(s assess.Step, a assess.Answer) bool {
	return a.State == assess.Assumed && s.Question.Form == assess.FormQuantity
}

func (p *typist) say(s assess.Step, a assess.Answer) {
	switch s.Question.Form {
	case assess.FormOne:
		p.pick(s, a.Chosen[0])
	case assess.FormSeveral:
		for _, id := range a.Chosen {
			p.press(p.number(s, id))
		}
		p.press("<enter>")
	case assess.FormText, assess.FormLong:
		if p.m.field.Draft().Text != a.Said {
			p.spell(a.Said)
		}
		p.press("<enter>")
	default:
		p.measure(s, a)
	}
}

// pick chooses one option.
func (p *typist) pick(s assess.Step, id string) {
	if d := p.m.field.Draft(); len(d.Chosen) == 1 && d.Chosen[0] == id {
		p.press("<enter>")
		return
	}
	p.press(p.number(s, id))
	if p.m.state == asking && p.m.step == s {
		p.press("<enter>")
	}
}

func (p *typist) number(s assess.Step, id string) string {
	i := slices.IndexFunc(p.m.Visit.Options(s), func(o assess.Option) bool { return o.ID == id })
	return string(rune('1' + i))
}

// measure types a date or a quantity by the shortest text that means the same.
func (p *typist) measure(s assess.Step, a assess.Answer) {
	if p.m.field.Draft().Text == a.Said {
		p.press("<enter>")
		return
	}
	if o, offered := p.m.Visit.Offered(s); offered && reflect.DeepEqual(p.meant(s, o.Answer), p.meant(s, a)) {
		p.press("=")
		return
	}
	p.typed(p.shortest(s, a))
	if guessed(s, a) {
		p.press("?")
	}
	p.press("<enter>")
}

// shortest is the shortest way to say an answer, as a practised rep would: the
// unit of the visit left out, no spaces, 0 for none.
func (p *typist) shortest(s assess.Step, a assess.Answer) string {
	want := p.meant(s, a)
	best := a.Said + a.Unit
	number := strings.TrimRightFunc(strings.Fields(a.Said)[0], unicode.IsLetter)
	for _, said := range []string{a.Said, number, number + "w", number + "'", number + `"`, "#" + number, "0", strings.ReplaceAll(a.Said, " ", "")} {
		b, _, err := p.m.Visit.Read(s, said)
		b.State = a.State // told by a key of its own
		if err == nil && len(said) < len(best) && reflect.DeepEqual(p.meant(s, b), want) {
			best = said
		}
	}
	return best
}

// meant is what the rules would make of an answer.
func (p *typist) meant(s assess.Step, a assess.Answer) rules.Job {
	v := p.from.Clone()
	v.Set(a)
	job, _ := v.Job()
	job.Doubts = nil // whether it is a guess is a key of its own
	return job
}

// interview answers everything, in whatever order it is asked.
func (p *typist) interview() {
	p.T.Helper()
	for range 200 {
		if p.m.state != asking {
			return
		}
		p.give()
		if len(p.m.wrong) > 0 {
			p.T.Fatalf("not taken:\n%s", p.View())
		}
	}
	p.T.Fatalf("never done:\n%s", p.View())
}

// A typical interview takes few keys. Counted is every key press from the first
// question to the result: digits, letters and signs of measures, Enter, the keys
// for "not known", for how an answer is known and for a note. The letters of what
// is the customer's own (names, places, their words, notes) are counted apart,
// as no screen can spare them; their Enter keys count with the rest. The rep's
// name and the date are those that the program offers on that day.
func TestKeysOfATypicalInterview(t *testing.T) {
	for _, name := range casebook.DemoVisits() {
		from, _ := casebook.DemoVisit(name)
		p := &typist{driver: drive(t, newVisit()), from: from}
		for _, f := range []rules.Fact{assess.FactDate, assess.FactRep} {
			a, _ := from.Answer(rules.Asked{Fact: f})
			p.m.Suggest = with(p.m.Suggest, f, a.Said)
		}
		p.interview()
		t.Logf("%s: %d questions, %d keys, and %d letters of the customer's own", name, len(p.m.steps), p.keys, p.letters)
		if p.keys >= mostKeys {
			t.Errorf("%s: %d key presses, and fewer than %d are promised", name, p.keys, mostKeys)
		}
		p.same(name)
	}
}

func with(m map[rules.Fact]string, f rules.Fact, said string) map[rules.Fact]string {
	if m == nil {
		m = map[rules.Fact]string{}
	}
	m[f] = said
	return m
}

// same fails unless what was typed is what the visit holds: the same job for the
// rules, and each text, note and state.
func (p *typist) same(name string) {
	p.T.Helper()
	got, problems := p.m.Visit.Job()
	if want, _ := p.from.Job(); !reflect.DeepEqual(got, want) || len(problems) > 0 {
		p.T.Errorf("%s: typed %+v, want %+v (%v)", name, got, want, problems)
	}
	if len(p.m.Visit.Answers) != len(p.from.Answers) {
		p.T.Errorf("%s: %d answers, want %d", name, len(p.m.Visit.Answers), len(p.from.Answers))
	}
	for _, want := range p.from.Answers {
		a, _ := p.m.Visit.Answer(want.Asked())
		q, _ := assess.Find(want.Question)
		typed := q.Form == assess.FormText || q.Form == assess.FormLong
		if a.State != want.State || a.Note != want.Note || (typed && a.Said != want.Said) {
			p.T.Errorf("%s: %s is %+v, want %+v", name, want.Question, a, want)
		}
	}
}
