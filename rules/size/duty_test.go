package size

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

func TestDutyNeverAboveAllOfTheTime(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySystem(t)
		a, b := anyOutput(t, s, "one"), anyOutput(t, s, "other")
		low, err1 := AllowedDuty(s, min(a, b))
		high, err2 := AllowedDuty(s, max(a, b))
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		if low > 100 || high > low*(1+1e-9) || high <= 0 {
			t.Fatalf("%v %% at %v A, %v %% at %v A", low, min(a, b), high, max(a, b))
		}
	})
}

func TestDutyHitsThePlate(t *testing.T) {
	// Between the points, by hand: at the geometric mean of the currents the
	// duty is the geometric mean of the duties, √(35·60) = 45.83 % at √(40·30) A.
	s := &system.System{OutputMin: 10, OutputMax: 45, Duty: []system.DutyPoint{{Output: 40, Duty: 35}, {Output: 30, Duty: 60}, {Output: 24, Duty: 100}}}
	for _, c := range []struct{ output, want float64 }{
		{40, 35}, {30, 60}, {24, 100}, {20, 100},
		{math.Sqrt(1200), math.Sqrt(2100)},
		{45, 35 * 1600.0 / 2025}, // above the first point I²·X is constant: 27.65 %
	} {
		got, err := AllowedDuty(s, unit.Ampere(c.output))
		if err != nil || math.Abs(float64(got)-c.want) > 1e-9 {
			t.Errorf("%v A: %v, %v; want %v", c.output, got, err, c.want)
		}
	}
	alone := &system.System{OutputMin: 10, OutputMax: 40, Duty: s.Duty[:1]}
	if got, err := AllowedDuty(alone, 28); err != nil || math.Abs(float64(got)-71.43) > 0.005 { // 35·(40/28)²
		t.Errorf("28 A: %v, %v", got, err)
	}
}

func TestDutyRefuses(t *testing.T) {
	points := func(p ...system.DutyPoint) *system.System {
		return &system.System{OutputMin: 10, OutputMax: 40, Duty: p}
	}
	for _, c := range []struct {
		name   string
		s      *system.System
		output unit.Ampere
		want   error
	}{
		{"no plate", points(), 40, ErrNoDuty},
		{"more than the system gives", points(system.DutyPoint{Output: 40, Duty: 35}), 41, ErrRange},
		{"points out of order", points(system.DutyPoint{Output: 30, Duty: 60}, system.DutyPoint{Output: 40, Duty: 35}), 40, ErrRow},
		{"duty falling with current", points(system.DutyPoint{Output: 40, Duty: 60}, system.DutyPoint{Output: 30, Duty: 35}), 40, ErrRow},
		{"two duties at one current", points(system.DutyPoint{Output: 40, Duty: 35}, system.DutyPoint{Output: 40, Duty: 60}), 40, ErrRow},
		{"duty above all", points(system.DutyPoint{Output: 40, Duty: 135}), 40, ErrRow},
	} {
		if _, err := AllowedDuty(c.s, c.output); !errors.Is(err, c.want) {
			t.Errorf("%s: %v, want %v", c.name, err, c.want)
		}
	}
}

// simulate runs the ten minutes second by second: cut, move on while the gas
// still flows, pause, and counts the seconds in which the arc burns.
func simulate(cuts int, each unit.Metre, v unit.MillimetrePerMinute) unit.Percent {
	const step = 0.05 // s
	length := float64(each) * 1000
	pace := float64(v) / 60 // mm/s
	turn := float64(Period) / float64(cuts)
	done, burning := 0.0, 0.0
	for now := 0.0; now < float64(Period)-step/2; now += step {
		if now-math.Floor(now/turn+1e-9)*turn < step/2 {
			done = 0 // the next cut starts
		}
		if done < length {
			done += pace * step
			burning += step
		}
	}
	return unit.Percent(100 * burning / float64(Period))
}

