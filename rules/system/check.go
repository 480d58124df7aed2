package system

import (
	"fmt"
	"math"

	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// Check judges one system by itself: errors where its figures contradict each
// other, warnings where they are hard to believe. A figure that is zero has
// not been read and is passed over. Findings carry columns but no line.
//
// The bands behind the warnings are common practice, no source, unless the
// check says otherwise.
func Check(s System) []Finding {
	c := &checker{s: s}
	c.thicknesses()
	c.metals()
	c.outputs()
	c.duties()
	c.supplies()
	c.ranges()
	return c.findings
}

type checker struct {
	s        System
	findings []Finding
}

func (c *checker) add(severity Severity, column, format string, args ...any) {
	c.findings = append(c.findings, Finding{Row: c.s.ID, Column: column, Severity: severity, Problem: fmt.Sprintf(format, args...)})
}

func (c *checker) wrong(column, format string, args ...any) { c.add(Error, column, format, args...) }
func (c *checker) odd(column, format string, args ...any)   { c.add(Warning, column, format, args...) }

func mm(t unit.Millimetre) string { return unitful(float64(t), unit.Thickness) }
func amps(a unit.Ampere) string   { return unitful(float64(a), unit.Current) }

// thicknesses: a slower cut reaches at least as thick as a faster one.
func (c *checker) thicknesses() {
	s := &c.s
	if s.CleanMax > 0 && s.Rated > s.CleanMax {
		c.wrong(colCleanMax, "%s is less than rated_mm, %s", mm(s.CleanMax), mm(s.Rated))
	}
	if s.Severance > 0 && s.CleanMax > s.Severance {
		c.wrong(colSeverance, "%s is less than clean_max_mm, %s", mm(s.Severance), mm(s.CleanMax))
	}
	if s.Rated > 0 && s.Severance >= s.Rated {
		// At a quarter of the speed: an energy balance gives about 1.9 times.
		if ratio := s.Severance / s.Rated; ratio < 1.2 || ratio > 2.5 {
			c.odd(colSeverance, "%s is %.1f times rated_mm; 1.2 to 2.5 times is usual", mm(s.Severance), float64(ratio))
		}
	}
	pierce, ok := s.Pierce.Get()
	switch {
	case !ok:
	case s.Severance > 0 && pierce > s.Severance:
		c.wrong(colPierce, "%s is more than severance_mm, %s", mm(pierce), mm(s.Severance))
	case s.CleanMax > 0 && pierce > s.CleanMax:
		c.odd(colPierce, "%s is more than clean_max_mm, %s; about half of it is usual", mm(pierce), mm(s.CleanMax))
	}
}

// metals: no other metal cuts better than mild steel by more than a little.
func (c *checker) metals() {
	for _, m := range metal.List() {
		t, ok := c.s.PerMetal[m.ID]
		if ok && c.s.Rated > 0 && t > c.s.Rated*1.06 {
			c.odd(colMetals, "%s in %s is more than in mild steel, %s", mm(t), m.Name, mm(c.s.Rated))
		}
	}
}

func (c *checker) outputs() {
	if c.s.OutputMax > 0 && c.s.OutputMin >= c.s.OutputMax {
		c.wrong(colOutMax, "%s is not more than output_min_a, %s", amps(c.s.OutputMax), amps(c.s.OutputMin))
	}
	if c.s.OutputMax > 200 {
		c.odd(colOutMax, "%s is more than hand-held cutting uses, about 200 A", amps(c.s.OutputMax))
	}
}

// duties: points lie within the output and allow more time at less current.
func (c *checker) duties() {
	for i, p := range c.s.Duty {
		if c.s.OutputMax > 0 && p.Output > c.s.OutputMax {
			c.wrong(colDuty, "%s is above output_max_a, %s", amps(p.Output), amps(c.s.OutputMax))
		}
		if p.Output < c.s.OutputMin {
			c.wrong(colDuty, "%s is below output_min_a, %s", amps(p.Output), amps(c.s.OutputMin))
		}
		if i > 0 {
			c.dutyPair(c.s.Duty[i-1], p)
		}
	}
	if len(c.s.Duty) > 0 && c.s.Duty[0].Output < c.s.OutputMax {
		c.odd(colDuty, "says nothing about full output, %s", amps(c.s.OutputMax))
	}
}

// dutyPair compares neighbours, more current first. Heat in the windings goes
// with I²·X (I current in A, X duty cycle in %), so the product stays about
// the same until X reaches 100 %. A third either way is let pass: plates round,
// and a fan or a thermostat shifts the balance.
func (c *checker) dutyPair(more, less DutyPoint) {
	heat := func(p DutyPoint) float64 { return float64(p.Output*p.Output) * float64(p.Duty) }
	pair := fmt.Sprintf("%s at %s and %s at %s",
		amps(more.Output), unitful(float64(more.Duty), unit.Share), amps(less.Output), unitful(float64(less.Duty), unit.Share))
	switch ratio := heat(less) / heat(more); {
	case more.Output == less.Output:
		c.wrong(colDuty, "gives %s twice", amps(less.Output))
	case less.Duty < more.Duty:
		c.wrong(colDuty, "%s contradict each other: less current allows more time", pair)
	case more.Duty == 100:
	case ratio < 0.75 || ratio > 1.34:
		c.odd(colDuty, "%s do not go together: current squared times duty cycle differs by a factor of %.1f", pair, math.Max(ratio, 1/ratio))
	}
}

// ranges: figures outside what hand-held systems usually have.
func (c *checker) ranges() {
	for _, r := range []struct {
		column    string
		value     float64
		low, high float64
		kind      unit.Kind
	}{
		{colRated, float64(c.s.Rated), 2, 60, unit.Thickness},
		{colFlow, float64(c.s.AirFlow), 50, 500, unit.Flow},
		{colPressure, float64(c.s.AirPressure), 3, 9, unit.Pressure},
		{colWeight, float64(c.s.Weight), 4, 150, unit.Weight},
	} {
		if r.value != 0 && (r.value < r.low || r.value > r.high) {
			c.odd(r.column, "%s is unusual: %s to %s is what hand-held systems have",
				unitful(r.value, r.kind), plain(r.low), unitful(r.high, r.kind))
		}
	}
}
