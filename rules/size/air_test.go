package size

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"cutbrief/rules/unit"
)

// The standard atmosphere from its definition: the weight of the air above,
// added up metre by metre in geopotential height.
func TestAtmosphereCarriesItsWeight(t *testing.T) {
	const step, top, radius = 0.5, 4900.0, 6356766.0
	slope := func(p, h float64) float64 { return -p * 9.80665 / (287.05287 * (288.15 - 0.0065*h)) }
	p := 101.325
	for h := 0.0; h < top; h += step {
		p += step * slope(p+step/2*slope(p, h), h+step/2)
	}
	got, err := Atmosphere(unit.Metre(radius * top / (radius - top)))
	if err != nil || !near(float64(got), p, 1e-4) {
		t.Errorf("%v, by weight %v (%v)", got, p, err)
	}
	for _, h := range []unit.Metre{-101, 5001, unit.Metre(math.NaN())} {
		if _, err := Atmosphere(h); !errors.Is(err, ErrRange) {
			t.Errorf("%v m: %v", h, err)
		}
	}
}

func TestDeliveredAt(t *testing.T) {
	// By hand: 200·84.560/100 = 169.12 at 1500 m; at sea level no more than the plate.
	for _, c := range []struct {
		h    unit.Metre
		want float64
	}{{0, 200}, {1500, 169.12}} {
		if q, err := DeliveredAt(200, c.h); err != nil || !near(float64(q), c.want, 0.005) {
			t.Errorf("%v m: %v, %v", c.h, q, err)
		}
	}
	if _, err := DeliveredAt(-1, 0); !errors.Is(err, ErrRange) {
		t.Errorf("%v", err)
	}
	if _, err := Restate(1, Reference{200, 20}, ANR()); !errors.Is(err, ErrRange) {
		t.Errorf("%v", err)
	}
}

func TestRestateThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		state := func(name string) Reference {
			return Reference{Kilopascal(rapid.Float64Range(50, 110).Draw(t, name+" kPa")), unit.Celsius(rapid.Float64Range(-30, 60).Draw(t, name+" °C"))}
		}
		a, b := state("one"), state("other")
		q := unit.LitrePerMinute(rapid.Float64Range(0, 1000).Draw(t, "flow"))
		there, err1 := Restate(q, a, b)
		back, err2 := Restate(there, b, a)
		if err1 != nil || err2 != nil || !near(float64(back), float64(q), 1e-9*(1+float64(q))) {
			t.Fatal(q, there, back, err1, err2)
		}
	})
}

// march adds up the friction of one short piece of hose after the other, each
// with the density of the air where it lies.
func march(flow unit.LitrePerMinute, bore unit.Millimetre, length unit.Metre, inlet unit.Bar) float64 {
	const pieces = 20000
	d := float64(bore) / 1000
	mass := float64(flow) / 60000 * 1e5 / (287.05 * 293.15)
	area := math.Pi * d * d / 4
	re := mass / area * d / 1.82e-5
	lg := math.Log10(1.5e-6/(3.7*d) + 5.74/math.Pow(re, 0.9))
	f := 0.25 / (lg * lg)
	p := float64(inlet)*1e5 + 101325
	start := p
	for range pieces {
		density := p / (287.05 * 293.15)
		speed := mass / (density * area)
		p -= f * float64(length) / pieces / d * density * speed * speed / 2
	}
	return (start - p) / 1e5
}

func TestHoseLossPieceByPiece(t *testing.T) {
	for _, c := range []struct {
		flow   unit.LitrePerMinute
		bore   unit.Millimetre
		length unit.Metre
	}{{120, 6.35, 7.62}, {200, 8, 15}, {250, 6.35, 10}, {180, 9.5, 30}} {
		got, err := HoseLoss(c.flow, c.bore, c.length, 7, SeaLevel)
		want := march(c.flow, c.bore, c.length, 7)
		if err != nil || !near(float64(got), want, want*1e-3) {
			t.Errorf("%+v: %v bar, piece by piece %v (%v)", c, got, want, err)
		}
	}
}

func TestHoseLossGrowsWithFlowAndLength(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bore := unit.Millimetre(rapid.Float64Range(6, 13).Draw(t, "bore"))
		a, b := rapid.Float64Range(100, 300).Draw(t, "flow"), rapid.Float64Range(100, 300).Draw(t, "flow")
		length := unit.Metre(rapid.Float64Range(1, 30).Draw(t, "length"))
		low, err1 := HoseLoss(unit.LitrePerMinute(min(a, b)), bore, length, 7, SeaLevel)
		high, err2 := HoseLoss(unit.LitrePerMinute(max(a, b)), bore, length, 7, SeaLevel)
		if errors.Is(err2, ErrChokes) {
			return
		}
		if err1 != nil || err2 != nil || low > high {
			t.Fatal(low, high, err1, err2)
		}
		longer, err := HoseLoss(unit.LitrePerMinute(min(a, b)), bore, length*1.5, 7, SeaLevel)
		if !errors.Is(err, ErrChokes) && longer < low {
			t.Fatal(low, longer, err)
		}
	})
}

