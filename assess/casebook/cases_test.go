package casebook

import (
	"bytes"
	"testing"

	"cutbrief/rules"
	"cutbrief/rules/system"
)

// The right answer to each built-in case, argued by hand from the rated and
// severance thicknesses of the demo range; the comment in the file says how.
func TestCasesComeOutAsArgued(t *testing.T) {
	want := map[string]struct {
		system  string
		decides rules.Requirement
	}{
		"gate-maker":       {"demo-30", rules.EdgeQuality}, // 5 × 1.5 = 7.5 mm
		"bench-top":        {"demo-45", rules.RunningCost}, // 10 mm, 20 mm severed
		"trade-school":     {"demo-25", rules.Ease},        // 4 mm
		"duct-gauge":       {"demo-25", rules.Speed},       // 10 ga = 3.5 mm, × 1.5 = 5.3 mm
		"half-of-what":     {"demo-50", rules.RunningCost}, // 12.7 mm
		"busy-yard":        {"demo-45", rules.Distortion},  // 10 mm, 18 mm severed
		"load-the-lorry":   {"demo-45", rules.Speed},       // 6 × 2 = 12 mm
		"grating-walk":     {"demo-45", rules.AcrossGaps},  // 8 mm, but the arc has to hold
		"top-of-the-list":  {"demo-30", rules.EdgeQuality}, // 8 mm, 15 mm severed
		"own-pocket":       {"demo-45", rules.Distortion},  // 12 mm, 20 mm severed
		"the-wrong-socket": {"demo-70", rules.Reach},       // 15 mm on one phase
		"only-speed":       {"demo-25", rules.Distortion},  // 3 × 1.15 = 3.5 mm
		"pasture-fence":    {"demo-25", rules.Portability}, // 5 mm
		"ship-plates":      {"", rules.Speed},              // 40 × 2 = 80 mm
	}
	list, findings := Read(bytes.NewReader(casesText))
	for _, f := range findings {
		t.Error(f)
	}
	if len(list) != len(want) {
		t.Errorf("%d cases, want %d", len(list), len(want))
	}
	met := map[Manner]bool{}
	for i := range list {
		c := &list[i]
		met[c.Manner] = true
		r := rules.Judge(c.job(), system.Demo())
		if w, ok := want[c.Name]; !ok || firstOf(&r) != w.system || r.Critical.Requirement != w.decides {
			t.Errorf("%s: %q, %s decides", c.Name, firstOf(&r), r.Critical.Requirement)
		}
		for _, f := range Check(c, system.Demo()) {
			t.Errorf("%s: %s", c.Name, f)
		}
		t.Logf("%s: %d of %d minutes, %d questions", c.Name, NewRoute(c, system.Demo()).Minutes, c.Minutes, len(NewRoute(c, system.Demo()).Asked))
	}
	for _, m := range manners {
		if !met[m.id] {
			t.Errorf("no case is %s", m.id)
		}
	}
}