func TestArcOnAgreesWithTheClock(t *testing.T) {
	if got, err := ArcOn(12, 0.25, 500); err != nil || math.Abs(float64(got)-60) > 1e-9 { // 12·0.5 min = 6 min
		t.Errorf("%v, %v", got, err)
	}
	for _, c := range []struct {
		cuts int
		each unit.Metre
		v    unit.MillimetrePerMinute
	}{{12, 0.25, 500}, {5, 0.4, 900}, {20, 0.1, 375}, {3, 1.2, 600}, {60, 0.05, 1500}} {
		got, err := ArcOn(float64(c.cuts), c.each, c.v)
		clock := simulate(c.cuts, c.each, c.v)
		slack := 100 * 0.05 * float64(c.cuts+1) / float64(Period) // one step a cut
		if err != nil || math.Abs(float64(got-clock)) > slack {
			t.Errorf("%d cuts of %v m at %v mm/min: %v, by the clock %v (%v)", c.cuts, c.each, c.v, got, clock, err)
		}
	}
}

func TestFitByHand(t *testing.T) {
	s := demo()
	// 6 mm at 40 A goes at 1000 mm/min; 20 cuts of 0.25 m take 5 min, 50 %.
	// Allowed are 35 %. Turned down to I the time grows as 1/I and the allowance
	// as 1/I²: I = 40·35/50 = 28 A, where 71.43 % is taken and allowed, at
	// 500·12·0.7/6 = 700 mm/min.
	w, err := Fit(s, 6, FreeHand, 20, 0.25)
	if err != nil || math.Abs(float64(w.Output)-28) > 1e-6 || math.Abs(float64(w.Demand)-71.4286) > 1e-3 ||
		math.Abs(float64(w.Allowed)-71.4286) > 1e-3 || math.Abs(float64(w.Speed)-700) > 1e-3 {
		t.Errorf("%+v, %v", w, err)
	}
	// What fits at full output is left there.
	if w, err = Fit(s, 6, FreeHand, 10, 0.25); err != nil || w.Output != 40 {
		t.Errorf("%+v, %v", w, err)
	}
	// 2 mm is led at 1500 mm/min however large the output down to 20 A, where
	// the arc gives 500·6/2 = 1500 too: 30 cuts of 0.3 m are 60 %, allowed from
	// 40·√(35/60) = 30.55 A down.
	if w, err = Fit(s, 2, FreeHand, 30, 0.3); err != nil || math.Abs(float64(w.Output)-30.55) > 0.005 {
		t.Errorf("%+v, %v", w, err)
	}
	// 18 mm near severance: turning down makes it slower faster than it cools.
	if _, err = Fit(s, 18, FreeHand, 10, 0.25); !errors.Is(err, ErrNoFit) {
		t.Errorf("%v", err)
	}
	if _, err = Fit(s, 21, FreeHand, 1, 0.25); !errors.Is(err, ErrTooThick) {
		t.Errorf("%v", err)
	}
}

// The bends by hand: where the hand and no longer the arc limits, and where the
// clean maximum is passed on the way down.
func TestFitAroundBends(t *testing.T) {
	for _, c := range []struct {
		name         string
		clean, sever unit.Millimetre
		thick        unit.Millimetre
		cuts         float64
		each         unit.Metre
		output       float64
		share        float64
	}{
		// 2 mm goes at 1500 mm/min down to 20 A: 25 cuts of 0.3 m take 50 %,
		// allowed at 20 A are 40 %. Below, 50·20/I = 40·(20/I)² at 16 A: 62.5 %.
		{"hand", 16, 20, 2, 25, 0.3, 16, 62.5},
		// 24 mm is the clean maximum of 30 mm at 32 A: 0.5 m takes 20 %, allowed are
		// 15.625 %. Below, 20·32/I = 15.625·(32/I)² at 25 A: 25.6 %.
		{"clean maximum", 30, 60, 24, 1, 0.5, 25, 25.6},
	} {
		s := &system.System{Rated: 12, CleanMax: c.clean, Severance: c.sever, OutputMin: 10, OutputMax: 40, Duty: []system.DutyPoint{{Output: 40, Duty: 10}}}
		w, err := Fit(s, c.thick, FreeHand, c.cuts, c.each)
		if err != nil || math.Abs(float64(w.Output)-c.output) > 1e-6 || math.Abs(float64(w.Demand)-c.share) > 1e-6 || math.Abs(float64(w.Allowed)-c.share) > 1e-6 {
			t.Errorf("%s: %+v, %v", c.name, w, err)
		}
	}
}