func TestHoseLossRefuses(t *testing.T) {
	for _, c := range []struct {
		flow   unit.LitrePerMinute
		bore   unit.Millimetre
		length unit.Metre
		want   error
	}{
		{300, 5, 50, ErrChokes}, {100, 40, 10, ErrRange}, {0, 8, 10, ErrRange}, {100, 0, 10, ErrRange}, {100, 8, -1, ErrRange},
	} {
		if _, err := HoseLoss(c.flow, c.bore, c.length, 7, SeaLevel); !errors.Is(err, c.want) {
			t.Errorf("%+v: %v", c, err)
		}
	}
	if _, err := HoseLossSimple(300, 6, 30, 7, SeaLevel); !errors.Is(err, ErrRange) {
		t.Errorf("a large drop: %v", err)
	}
	if _, err := HoseLossSimple(0, 6, 30, 7, SeaLevel); !errors.Is(err, ErrRange) {
		t.Errorf("no flow: %v", err)
	}
}

func TestReceiverThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(0, 6).Draw(t, "low")
		high := rapid.Float64Range(low+0.1, 12).Draw(t, "high")
		delivery := rapid.Float64Range(0, 200).Draw(t, "delivery")
		need := rapid.Float64Range(delivery+1, 400).Draw(t, "need")
		v := rapid.Float64Range(1, 1000).Draw(t, "receiver")
		s, err1 := RunTime(unit.Litre(v), unit.Bar(high), unit.Bar(low), unit.LitrePerMinute(need), unit.LitrePerMinute(delivery), 95)
		back, err2 := ReceiverNeed(s, unit.Bar(high), unit.Bar(low), unit.LitrePerMinute(need), unit.LitrePerMinute(delivery), 95)
		if err1 != nil || err2 != nil || !near(float64(back), v, 1e-6*v) {
			t.Fatal(v, s, back, err1, err2)
		}
	})
	if _, err := RunTime(100, 8, 6, 100, 100, SeaLevel); !errors.Is(err, ErrKeepsUp) {
		t.Errorf("%v", err)
	}
	if _, err := RunTime(100, 6, 8, 100, 50, SeaLevel); !errors.Is(err, ErrRange) {
		t.Errorf("%v", err)
	}
	if _, err := ReceiverNeed(60, 8, 8, 100, 50, SeaLevel); !errors.Is(err, ErrRange) {
		t.Errorf("%v", err)
	}
}

func TestWaterClassEdges(t *testing.T) {
	for _, c := range []struct {
		dew  unit.Celsius
		want int
	}{{-70.1, 1}, {-69.9, 2}, {-40, 2}, {-20, 3}, {2.9, 4}, {3, 4}, {3.1, 5}, {10, 6}, {RefrigerantDew, 4}, {DesiccantDew, 2}} {
		if got, err := WaterClass(c.dew); err != nil || got != c.want {
			t.Errorf("%v °C: %v, %v; want %v", c.dew, got, err, c.want)
		}
	}
	if _, err := WaterClass(10.1); !errors.Is(err, ErrRange) {
		t.Errorf("%v", err)
	}
}

func TestPressureDewPoint(t *testing.T) {
	// Air pressed to 8 bar and cooled to 25 °C is wet: its dew point is 25 °C.
	if dew, err := PressureDewPoint(20, 65, 7, SeaLevel, 25); err != nil || dew != 25 {
		t.Errorf("%v, %v", dew, err)
	}
	// Not pressed at all, saturated air of 20 °C has a dew point of 20 °C.
	if dew, err := PressureDewPoint(20, 100, 0, SeaLevel, 40); err != nil || !near(float64(dew), 20, 1e-9) {
		t.Errorf("%v, %v", dew, err)
	}
	// Of 0 °C, the least there is, it has one of 0 °C.
	if dew, err := PressureDewPoint(0, 100, 0, SeaLevel, 10); err != nil || dew != 0 {
		t.Errorf("%v, %v", dew, err)
	}
	for _, bad := range []func() error{
		func() error { _, err := PressureDewPoint(-5, 65, 7, SeaLevel, 25); return err },
		func() error { _, err := PressureDewPoint(20, 0, 7, SeaLevel, 25); return err },
		func() error { _, err := PressureDewPoint(20, 65, 7, SeaLevel, 70); return err },
		func() error { _, err := PressureDewPoint(0, 10, 0, SeaLevel, 25); return err }, // frost
		func() error { _, err := Saturation(61); return err },
	} {
		if err := bad(); !errors.Is(err, ErrRange) {
			t.Errorf("%v", err)
		}
	}
}
