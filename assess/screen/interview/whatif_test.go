package interview

import (
	"reflect"
	"strings"
	"testing"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/rules"
	"cutbrief/rules/metal"
)

// The built-in range, invented: Demo 45 is rated for 12 mm, Demo 50 for 12.7 mm and
// Demo 70 for 18 mm, and in repair work the factor is 1.

var thickestClean = rules.Asked{Fact: rules.FactThickest, Metal: metal.MildSteel}

func farmRepair(t *testing.T) *assess.Visit {
	t.Helper()
	v, found := casebook.DemoVisit("farm-repair")
	if !found {
		t.Fatal("no such sample")
	}
	return v
}

// TestWhatIf: the arrows move one answer and the result follows; nothing of the
// visit changes, until Enter takes the one that was moved.
func TestWhatIf(t *testing.T) {
	v := farmRepair(t)
	noted, _ := v.Answer(thickestClean)
	noted.Note = "the gate posts"
	v.Set(noted)
	before := v.With(noted)
	d := drive(t, v)
	d.keys("i", "<down>")
	d.Sees("Thickest clean cut, mild steel ← 10 mm →", "up to 12 mm: Demo 45", "up to 12.7 mm: Demo 50", "Recommended: Demo 45")
	d.keys("<right>", "<right>", "<right>", "<right>", "<right>", "<right>") // half a millimetre each
	d.Sees("← 13 mm →", "Recommended: Demo 70", "Cost:", "To show:")
	d.keys("<esc>")
	if !reflect.DeepEqual(v.Answers, before.Answers) || d.disk.saves > 0 {
		t.Fatalf("trying changed the visit, or saved it %d times", d.disk.saves)
	}
	d.keys("i", "<down>", "<left>", "<up>", "<down>") // going to another puts it back
	d.Sees("← 10 mm →")
	d.keys("<right>", "<right>", "<enter>")
	d.Sees("11 mm, as tried")
	if a, _ := v.Answer(thickestClean); a.Said != "11 mm" || a.State != assess.Told || a.Note != noted.Note || d.disk.saves != 1 {
		t.Errorf("kept %+v, saved %d times; want 11 mm, once", a, d.disk.saves)
	}
}

// TestWhatIfInLines: the same in words.
func TestWhatIfInLines(t *testing.T) {
	v := farmRepair(t)
	before, _ := casebook.DemoVisit("farm-repair")
	out, got := talk(t, v, "what if thickest-clean 14 mm", "What If rare-thickest mild-steel 30 mm", "what if breaker soon", "what if", "quit")
	for _, want := range []string{
		"Thickest clean cut, mild steel: 14 mm. Nothing is changed.", "Recommended: Demo 70", "- up to 12 mm: Demo 45",
		"Rare thickest cut, mild steel: 30 mm. Nothing is changed.", "Not accepted: ", "- breaker, now 32 A",
	} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not said:\n%s", want, out)
		}
	}
	if !reflect.DeepEqual(v.Answers, before.Answers) || got.Path != "" {
		t.Error("trying changed the visit, or saved it")
	}
}

// BenchmarkWhatIf is what one key takes: a figure moved, and the result worded.
func BenchmarkWhatIf(b *testing.B) {
	v, _ := casebook.DemoVisit("farm-repair")
	d := drive(b, v)
	d.keys("i", "<down>")
	b.ReportAllocs()
	for b.Loop() {
		d.keys("<right>", "<left>")
	}
}
