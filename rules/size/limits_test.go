package size

import (
	"errors"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// a makes any quantity of a figure.
func a[T ~float64](v float64) T { return T(v) }

// row is a system invented for the ranges: it cuts anything down to half a
// millimetre and half an ampere.
func row(output, duty, input, volts float64) *system.System {
	return &system.System{Rated: 12, CleanMax: 16, Severance: 20, OutputMax: 40, Duty: []system.DutyPoint{{Output: a[unit.Ampere](output), Duty: a[unit.Percent](duty)}},
		Supplies: []system.Supply{{Phases: 1, VoltMin: unit.Volt(volts), VoltMax: unit.Volt(volts), Input: unit.Ampere(input)}}}
}

// Each formula holds from one end of the range in its comment to the other, and
// refuses what lies beyond, one figure at a time. "(0" leaves the end itself out,
// and every figure between 0 and 1 that stands in a row is within its range.
func TestValidRanges(t *testing.T) {
	steel := PropertiesOf("mild-steel")[0]
	var err error
	for _, c := range []struct {
		name   string
		figure []float64
		valid  string // of each figure
		ask    func(x []float64)
	}{
		{"Atmosphere", []float64{0}, "[-100 5000]", func(x []float64) { _, err = Atmosphere(a[unit.Metre](x[0])) }},
		{"DensityRatio", []float64{0}, "[-100 5000]", func(x []float64) { _, err = DensityRatio(a[unit.Metre](x[0])) }},
		{"Restate", []float64{0.5, 100, 20, 100, 20}, "[0,[50 110],[-30 60],[50 110],[-30 60]", func(x []float64) {
			_, err = Restate(a[unit.LitrePerMinute](x[0]), Reference{Kilopascal(x[1]), unit.Celsius(x[2])}, Reference{Kilopascal(x[3]), unit.Celsius(x[4])})
		}},
		{"DeliveredAt", []float64{0.5, 0}, "[0,[-100 5000]", func(x []float64) { _, err = DeliveredAt(a[unit.LitrePerMinute](x[0]), a[unit.Metre](x[1])) }},
		{"HoseLoss", []float64{0.5, 0.13, 0, 0.5, 0.5}, "(0,(0,[0,(0,(0", func(x []float64) {
			_, err = HoseLoss(a[unit.LitrePerMinute](x[0]), a[unit.Millimetre](x[1]), a[unit.Metre](x[2]), a[unit.Bar](x[3]), Kilopascal(x[4]))
		}},
		{"RunTime", []float64{0.5, 0.5, 0.25, 0.5, 0.25, 0.5}, "[0,[0.25,[0 0.5],(0.25,[0 0.5),(0", func(x []float64) {
			_, err = RunTime(a[unit.Litre](x[0]), a[unit.Bar](x[1]), a[unit.Bar](x[2]), a[unit.LitrePerMinute](x[3]), a[unit.LitrePerMinute](x[4]), Kilopascal(x[5]))
		}},
		{"ReceiverNeed", []float64{0.5, 0.5, 0.25, 0.5, 0.25, 0.5}, "[0,(0.25,[0 0.5),(0.25,[0 0.5),(0", func(x []float64) {
			_, err = ReceiverNeed(a[unit.Second](x[0]), a[unit.Bar](x[1]), a[unit.Bar](x[2]), a[unit.LitrePerMinute](x[3]), a[unit.LitrePerMinute](x[4]), Kilopascal(x[5]))
		}},
		{"Saturation", []float64{20}, "[0 60]", func(x []float64) { _, err = Saturation(a[unit.Celsius](x[0])) }},
		{"PressureDewPoint", []float64{20, 0.5, 100, 0.5, 20}, "[0 60],(0 100],[50,(0,[0 60]", func(x []float64) {
			_, err = PressureDewPoint(a[unit.Celsius](x[0]), a[unit.Percent](x[1]), a[unit.Bar](max(x[2]-50, -1)), Kilopascal(x[3]), a[unit.Celsius](x[4]))
			if x[2] == 50 { // no overpressure: the air of the room, of which 65 % has a dew point
				_, err = PressureDewPoint(20, 65, 0, SeaLevel, 20)
			}
		}},
		{"ArcOn", []float64{0.5, 0.5, 0.5}, "[0,[0,(0", func(x []float64) { _, err = ArcOn(x[0], a[unit.Metre](x[1]), a[unit.MillimetrePerMinute](x[2])) }},
		{"AllowedDuty", []float64{0.5, 0.5, 0.5}, "(0 40],(0,(0 100]", func(x []float64) { _, err = AllowedDuty(row(x[1], x[2], 1, 1), a[unit.Ampere](x[0])) }},
		{"LoadVoltage", []float64{0.5}, "(0 500]", func(x []float64) { _, err = LoadVoltage(a[unit.Ampere](x[0])) }},
		{"InputCurrent", []float64{0.5, 0.5, 0.5}, "(0,(0,(0 40]", func(x []float64) {
			s := row(40, 35, x[0], x[1])
			_, err = InputCurrent(s, s.Supplies[0], a[unit.Ampere](x[2]), a[unit.Volt](x[1]))
		}},
		{"EffectiveCurrent", []float64{0.5, 0.5, 50}, "[0.5,[0 0.5],[0 100]", func(x []float64) {
			_, err = EffectiveCurrent(a[unit.Ampere](x[0]), a[unit.Ampere](x[1]), a[unit.Percent](x[2]))
		}},
		{"DutyMultiplier", []float64{0.5}, "(0 100]", func(x []float64) { _, err = DutyMultiplier(a[unit.Percent](x[0])) }},
		{"Ampacity", []float64{0.5}, "(0", func(x []float64) { _, err = Ampacity(system.Supply{Input: a[unit.Ampere](x[0])}, 60) }},
		{"BreakerLimit", []float64{0.5}, "(0", func(x []float64) { _, err = BreakerLimit(a[unit.Ampere](x[0])) }},
		{"StandardBreaker", []float64{0.5}, "(0 100]", func(x []float64) { _, err = StandardBreaker(a[unit.Ampere](x[0])) }},
		{"JudgeBreaker", []float64{0.5, 0.5, 0.5, 0.5}, "(0,[0.5,(0 0.5],(0", func(x []float64) {
			_, err = JudgeBreaker(a[unit.Ampere](x[0]), a[unit.Ampere](x[1]), a[unit.Ampere](x[2]), a[unit.Ampere](x[3]))
		}},
		{"ApparentPower", []float64{0.5, 0.5}, "(0,[0", func(x []float64) { _, err = ApparentPower(1, a[unit.Volt](x[0]), a[unit.Ampere](x[1])) }},
		{"GeneratorNeed", []float64{0.5}, "(0", func(x []float64) { _, _, err = GeneratorNeed(a[unit.KilovoltAmpere](x[0])) }},
		{"GeneratorAt", []float64{0.5, 0}, "(0,[-100 5000]", func(x []float64) { _, err = GeneratorAt(a[unit.KilovoltAmpere](x[0]), a[unit.Metre](x[1])) }},
		{"CordResistance", []float64{1, 20}, "[0.75 50],[0 90]", func(x []float64) {
			_, err = CordResistance(a[unit.SquareMillimetre](x[0]), a[unit.Celsius](x[1]))
		}},
		{"VoltageDrop", []float64{0.5, 0.5, 0.5}, "[0,[0,[0", func(x []float64) {
			_, err = VoltageDrop(1, a[unit.Ampere](x[0]), a[OhmPerKilometre](x[1]), a[unit.Metre](x[2]))
		}},
		{"DropShare", []float64{0.5, 0.5}, "[0 0.5],[0.5", func(x []float64) { _, err = DropShare(a[unit.Volt](x[0]), a[unit.Volt](x[1])) }},
		{"DropShare of nothing", []float64{0, 0.5}, "[0 0.5],(0", func(x []float64) { _, err = DropShare(a[unit.Volt](x[0]), a[unit.Volt](x[1])) }},
		{"CordAmpacity", []float64{1}, "[0.75", func(x []float64) { _, _, err = CordAmpacity(a[unit.SquareMillimetre](x[0])) }},
		{"Need", []float64{0.5}, "(0", func(x []float64) { _, _, err = ForMixed().Need(a[unit.Millimetre](x[0])) }},
		{"Speed", []float64{0.5, 0.5, 0.5}, "(0 40],(0,(0", func(x []float64) {
			_, err = Speed(row(40, 35, 1, 1), a[unit.Ampere](x[0]), a[unit.Millimetre](x[1]*x[0]), a[unit.MillimetrePerMinute](x[2]))
		}},
		{"Reach", []float64{0.5, 0.5}, "(0 40],(0", func(x []float64) {
			_, err = Reach(row(40, 35, 1, 1), a[unit.Ampere](x[0]), a[unit.MillimetrePerMinute](x[1]), FreeHand)
		}},
		{"TrueThickness", []float64{0.5, 0}, "(0,[0 60]", func(x []float64) { _, err = TrueThickness(a[unit.Millimetre](x[0]), a[unit.Degree](x[1])) }},
		{"Run", []float64{0.5}, "(0", func(x []float64) { _, err = Run(a[unit.Millimetre](x[0]), 30) }},
		{"HeatInput", []float64{0.5, 0.5, 0.5, 0.5}, "(0,(0,(0,(0 1]", func(x []float64) {
			_, err = HeatInput(a[unit.Volt](x[0]), a[unit.Ampere](x[1]), a[unit.MillimetrePerMinute](x[2]), x[3])
		}},
		{"Absorbed", []float64{0.5, 1.5, 500}, "(0,(0,(0", func(x []float64) {
			_, err = steel.Absorbed(a[unit.Millimetre](x[0]), a[unit.Millimetre](x[1]), a[unit.MillimetrePerMinute](x[2]))
		}},
		{"HeatedZone", []float64{0.5, 0.5}, "(0,(0", func(x []float64) { _, err = HeatedZone(a[JoulePerMillimetre](x[0]), a[unit.Millimetre](x[1])) }},
		{"ByLine", []float64{0.5, 1.5, 500}, "(0,(0,(0", func(x []float64) {
			_, err = steel.ByLine(a[unit.Millimetre](x[0]), a[unit.Millimetre](x[1]), a[unit.MillimetrePerMinute](x[2]))
		}},
		{"Kerf", []float64{40}, "[15 200]", func(x []float64) { _, err = Kerf(a[unit.Ampere](x[0])) }},
		{"MeltShare", []float64{40, 0.5, 0.5}, "[15 200],(0,(0", func(x []float64) {
			_, err = MeltShare(a[unit.Ampere](x[0]), a[unit.Millimetre](x[1]), a[unit.MillimetrePerMinute](x[2]))
		}},
		{"Absorbed in a narrow kerf", []float64{0.9}, "(0", func(x []float64) { _, err = steel.Absorbed(6, a[unit.Millimetre](x[0]), 500) }},
		{"Absorbed at a crawl", []float64{0.9}, "(0", func(x []float64) { _, err = steel.Absorbed(6, 900, a[unit.MillimetrePerMinute](x[0])) }},
		{"ByLine in a narrow kerf", []float64{0.9}, "(0", func(x []float64) { _, err = steel.ByLine(6, a[unit.Millimetre](x[0]), 500) }},
		{"ByLine at a crawl", []float64{0.9}, "(0", func(x []float64) { _, err = steel.ByLine(6, 900, a[unit.MillimetrePerMinute](x[0])) }},
		{"Pierce", []float64{0.5}, "[0 20]", func(x []float64) {
			s := row(40, 35, 1, 1)
			s.Pierce = unit.Known(a[unit.Millimetre](x[0]))
			_, err = Pierce(s)
		}},
		{"Squareness", []float64{12}, "[0.5 150]", func(x []float64) { _, err = Squareness(1, a[unit.Millimetre](x[0])) }},
		{"EdgeNeeded", []float64{12}, "[0.5 150]", func(x []float64) { _, err = EdgeNeeded(ToShow, a[unit.Millimetre](x[0])) }},
	} {
		if c.ask(c.figure); err != nil {
			t.Errorf("%s(%v): %v", c.name, c.figure, err)
		}
		for i, valid := range strings.Split(c.valid, ",") {
			with := func(v float64, within bool) {
				x := slices.Clone(c.figure)
				x[i] = v
				if c.ask(x); (err == nil) != within {
					t.Errorf("%s(%v): %v; figure %d is valid in %s", c.name, x, err, i+1, valid)
				}
			}
			low, high, bounded := strings.Cut(valid[1:], " ")
			from, _ := strconv.ParseFloat(low, 64)
			with(from, valid[0] == '[')
			with(from-1e-3, false)
			with(math.NaN(), false)
			if bounded {
				to, _ := strconv.ParseFloat(strings.Trim(high, "])"), 64)
				with(to, strings.HasSuffix(high, "]"))
				with(to+1e-3, false)
			}
		}
	}
	for _, phases := range []int{0, 2, 4} {
		if _, err := ApparentPower(phases, 230, 20); !errors.Is(err, ErrRange) {
			t.Errorf("%d phases: %v", phases, err)
		}
	}
}

// Bands, multiples and limits of common practice, as their comments give them, and what
// is worked out just beside an end.
func TestValuesOfPractice(t *testing.T) {
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"hardened edge of plasma, least", float64(PlasmaBand().Low), 0.5}, {"most", float64(PlasmaBand().High), 2},
		{"of oxy-fuel, least", float64(OxyFuelBand().Low), 1.5}, {"most", float64(OxyFuelBand().High), 4},
		{"of a cold way, least", float64(ColdBand().Low), 0}, {"most", float64(ColdBand().High), 0},
		{"repair, comfort", ForMaintenance().Comfort, 1}, {"some of both, comfort", ForMixed().Comfort, 2},
		{"a carriage, 300 in/min", float64(OnCarriage), 300 * 25.4}, {"a cord at work, °C", float64(CordTemperature), 70},
		{"a hose with couplings loses as much again", WithCouplings, 1 + 1},
	} {
		if math.Abs(c.got-c.want) > 1e-9 {
			t.Errorf("%s: %g, want %g", c.name, c.got, c.want)
		}
	}
	small := &system.System{Rated: 0.5, CleanMax: 0.5, Severance: 0.5, OutputMax: 0.5}
	if v, err := Speed(small, 0.5, 0.5, FreeHand); err != nil || v != RatedSpeed {
		t.Errorf("%v, %v, want the rated speed at the rated thickness", v, err)
	}
	if p, err := Pierce(small); err != nil || p != 0.25 {
		t.Errorf("%v, %v, want half of the clean maximum", p, err)
	}
	small.Rated = 0
	if _, err := Speed(small, 0.5, 0.5, FreeHand); !errors.Is(err, ErrRow) {
		t.Errorf("no rating: %v", err)
	}
	if i, err := Ampacity(system.Supply{Input: 1, Effective: 0.5}, 60); err != nil || i != 0.5 {
		t.Errorf("%v, %v, want what the plate says", i, err)
	}
	for altitude, less := range map[unit.Metre]bool{1000: false, 1000.5: true} { // derated above 1000 m
		if p, err := GeneratorAt(10, altitude); err != nil || (p < 10) != less {
			t.Errorf("%v m: %v, %v", altitude, p, err)
		}
	}
	// By hand: melting takes 7850·(700·1490 + 250000)·1e-9 = 10.15005 J/mm³; 1.5·6·500/60 = 75 mm³/s
	// of it are 761.254 W, of 40 A · 96 V = 3840 W 19.8243 %.
	if share, err := MeltShare(40, 6, 500); err != nil || !near(float64(share), 19.8243, 5e-5) {
		t.Errorf("%v, %v", share, err)
	}
}

