package system

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/tabular"
	"cutbrief/rules/unit"
)

// held is, for each kind of quantity in a file, the unit it is held in and the
// largest believable number, far above any hand-held system; a number beyond it has
// the wrong unit. Common practice, no source; 1000 V a.c. is where low voltage ends
// (Directive 2014/35/EU, from memory).
var held = map[unit.Kind]struct {
	symbol string
	most   float64
}{
	unit.Thickness: {"mm", 300}, unit.Share: {"%", 100}, unit.Pressure: {"bar", 20}, unit.Weight: {"kg", 500},
	unit.Flow: {"l/min", 2000}, unit.Voltage: {"V", 1000}, unit.Current: {"A", 1000},
}

// figure writes a number in full with the unit its kind is held in.
func figure[Q ~float64](v Q, kind unit.Kind) message.Figure {
	return message.Figure(tabular.Number(v) + " " + held[kind].symbol)
}

// quantity reads text as a number above zero of this kind. Anything else is
// reported. Thicknesses by gauge need the metal's sheet.
func quantity(c *tabular.Cell, text string, kind unit.Kind, sheet unit.Sheet) (float64, bool) {
	got, err := unit.Read(text, kind, unit.Metric, sheet)
	v, most := got.Quantity.Value, held[kind].most
	quoted := message.Name(tabular.Quoted(text))
	switch {
	case err != nil:
		c.Refuse("{1}", err)
	case v <= 0:
		c.Refuse("{1} is not above zero", quoted)
	case v > most:
		c.Refuse("{1} is beyond belief (more than {2}), check its unit", quoted, figure(most, kind))
	default:
		return v, true
	}
	return 0, false
}

// written is a figure that may be blank.
func written[Q ~float64](m unit.Maybe[Q]) string {
	if v, ok := m.Get(); ok {
		return tabular.Number(v)
	}
	return ""
}

// yes reads a flag. Blank is not known, and counts as no until someone says
// yes: a system must not be sold on a feature that nobody has confirmed.
func yes(c *tabular.Cell) bool {
	switch strings.ToLower(c.Text) {
	case "yes", "y", "true":
		return true
	case "no", "n", "false":
		return false
	case "":
		c.Note("is blank: not known, counts as no")
	default:
		c.Refuse("{1} is neither yes nor no", c.Quoted())
	}
	return false
}

// maxName and maxID are what still fits a line of the page.
const (
	maxName = 60
	maxID   = 40
)

// isID reports whether s is lower-case letters, digits and inner hyphens.
func isID(s string) bool {
	for i := range len(s) {
		letter := s[i] >= 'a' && s[i] <= 'z' || s[i] >= '0' && s[i] <= '9'
		hyphen := s[i] == '-' && i > 0 && i < len(s)-1
		if !letter && !hyphen {
			return false
		}
	}
	return s != "" && len(s) <= maxID
}

// isName reports whether s can be a name. It starts with a letter or digit, so
// that a spreadsheet never takes a name for a formula.
func isName(s string) bool {
	first, _ := utf8.DecodeRuneInString(s)
	return (unicode.IsLetter(first) || unicode.IsDigit(first)) &&
		tabular.Flaw(s).IsEmpty() && utf8.RuneCountInString(s) <= maxName
}

// named reads a text that must have a form.
func named(field func(*record) *string, is func(string) bool, problem message.ID) func(*tabular.Cell, *record) {
	return func(c *tabular.Cell, r *record) {
		if !is(c.Text) {
			c.Refuse(problem, c.Quoted())
			return
		}
		*field(r) = c.Text
	}
}

func readPierce(c *tabular.Cell, r *record) {
	if c.Text == "" {
		c.Note("is blank: half of clean_max_mm is taken")
		return
	}
	if v, ok := quantity(c, c.Text, unit.Thickness, unit.NoGauge); ok {
		r.Pierce = unit.Known(unit.Millimetre(v))
	}
}

// readPrice reads digits with at most two decimals. Grouped thousands are
// refused, as 1.950 means two different prices in two countries.
func readPrice(c *tabular.Cell, r *record) {
	if c.Text == "" {
		return
	}
	v, decimals, ok := tabular.Plain(c.Text)
	switch {
	case !ok || decimals > 2:
		c.Refuse("{1} is not a plain number", c.Quoted())
	case v <= 0:
		c.Refuse("a price of zero is not a price")
	case v > 1e9:
		c.Refuse("{1} is beyond belief", c.Quoted())
	default:
		r.Price = unit.Known(unit.Money(v))
	}
}

// entries takes a cell with several entries apart at its semicolons. A cell that
// must be filled and holds none is reported.
func entries(c *tabular.Cell) []string {
	var all []string
	for item := range strings.SplitSeq(c.Text, ";") {
		if item = strings.Join(strings.Fields(item), " "); item != "" {
			all = append(all, item)
		}
	}
	if len(all) == 0 && c.Required {
		c.Refuse("has nothing between its semicolons")
	}
	return all
}