// A row with two equal thicknesses leaps in speed: 9 mm are cut at 500·I/30 from 30 A
// up, and far slower below. 8 cuts of a third of a metre take 1600/I % there, the plate
// of 40 A at 35 % allows 56000/I²: both are 45.7 % at 35 A.
func TestFitBesideALeap(t *testing.T) {
	s := row(40, 35, 1, 1)
	s.Rated = s.CleanMax * 12 / 16
	s.CleanMax = s.Rated
	at, err := Fit(s, 9, FreeHand, 8, 1.0/3)
	if err != nil || math.Abs(float64(at.Output-35)) > 1e-3 || math.Abs(float64(at.Demand)-1600.0/35) > 0.01 {
		t.Errorf("%+v, %v, want 35 A", at, err)
	}
	// Where it does not fit above the leap it may below: 5 mm leap at 20 A, where 4
	// cuts of 0.3 m take 24 % above it and 48 % below, of 20 % allowed. From there on
	// 48·x^(ln 2/ln 3) are taken and 20·x² allowed, x times further down: 10.55 A.
	s = &system.System{Rated: 10, CleanMax: 10, Severance: 30, OutputMin: 5, OutputMax: 40, Duty: []system.DutyPoint{{Output: 40, Duty: 5}}}
	x := math.Pow(2.4, 1/(2-math.Ln2/math.Log(3)))
	if at, err := Fit(s, 5, FreeHand, 4, 0.3); err != nil || !near(float64(at.Output), 20/x, 1e-6) || !near(float64(at.Demand), 20*x*x, 1e-5) {
		t.Errorf("%+v, %v, want %v A", at, err, 20/x)
	}
}

// The exact answer against a plain search through two thousand outputs.
func TestFitIsTheLargestOutputThatFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySystem(t)
		thick := s.Severance * unit.Millimetre(rapid.Float64Range(0.02, 1).Draw(t, "thickness share"))
		limit := anyLimit(t)
		cuts := rapid.Float64Range(1, 60).Draw(t, "cuts")
		each := unit.Metre(rapid.Float64Range(0.01, 1).Draw(t, "length"))
		got, err := Fit(s, thick, limit, cuts, each)
		if err == nil && got.Demand > got.Allowed*(1+1e-6) {
			t.Fatalf("%+v does not fit", got)
		}
		if err != nil && !errors.Is(err, ErrNoFit) {
			t.Fatal(err)
		}
		for i := range 2000 {
			output := s.OutputMax + (s.OutputMin-s.OutputMax)*unit.Ampere(i)/1999
			w, bad := WorkingAt(s, max(output, s.OutputMin), thick, limit, cuts, each)
			if bad != nil || w.Demand > w.Allowed {
				continue
			}
			if err != nil || w.Output > got.Output*(1+1e-6) {
				t.Fatalf("%+v fits, but the answer is %+v (%v)", w, got, err)
			}
			return
		}
	})
}

func TestSizesCostNoMemory(t *testing.T) {
	s := demo()
	if n := testing.AllocsPerRun(100, func() {
		_, _ = Speed(s, 40, 14, FreeHand)
		_, _ = Speed(s, 40, 24, FreeHand) // refused
		_, _ = Fit(s, 6, FreeHand, 20, 0.25)
		_, _ = InputCurrent(s, s.Supplies[0], 30, 230)
		_, _ = HoseLoss(120, 8, 10, 7, SeaLevel)
		_, _ = CordResistance(2.5, CordTemperature)
		_, _, _ = Plausible(s)
	}); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

func BenchmarkOneSystem(b *testing.B) {
	s := demo()
	b.ReportAllocs()
	for b.Loop() {
		_, _ = Fit(s, 6, FreeHand, 20, 0.25)
		_, _ = InputCurrent(s, s.Supplies[0], 30, 230)
		_, _ = HoseLoss(120, 8, 10, 7, SeaLevel)
		_, _ = CordResistance(2.5, CordTemperature)
		_, _ = DeliveredAt(200, 1500)
	}
}