// Where a formula stops in the middle of what its figures make of one another, by the
// bounds its comment names.
func TestDerivedBounds(t *testing.T) {
	refused := func(name string, err error, want error) {
		t.Helper()
		if !errors.Is(err, want) {
			t.Errorf("%s: %v, want %v", name, err, want)
		}
	}
	// Re = 4·ṁ/(π·D·μ) by hand, without a length that could lose anything.
	flow := func(re float64) unit.LitrePerMinute {
		return unit.LitrePerMinute(re * math.Pi * 0.008 * 1.82e-5 / 4 * 287.05 * 293.15 / 1e5 * 60000)
	}
	for re, want := range map[float64]error{5000.5: nil, 4999.5: ErrRange, 0.999e8: nil, 1.001e8: ErrRange} {
		_, err := HoseLoss(flow(re), 8, 0, 6, SeaLevel)
		refused("Re "+strconv.FormatFloat(re, 'g', -1, 64), err, want)
	}
	// p1² − p2² grows with the length: at the length where p2 is half of p1 it chokes.
	p1 := 6 + float64(SeaLevel)/100
	loss, _ := HoseLoss(200, 6, 1, 6, SeaLevel)
	half := 0.75 * p1 * p1 / (p1*p1 - (p1-float64(loss))*(p1-float64(loss)))
	got, err := HoseLoss(200, 6, unit.Metre(half*0.9999), 6, SeaLevel)
	if refused("nearly half", err, nil); !near(float64(got), p1/2, 1e-3) {
		t.Errorf("nearly half of %v bar lost: %v", p1, got)
	}
	_, err = HoseLoss(200, 6, unit.Metre(half*1.0001), 6, SeaLevel)
	refused("more than half", err, ErrChokes)
	// v·w/4α with 9.1e-6 m²/s and 1.5 mm is v/1456 with v in mm/min.
	steel := PropertiesOf("mild-steel")[0]
	for v, want := range map[unit.MillimetrePerMinute]error{14.6: nil, 14.5: ErrRange, 7270: nil, 7290: ErrRange} {
		_, err := steel.ByLine(6, 1.5, v)
		refused("a line of heat", err, want)
	}
	for v, want := range map[unit.MillimetrePerMinute]error{291.3: nil, 291.1: ErrRange} { // from 0.2 up
		_, err := steel.Absorbed(6, 1.5, v)
		refused("absorbed", err, want)
	}
	// The shares of the arc's heat grow with the thickness alone.
	s := row(40, 35, 1, 1)
	one, _ := MeltShare(40, 1, RatedSpeed)
	for share, want := range map[float64]Plausibility{14.8: Suspicious, 15.2: Normal, 59.8: Normal, 60.2: Suspicious, 99.8: Suspicious, 100.2: Impossible} {
		s.Rated = unit.Millimetre(share / float64(one))
		if got, _, err := Plausible(s); got != want || err != nil {
			t.Errorf("%g %% of the heat: %v, %v, want %v", share, got, err, want)
		}
	}
	// IEC 60974-1: 80 + 0.4·I up to 165 A, 130 + 0.1·I above; they do not meet.
	for i, want := range map[unit.Ampere]float64{165: 146, 165.5: 146.55} {
		if u, err := LoadVoltage(i); err != nil || !near(float64(u), want, 1e-9) {
			t.Errorf("%g A: %v V, %v, want %g", i, u, err, want)
		}
	}
	// Zinc is thin: galvanised steel conducts as mild steel.
	if zinc := PropertiesOf("galvanised-steel")[0]; zinc.Diffusivity != steel.Diffusivity || zinc.MeltEnergy() != steel.MeltEnergy() || zinc.Conductivity != steel.Conductivity {
		t.Errorf("galvanised steel is %+v, mild steel %+v", zinc, steel)
	}
}

