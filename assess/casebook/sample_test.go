package casebook

import (
	"bytes"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

func visit(t *testing.T, name string) *assess.Visit {
	t.Helper()
	v, ok := DemoVisit(name)
	if !ok {
		t.Fatalf("no visit %s", name)
	}
	return v
}

// Each visit is marked as invented, is fully asked, is understood without a
// problem, and is saved just as the program saves it.
func TestVisitsAreWhole(t *testing.T) {
	inches := 0
	for _, name := range DemoVisits() {
		v := visit(t, name)
		data, _ := files.ReadFile("visit/" + name + ".json")
		_, unknown, err := assess.Decode(data)
		if err != nil || len(unknown) > 0 {
			t.Errorf("%s: %v %v", name, unknown, err)
		}
		if _, problems := v.Job(); len(problems) > 0 {
			t.Errorf("%s: %v", name, problems)
		}
		if s, open := v.NextOpen(); open {
			t.Errorf("%s: %s is open", name, s.Name())
		}
		if !v.Demo {
			t.Errorf("%s is not marked as invented", name)
		}
		if again, _ := v.Encode(); !bytes.Equal(again, data) {
			t.Errorf("%s is not in the form it is saved in", name)
		}
		if v.Style() == unit.Inch {
			inches++
		}
	}
	if inches < 2 || len(DemoVisits()) != 6 {
		t.Errorf("%d of %d visits in inches", inches, len(DemoVisits()))
	}
}

// An independent library finds that each visit keeps to the published schema.
func TestVisitsKeepToTheSchema(t *testing.T) {
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(assess.Schema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("visit.json", doc); err != nil {
		t.Fatal(err)
	}
	schema, err := c.Compile("visit.json")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range DemoVisits() {
		data, _ := files.ReadFile("visit/" + name + ".json")
		v, err := jsonschema.UnmarshalJSON(bytes.NewReader(data))
		if err != nil {
			t.Fatal(err)
		}
		if err := schema.Validate(v); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// The demo visits against the demo range, argued by hand from the rated, clean
// and severance thicknesses of the range.
func TestVisitsAreSizedSensibly(t *testing.T) {
	for name, want := range map[string]struct {
		system  string
		decides rules.Requirement
	}{
		// Repair: rated ≥ 10 mm; 20 mm must come apart. 12 mm rated, 22 mm severance.
		"farm-repair": {"demo-45", rules.RunningCost},
		// Mixed: 3.2 mm aluminium × 1.25 × 1.5 = 6 mm rated, on a 120 V socket.
		"kitchen-fitter": {"demo-25", rules.Distortion},
		// Production: 6.35 mm × 2 = 12.7 mm rated.
		"trailer-builder": {"demo-50", rules.Speed},
		// Repair: rated ≥ 16 mm, 30 mm apart, grating and gouging. 18 mm rated does both.
		"shipyard-crew": {"demo-70", rules.Portability},
		// Mixed: 5 mm × 1.5 = 7.5 mm rated.
		"art-metal": {"demo-30", rules.EdgeQuality},
		// 25 mm × 2 = 50 mm rated and 90 mm apart: beyond any hand system here. The gas bill annoys them most.
		"scrap-yard": {"", rules.RunningCost},
	} {
		j, _ := visit(t, name).Job()
		r := rules.Evaluate(j, system.Demo())
		got := ""
		if r.First != nil {
			got = r.First.System.ID
		}
		if got != want.system || r.Critical.Requirement != want.decides {
			t.Errorf("%s: %q, %s decides; want %q, %s", name, got, r.Critical.Requirement, want.system, want.decides)
		}
		if want.system == "" && r.Outcome != rules.NoneFits {
			t.Errorf("%s: %s, want that none fits", name, r.Outcome)
		}
	}
}

func TestVisitIsNewEachTime(t *testing.T) {
	v := visit(t, DemoVisits()[0])
	v.Answers[0].Said = "changed"
	if visit(t, DemoVisits()[0]).Answers[0].Said == "changed" {
		t.Error("two callers share a visit")
	}
	if _, ok := DemoVisit("../sample"); ok {
		t.Error("found a visit that is not there")
	}
}
