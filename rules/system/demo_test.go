package system

import (
	"math"
	"strings"
	"testing"

	"cutbrief/rules/tabular"
	"cutbrief/rules/unit"
)

func TestDemoIsClean(t *testing.T) {
	_, findings := read(demo)
	for _, f := range findings {
		if f.Severity != tabular.Note {
			t.Error(f)
		}
	}
	same(t, findings, "23 pierce_mm note") // left blank on purpose
}

func TestDemoIsMarkedAndPlainlyNamed(t *testing.T) {
	r := Demo()
	if !r.Invented || r.Name != "built-in demo range" || r.Currency != "EUR" {
		t.Errorf("%q, invented %v, %q", r.Name, r.Invented, r.Currency)
	}
	if n := len(r.Systems); n < 6 || n > 9 {
		t.Errorf("%d systems, want 6 to 9", n)
	}
	for _, s := range r.Systems {
		if want := "Demo " + tabular.Number(s.OutputMax); s.Name != want || s.ID != strings.ReplaceAll(strings.ToLower(want), " ", "-") {
			t.Errorf("%s, %s: want %s", s.ID, s.Name, want)
		}
	}
}

// What the worked examples of the trade need from the range: 12 mm and 12.7 mm
// side by side, a pierce that is not known at 20 mm clean maximum, one phase
// and three, holding gaps or not, gouging, about 20 A to 125 A.
func TestDemoCovers(t *testing.T) {
	has := func(what string, is func(System) bool) {
		t.Helper()
		for _, s := range Demo().Systems {
			if is(s) {
				return
			}
		}
		t.Errorf("no system %s", what)
	}
	phases := func(s System, n int) bool {
		for _, p := range s.Supplies {
			if p.Phases == n {
				return true
			}
		}
		return false
	}
	has("of 25 A or less on 120 V", func(s System) bool { return s.OutputMax <= 25 && s.Supplies[0].VoltMax == 120 })
	has("rated 12 mm on one phase", func(s System) bool { return s.Rated == 12 && phases(s, 1) })
	has("rated 12.7 mm", func(s System) bool { return s.Rated == 12.7 })
	has("without a pierce figure at 20 mm", func(s System) bool { return s.CleanMax == 20 && !s.Pierce.IsKnown() })
	has("for one phase and three", func(s System) bool { return phases(s, 1) && phases(s, 3) })
	has("of 125 A with gouging", func(s System) bool { return s.OutputMax == 125 && s.Gouges && phases(s, 3) })
	has("that holds gaps", func(s System) bool { return s.HoldsGaps })
	has("that does not hold gaps", func(s System) bool { return !s.HoldsGaps })
}

// A larger system is larger in everything that grows with output.
func TestDemoGrows(t *testing.T) {
	systems := Demo().Systems
	for i, s := range systems[1:] {
		small := systems[i]
		price, _ := s.Price.Get()
		less, _ := small.Price.Get()
		if s.OutputMax <= small.OutputMax || s.Rated <= small.Rated || s.Severance <= small.Severance ||
			s.AirFlow <= small.AirFlow || s.AirPressure < small.AirPressure || s.Weight <= small.Weight || price <= less {
			t.Errorf("%s is not larger than %s throughout", s.ID, small.ID)
		}
		if perAmpere := float64(s.Rated) / float64(s.OutputMax); perAmpere < 0.23 || perAmpere > 0.3 {
			t.Errorf("%s: %.2f mm per ampere", s.ID, perAmpere)
		}
	}
}

// By hand, for the smallest and the largest: U2 = 80 + 0.4·25 = 90 V, 2250 W,
// over 0.85·0.9 is 2941 VA, over 110 V is 26.74 A; ·√0.35 is 15.82 A.
// 80 + 0.4·125 = 130 V, 16250 W, 21242 VA, over √3·380 V is 32.27 A; ·√0.8 is
// 28.87 A. The file rounds up to 0.1 A, the effective one after rounding.
func TestDemoSupplyWorkedByHand(t *testing.T) {
	small, _ := Demo().Find("demo-25")
	large, _ := Demo().Find("demo-125")
	if got, want := small.Supplies[0], (Supply{1, 110, 120, 26.8, 15.9}); got != want {
		t.Errorf("got %v, want %v", got, want)
	}
	if got, want := large.Supplies[0], (Supply{3, 380, 480, 32.3, 28.9}); got != want {
		t.Errorf("got %v, want %v", got, want)
	}
}

// IEC 60974-1 clause 11.2, from memory. By hand: 45 A: 80 + 18 = 98 V, 4.41 kW;
// 165 A: 146 V, 24.09 kW; 200 A: 130 + 20 = 150 V, 30 kW.
func TestOutputPower(t *testing.T) {
	for a, want := range map[unit.Ampere]float64{45: 4.41, 165: 24.09, 200: 30} {
		if got := float64(output(a)); math.Abs(got-want) > 1e-9 {
			t.Errorf("%v A: %v kW, want %v", a, got, want)
		}
	}
}

// By hand: 230 V · 40 A = 9.2 kVA; √3 · 400 V · 16 A = 11.085 kVA.
func TestDrawnPower(t *testing.T) {
	for _, c := range []struct {
		supply Supply
		want   float64
	}{
		{Supply{Phases: 1, VoltMin: 230, VoltMax: 240, Input: 40}, 9.2},
		{Supply{Phases: 3, VoltMin: 400, VoltMax: 415, Input: 16}, 11.085},
	} {
		if got := float64(drawn(c.supply)); math.Abs(got-c.want) > 0.0005 {
			t.Errorf("%v: %v kVA, want %v", c.supply, got, c.want)
		}
	}
}
