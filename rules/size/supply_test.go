package size

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// near reports whether got agrees with a value worked out by hand to the digits
// it is written with.
func near(got, want, half float64) bool { return math.Abs(got-want) <= half }

func TestInputCurrentByHand(t *testing.T) {
	s := &system.System{OutputMin: 20, OutputMax: 40}
	from := system.Supply{Phases: 1, VoltMin: 230, VoltMax: 240, Input: 20}
	for _, c := range []struct {
		output unit.Ampere
		v      unit.Volt
		want   float64
		err    error
	}{
		{40, 230, 20, nil},
		{20, 230, 9.17, nil},       // 20·(20·88)/(40·96)
		{40, 240, 19.17, nil},      // 20·230/240
		{40, 208, 22.12, nil},      // 20·230/208: 208 V lies within 10 % below 230
		{40, 206, 0, ErrVolts},     // below 207 V
		{40, 264, 17.42, nil},      // 10 % above 240 V
		{40, 265, 0, ErrVolts},     //
		{41, 230, 0, ErrRange},     //
		{19, 230, 0, ErrRange},     //
		{40, -230, 0, ErrVolts},    //
		{0, 230, 0, ErrRange},      //
		{40, 1 << 20, 0, ErrVolts}, //
	} {
		got, err := InputCurrent(s, from, c.output, c.v)
		if !errors.Is(err, c.err) || !near(float64(got), c.want, 0.005) {
			t.Errorf("%v A at %v V: %v, %v; want %v, %v", c.output, c.v, got, err, c.want, c.err)
		}
	}
	from.VoltMin, from.VoltMax = 240, 240 // 208 V is 13 % below 240 V
	if _, err := InputCurrent(s, from, 40, 208); !errors.Is(err, ErrVolts) {
		t.Errorf("a 240 V system on 208 V: %v", err)
	}
	if _, err := InputCurrent(s, system.Supply{}, 40, 230); !errors.Is(err, ErrRow) {
		t.Errorf("no plate: %v", err)
	}
}

func TestInputCurrentGrowsWithOutput(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySystem(t)
		from := system.Supply{Phases: 1, VoltMin: 200, VoltMax: 240, Input: 30}
		a, b := anyOutput(t, s, "one"), anyOutput(t, s, "other")
		v := unit.Volt(rapid.Float64Range(180, 264).Draw(t, "volts"))
		low, err1 := InputCurrent(s, from, min(a, b), v)
		high, err2 := InputCurrent(s, from, max(a, b), v)
		if err1 != nil || err2 != nil || low > high || float64(high) > 30*200/float64(v)*(1+1e-9) {
			t.Fatal(low, high, err1, err2)
		}
	})
}

// The conventional load voltage at both ends of its two lines, by hand:
// 80 + 0.4·165 = 146 V, 130 + 0.1·200 = 150 V.
func TestLoadVoltage(t *testing.T) {
	for _, c := range []struct {
		i    unit.Ampere
		want float64
	}{{40, 96}, {100, 120}, {165, 146}, {200, 150}, {500, 180}} {
		if u, err := LoadVoltage(c.i); err != nil || !near(float64(u), c.want, 1e-9) {
			t.Errorf("%v A: %v, %v", c.i, u, err)
		}
	}
	for _, i := range []unit.Ampere{0, -1, 501} {
		if _, err := LoadVoltage(i); !errors.Is(err, ErrRange) {
			t.Errorf("%v A: %v", i, err)
		}
	}
	if p, err := ArcPower(40); err != nil || !near(float64(p), 3.84, 1e-9) {
		t.Errorf("%v, %v", p, err)
	}
}

// The effective current is the root of the mean square over ten minutes,
// counted second by second.
func TestEffectiveCurrentHeatsAsMuch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		idle := rapid.Float64Range(0, 5).Draw(t, "idle")
		load := rapid.Float64Range(idle, 60).Draw(t, "load")
		on := rapid.IntRange(0, int(Period)).Draw(t, "seconds on")
		sum := 0.0
		for s := range int(Period) {
			i := idle
			if s < on {
				i = load
			}
			sum += i * i
		}
		got, err := EffectiveCurrent(unit.Ampere(load), unit.Ampere(idle), unit.Percent(100*float64(on)/float64(Period)))
		if err != nil || !near(float64(got), math.Sqrt(sum/float64(Period)), 1e-9) || float64(got) > load+1e-9 {
			t.Fatal(got, err)
		}
	})
	if i, err := EffectiveCurrent(40, 0, 60); err != nil || !near(float64(i), 30.98, 0.005) { // 40·√0.6
		t.Errorf("%v, %v", i, err)
	}
	for _, bad := range []struct {
		load, idle unit.Ampere
		duty       unit.Percent
	}{{40, 41, 50}, {40, -1, 50}, {40, 0, 101}, {40, 0, -1}} {
		if _, err := EffectiveCurrent(bad.load, bad.idle, bad.duty); !errors.Is(err, ErrRange) {
			t.Errorf("%+v: %v", bad, err)
		}
	}
}

func TestAmpacity(t *testing.T) {
	given := system.Supply{Input: 40, Effective: 22}
	if i, err := Ampacity(given, 60); err != nil || i != 22 {
		t.Errorf("%v, %v", i, err)
	}
	if i, err := Ampacity(system.Supply{Input: 40}, 60); err != nil || !near(float64(i), 31.2, 1e-9) { // 40·0.78
		t.Errorf("%v, %v", i, err)
	}
	if i, err := Ampacity(system.Supply{Input: 40}, 10); err != nil || !near(float64(i), 18, 1e-9) { // 40·0.45
		t.Errorf("%v, %v", i, err)
	}
	if _, err := Ampacity(system.Supply{}, 60); !errors.Is(err, ErrRow) {
		t.Errorf("%v", err)
	}
	if _, err := Ampacity(system.Supply{Input: 40}, 0); !errors.Is(err, ErrRange) {
		t.Errorf("%v", err)
	}
}