// The ends of tables, as their sources print them: IEC 60228 class 5 beyond the rows
// that were read (from memory), the classes of water in ISO 8573-1, oxy-fuel speeds of
// Carvill, the thinnest plate and what an edge that is seen needs in ISO 9013.
func TestEndsOfTables(t *testing.T) {
	for section, ohm := range map[unit.SquareMillimetre]OhmPerKilometre{0.75: 26.0, 1: 19.5, 35: 0.554, 50: 0.386} {
		if got, err := CordResistance(section, 20); err != nil || math.Abs(float64(got-ohm)) > 1e-9 {
			t.Errorf("%g mm²: %g Ω/km, %v, want %g", section, got, err, ohm)
		}
	}
	for dew, class := range map[unit.Celsius]int{7: 5, 7.5: 6, 10: 6, 3.5: 5, -19: 4} {
		if got, err := WaterClass(dew); err != nil || got != class {
			t.Errorf("%g °C: class %d, %v, want %d", dew, got, err, class)
		}
	}
	// By hand between 75 mm at 200 and 100 mm at 150: 200·0.75^(ln(80/75)/ln(100/75)) = 187.5.
	for thick, speed := range map[unit.Millimetre]float64{75: 200, 80: 187.5, 100: 150} {
		if got, err := OxyFuelSpeed(thick); err != nil || math.Abs(float64(got)-speed) > 0.05 {
			t.Errorf("%g mm: %g mm/min, %v, want %g", thick, got, err, speed)
		}
	}
	// The driest class a drier reaches, and no drier; welded and seen edges lose nothing.
	for dew, class := range map[unit.Celsius]int{DesiccantDew: 2, DesiccantDew + 0.1: 3, RefrigerantDew: 4, RefrigerantDew + 0.1: 5} {
		if got, err := WaterClass(dew); err != nil || got != class {
			t.Errorf("%g °C: class %d, %v, want %d", dew, got, err, class)
		}
	}
	for next, ranges := range map[EdgeWork]int{ToWeld: 4, ToShow: 3, ToScrap: 0} {
		if need, err := EdgeNeeded(next, 12); err != nil || need.Squareness != ranges || need.Roughness != ranges || need.Allowance != 0 {
			t.Errorf("%s: %+v, %v, want ranges %d and nothing left on", next, need, err, ranges)
		}
	}
	if u, err := Squareness(1, 0.5); err != nil || math.Abs(float64(u)-0.0515) > 1e-9 {
		t.Errorf("0.5 mm: %g, %v, want 0.05 + 0.003·0.5", u, err)
	}
	if _, err := Squareness(1, 0.49); !errors.Is(err, ErrRange) {
		t.Error("0.49 mm has a range")
	}
	if need, err := EdgeNeeded(ToShow, 6); err != nil || need.Squareness != 3 || need.Roughness != 3 {
		t.Errorf("to be seen: %+v, %v, want ranges 3 and 3", need, err)
	}
}
