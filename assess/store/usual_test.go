package store

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/metal"

	"pgregory.net/rapid"
)

// drawVisit answers any questions, each typed answer with a text of its own.
func drawVisit(t *rapid.T, at time.Time, number int) *assess.Visit {
	v := assess.New(fmt.Sprint("v", number), at)
	v.Demo = rapid.Bool().Draw(t, "invented")
	for i, q := range assess.Catalogue() {
		if rapid.IntRange(0, 3).Draw(t, "told") == 0 {
			continue
		}
		a := assess.Answer{Question: q.ID, State: assess.Told, Note: fmt.Sprintf("note-%d-%d", number, i)}
		if q.PerMetal {
			a.Metal = metal.MildSteel
		}
		if len(q.Options) > 0 {
			a.Chosen = []string{rapid.SampledFrom(q.Options).Draw(t, "option").ID}
		} else {
			a.Said = fmt.Sprintf("said-%d-%d", number, i)
		}
		v.Set(a)
	}
	return v
}

// Whatever stands in the visits of a folder, a new one is offered
// the rep's name and units of the last; no customer's answer.
func TestNoCustomersAnswerLeaks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		dir, err := os.MkdirTemp("", "visits")
		if err != nil {
			t.Fatal(err)
		}
		defer os.RemoveAll(dir)
		may := map[rules.Fact][]string{}
		for i := range rapid.IntRange(0, 4).Draw(t, "visits") {
			v := drawVisit(t, still(), i)
			if err := Save(filepath.Join(dir, v.ID+".json"), v, still()); err != nil {
				t.Fatal(err)
			}
			for _, f := range []rules.Fact{assess.FactRep, assess.FactUnits} {
				if one, told := v.Answer(rules.Asked{Fact: f}); told && !v.Demo {
					may[f] = append(may[f], append(one.Chosen, one.Said)...)
				}
			}
		}
		for f, offered := range (Folder{Dir: dir}).Usual() {
			if offered == "" || !slices.Contains(may[f], offered) {
				t.Fatalf("%s offers %q; only %q is the rep's own", f, offered, may[f])
			}
		}
	})
}

// The last visit counts; what it does not say is taken from the one before. Where
// the visits are of several reps, nobody is named.
func TestTheLastVisitIsUsual(t *testing.T) {
	type told struct{ rep, units string }
	for _, c := range []struct {
		visits     []told
		rep, units string
	}{
		{[]told{{"Runa Feltham", "in"}, {"Runa Feltham", ""}}, "Runa Feltham", "in"},
		{[]told{{"Runa Feltham", "in"}, {"", "mm"}}, "Runa Feltham", "mm"},
		{[]told{{"Osric Dale", "in"}, {"Runa Feltham", ""}}, "", "in"},
	} {
		dir := t.TempDir()
		for i, v := range c.visits {
			visit := assess.New(fmt.Sprint(i), still())
			if v.rep != "" {
				visit.Set(assess.Answer{Question: assess.FactRep, Said: v.rep, State: assess.Told})
			}
			if v.units != "" {
				visit.Set(assess.Answer{Question: assess.FactUnits, Chosen: []string{v.units}, State: assess.Told})
			}
			path := filepath.Join(dir, fmt.Sprint(i, ".json"))
			if err := Save(path, visit, still()); err != nil {
				t.Fatal(err)
			}
			at := still().Add(time.Duration(i) * time.Hour)
			if err := os.Chtimes(path, at, at); err != nil {
				t.Fatal(err)
			}
		}
		got := Folder{Dir: dir}.Usual()
		if got[assess.FactRep] != c.rep || got[assess.FactUnits] != c.units {
			t.Errorf("%+v: offers %v", c, got)
		}
	}
}

// BenchmarkSuggest is what a folder of visits adds to the first frame. Only the
// ratio of the two within one run means something.
func BenchmarkSuggest(b *testing.B) {
	for _, n := range []int{10, 2000} {
		dir := b.TempDir()
		for i := range n {
			if err := os.WriteFile(filepath.Join(dir, fmt.Sprint(i, ".json")), []byte(`{"format": "cutbrief-visit", "version": 2, "id": "x", "answers": []}`), 0o600); err != nil {
				b.Fatal(err)
			}
		}
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				Folder{Dir: dir}.Usual()
			}
		})
	}
}
