package size

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// anySystem draws a row whose figures do not contradict each other.
func anySystem(t *rapid.T) *system.System {
	s := &system.System{OutputMax: unit.Ampere(rapid.Float64Range(20, 150).Draw(t, "output"))}
	s.OutputMin = s.OutputMax * unit.Ampere(rapid.Float64Range(0.2, 1).Draw(t, "least output"))
	s.Rated = unit.Millimetre(rapid.Float64Range(2, 40).Draw(t, "rated"))
	s.CleanMax = s.Rated * unit.Millimetre(rapid.Float64Range(1, 3).Draw(t, "clean"))
	s.Severance = s.CleanMax * unit.Millimetre(rapid.Float64Range(1, 2).Draw(t, "severed"))
	share, duty := 1.0, rapid.Float64Range(20, 100).Draw(t, "duty")
	for range rapid.IntRange(1, 3).Draw(t, "duty points") {
		s.Duty = append(s.Duty, system.DutyPoint{Output: s.OutputMax * unit.Ampere(share), Duty: unit.Percent(duty)})
		share *= rapid.Float64Range(0.5, 0.95).Draw(t, "next output")
		duty = min(100, duty*rapid.Float64Range(1, 3).Draw(t, "next duty"))
	}
	return s
}

func anyOutput(t *rapid.T, s *system.System, name string) unit.Ampere {
	return unit.Ampere(rapid.Float64Range(float64(s.OutputMin), float64(s.OutputMax)).Draw(t, name))
}

func anyLimit(t *rapid.T) unit.MillimetrePerMinute {
	return rapid.SampledFrom([]unit.MillimetrePerMinute{FreeHand, AlongEdge, OnCarriage}).Draw(t, "limit")
}

func TestSpeedNeverRisesWithThickness(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySystem(t)
		output, limit := anyOutput(t, s, "output"), anyLimit(t)
		thin := rapid.Float64Range(0.1, 100).Draw(t, "thin")
		thick := rapid.Float64Range(thin, 100).Draw(t, "thick")
		a, err1 := Speed(s, output, unit.Millimetre(thin), limit)
		b, err2 := Speed(s, output, unit.Millimetre(thick), limit)
		if err1 != nil && err2 == nil {
			t.Fatal("cuts thick but not thin")
		}
		if err2 == nil && b > a*(1+1e-9) {
			t.Fatalf("%v mm/min at %v mm, but %v at %v", a, thin, b, thick)
		}
		if a > limit {
			t.Fatalf("%v mm/min is faster than the torch is led", a)
		}
	})
}

func TestSpeedNeverFallsWithCurrent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySystem(t)
		a, b := anyOutput(t, s, "one"), anyOutput(t, s, "other")
		low, high := min(a, b), max(a, b)
		thick := unit.Millimetre(rapid.Float64Range(0.1, 100).Draw(t, "thickness"))
		limit := anyLimit(t)
		slow, err1 := Speed(s, low, thick, limit)
		fast, err2 := Speed(s, high, thick, limit)
		if err1 == nil && err2 != nil {
			t.Fatal("cuts with less current but not with more")
		}
		if err1 == nil && fast < slow*(1-1e-9) {
			t.Fatalf("%v mm/min at %v A, but %v at %v A", slow, low, fast, high)
		}
	})
}

func TestThinMetalIsNoBetterThanInverseProportion(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySystem(t)
		share := rapid.Float64Range(0.01, 1).Draw(t, "share of the rating")
		v, err := Speed(s, s.OutputMax, s.Rated*unit.Millimetre(share), OnCarriage)
		if err != nil || float64(v)*share > float64(RatedSpeed)*(1+1e-9) {
			t.Fatalf("%v mm/min at %v of the rated thickness (%v)", v, share, err)
		}
	})
}

func TestReachIsTheInverseOfSpeed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySystem(t)
		output := anyOutput(t, s, "output")
		v := unit.MillimetrePerMinute(rapid.Float64Range(50, float64(OnCarriage)).Draw(t, "speed"))
		thick, err := Reach(s, output, v, OnCarriage)
		if err != nil {
			t.Fatal(err)
		}
		if back, err := Speed(s, output, thick*(1-1e-9), OnCarriage); err != nil || back < v*(1-1e-6) {
			t.Fatalf("%v mm at %v mm/min, but there the speed is %v (%v)", thick, v, back, err)
		}
		if back, err := Speed(s, output, thick*(1+1e-6), OnCarriage); err == nil && back > v*(1+1e-6) {
			t.Fatalf("%v mm is not the most for %v mm/min: a little more still goes at %v", thick, v, back)
		}
	})
}