// readDuty reads "45 A at 50 %; 32 A at 100 %" and sorts it by falling current.
func readDuty(c *tabular.Cell, r *record) {
	for _, item := range entries(c) {
		output, duty, ok := strings.Cut(item, " at ")
		if !ok {
			c.Refuse(`{1} has no "at" between current and duty cycle`, message.Name(tabular.Quoted(item)))
			continue
		}
		a, ok1 := quantity(c, output, unit.Current, unit.NoGauge)
		x, ok2 := quantity(c, duty, unit.Share, unit.NoGauge)
		if ok1 && ok2 {
			r.Duty = append(r.Duty, DutyPoint{unit.Ampere(a), unit.Percent(x)})
		}
	}
	slices.SortStableFunc(r.Duty, func(a, b DutyPoint) int { return cmp.Compare(b.Output, a.Output) })
}

// joined writes several entries into one cell.
func joined[E any](list []E, write func(E) string) string {
	var all []string
	for _, e := range list {
		all = append(all, write(e))
	}
	return strings.Join(all, "; ")
}

func writeDuty(r *record) string {
	return joined(r.Duty, func(p DutyPoint) string {
		return string(figure(p.Output, unit.Current) + " at " + figure(p.Duty, unit.Share))
	})
}

// readSupplies reads "1 phase 200-240 V max 33 A eff 24 A; ...". What is refused of
// it stands as zero: a row with a refused cell is left out.
func readSupplies(c *tabular.Cell, r *record) {
	for _, item := range entries(c) {
		r.Supplies = append(r.Supplies, supply(c, item))
	}
}

func supply(c *tabular.Cell, item string) Supply {
	phases, rest, ok1 := strings.Cut(item, " phase ")
	volts, rest, ok2 := strings.Cut(rest, " max ")
	input, effective, ok3 := strings.Cut(rest, " eff ")
	quoted := message.Name(tabular.Quoted(item))
	switch {
	case !ok1 || phases != "1" && phases != "3":
		c.Refuse("{1} does not begin with 1 phase or 3 phase", quoted)
	case !ok2:
		c.Refuse("{1} does not say max and the largest supply current", quoted)
	case !ok3:
		c.Refuse("{1} does not say eff and the effective supply current", quoted)
	default:
		low, high := voltage(c, volts)
		i, _ := quantity(c, input, unit.Current, unit.NoGauge)
		e, _ := quantity(c, effective, unit.Current, unit.NoGauge)
		return Supply{int(phases[0] - '0'), low, high, unit.Ampere(i), unit.Ampere(e)}
	}
	return Supply{}
}

// voltage reads "230 V", "200-240 V" or "200 V to 240 V".
func voltage(c *tabular.Cell, text string) (low, high unit.Volt) {
	text = strings.ReplaceAll(strings.ReplaceAll(text, "–", "-"), " to ", "-")
	from, to, between := strings.Cut(text, "-")
	a, _ := quantity(c, strings.TrimSpace(from), unit.Voltage, unit.NoGauge)
	if !between {
		return unit.Volt(a), unit.Volt(a)
	}
	b, _ := quantity(c, strings.TrimSpace(to), unit.Voltage, unit.NoGauge)
	return unit.Volt(a), unit.Volt(b)
}

func writeSupplies(r *record) string {
	return joined(r.Supplies, func(p Supply) string {
		volts := tabular.Number(p.VoltMin)
		if p.VoltMax != p.VoltMin {
			volts += "-" + tabular.Number(p.VoltMax)
		}
		return fmt.Sprintf("%d phase %s V max %s eff %s", p.Phases, volts, figure(p.Input, unit.Current), figure(p.Effective, unit.Current))
	})
}

// readMetals reads "stainless 10 mm; aluminium 9 mm".
func readMetals(c *tabular.Cell, r *record) {
	for _, item := range entries(c) {
		at := strings.IndexAny(item, ".0123456789")
		quoted := message.Name(tabular.Quoted(item))
		if at < 0 {
			c.Refuse("{1} gives no thickness", quoted)
			continue
		}
		m, ok := findMetal(strings.TrimSpace(item[:at]))
		if !ok {
			c.RefuseFor(message.New("one of {1}", message.Join(", ", rateableNames()...)), "{1} does not begin with a metal this column takes", quoted)
			continue
		}
		v, ok := quantity(c, item[at:], unit.Thickness, m.Sheet)
		if !ok {
			continue
		}
		if _, twice := r.PerMetal[m.ID]; twice {
			c.Refuse("{1} is given twice", m.Name)
			continue
		}
		if r.PerMetal == nil {
			r.PerMetal = map[metal.ID]unit.Millimetre{}
		}
		r.PerMetal[m.ID] = unit.Millimetre(v)
	}
}

// rateable are the metals with a rating of their own: not mild steel, which
// rated_mm gives, and not "other", which is no metal in particular.
func rateable() []metal.Metal {
	return slices.DeleteFunc(metal.List(), func(m metal.Metal) bool {
		return m.ID == metal.MildSteel || m.ID == metal.Other
	})
}

func rateableNames() (names []message.Message) {
	for _, m := range rateable() {
		names = append(names, m.Name.Message())
	}
	return names
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

// writeMetals keeps the order of the metal list, so that the same range gives
// the same bytes.
func writeMetals(r *record) string {
	rated := slices.DeleteFunc(rateable(), func(m metal.Metal) bool { return r.PerMetal[m.ID] == 0 })
	return joined(rated, func(m metal.Metal) string {
		return string(m.ID) + " " + string(figure(r.PerMetal[m.ID], unit.Thickness))
	})
}
