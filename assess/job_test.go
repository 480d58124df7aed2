package assess

import (
	"math"
	"strings"
	"testing"

	"cutbrief/rules"
	"cutbrief/rules/metal"
)

// By hand: 40 m a day on 5 days are 200 m a week; 100 ft are 30.48 m.
func TestCutLengthPerWeek(t *testing.T) {
	for _, c := range []struct {
		length, days string
		want         float64
		known        bool
	}{
		{"40 m a day", "5", 200, true}, {"40", "5", 200, true}, {"40 m", "", 0, false},
		{"200 m/week", "", 200, true}, {"200 m per week", "2", 200, true}, {"200 m a week", "5", 200, true},
		{"100 ft a day", "5", 152.4, true}, {"100ft/day", "5", 152.4, true}, {"30 m daily", "2", 60, true}, {"200 weekly", "", 200, true},
	} {
		v := New("x", noon)
		tell(t, v, rules.FactCutLength, "", c.length)
		if c.days != "" {
			tell(t, v, rules.FactDays, "", c.days)
		}
		j, problems := v.Job()
		got, known := j.CutPerWeek.Get()
		if len(problems) > 0 || known != c.known || math.Abs(float64(got)-c.want) > 1e-9 {
			t.Errorf("%s on %s days: %v %v %v, want %v", c.length, c.days, got, known, problems, c.want)
		}
	}
}

// What no longer applies is kept in the record and left out of the job.
func TestInactiveAnswersAreIgnoredAndKept(t *testing.T) {
	v := New("x", noon)
	tell(t, v, rules.FactSource, "", "generator")
	tell(t, v, rules.FactGenerator, "", "15 kVA")
	tell(t, v, rules.FactMetals, "", "mild-steel", "stainless")
	tell(t, v, rules.FactThickest, metal.Stainless, "8 mm")
	tell(t, v, rules.FactSource, "", "mains")
	tell(t, v, rules.FactMetals, "", "mild-steel")
	j, problems := v.Job()
	if j.Power.Generator.IsKnown() || len(j.Pieces) != 1 || j.Pieces[0].Metal != metal.MildSteel || len(problems) > 0 {
		t.Errorf("job %+v, problems %v", j, problems)
	}
	if _, kept := v.Answer(rules.Asked{Fact: rules.FactGenerator}); !kept {
		t.Error("the generator's rating was thrown away")
	}
	if _, kept := v.Answer(rules.Asked{Fact: rules.FactThickest, Metal: metal.Stainless}); !kept {
		t.Error("the stainless thickness was thrown away")
	}
}

func TestNoneIsAKnownZero(t *testing.T) {
	v := New("x", noon)
	tell(t, v, rules.FactMetals, "", "mild-steel")
	for _, said := range []string{"none", "0", "0 mm", "None"} {
		tell(t, v, rules.FactRarest, metal.MildSteel, said)
		j, _ := v.Job()
		if got, known := j.Pieces[0].Rarest.Get(); !known || got != 0 {
			t.Errorf("%q: %v %v", said, got, known)
		}
	}
}

func TestComplaintsInOrderOfWeight(t *testing.T) {
	v := New("x", noon)
	tell(t, v, rules.FactAnnoysMost, "", "warps")
	tell(t, v, rules.FactAnnoysNext, "", "too-slow")
	if j, _ := v.Job(); len(j.Annoys) != 2 || j.Annoys[0] != rules.Warps || j.Annoys[1] != rules.TooSlow {
		t.Errorf("got %v", j.Annoys)
	}
	tell(t, v, rules.FactAnnoysMost, "", "too-slow") // now both say the same
	if j, _ := v.Job(); len(j.Annoys) != 1 || j.Annoys[0] != rules.TooSlow {
		t.Errorf("got %v", j.Annoys)
	}
}

// An answer in a file that cannot be understood is a problem, never a zero.
func TestProblemsNameQuestionValueAndAccepted(t *testing.T) {
	v := New("x", noon)
	tell(t, v, rules.FactMetals, "", "mild-steel")
	v.Set(Answer{Question: rules.FactThickest, Metal: metal.MildSteel, Said: "quite thick", State: Told})
	v.Set(Answer{Question: rules.FactUse, Chosen: []string{"often"}, State: Told})
	j, problems := v.Job()
	if len(problems) != 2 || j.Use.IsKnown() || j.Pieces[0].Thickest.IsKnown() {
		t.Fatalf("job %+v, problems %v", j, problems)
	}
	for i, want := range [][]string{{"thickest clean cut, mild steel", "quite thick", "12 mm"}, {"repair or production", "often", "maintenance, mixed, production"}} {
		for _, w := range want {
			if !strings.Contains(problems[i].Text.String(), w) {
				t.Errorf("%q does not name %q", problems[i].Text.String(), w)
			}
		}
	}
}

// A file edited by hand can hold anything; the job never panics on it.
func TestJobStandsAnyAnswer(t *testing.T) {
	for _, q := range Catalogue() {
		for _, a := range []Answer{{}, {Said: "x"}, {Chosen: []string{"x"}}, {Said: "1", Unit: "furlong"}, {State: Unknown, Chosen: []string{""}}, {Chosen: []string{"a", "b"}}} {
			v := New("x", noon)
			tell(t, v, rules.FactMetals, "", "mild-steel")
			tell(t, v, rules.FactFeatures, "", "bevels")
			a.Question, a.Metal = q.ID, metalFor(q)
			v.Set(a)
			v.Steps()
			v.Job()
		}
	}
}
