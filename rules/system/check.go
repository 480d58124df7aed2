package system

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/tabular"
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

func (c *checker) wrong(column string, problem message.ID, args ...any) {
	c.findings = append(c.findings, Finding{Row: c.s.ID, Column: column, Severity: Error, Problem: message.New(problem, args...)})
}

func (c *checker) odd(column string, problem message.ID, args ...any) {
	c.findings = append(c.findings, Finding{Row: c.s.ID, Column: column, Severity: Warning, Problem: message.New(problem, args...)})
}

func mm(t unit.Millimetre) message.Figure { return figure(t, unit.Thickness) }
func amps(a unit.Ampere) message.Figure   { return figure(a, unit.Current) }
func share(x unit.Percent) message.Figure { return figure(x, unit.Share) }

// tenths is a number to 0.1, with its unit.
func tenths[Q ~float64](v Q, symbol string) message.Figure {
	return message.Figure(strings.TrimSpace(strconv.FormatFloat(float64(v), 'f', 1, 64) + " " + symbol))
}

// thicknesses: a slower cut reaches at least as thick as a faster one.
func (c *checker) thicknesses() {
	s := &c.s
	if s.CleanMax > 0 && s.Rated > s.CleanMax {
		c.wrong(colCleanMax, "{1} is less than rated_mm, {2}", mm(s.CleanMax), mm(s.Rated))
	}
	if s.Severance > 0 && s.CleanMax > s.Severance {
		c.wrong(colSeverance, "{1} is less than clean_max_mm, {2}", mm(s.Severance), mm(s.CleanMax))
	}
	if s.Rated > 0 && s.Severance >= s.Rated {
		// At a quarter of the speed: an energy balance gives about 1.9 times.
		if ratio := s.Severance / s.Rated; ratio < 1.2 || ratio > 2.5 {
			c.odd(colSeverance, "{1} is {2} times rated_mm; 1.2 to 2.5 times is usual", mm(s.Severance), tenths(ratio, ""))
		}
	}
	pierce, ok := s.Pierce.Get()
	switch {
	case !ok:
	case s.Severance > 0 && pierce > s.Severance:
		c.wrong(colPierce, "{1} is more than severance_mm, {2}", mm(pierce), mm(s.Severance))
	case s.CleanMax > 0 && pierce > s.CleanMax:
		c.odd(colPierce, "{1} is more than clean_max_mm, {2}; about half of it is usual", mm(pierce), mm(s.CleanMax))
	}
}

// metals: no other metal cuts better than mild steel by more than a little.
func (c *checker) metals() {
	for _, m := range metal.List() {
		t, ok := c.s.PerMetal[m.ID]
		if ok && c.s.Rated > 0 && t > c.s.Rated*1.06 {
			c.odd(colMetals, "{1} in {2} is more than in mild steel, {3}", mm(t), m.Name, mm(c.s.Rated))
		}
	}
}

func (c *checker) outputs() {
	if c.s.OutputMax > 0 && c.s.OutputMin >= c.s.OutputMax {
		c.wrong(colOutMax, "{1} is not more than output_min_a, {2}", amps(c.s.OutputMax), amps(c.s.OutputMin))
	}
	if c.s.OutputMax > 200 {
		c.odd(colOutMax, "{1} is more than hand-held cutting uses, about 200 A", amps(c.s.OutputMax))
	}
}

// duties: points lie within the output and allow more time at less current.
func (c *checker) duties() {
	for i, p := range c.s.Duty {
		if c.s.OutputMax > 0 && p.Output > c.s.OutputMax {
			c.wrong(colDuty, "{1} is above output_max_a, {2}", amps(p.Output), amps(c.s.OutputMax))
		}
		if p.Output < c.s.OutputMin {
			c.wrong(colDuty, "{1} is below output_min_a, {2}", amps(p.Output), amps(c.s.OutputMin))
		}
		if i > 0 {
			c.dutyPair(c.s.Duty[i-1], p)
		}
	}
	if len(c.s.Duty) > 0 && c.s.Duty[0].Output < c.s.OutputMax {
		c.odd(colDuty, "says nothing about full output, {1}", amps(c.s.OutputMax))
	}
}

// dutyPair compares neighbours, more current first. Heat in the windings goes
// with I²·X (I current in A, X duty cycle in %), so the product stays about
// the same until X reaches 100 %. A third either way is let pass: plates round,
// and a fan or a thermostat shifts the balance.
func (c *checker) dutyPair(more, less DutyPoint) {
	heat := func(p DutyPoint) float64 { return float64(p.Output*p.Output) * float64(p.Duty) }
	pair := message.New("{1} at {2} and {3} at {4}", amps(more.Output), share(more.Duty), amps(less.Output), share(less.Duty))
	switch ratio := heat(less) / heat(more); {
	case more.Output == less.Output:
		c.wrong(colDuty, "gives {1} twice", amps(less.Output))
	case less.Duty < more.Duty:
		c.wrong(colDuty, "{1} contradict each other: less current allows more time", pair)
	case more.Duty == 100:
	case ratio < 0.75 || ratio > 1.34:
		c.odd(colDuty, "{1} do not go together: current squared times duty cycle differs by a factor of {2}", pair, tenths(math.Max(ratio, 1/ratio), ""))
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
			c.odd(r.column, "{1} is unusual: {2} to {3} is what hand-held systems have",
				figure(r.value, r.kind), message.Figure(tabular.Number(r.low)), figure(r.high, r.kind))
		}
	}
}