func TestSpeedAtTheEdges(t *testing.T) {
	s := demo()
	for _, c := range []struct {
		name   string
		output unit.Ampere
		t      unit.Millimetre
		limit  unit.MillimetrePerMinute
		want   unit.MillimetrePerMinute
		err    error
	}{
		{"at the rating", 40, 12, FreeHand, 500, nil},
		{"at the clean maximum", 40, 16, FreeHand, 250, nil},
		{"at severance", 40, 20, FreeHand, 125, nil},
		{"just beyond severance", 40, 20.01, FreeHand, 0, ErrTooThick},
		{"half the rating", 40, 6, FreeHand, 1000, nil}, // inverse proportion
		{"half output halves the thicknesses", 20, 6, FreeHand, 500, nil},
		{"half output at half severance", 20, 10, FreeHand, 125, nil},
		{"half output beyond", 20, 10.1, FreeHand, 0, ErrTooThick},
		{"where hand and arc are even", 40, 4, FreeHand, 1500, nil}, // 500·12/4
		{"thinner than a hand follows", 40, 1, FreeHand, FreeHand, nil},
		{"along an edge", 40, 3, AlongEdge, 2000, nil}, // 500·12/3
		{"more output than there is", 41, 12, FreeHand, 0, ErrRange},
		{"less output than there is", 19, 12, FreeHand, 0, ErrRange},
		{"no thickness", 40, 0, FreeHand, 0, ErrRange},
		{"not a number", 40, unit.Millimetre(math.NaN()), FreeHand, 0, ErrRange},
	} {
		got, err := Speed(s, c.output, c.t, c.limit)
		if !errors.Is(err, c.err) || math.Abs(float64(got-c.want)) > 1e-6 {
			t.Errorf("%s: %v, %v; want %v, %v", c.name, got, err, c.want, c.err)
		}
	}
	if _, err := Speed(&system.System{Rated: 12, CleanMax: 10, Severance: 20, OutputMax: 40}, 40, 5, FreeHand); !errors.Is(err, ErrRow) {
		t.Errorf("clean maximum below the rating: %v", err)
	}
}

func TestReachAtTheEdges(t *testing.T) {
	s := demo()
	for _, c := range []struct {
		v    unit.MillimetrePerMinute
		want unit.Millimetre
		err  error
	}{
		{250, 16, nil}, {500, 12, nil}, {125, 20, nil}, {100, 20, nil}, {1000, 6, nil}, {1500, 4, nil},
		{1501, 0, ErrTooFast}, {0, 0, ErrRange},
	} {
		got, err := Reach(s, 40, c.v, FreeHand)
		if !errors.Is(err, c.err) || math.Abs(float64(got-c.want)) > 1e-9 {
			t.Errorf("%v mm/min: %v, %v; want %v, %v", c.v, got, err, c.want, c.err)
		}
	}
}

// A row may give one thickness for two speeds; the faster one then holds up to
// it, and the next begins beyond.
func TestSpeedWithEqualThicknesses(t *testing.T) {
	s := &system.System{Rated: 12, CleanMax: 12, Severance: 12, OutputMin: 20, OutputMax: 40}
	for _, c := range []struct {
		t    unit.Millimetre
		want unit.MillimetrePerMinute
	}{{12, 500}, {12 + 1e-9, 125}, {6, 1000}} {
		if v, err := Speed(s, 40, c.t, FreeHand); err != nil || v != c.want {
			t.Errorf("%v mm: %v, %v; want %v", c.t, v, err, c.want)
		}
	}
}

// A row that loses speed slowly with thickness gains it slowly below the rating
// too: rated 12, clean 30 mm, at 6 mm 500·2^(ln 2/ln 2.5) = 844.68, by hand.
func TestSpeedBelowTheRatingKeepsTheSlope(t *testing.T) {
	s := &system.System{Rated: 12, CleanMax: 30, Severance: 60, OutputMin: 20, OutputMax: 40}
	if v, err := Speed(s, 40, 6, FreeHand); err != nil || math.Abs(float64(v)-844.68) > 0.005 {
		t.Errorf("%v, %v", v, err)
	}
	if thick, err := Reach(s, 40, 844.68, FreeHand); err != nil || math.Abs(float64(thick)-6) > 0.001 {
		t.Errorf("%v, %v", thick, err)
	}
}

// Halfway in logarithms between (12, 500) and (16, 250) lies
// (√192 = 13.856, √125000 = 353.55), by hand.
func TestSpeedRunsStraightInLogarithms(t *testing.T) {
	v, err := Speed(demo(), 40, unit.Millimetre(math.Sqrt(192)), FreeHand)
	if err != nil || math.Abs(float64(v)-353.553) > 0.001 {
		t.Errorf("%v, %v", v, err)
	}
}
