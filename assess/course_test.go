package assess

import (
	"slices"
	"strings"
	"testing"

	"cutbrief/rules"
	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"

	"pgregory.net/rapid"
)

// said makes a visit with answers that are typed.
func said(t testing.TB, answers map[rules.Fact]string) *Visit {
	t.Helper()
	v := &Visit{}
	for _, s := range Catalogue() {
		text, told := answers[s.ID]
		if !told {
			continue
		}
		step := Step{Question: s}
		if s.PerMetal {
			step.Metal = metal.MildSteel
		}
		a, _, err := v.Read(step, text)
		if s.Form == FormOne || s.Form == FormSeveral {
			a, err = v.Choose(step, []string{text})
		}
		if err != nil {
			t.Fatal(err)
		}
		v.Set(a)
	}
	return v
}

func result(v *Visit) *rules.Result {
	job, _ := v.Job()
	r := rules.Evaluate(job, system.Demo())
	return &r
}

// sized is a visit of which enough is told to size a system.
func sized(t testing.TB) *Visit {
	return said(t, map[rules.Fact]string{
		rules.FactMetals: "mild-steel", rules.FactEveryday: "6 mm", rules.FactThickest: "10 mm", rules.FactUse: "maintenance",
	})
}

// How the system is used sizes it together with metal and thickness, so it is
// asked before how much and how often.
func TestWhatSizesIsAskedFirst(t *testing.T) {
	v := said(t, map[rules.Fact]string{rules.FactMetals: "mild-steel"})
	steps := v.Steps()
	at := func(f rules.Fact) int {
		return slices.IndexFunc(steps, func(s Step) bool { return s.Question.ID == f })
	}
	if at(rules.FactUse) != at(rules.FactRarest)+1 || at(rules.FactUse) > at(rules.FactCutLength) {
		t.Errorf("use is asked at %d, rare thickest at %d, length at %d", at(rules.FactUse), at(rules.FactRarest), at(rules.FactCutLength))
	}
}

// The first figure stands after four answers: the units, the metals, the thickest
// clean cut and how the system is used.
func TestFourAnswersSizeASystem(t *testing.T) {
	v, c, at := &Visit{}, &Course{Offered: system.Demo()}, Step{}
	for _, said := range []string{"mm", "mild-steel", "12 mm", "maintenance"} {
		r := result(v)
		if r.Need.IsKnown() {
			t.Fatal("sized already")
		}
		at, _ = c.Next(v, at, r)
		v.Set(v.usual(at, said))
	}
	if need, known := result(v).Need.Get(); !known || need.Rated != 12 {
		t.Errorf("needed: %v, %v", need.Rated, known)
	}
}

// Who and where come behind all that could change the recommendation.
func TestWhoAndWhereComeLast(t *testing.T) {
	v, c, at := sized(t), &Course{Offered: system.Demo()}, Step{}
	for {
		r := result(v)
		next, more := c.Next(v, at, r)
		if !more || c.Last() {
			break
		}
		if at.Question != nil && at.Question.Group == GroupVisit && at.Question.ID != FactUnits && next.Question.Group != GroupVisit {
			t.Errorf("%s is asked before %s", at.Name(), next.Name())
		}
		v.Set(NotKnown(next))
		at = next
	}
}

// The priors have a row for every question that can change what is recommended,
// and every answer in them can be read.
func TestPriorsCoverWhatCanChangeTheRecommendation(t *testing.T) {
	for _, p := range priors {
		q, known := Find(p.fact)
		if !known || p.seconds <= 0 || len(p.answers) < 2 {
			t.Errorf("%s: %v, %v s, %d answers", p.fact, known, p.seconds, len(p.answers))
			continue
		}
		s := Step{Question: q}
		if q.PerMetal {
			s.Metal = metal.MildSteel
		}
		for _, a := range p.answers {
			if got := (&Visit{}).usual(s, a.said); got.State == Unknown || a.of <= 0 {
				t.Errorf("%s: %q is no answer, or has no share", p.fact, a.said)
			}
		}
	}
	for _, v := range []*Visit{{}, sized(t)} {
		for _, o := range result(v).Open {
			if priorOf(o.Asked.Fact) == nil {
				t.Errorf("no prior for %s", o.Asked.Fact)
			}
		}
	}
}

