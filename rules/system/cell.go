package system

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"cutbrief/rules/csvfile"
	"cutbrief/rules/unit"
)

// cell is one cell of a row while it is read into its system.
type cell struct {
	text   string
	column *column
	name   string // of the column as in the header
	system *System
	row    *row
}

// refuse reports an error in the cell.
func (c *cell) refuse(format string, args ...any) {
	c.row.report(Error, c.name, fmt.Sprintf(format, args...), c.column.accepted)
}

// most is the largest believable number of each kind, in the kind's unit. It
// is far above any hand-held system; a number beyond it has the wrong unit.
// Common practice, no source; 1000 V a.c. is where low voltage ends
// (Directive 2014/35/EU, from memory).
func most(kind unit.Kind) float64 {
	switch kind {
	case unit.Thickness:
		return 300
	case unit.Share:
		return 100
	case unit.Pressure:
		return 20
	case unit.Weight:
		return 500
	case unit.Flow:
		return 2000
	}
	return 1000 // A, V
}

// quantity reads text as a number above zero of this kind. Anything else is
// reported. Thicknesses by gauge need the metal's sheet.
func (c *cell) quantity(text string, kind unit.Kind, sheet unit.Sheet) (float64, bool) {
	got, err := unit.Read(text, kind, unit.Metric, sheet)
	v := got.Quantity.Value
	switch {
	case err != nil:
		c.refuse("%s", err)
	case math.IsNaN(v) || v <= 0:
		c.refuse("%s is not above zero", csvfile.Quoted(text))
	case v > most(kind):
		c.refuse("%s is beyond belief (more than %s), check its unit", csvfile.Quoted(text), unitful(most(kind), kind))
	default:
		return v, true
	}
	return 0, false
}

// yes reads a flag. Blank is not known, and counts as no until someone says
// yes: a system must not be sold on a feature that nobody has confirmed.
func (c *cell) yes() bool {
	switch strings.ToLower(c.text) {
	case "yes", "y", "true":
		return true
	case "no", "n", "false":
		return false
	case "":
		c.row.report(Note, c.name, "is blank: not known, counts as no", "")
	default:
		c.refuse("%s is neither yes nor no", csvfile.Quoted(c.text))
	}
	return false
}

func readID(c *cell) {
	if !isID(c.text) {
		c.refuse("%s cannot be an id", csvfile.Quoted(c.text))
		return
	}
	c.system.ID = c.text
}

func readName(c *cell) {
	if !isName(c.text) {
		c.refuse("%s cannot be a name", csvfile.Quoted(c.text))
		return
	}
	c.system.Name = c.text
}

func readPierce(c *cell) {
	if c.text == "" {
		c.row.report(Note, c.name, "is blank: half of clean_max_mm is taken", "")
		return
	}
	if v, ok := c.quantity(c.text, unit.Thickness, unit.NoGauge); ok {
		c.system.Pierce = unit.Known(unit.Millimetre(v))
	}
}

func writePierce(s *System) string {
	if v, ok := s.Pierce.Get(); ok {
		return plain(v)
	}
	return ""
}

// readPrice reads digits with at most two decimals. Grouped thousands are
// refused, as 1.950 means two different prices in two countries.
func readPrice(c *cell) {
	if c.text == "" {
		return
	}
	v, decimals, ok := csvfile.Plain(c.text)
	switch {
	case !ok || decimals > 2:
		c.refuse("%s is not a plain number", csvfile.Quoted(c.text))
	case v <= 0:
		c.refuse("a price of zero is not a price")
	case v > 1e9:
		c.refuse("%s is beyond belief", csvfile.Quoted(c.text))
	default:
		c.system.Price = unit.Known(unit.Money(v))
	}
}

func writePrice(s *System) string {
	if v, ok := s.Price.Get(); ok {
		return plain(v)
	}
	return ""
}

func readInvented(c *cell) {
	if c.text != "" && c.yes() {
		c.row.invented = true
	}
}

// plain writes a number in full, so that reading it back gives the same number.
func plain[Q ~float64](q Q) string { return strconv.FormatFloat(float64(q), 'f', -1, 64) }

// symbol is the unit a kind is held in.
func symbol(kind unit.Kind) string {
	switch kind {
	case unit.Thickness:
		return "mm"
	case unit.Share:
		return "%"
	case unit.Pressure:
		return "bar"
	case unit.Weight:
		return "kg"
	case unit.Flow:
		return "l/min"
	case unit.Voltage:
		return "V"
	}
	return "A"
}

// unitful writes a number with the unit its kind is held in.
func unitful(v float64, kind unit.Kind) string { return plain(v) + " " + symbol(kind) }