// supplies checks each supply by itself and against the others.
func (c *checker) supplies() {
	for i, p := range c.s.Supplies {
		if p.VoltMin > p.VoltMax {
			c.wrong(colSupplies, "{1} to {2} runs backwards", volts(p.VoltMin), volts(p.VoltMax))
		}
		if p.VoltMin < 90 || p.VoltMax > 700 {
			c.odd(colSupplies, "{1} to {2} is no usual supply voltage, about 100 V to 690 V", volts(p.VoltMin), volts(p.VoltMax))
		}
		c.supplyCurrents(p)
		for _, q := range c.s.Supplies[:i] {
			if p.Phases == q.Phases && p.VoltMin <= q.VoltMax && q.VoltMin <= p.VoltMax {
				c.odd(colSupplies, "gives {1} phase twice at {2}", message.Figure(strconv.Itoa(p.Phases)), volts(max(p.VoltMin, q.VoltMin)))
			}
		}
	}
}

func volts(v unit.Volt) message.Figure { return figure(v, unit.Voltage) }

// supplyCurrents: the effective current is no more than the largest one, and
// the supply gives at least the power that the arc takes.
func (c *checker) supplyCurrents(p Supply) {
	if p.Effective > p.Input {
		c.wrong(colSupplies, "effective current {1} is more than the largest, {2}", amps(p.Effective), amps(p.Input))
	}
	// I1eff is I1max·√X, no-load current ignored (IEC 60974-1, from memory);
	// a tenth is let pass for the plate's rounding. Too small a value leads to
	// too thin a cord.
	if len(c.s.Duty) > 0 {
		expected := p.Input * unit.Ampere(math.Sqrt(float64(c.s.Duty[0].Duty)/100))
		if p.Effective < expected*0.9 {
			c.odd(colSupplies, "effective current {1} is low: {2} at {3} gives about {4}",
				amps(p.Effective), amps(p.Input), share(c.s.Duty[0].Duty), tenths(expected, "A"))
		}
	}
	drawn, given := drawn(p), output(c.s.OutputMax)
	switch {
	case c.s.OutputMax <= 0:
	case drawn < given:
		c.odd(colSupplies, "{1} at {2} is {3}, but the arc alone takes {4} at full output (load voltage of IEC 60974-1, from memory)", amps(p.Input), volts(p.VoltMin), tenths(drawn, "kVA"), tenths(given, "kW"))
	case drawn > 2.5*given:
		c.odd(colSupplies, "{1} at {2} is {3} for only {4} of arc at full output (load voltage of IEC 60974-1, from memory)", amps(p.Input), volts(p.VoltMin), tenths(drawn, "kVA"), tenths(given, "kW"))
	}
}

// drawn is the apparent power at the lowest voltage: S = U·I, or √3·U·I with U
// line to line when three-phase. Check: 40 A at 230 V is 9.2 kVA.
func drawn(p Supply) unit.Kilowatt {
	s := float64(p.VoltMin) * float64(p.Input) / 1000
	if p.Phases == 3 {
		s *= math.Sqrt(3)
	}
	return unit.Kilowatt(s)
}

// output is the arc power P2 = U2·I2 at the conventional load voltage of a
// plasma cutting source: U2 = 80 + 0.4·I2 V up to 165 A and 130 + 0.1·I2 V
// above, I2 in A. IEC 60974-1 clause 11.2, from memory; later editions let the
// maker state another voltage, so it only ever raises a warning.
// Check: 45 A gives 98 V and 4.41 kW.
func output(a unit.Ampere) unit.Kilowatt {
	u := 80 + 0.4*float64(a)
	if a > 165 {
		u = 130 + 0.1*float64(a)
	}
	return unit.Kilowatt(u * float64(a) / 1000)
}

// check adds what Check finds, save where a cell it builds on was refused.
func check(row *tabular.Row[record]) {
	news := slices.DeleteFunc(Check(row.Value.System), func(f Finding) bool { return row.Refused(f.Column) })
	for _, f := range news {
		row.Report(f)
	}
}

// names are the IDs and names taken so far, in lower case, with their line. A row
// that was refused for something else still counts, so that the repair shows no
// news.
type names map[[2]string]int

// unique reports an ID or a name that an earlier row has.
func (n names) unique(row *tabular.Row[record]) {
	id, name := row.Value.ID, row.Value.Name
	if first := n.taken(colID, id, row.Line); first != 0 {
		row.Report(Finding{Column: colID, Severity: Error, Problem: message.New("{1} is the id of line {2} too", message.Name(tabular.Quoted(id)), message.Figure(strconv.Itoa(first))),
			Accepted: message.New("an id of its own for every system")})
	}
	if first := n.taken(colName, strings.ToLower(name), row.Line); first != 0 {
		row.Report(Finding{Column: colName, Severity: Warning, Problem: message.New("{1} is the name of line {2} too", message.Name(tabular.Quoted(name)), message.Figure(strconv.Itoa(first)))})
	}
}

// taken is the line that has a text in a column already, or 0 where it is new, and
// keeps it then.
func (n names) taken(column, text string, line int) int {
	key := [2]string{column, text}
	if first := n[key]; first != 0 && text != "" {
		return first
	}
	n[key] = line
	return 0
}