// Once a system can be sized, no question about the work or the site that could
// change something is asked after one that could not.
func TestWhatDecidesNothingComesLast(t *testing.T) {
	v, c := sized(t), &Course{}
	at, idle := Step{}, 0
	for {
		r := result(v)
		next, more := c.Next(v, at, r)
		if !more {
			break
		}
		if v.Idle(next, r) {
			idle++
			if !c.Last() {
				t.Errorf("%s can change nothing, and is not last", next.Name())
			}
		}
		if c.Last() && slices.ContainsFunc(r.Open, func(o rules.OpenQuestion) bool { return o.Asked == next.Asked() && o.Strength == 3 }) {
			t.Errorf("%s could change the system, and comes last", next.Name())
		}
		at = next
		if !v.has(at) {
			v.Set(NotKnown(at))
		}
	}
	if _, open := v.NextOpen(); open || idle == 0 {
		t.Errorf("%d questions came last; open: %v", idle, open)
	}
}

// A manager's own visits replace the built-in shares where enough of them answer a
// question: counts of options, and the middles of the thirds of figures.
func TestLearn(t *testing.T) {
	visits := func(yield func(*Visit) bool) {
		for i := range 12 {
			use := "maintenance"
			if i >= 9 {
				use = "production"
			}
			if !yield(said(t, map[rules.Fact]string{
				rules.FactMetals: "mild-steel", rules.FactThickest: []string{"4 mm", "10 mm", "30 mm"}[i/4], rules.FactUse: use, FactCompany: "Never Learned Ltd",
			})) {
				return
			}
		}
	}
	p, learned := Learn(visits)
	if learned != 3 {
		t.Errorf("%d questions learned", learned)
	}
	if got := p.of(rules.FactUse).answers; len(got) != 2 || got[0] != (share{"maintenance", 9}) || got[1] != (share{"production", 3}) {
		t.Errorf("use: %v", got)
	}
	if got := p.of(rules.FactThickest).answers; len(got) != 3 || got[0].said != "4 mm" || got[2].said != "30 mm" {
		t.Errorf("thickest: %v", got)
	}
	if got := p.of(rules.FactStart).answers; !slices.Equal(got, priorOf(rules.FactStart).answers) {
		t.Errorf("start: %v", got)
	}
	v, c := sized(t), &Course{Offered: smallRange(), Usual: p}
	if _, more := c.Next(v, Step{}, result(v)); !more {
		t.Error("nothing is asked")
	}
}

// The air receiver bridges and sizes nothing, by the rule on air flow.
func TestTheReceiverWaits(t *testing.T) {
	v := sized(t)
	q, _ := Find(rules.FactReceiver)
	if !v.Idle(Step{Question: q}, result(v)) {
		t.Error("the receiver does not wait")
	}
	if v = said(t, map[rules.Fact]string{rules.FactMetals: "mild-steel"}); v.Idle(Step{Question: q}, result(v)) {
		t.Error("a question waits before a system can be sized")
	}
}

// The breaker is that of the mains: where the power comes from is asked before it
// also where it changes nothing by itself.
func TestWhatOthersHangOnDoesNotWait(t *testing.T) {
	v := sized(t)
	source, _ := Find(rules.FactSource)
	s := Step{Question: source}
	r := &rules.Result{Outcome: rules.Recommended, Firm: true}
	if !v.Idle(s, r) {
		t.Error("the source does not wait where nothing hangs on it")
	}
	r.Open = []rules.OpenQuestion{{Asked: rules.Asked{Fact: rules.FactBreaker}}}
	if v.Idle(s, r) {
		t.Error("the source waits while the breaker matters")
	}
}

