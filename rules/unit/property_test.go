package unit_test

import (
	"testing"

	"cutbrief/rules/unit"
	"pgregory.net/rapid"
)

var kinds = []unit.Kind{
	unit.None, unit.Thickness, unit.Length, unit.Speed, unit.Section, unit.Current, unit.Voltage,
	unit.Power, unit.ApparentPower, unit.Flow, unit.Pressure, unit.Volume, unit.Weight, unit.Share,
	unit.Angle, unit.Temperature, unit.Time, unit.Price, unit.Count,
}

// coarsest is the widest step any number of the range below is shown in, as a
// part of it, worked by hand from the table at Show: 1 in 10 of the finest step
// at the bottom of each rung, or the finest step of all, 0.1 in/min (2.54 mm/min)
// or 0.1 cfm (2.83 l/min) or 0.1 gal (0.379 l); the step from one AWG size to the next, at most
// two numbers, is a factor of 92^(2·2/39) = 1.59.
func coarsest(k unit.Kind, v float64) float64 {
	switch k {
	case unit.Section:
		return 0.6 * v
	case unit.Count, unit.Temperature:
		return 1
	case unit.Speed, unit.Flow:
		return max(2.84, 0.11*v)
	case unit.Volume:
		return max(0.38, 0.11*v)
	}
	return 0.11 * v
}

// Reading back what was shown gives the number within one display step, on the
// side that was asked for.
func TestReadBackWhatIsShown(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom(kinds).Draw(t, "kind")
		style := rapid.SampledFrom([]unit.Style{unit.Metric, unit.Inch}).Draw(t, "style")
		round := rapid.SampledFrom([]unit.Round{unit.Nearest, unit.Up, unit.Down}).Draw(t, "round")
		v := rapid.OneOf(rapid.Float64Range(3, 90), rapid.Float64Range(90, 50000)).Draw(t, "value")
		if k == unit.Share || k == unit.Angle {
			v = 3 + v/1000
		}
		shown := unit.Show(unit.Quantity{Value: v, Kind: k}, style, round)
		r, err := unit.Read(shown, k, style, "")
		if err != nil {
			t.Fatalf("%v is shown as %q, which is refused: %v", v, shown, err)
		}
		got, tiny := r.Quantity.Value, 1e-5*v
		if d := got - v; d > coarsest(k, v)+tiny || -d > coarsest(k, v)+tiny {
			t.Fatalf("%v is shown as %q = %v: more than a step away", v, shown, got)
		}
		if round == unit.Up && got < v-tiny || round == unit.Down && got > v+tiny {
			t.Fatalf("%v is shown as %q = %v: on the wrong side", v, shown, got)
		}
	})
}

// More is never shown as less: the numbers read back keep their order.
func TestShowKeepsOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		round := rapid.SampledFrom([]unit.Round{unit.Up, unit.Down}).Draw(t, "round")
		a := rapid.Float64Range(0.5, 200).Draw(t, "a")
		b := a + rapid.Float64Range(0, 5).Draw(t, "more")
		back := func(v float64) float64 {
			r, err := unit.Read(unit.Show(unit.Quantity{Value: v, Kind: unit.Thickness}, unit.Metric, round), unit.Thickness, unit.Metric, "")
			if err != nil {
				t.Fatal(err)
			}
			return r.Quantity.Value
		}
		if back(a) > back(b)+1e-9 {
			t.Fatalf("%v is shown above %v", a, b)
		}
	})
}

// FuzzRead: any text is read within bounds or refused with a message and a
// hint, and what was read can be shown and read again.
func FuzzRead(f *testing.F) {
	for _, s := range []string{"12", "3/8\"", "1-1/4 in", "1¼", "3,5 mm", "14 ga", "#14", "4/0", "1.234,5 €", "-40 °F", "12 000", "1e9", "\x9b31m", "²/³", "- -", "1/999999"} {
		f.Add(s, 1, true)
		f.Add(s, 17, false)
	}
	f.Fuzz(func(t *testing.T, text string, kind int, inch bool) {
		style := unit.Metric
		if inch {
			style = unit.Inch
		}
		k := unit.Kind(kind % len(kinds))
		r, err := unit.Read(text, k, style, unit.SteelGauge)
		if err != nil {
			refused, ok := err.(*unit.ReadError)
			if !ok || refused.Error() == "" {
				t.Fatalf("Read(%q) failed with %v", text, err)
			}
			return
		}
		v := r.Quantity.Value
		if !(v >= -274 && v <= 1e9) || v < 0 && k != unit.Temperature {
			t.Fatalf("Read(%q) = %v", text, v)
		}
		if unit.Show(r.Quantity, style, unit.Nearest) == "not known" {
			t.Fatalf("%q cannot be shown", text)
		}
	})
}
