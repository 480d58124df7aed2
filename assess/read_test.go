package assess

import (
	"reflect"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"cutbrief/rules"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

var noon = time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC)

// step is the step of a question.
func step(t *testing.T, f rules.Fact, m metal.ID) Step {
	t.Helper()
	q, ok := Find(f)
	if !ok {
		t.Fatalf("no question %q", f)
	}
	return Step{q, m}
}

// tell answers a question as a customer would, typed or chosen.
func tell(t *testing.T, v *Visit, f rules.Fact, m metal.ID, said ...string) {
	t.Helper()
	s := step(t, f, m)
	a, err := Answer{}, error(nil)
	if s.Question.Form == FormOne || s.Question.Form == FormSeveral {
		a, err = v.Choose(s, said)
	} else {
		a, _, err = v.Read(s, said[0])
	}
	if err != nil {
		t.Fatal(err)
	}
	v.Set(a)
}

// Expected echoes by hand: 3/8 in is 9.525 mm, 14 ga stainless is 5/64 in =
// 1.984 mm (15 USC 206), 130 ft is 39.6 m (shown in whole metres), 90 psi is 6.2 bar, 1/2 in is 12.7 mm.
func TestReadEchoesWhatItUnderstood(t *testing.T) {
	for _, c := range []struct {
		style unit.Style
		fact  rules.Fact
		metal metal.ID
		said  string
		echo  string
		unit  string
	}{
		{unit.Metric, rules.FactThickest, metal.MildSteel, "12", "12 → 12 mm", "mm"},
		{unit.Metric, rules.FactThickest, metal.MildSteel, "12 mm", "", ""},
		{unit.Metric, rules.FactThickest, metal.MildSteel, "3/8 in", "3/8 in = 9.5 mm", ""},
		{unit.Inch, rules.FactThickest, metal.MildSteel, "3/8 in", "3/8 in = 9.5 mm", ""},
		{unit.Inch, rules.FactThickest, metal.MildSteel, "1/2", "1/2 → 1/2 in", "in"},
		{unit.Metric, rules.FactThickest, metal.MildSteel, "3/8", "3/8 → 3/8 in = 9.5 mm", "in"},
		{unit.Inch, rules.FactThickest, metal.MildSteel, "0.25", "0.25 → 0.25 in = 1/4 in", "in"},
		{unit.Metric, rules.FactThickest, metal.Stainless, "14 ga", "14 ga stainless = 1.98 mm", ""},
		{unit.Metric, rules.FactRarest, metal.Stainless, "none", "none → none", ""},
		{unit.Metric, rules.FactCutLength, "", "40", "40 → 40 m a day", "m"},
		{unit.Metric, rules.FactCutLength, "", "200 m/week", "200 m/week = 200 m a week", ""},
		{unit.Metric, rules.FactCutLength, "", "130 ft a day", "130 ft a day = 40 m a day", ""},
		{unit.Metric, rules.FactAirPressure, "", "90 psi", "90 psi = 6.2 bar", ""},
		{unit.Metric, rules.FactBusyCuts, "", "8", "", ""},
		{unit.Metric, FactDate, "", "2026-11-25", "", ""},
		{unit.Metric, rules.FactCutLength, "", "200/week", "200/week → 200 m a week", "m"},
		{unit.Metric, rules.FactDays, "", "5", "", ""},
		{unit.Inch, rules.FactThickest, metal.MildSteel, ".032", ".032 → 0.032 in", "in"},
		{unit.Inch, rules.FactCordSection, "", "12", "12 = AWG 12", "AWG"},
		{unit.Metric, rules.FactBudget, "", "9000", "9000 → in the currency of the price list", ""},
		{unit.Metric, rules.FactBudget, "", "£2000", "£2000 → taken as a sum in the currency of the price list: make sure that is £", ""},
	} {
		v := New("x", noon)
		tell(t, v, FactUnits, "", string(c.style))
		a, echo, err := v.Read(step(t, c.fact, c.metal), c.said)
		if err != nil || echo.String() != c.echo || a.Unit != c.unit {
			t.Errorf("%s %q: echo %q, unit %q, error %v; want %q, %q", c.fact, c.said, echo, a.Unit, err, c.echo, c.unit)
		}
	}
}

func TestReadRefusesWithWhatIsAccepted(t *testing.T) {
	v := New("x", noon)
	for _, c := range []struct {
		fact     rules.Fact
		metal    metal.ID
		said     string
		wrong    string
		accepted string
	}{
		{rules.FactThickest, metal.Stainless, "thick", `thickest clean cut, stainless: "thick" is not a thickness`, "12 mm"},
		{rules.FactThickest, metal.Stainless, "4000 mm", "is not plausible", "300 mm"},
		{rules.FactThickest, metal.CastIron, "14 ga", "14 ga", "mm"},
		{rules.FactThickest, metal.MildSteel, "0", "", "12 mm"},
		{rules.FactBreaker, "", "5000", "not plausible", "2000 A"},
		{rules.FactAltitude, "", "9000 m", "not plausible", "5000 m"},
		{FactDate, "", "25.11.2026", "not a date", "2026-11-25"},
		{FactCompany, "", "  ", "nothing was said", "not known"},
		{rules.FactUse, "", "production", "chosen from a list", "1 (maintenance: repair and odd jobs)"},
	} {
		_, _, err := v.Read(step(t, c.fact, c.metal), c.said)
		if err == nil || !strings.Contains(err.Error(), c.wrong) || !strings.Contains(err.Error(), c.accepted) {
			t.Errorf("%s %q: error %v; want %q and %q", c.fact, c.said, err, c.wrong, c.accepted)
		}
	}
}