// Whatever is answered, left, put off or taken back, each question is asked, the
// way ends, and nothing gets an answer by itself.
func TestTheCourseEndsAndSkipsNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v, c := &Visit{}, &Course{}
		if rapid.IntRange(0, 9).Draw(t, "telling") == 0 { // it takes longer
			c.Offered = smallRange()
		}
		asked := map[rules.Asked]bool{}
		at, r := Step{}, drawResult(t, v)
		off := map[rules.Asked]bool{}
		for range 400 {
			next, more := c.Next(v, at, r)
			if !more {
				for _, s := range v.Steps() {
					if !asked[s.Asked()] && !off[s.Asked()] {
						t.Fatalf("%s was never asked", s.Name())
					}
				}
				return
			}
			at, asked[next.Asked()] = next, true
			before := len(v.Answers)
			switch rapid.IntRange(0, 7).Draw(t, "does") {
			case 0:
				c.Leave(at)
			case 1:
				v.Set(NotKnown(at))
			case 2:
				last := c.Last()
				for _, s := range c.PutOff(v, at.Question.Group) {
					off[s.Asked()] = off[s.Asked()] || last
				}
			case 3:
				c.TakeUp(at.Question.Group)
				c.Leave(at)
			default:
				v.Set(anything(t, v, at))
				r = drawResult(t, v)
			}
			if len(v.Answers) > before+1 {
				t.Fatal("more than one answer at once")
			}
		}
		t.Fatal("the way has no end")
	})
}

// smallRange is quick to judge.
func smallRange() system.Range {
	r := system.Demo()
	r.Systems = r.Systems[:2]
	return r
}

// drawResult makes up which questions still matter.
func drawResult(t *rapid.T, v *Visit) *rules.Result {
	r := &rules.Result{Outcome: rapid.SampledFrom([]rules.Outcome{rules.NotYet, rules.Recommended}).Draw(t, "outcome")}
	for i, s := range v.Steps() {
		if rapid.IntRange(0, 60).Draw(t, "matters") > i {
			r.Open = append(r.Open, rules.OpenQuestion{Asked: s.Asked()})
		}
	}
	return r
}

// anything answers a step in some way that is taken, else as not known.
func anything(t *rapid.T, v *Visit, s Step) Answer {
	if options := v.Options(s); len(options) > 0 {
		a, err := v.Choose(s, []string{rapid.SampledFrom(options).Draw(t, "option").ID})
		if err == nil {
			return a
		}
	}
	if a, _, err := v.Read(s, string(s.Question.Example)); err == nil {
		return a
	}
	if a, _, err := v.Read(s, "10"); err == nil {
		return a
	}
	return NotKnown(s)
}

// That the choice is firm is for the rules to say, and sampled there; here it is
// only said where no question still to be asked is open in their sense.
func TestSettled(t *testing.T) {
	v := sized(t)
	for _, f := range []rules.Fact{rules.FactFeatures, rules.FactPlaces, rules.FactHotWork} {
		if firm := (rules.Result{Outcome: rules.Recommended, Firm: true}); v.Settled(&firm) {
			t.Errorf("it may end before cautions hang on the answer about %s", f)
		}
		q, _ := Find(f)
		v.Set(NotKnown(Step{Question: q}))
	}
	open := rules.OpenQuestion{Asked: rules.Asked{Fact: rules.FactBreaker}}
	told := rules.OpenQuestion{Asked: rules.Asked{Fact: rules.FactMetals}}
	for _, c := range []struct {
		r    rules.Result
		want bool
	}{
		{rules.Result{Outcome: rules.NotYet}, false},
		{rules.Result{Outcome: rules.Recommended}, false},
		{rules.Result{Outcome: rules.Recommended, Firm: true}, true},
		{rules.Result{Outcome: rules.Recommended, Firm: true, Open: []rules.OpenQuestion{open}}, false},
		{rules.Result{Outcome: rules.NoneFits}, true},
		{rules.Result{Outcome: rules.NoneFits, Open: []rules.OpenQuestion{told}}, true},
		{rules.Result{Outcome: rules.NoneFits, Open: []rules.OpenQuestion{open}}, false},
	} {
		if got := v.Settled(&c.r); got != c.want {
			t.Errorf("%+v: settled %v, want %v", c.r, got, c.want)
		}
	}
}

