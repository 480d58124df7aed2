package system

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"cutbrief/rules/csvfile"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// items takes a cell with several entries apart at its semicolons. A cell that
// must be filled and holds none is reported.
func (c *cell) items() []string {
	var all []string
	for item := range strings.SplitSeq(c.text, ";") {
		if item = strings.Join(strings.Fields(item), " "); item != "" {
			all = append(all, item)
		}
	}
	if len(all) == 0 && c.column.required {
		c.refuse("has nothing between its semicolons")
	}
	return all
}

// readDuty reads "45 A at 50 %; 32 A at 100 %" and sorts it by falling current.
func readDuty(c *cell) {
	for _, item := range c.items() {
		output, duty, ok := strings.Cut(item, " at ")
		if !ok {
			c.refuse("%s has no \"at\" between current and duty cycle", csvfile.Quoted(item))
			continue
		}
		a, ok1 := c.quantity(output, unit.Current, unit.NoGauge)
		x, ok2 := c.quantity(duty, unit.Share, unit.NoGauge)
		if ok1 && ok2 {
			c.system.Duty = append(c.system.Duty, DutyPoint{unit.Ampere(a), unit.Percent(x)})
		}
	}
	slices.SortStableFunc(c.system.Duty, func(a, b DutyPoint) int {
		return cmp.Compare(b.Output, a.Output)
	})
}

func writeDuty(s *System) string {
	var all []string
	for _, p := range s.Duty {
		all = append(all, plain(p.Output)+" A at "+plain(p.Duty)+" %")
	}
	return strings.Join(all, "; ")
}

// readSupplies reads "1 phase 200-240 V max 33 A eff 24 A; ...".
func readSupplies(c *cell) {
	for _, item := range c.items() {
		if s, ok := c.supply(item); ok {
			c.system.Supplies = append(c.system.Supplies, s)
		}
	}
}

func (c *cell) supply(item string) (Supply, bool) {
	phases, rest, ok1 := strings.Cut(item, " phase ")
	volts, rest, ok2 := strings.Cut(rest, " max ")
	input, effective, ok3 := strings.Cut(rest, " eff ")
	switch {
	case !ok1 || phases != "1" && phases != "3":
		c.refuse("%s does not begin with 1 phase or 3 phase", csvfile.Quoted(item))
	case !ok2:
		c.refuse("%s does not say max and the largest supply current", csvfile.Quoted(item))
	case !ok3:
		c.refuse("%s does not say eff and the effective supply current", csvfile.Quoted(item))
	default:
		low, high, ok1 := c.voltage(volts)
		i, ok2 := c.quantity(input, unit.Current, unit.NoGauge)
		e, ok3 := c.quantity(effective, unit.Current, unit.NoGauge)
		return Supply{int(phases[0] - '0'), low, high, unit.Ampere(i), unit.Ampere(e)}, ok1 && ok2 && ok3
	}
	return Supply{}, false
}

// voltage reads "230 V", "200-240 V" or "200 V to 240 V".
func (c *cell) voltage(text string) (low, high unit.Volt, ok bool) {
	text = strings.NewReplacer("–", "-", " to ", "-").Replace(text)
	from, to, between := strings.Cut(text, "-")
	if !between {
		to = from
	}
	a, ok1 := c.quantity(strings.TrimSpace(from), unit.Voltage, unit.NoGauge)
	if !between {
		return unit.Volt(a), unit.Volt(a), ok1
	}
	b, ok2 := c.quantity(strings.TrimSpace(to), unit.Voltage, unit.NoGauge)
	return unit.Volt(a), unit.Volt(b), ok1 && ok2
}

func writeSupplies(s *System) string {
	var all []string
	for _, p := range s.Supplies {
		volts := plain(p.VoltMin)
		if p.VoltMax != p.VoltMin {
			volts += "-" + plain(p.VoltMax)
		}
		all = append(all, fmt.Sprintf("%d phase %s V max %s A eff %s A", p.Phases, volts, plain(p.Input), plain(p.Effective)))
	}
	return strings.Join(all, "; ")
}

// readMetals reads "stainless 10 mm; aluminium 9 mm".
func readMetals(c *cell) {
	for _, item := range c.items() {
		c.metal(item)
	}
}

func (c *cell) metal(item string) {
	at := strings.IndexAny(item, ".0123456789")
	if at < 0 {
		c.refuse("%s gives no thickness", csvfile.Quoted(item))
		return
	}
	m, ok := findMetal(strings.TrimSpace(item[:at]))
	if !ok {
		c.row.report(Error, c.name, csvfile.Quoted(item)+" does not begin with a metal this column takes", "one of "+metalNames())
		return
	}
	v, ok := c.quantity(item[at:], unit.Thickness, m.Sheet)
	if !ok {
		return
	}
	if _, twice := c.system.PerMetal[m.ID]; twice {
		c.refuse("%s is given twice", m.Name)
		return
	}
	if c.system.PerMetal == nil {
		c.system.PerMetal = map[metal.ID]unit.Millimetre{}
	}
	c.system.PerMetal[m.ID] = unit.Millimetre(v)
}

// rateable are the metals with a rating of their own: not mild steel, which
// rated_mm gives, and not "other", which is no metal in particular.
func rateable() []metal.Metal {
	return slices.DeleteFunc(metal.List(), func(m metal.Metal) bool {
		return m.ID == metal.MildSteel || m.ID == metal.Other
	})
}

// findMetal finds a metal by identifier, by name, or by part of a name such as
// "galvanised" for "coated or galvanised steel".
func findMetal(name string) (metal.Metal, bool) {
	name = strings.ToLower(name)
	for _, m := range rateable() {
		if name == string(m.ID) || name == string(m.Name) || slices.Contains(strings.Fields(string(m.Name)), name) && name != "or" && name != "steel" {
			return m, true
		}
	}
	return metal.Metal{}, false
}

func metalNames() string {
	var names []string
	for _, m := range rateable() {
		names = append(names, string(m.Name))
	}
	return strings.Join(names, ", ")
}

// writeMetals keeps the order of the metal list, so that the same range gives
// the same bytes.
func writeMetals(s *System) string {
	var all []string
	for _, m := range rateable() {
		if t, ok := s.PerMetal[m.ID]; ok {
			all = append(all, string(m.ID)+" "+plain(t)+" mm")
		}
	}
	return strings.Join(all, "; ")
}
