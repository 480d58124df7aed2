package demonstration

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"cutbrief/rules"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

func holdsItem(list []Item, id string) bool {
	for _, i := range list {
		if i.ID == id {
			return true
		}
	}
	return false
}

// What belongs on the lists whatever the job is. Common practice, no source.
func TestChecklistsAlwaysHold(t *testing.T) {
	job, result := shop(rules.Speed, 6)
	p := Choose(job, result)
	before, at := BeforeLeaving(job, result, p), AtSite(job, result, p)
	for _, id := range []string{"manual", "consumables", "torch", "templates", "plates", "leads", "drier", "lens", "clothing", "extinguisher", "permit"} {
		if !holdsItem(before, id) {
			t.Errorf("before leaving: no %s", id)
		}
	}
	for _, id := range []string{"circuit", "air", "bench", "shock", "hot-work", "fire-watch", "fume", "containers", "onlookers", "test-cut", "lens"} {
		if !holdsItem(at, id) {
			t.Errorf("at the site: no %s", id)
		}
	}
	if at[len(at)-1].ID != "test-cut" {
		t.Error("the test cut is not the last thing before the first arc")
	}
}

func TestChecklistsByMetalPlaceAndPlan(t *testing.T) {
	job, result := shop(rules.EdgeQuality, 2)
	job.Features = unit.Known([]rules.Feature{rules.Circles})
	job.Pieces[0].Metal = metal.Stainless
	job.Places = unit.Known([]rules.Place{rules.UpHigh})
	job.Power.Source = unit.Known(rules.GenSet)
	job.Air.Drier = unit.Known(rules.Desiccant)
	result.Need = unit.Known(rules.Need{Metal: metal.Stainless, Thickness: 4})
	p := Choose(job, result)
	before, at := BeforeLeaving(job, result, p), AtSite(job, result, p)
	for _, id := range []string{"guide", "generator", "extraction"} {
		if !holdsItem(before, id) {
			t.Errorf("before leaving: no %s with %v", id, ids(p.Cuts))
		}
	}
	if holdsItem(before, "drier") || holdsItem(before, "gouging-parts") || holdsItem(at, "coatings") || holdsItem(at, "field") {
		t.Error("a line for another job")
	}
	if !holdsItem(at, "chromium") || !holdsItem(at, "up-high") {
		t.Error("stainless up high is not warned of")
	}
}

// Every caution that the page prints is ticked off at the site, and every line
// says what it rests on.
func TestChecklistHoldsEveryCaution(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job, result := anyJob(t)
		p := Choose(job, result)
		at := AtSite(job, result, p)
		text := ""
		for _, i := range append(BeforeLeaving(job, result, p), at...) {
			if _, ok := i.Source.Find(); !ok || i.Text == "" {
				t.Errorf("%s: source %q, %q", i.ID, i.Source.Source, i.Text)
			}
			text += string(i.Text) + "\n"
		}
		for _, c := range Cautions(job, result) {
			if c.ID != "noise" && !strings.Contains(text, string(c.Text)) {
				t.Errorf("the caution %s is not on the list", c.ID)
			}
		}
		if !strings.Contains(text, "hearing protection") {
			t.Error("no hearing protection is packed")
		}
	})
}

// Own texts hold no number: figures stand in the cautions, where a test ties
// them to their source.
func TestChecklistFiguresAreTheCautions(t *testing.T) {
	for _, c := range append(append([]check{}, leaving...), onSite...) {
		if number.MatchString(string(c.text)) {
			t.Errorf("%s prints a figure of its own: %q", c.id, c.text)
		}
		for _, id := range c.cautions {
			if id != "lens" && !slices.ContainsFunc(warnings, func(w Caution) bool { return w.ID == id }) {
				t.Errorf("no caution %q", id)
			}
		}
	}
}