// From a question that is no longer asked, as its group is left out, the way goes
// on behind it.
func TestTheCourseGoesOnBehindWhatIsLeftOut(t *testing.T) {
	v, c := sized(t), &Course{}
	source, _ := Find(rules.FactSource)
	v.Skip(GroupSite)
	next, more := c.Next(v, Step{Question: source}, result(v))
	if !more || next.Question.Group != GroupToday {
		t.Errorf("goes on with %+v", next.Question)
	}
	notes, _ := Find(FactNotes)
	v.Skip(GroupDecision)
	if next, more = c.Next(v, Step{Question: notes}, result(v)); !more || !c.Last() {
		t.Errorf("behind the end comes %+v", next.Question)
	}
}

func TestPutOffComesBackLast(t *testing.T) {
	v, c := sized(t), &Course{}
	q, _ := Find(rules.FactSource)
	off := c.PutOff(v, GroupSite)
	if len(off) == 0 || off[0].Question != q || v.Skips(GroupSite) {
		t.Fatalf("put off %v", off)
	}
	edge, _ := Find(rules.FactPlaces) // the last question before the site
	next, _ := c.Next(v, Step{Question: edge}, result(v))
	if next.Question.Group != GroupToday {
		t.Errorf("then comes %s", next.Name())
	}
	c.TakeUp(GroupSite)
	if next, _ = c.Next(v, Step{Question: edge}, result(v)); next.Question.Group != GroupSite {
		t.Errorf("taken up again, then comes %s", next.Name())
	}
}

// What is offered was said at this visit or is the usual mains of IEC 60038.
func TestOffers(t *testing.T) {
	for _, c := range []struct {
		told map[rules.Fact]string
		at   rules.Fact
		want string // "" if nothing is offered
	}{
		{map[rules.Fact]string{rules.FactEveryday: "3/8 in"}, rules.FactThickest, "3/8 in"},
		{map[rules.Fact]string{rules.FactEveryday: "14 ga"}, rules.FactPierced, "14 ga"},
		{map[rules.Fact]string{rules.FactEveryday: "6"}, rules.FactBevelled, "6 mm"},
		{map[rules.Fact]string{rules.FactEveryday: "about 6"}, rules.FactThickest, "about 6 mm"},
		{map[rules.Fact]string{rules.FactEveryday: "not known"}, rules.FactThickest, ""},
		{nil, rules.FactThickest, ""},
		{nil, rules.FactEveryday, ""},
		{nil, rules.FactRarest, "none"},
		{nil, rules.FactCord, "none"},
		{nil, rules.FactBreaker, ""},
		{map[rules.Fact]string{rules.FactPhases: "single"}, rules.FactVolts, "230 V"},
		{map[rules.Fact]string{rules.FactPhases: "three"}, rules.FactVolts, "400 V"},
		{map[rules.Fact]string{rules.FactPhases: "both"}, rules.FactVolts, ""},
		{map[rules.Fact]string{rules.FactPhases: "three", FactUnits: string(unit.Inch)}, rules.FactVolts, ""},
	} {
		v := said(t, c.told)
		q, _ := Find(c.at)
		s := Step{Question: q}
		if q.PerMetal {
			s.Metal = metal.MildSteel
		}
		o, offered := v.Offered(s)
		if offered != (c.want != "") || o.Text() != c.want {
			t.Errorf("%v: %s offers %q, want %q", c.told, c.at, o.Text(), c.want)
		}
		if guess := strings.Contains(c.want, "about"); offered && (o.Answer.State == Assumed) != guess {
			t.Errorf("%s offers %+v", c.at, o.Answer)
		}
		if _, has := v.Answer(s.Asked()); has {
			t.Errorf("%s is answered by being offered", c.at)
		}
	}
}

func TestPaceInShort(t *testing.T) {
	for text, want := range map[string]string{
		"60w": "60 week", "60 w": "60 week", "60 m/w": "60 m week", "60d": "60 day", "60 m d": "60 m day", "60": "60 day",
		"60 wk": "60 week", "2 yd": "2 yd day", "200 ft a week": "200 ft week",
	} {
		length, period := splitPace(text)
		if got := length + " " + period; got != want {
			t.Errorf("%q is %q, want %q", text, got, want)
		}
	}
}