// 32 A while cutting, 20 A effective: the upper limit is 64 A, and the next
// standard rating above it, 70 A, is still allowed.
func TestJudgeBreaker(t *testing.T) {
	for _, c := range []struct {
		breaker unit.Ampere
		want    Breaker
	}{{16, BreakerTooSmall}, {20, BreakerMayTrip}, {25, BreakerMayTrip}, {32, BreakerHolds}, {40, BreakerHolds}, {70, BreakerHolds}, {71, BreakerTooLarge}} {
		if got, err := JudgeBreaker(c.breaker, 32, 20, 32); err != nil || got != c.want {
			t.Errorf("%v A: %v, %v; want %v", c.breaker, got, err, c.want)
		}
	}
	if _, err := JudgeBreaker(32, 10, 20, 32); !errors.Is(err, ErrRange) {
		t.Errorf("%v", err)
	}
	for _, i := range []unit.Ampere{0, 101} {
		if _, err := StandardBreaker(i); !errors.Is(err, ErrRange) {
			t.Errorf("%v A: %v", i, err)
		}
	}
}

func TestPowerAndGenerator(t *testing.T) {
	one, err1 := ApparentPower(1, 230, 20)
	three, err2 := ApparentPower(3, 400, 32)
	if err1 != nil || err2 != nil || !near(float64(one), 4.6, 1e-9) || !near(float64(three), 22.17, 0.005) {
		t.Error(one, three, err1, err2)
	}
	if _, err := ApparentPower(2, 230, 20); !errors.Is(err, ErrRange) {
		t.Errorf("two phases: %v", err)
	}
	least, comfort, err := GeneratorNeed(4.6)
	if err != nil || !near(float64(least), 5.75, 1e-9) || !near(float64(comfort), 6.9, 1e-9) {
		t.Error(least, comfort, err)
	}
	for _, c := range []struct {
		h    unit.Metre
		want float64
	}{{0, 10}, {1000, 10}, {2000, 8.2}} { // density ratio 0.822 at 2000 m
		if left, err := GeneratorAt(10, c.h); err != nil || !near(float64(left), c.want, 0.05) {
			t.Errorf("%v m: %v, %v", c.h, left, err)
		}
	}
	if _, err := GeneratorAt(10, 6000); !errors.Is(err, ErrRange) {
		t.Errorf("%v", err)
	}
}

func TestVoltageDropByHand(t *testing.T) {
	// 20 A through 25 m of 2.5 mm² at 70 °C: 7.98·1.1965 = 9.548 Ω/km,
	// 2·20·9.548·0.025 = 9.548 V, 4.15 % of 230 V; √3·20·9.548·0.025 = 8.269 V.
	r, err := CordResistance(2.5, 70)
	if err != nil || !near(float64(r), 9.548, 0.0005) {
		t.Fatal(r, err)
	}
	one, err1 := VoltageDrop(1, 20, r, 25)
	three, err3 := VoltageDrop(3, 20, r, 25)
	share, err := DropShare(one, 230)
	if err1 != nil || err3 != nil || err != nil || !near(float64(one), 9.548, 0.0005) || !near(float64(three), 8.269, 0.0005) || !near(float64(share), 4.15, 0.005) {
		t.Error(one, three, share, err1, err3, err)
	}
	for _, bad := range []func() error{
		func() error { _, err := CordResistance(0.5, 70); return err },
		func() error { _, err := CordResistance(70, 70); return err },
		func() error { _, err := CordResistance(2.5, 120); return err },
		func() error { _, err := AmericanResistance("9", 75); return err },
		func() error { _, err := AmericanResistance("10", 120); return err },
		func() error { _, err := VoltageDrop(2, 20, r, 25); return err },
		func() error { _, err := VoltageDrop(1, -1, r, 25); return err },
		func() error { _, err := DropShare(300, 230); return err },
	} {
		if err := bad(); !errors.Is(err, ErrRange) {
			t.Errorf("%v", err)
		}
	}
}

// A flexible cord of an American size is no better than the stranded conductor
// of the other standard, and within a fifth of it: two standards that were
// written apart. Sections by ASTM B258: 2.081, 3.309, 5.261, 8.366, 13.30,
// 21.15 and 33.62 mm².
func TestTwoStandardsAgree(t *testing.T) {
	for _, c := range []struct {
		gauge   string
		section unit.SquareMillimetre
	}{{"14", 2.081}, {"12", 3.309}, {"10", 5.261}, {"8", 8.366}, {"6", 13.30}, {"4", 21.15}, {"2", 33.62}} {
		cord, err1 := CordResistance(c.section, 75)
		wire, err2 := AmericanResistance(c.gauge, 75)
		if ratio := float64(cord / wire); err1 != nil || err2 != nil || ratio < 1 || ratio > 1.2 {
			t.Errorf("gauge %s: cord over wire %v (%v, %v)", c.gauge, ratio, err1, err2)
		}
	}
}

func TestResistanceFallsWithSection(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		thin := rapid.Float64Range(0.75, 50).Draw(t, "thin")
		thick := rapid.Float64Range(thin, 50).Draw(t, "thick")
		at := unit.Celsius(rapid.Float64Range(0, 90).Draw(t, "temperature"))
		a, err1 := CordResistance(unit.SquareMillimetre(thin), at)
		b, err2 := CordResistance(unit.SquareMillimetre(thick), at)
		if err1 != nil || err2 != nil || b > a*(1+1e-9) {
			t.Fatal(a, b, err1, err2)
		}
	})
}
