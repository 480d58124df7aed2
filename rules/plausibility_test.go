package rules

import (
	"testing"

	"cutbrief/rules/system"
	"cutbrief/rules/tabular"
	"cutbrief/rules/unit"
)

// By hand, 40 A at the conventional 96 V is 3.84 kW. Melting takes a kerf of
// 1.5 mm × t × 500/60 mm/s × 10.15 J/mm³ = 0.127 kW for each mm of thickness:
// 36 % of the arc at 11 mm, 66 % at 20 mm, 132 % at 40 mm, 10 % at 3 mm.
func TestDoubtsFollowTheArcsPower(t *testing.T) {
	for rated, want := range map[unit.Millimetre]string{11: "", 20: "warning", 40: "error", 3: "warning"} {
		s := sys("s", rated, rated*1.3, rated*1.6)
		s.OutputMax = 40
		got := ""
		for _, f := range Implausible(system.Range{Systems: []system.System{s}}) {
			got = map[tabular.Severity]string{system.Warning: "warning", system.Error: "error"}[f.Severity]
		}
		if got != want {
			t.Errorf("rated %v mm at 40 A: %q, want %q", rated, got, want)
		}
	}
}

func TestTheDemoRangeIsBeyondDoubt(t *testing.T) {
	for _, f := range Implausible(system.Demo()) {
		t.Error(f)
	}
}