// What people say when they do not know is an answer in every form.
func TestNotKnownIsSaidInManyWays(t *testing.T) {
	v := New("x", noon)
	for _, said := range []string{"?", "-", "Not known", "don’t know", "no idea", "not sure"} {
		for _, fact := range []rules.Fact{FactContact, FactDate, rules.FactBreaker} {
			if a, _, err := v.Read(step(t, fact, ""), said); err != nil || a.State != Unknown {
				t.Errorf("%s %q: %+v, %v", fact, said, a, err)
			}
		}
	}
}

// A bare number keeps the unit it was told in when the units change later.
func TestBareNumberNeverChangesMeaning(t *testing.T) {
	v := New("x", noon)
	tell(t, v, rules.FactMetals, "", "mild-steel")
	tell(t, v, rules.FactThickest, metal.MildSteel, "12")
	tell(t, v, FactUnits, "", "in")
	tell(t, v, rules.FactEveryday, metal.MildSteel, "1/4")
	tell(t, v, FactUnits, "", "mm")
	j, problems := v.Job()
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if got := j.Pieces[0].Thickest.Or(0); got != 12 {
		t.Errorf("12 told in millimetres became %v mm", got)
	}
	if got := j.Pieces[0].Everyday.Or(0); got != 6.35 {
		t.Errorf("1/4 told in inches became %v mm, want 6.35", got)
	}
}

// Whatever Read takes, Job understands without a problem, also after the units
// were changed, and with the same result.
func TestJobUnderstandsWhatReadTakes(t *testing.T) {
	quantities := []string{"12", "1.5", "3/8 in", "14 ga", "40 m a day", "200/week", "9 cfm", "90 psi", "10 AWG", "230", "30 kVA", "none", "0", "45°", "60 gal"}
	rapid.Check(t, func(rt *rapid.T) {
		v := New("x", noon)
		tell(t, v, rules.FactMetals, "", "mild-steel")
		tell(t, v, rules.FactFeatures, "", "bevels")
		tell(t, v, rules.FactStart, "", "both")
		tell(t, v, rules.FactSource, "", "both")
		tell(t, v, FactUnits, "", rapid.SampledFrom([]string{"mm", "in"}).Draw(rt, "units"))
		q := rapid.SampledFrom(Catalogue()).Draw(rt, "question")
		said := rapid.OneOf(rapid.SampledFrom(quantities), rapid.String()).Draw(rt, "said")
		a, _, err := v.Read(Step{q, metalFor(q)}, said)
		if err != nil {
			return
		}
		v.Set(a)
		before, problems := v.Job()
		tell(t, v, FactUnits, "", rapid.SampledFrom([]string{"mm", "in"}).Draw(rt, "units then"))
		after, then := v.Job()
		if len(problems)+len(then) > 0 || !reflect.DeepEqual(before, after) {
			rt.Fatalf("%s %q: %v %v", q.ID, said, problems, then)
		}
	})
}

func TestNotKnownIsAnAnswerAndNoNumber(t *testing.T) {
	v := New("x", noon)
	tell(t, v, rules.FactMetals, "", "mild-steel")
	tell(t, v, rules.FactThickest, metal.MildSteel, "?")
	a, ok := v.Answer(rules.Asked{Fact: rules.FactThickest, Metal: metal.MildSteel})
	if !ok || a.State != Unknown || a.Said != "" {
		t.Errorf("got %+v", a)
	}
	if j, _ := v.Job(); j.Pieces[0].Thickest.IsKnown() {
		t.Error("not known became a number")
	}
}

func TestChooseRefuses(t *testing.T) {
	v := New("x", noon)
	tell(t, v, rules.FactAnnoysMost, "", "too-slow")
	for _, c := range []struct {
		fact    rules.Fact
		options []string
	}{
		{rules.FactUse, nil}, {rules.FactUse, []string{"often"}}, {rules.FactUse, []string{"mixed", "production"}},
		{rules.FactAnnoysNext, []string{"too-slow"}}, {FactCompany, []string{"x"}},
	} {
		if _, err := v.Choose(step(t, c.fact, ""), c.options); err == nil {
			t.Errorf("%s took %v", c.fact, c.options)
		}
	}
}

// A person sees numbers and texts on the screen, so the hint names these; a file
// holds identifiers.
func TestHintsNameOptionsAsTheReaderSeesThem(t *testing.T) {
	v := &Visit{}
	units, _ := Find(FactUnits)
	metals, _ := Find(rules.FactMetals)
	for _, c := range []struct {
		q           *Question
		hint, saved string
	}{
		{units, "choose 1 (millimetres), 2 (inches)", "choose mm, in"},
		{metals, "choose by number, from 1 (mild steel) to 7 (other metal)", "choose mild-steel, galvanised-steel, stainless, aluminium, copper-brass, cast-iron, other"},
	} {
		_, err := v.Choose(Step{Question: c.q}, []string{"gold"})
		_, inFile := v.ChooseSaved(Step{Question: c.q}, []string{"gold"})
		for want, err := range map[string]error{c.hint: err, c.saved: inFile} {
			if m, ok := err.(*Mistake); !ok || m.Hint.String() != want {
				t.Errorf("%v, want the hint %q", err, want)
			}
		}
	}
}
