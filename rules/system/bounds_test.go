package system

import (
	"errors"
	"math"
	"strings"
	"testing"
	"testing/iotest"

	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// The largest figure believed of each kind, and one above it (common practice, no
// source; 1000 V is where low voltage ends, Directive 2014/35/EU, from memory).
func TestBelievedFigures(t *testing.T) {
	for column, c := range map[string][2]string{
		"severance_mm": {"300", "300.5"}, "air_pressure_bar": {"20", "20.1"}, "weight_kg": {"500", "500.5"}, "air_flow_l_min": {"2000", "2000.5"},
		"output_max_a": {"1000", "1000.5"}, "supplies": {"1 phase 1000 V max 30 A eff 22 A", "1 phase 1000.5 V max 30 A eff 22 A"},
	} {
		for i, text := range c {
			_, findings := read(fileOf(good(column, text)))
			refused := false
			for _, f := range findings {
				refused = refused || f.Column == column && f.Severity == Error
			}
			if refused != (i == 1) {
				t.Errorf("%s %s: %v", column, text, findings)
			}
		}
	}
}

// Identifiers are lower-case letters, digits and inner hyphens, 40 at most.
func TestIsID(t *testing.T) {
	for id, want := range map[string]bool{
		"a-b": true, "a": true, "0": true, "z9": true, "-a": false, "a-": false, "-": false, "a_b": false, "": false,
		strings.Repeat("a", 40): true, strings.Repeat("a", 41): false,
	} {
		if isID(id) != want {
			t.Errorf("%q: %t", id, !want)
		}
	}
}

// Figures that are zero have not been read and are passed over; the others are held
// against each other at the bounds named in the messages. By hand.
func TestCheckAtItsBounds(t *testing.T) {
	known := func(v unit.Millimetre) unit.Maybe[unit.Millimetre] { return unit.Known(v) }
	duty := func(a unit.Ampere) []DutyPoint { return []DutyPoint{{a, 50}} }
	metals := func(v unit.Millimetre) map[metal.ID]unit.Millimetre {
		return map[metal.ID]unit.Millimetre{metal.Aluminium: v}
	}
	supply := func(low, high unit.Volt, input, effective unit.Ampere) []Supply {
		return []Supply{{1, low, high, input, effective}}
	}
	full := []DutyPoint{{50, 100}}
	for name, c := range map[string]struct {
		s    System
		want string // the columns found at fault
	}{
		"nothing":                 {System{}, ""},
		"rated alone":             {System{Rated: 12}, ""},
		"clean alone":             {System{CleanMax: 12}, ""},
		"pierce alone":            {System{Pierce: known(5)}, ""},
		"least output alone":      {System{OutputMin: 20}, ""},
		"duty alone":              {System{Duty: duty(45)}, ""},
		"supply alone":            {System{Supplies: supply(230, 230, 30, 20)}, ""},
		"thin clean":              {System{CleanMax: 0.8, Rated: 0.9}, "clean_max_mm rated_mm"},
		"thin severance":          {System{Severance: 0.8, CleanMax: 0.9}, "severance_mm"},
		"clean is severance":      {System{CleanMax: 16, Severance: 16}, ""},
		"severance is rated":      {System{Rated: 12, Severance: 12}, "severance_mm"},
		"thin rated":              {System{Rated: 0.9, Severance: 2.7}, "severance_mm rated_mm"},
		"1.2 times":               {System{Rated: 10, Severance: 12}, ""},
		"1.19 times":              {System{Rated: 10, Severance: 11.9}, "severance_mm"},
		"1.3 times":               {System{Rated: 10, Severance: 13}, ""},
		"2.5 times":               {System{Rated: 10, Severance: 25}, ""},
		"2.51 times":              {System{Rated: 10, Severance: 25.1}, "severance_mm"},
		"pierce is severance":     {System{CleanMax: 20, Severance: 20, Pierce: known(20)}, ""},
		"pierce over little":      {System{Severance: 0.9, Pierce: known(0.95)}, "pierce_mm"},
		"pierce over little, too": {System{CleanMax: 0.9, Severance: 2, Pierce: known(0.95)}, "pierce_mm"},
		"metal within 6 %":        {System{Rated: 12, PerMetal: metals(12.5)}, ""},
		"metal at 6 %":            {System{Rated: 50, PerMetal: metals(53)}, ""},
		"metal above 6 %":         {System{Rated: 12, PerMetal: metals(13)}, "rated_other_metals"},
		"metal above little":      {System{Rated: 0.9, PerMetal: metals(1.2)}, "rated_other_metals rated_mm"},
		"metal alone":             {System{PerMetal: metals(9)}, ""},
		"little output":           {System{OutputMin: 0.9, OutputMax: 0.9}, "output_max_a"},
		"output 200 A":            {System{OutputMax: 200}, ""},
		"output 200.5 A":          {System{OutputMax: 200.5}, "output_max_a"},
		"duty above little":       {System{OutputMax: 0.9, Duty: duty(0.95)}, "duty"},
		"90 V to 700 V":           {System{Supplies: supply(90, 700, 30, 20)}, ""},
		"89.5 V":                  {System{Supplies: supply(89.5, 230, 30, 20)}, "supplies"},
		"700.5 V":                 {System{Supplies: supply(400, 700.5, 30, 20)}, "supplies"},
		"effective, 90 % of 30 A": {System{OutputMax: 50, Duty: full, Supplies: supply(230, 230, 30, 27)}, ""},
		"effective, less":         {System{OutputMax: 50, Duty: full, Supplies: supply(230, 230, 30, 26.9)}, "supplies"},
		"5 kVA for 5 kW":          {System{OutputMax: 50, Supplies: supply(200, 200, 25, 25)}, ""}, // 100 V · 50 A
		"12.5 kVA for 5 kW":       {System{OutputMax: 50, Supplies: supply(250, 250, 50, 50)}, ""},
		"12.51 kVA for 5 kW":      {System{OutputMax: 50, Supplies: supply(250.2, 250.2, 50, 50)}, "supplies"},
		"supply of little output": {System{OutputMax: 0.9, Supplies: supply(230, 230, 10, 9)}, "supplies"},
	} {
		var columns []string
		for _, f := range Check(c.s) {
			columns = append(columns, f.Column)
		}
		if got := strings.Join(columns, " "); got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
	for column, set := range map[string]func(*System, float64){
		colRated:    func(s *System, v float64) { s.Rated = unit.Millimetre(v) },
		colFlow:     func(s *System, v float64) { s.AirFlow = unit.LitrePerMinute(v) },
		colPressure: func(s *System, v float64) { s.AirPressure = unit.Bar(v) },
		colWeight:   func(s *System, v float64) { s.Weight = unit.Kilogram(v) },
	} {
		ends := map[string][2]float64{colRated: {2, 60}, colFlow: {50, 500}, colPressure: {3, 9}, colWeight: {4, 150}}[column]
		for v, odd := range map[float64]bool{ends[0]: false, ends[0] - 0.1: true, ends[1]: false, ends[1] + 0.1: true} {
			var s System
			set(&s, v)
			if n := len(Check(s)); (n == 1) != odd {
				t.Errorf("%s of %v: %d findings", column, v, n)
			}
		}
	}
}

// Messages name figures with their units.
func TestFindingsNameUnits(t *testing.T) {
	for want, replace := range map[string][]string{
		"11.9 mm is less than rated_mm, 12 mm":                {"clean_max_mm", "11.9"},
		"31 mm is 2.6 times rated_mm":                         {"severance_mm", "31"},
		"46 A is above output_max_a, 45 A":                    {"duty", "46 A at 50 %"},
		"45 A at 50 % and 32 A at 40 % contradict each other": {"duty", "45 A at 50 %; 32 A at 40 %"},
		"differs by a factor of 2.5":                          {"duty", "45 A at 50 %; 20 A at 100 %"}, // 101250 : 40000
		"240 V to 200 V runs backwards":                       {"supplies", "1 phase 240-200 V max 30 A eff 22 A"},
		"49 l/min is unusual: 50 to 500 l/min":                {"air_flow_l_min", "49"},
		"61 mm is unusual: 2 to 60 mm":                        {"rated_mm", "61", "clean_max_mm", "70", "severance_mm", "90"},
		"10 bar is unusual: 3 to 9 bar":                       {"air_pressure_bar", "10"},
		"151 kg is unusual: 4 to 150 kg":                      {"weight_kg", "151"},
		`"10 mm stainless" does not begin with a metal`:       {"rated_other_metals", "10 mm stainless"},
		`"copper" gives no thickness`:                         {"rated_other_metals", "copper"},
	} {
		_, findings := read(fileOf(good(replace...)))
		found := false
		for _, f := range findings {
			found = found || strings.Contains(f.Problem.String(), want)
		}
		if !found {
			t.Errorf("%v: %v, want %q", replace, findings, want)
		}
	}
	r, _ := read(fileOf(good()))
	var b strings.Builder
	if err := Write(&b, r); err != nil || !strings.Contains(b.String(), "stainless 10 mm") {
		t.Errorf("%v, %s", err, b.String())
	}
	r.Systems = append(r.Systems, System{ID: "NO"})
	if err := Write(&b, r); err == nil || !strings.Contains(err.Error(), "system 2:") {
		t.Errorf("%v", err)
	}
}

// Lines by hand: "aa bb" takes five letters.
func TestLines(t *testing.T) {
	for most, want := range map[int]string{4: "aa|bb|cc", 5: "aa bb|cc", 7: "aa bb|cc", 8: "aa bb cc"} {
		if got := strings.Join(lines("aa bb cc", most), "|"); got != want {
			t.Errorf("at %d: %s, want %s", most, got, want)
		}
	}
}

// The load voltage of IEC 60974-1: 80 + 0.4·165 = 146 V and 24.09 kW at 165 A,
// 130 + 0.1·165.5 = 146.55 V and 24.254 kW just above.
func TestArcPower(t *testing.T) {
	for a, want := range map[unit.Ampere]float64{45: 4.41, 165: 24.09, 165.5: 24.254} {
		if got := float64(output(a)); math.Abs(got-want) > 5e-4 {
			t.Errorf("%v A: %v kW, want %v", a, got, want)
		}
	}
}

// A system is written down into an empty file or behind what a file holds; what is in
// error is kept out.
func TestEntryAtItsBounds(t *testing.T) {
	e, err := NewEntry([]byte(" \n"))
	if err != nil || len(e.Fields()) != len(Columns())-1 { // all but the mark of invented rows
		t.Fatalf("%v, %d fields", err, len(e.Fields()))
	}
	if found := e.Set(colRated, "12 kg"); len(found) != 1 || found[0].Severity != Error || found[0].Line != 0 || strings.Contains(e.File(), "12 kg") {
		t.Errorf("%v, %s", found, e.File())
	}
	if found := e.Set(colRated, " 12 "); len(found) != 0 || !strings.Contains(e.File(), ",12,") {
		t.Errorf("%v, %s", found, e.File())
	}
	for _, bad := range []string{"x", "id,colour\n", "PK\x03\x04"} {
		if _, err := NewEntry([]byte(bad)); err == nil {
			t.Errorf("%q can be added to", bad)
		}
	}
	behind, err := ReadEntry(strings.NewReader(fileOf(good())))
	if err != nil || !strings.HasPrefix(behind.File(), fileOf(good())) {
		t.Errorf("%v, %v", behind, err)
	}
	if _, err := ReadEntry(iotest.ErrReader(errors.New("disk gone"))); err == nil {
		t.Error("a file that cannot be read can be added to")
	}
}
