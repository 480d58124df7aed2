package data

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"

	"cutbrief/report"
)

// CostSheet writes the whole account as JSON.
func CostSheet(s report.CostSheet) ([]byte, error) {
	if s.Today == nil {
		s.Today = []report.CostWay{}
	}
	if s.Systems == nil {
		s.Systems = []report.CostOffer{}
	}
	if s.Inputs == nil {
		s.Inputs = []report.CostInput{}
	}
	return encode(s, "the account")
}

// Comparison writes systems side by side as JSON.
func Comparison(c report.Comparison) ([]byte, error) { return encode(c, "the comparison") }

// CostCSV writes the account as CSV, one figure a line, low, likely and high in
// columns of their own. Numbers stay numbers; a text that a spreadsheet could
// take for a formula is kept from it.
func CostCSV(s report.CostSheet) ([]byte, error) {
	c := &costCSV{currency: text(s.Currency)}
	c.out = csv.NewWriter(&c.buf)
	c.row("part", "way", "cut", "item", "unit", "low", "likely", "high", "note")
	for _, l := range s.Prices {
		c.row("prices", "", "", text(l.Label), "", "", text(l.Value), "", "")
	}
	if s.Demo != "" {
		c.row("prices", "", "", "mark", "", "", "", "", text(s.Demo))
	}
	for _, w := range s.Today {
		c.way("today", w)
	}
	for _, o := range s.Systems {
		c.way("system", o.CostWay)
		c.saving(o)
	}
	if s.Crossing != nil {
		for _, r := range s.Crossing.Rows {
			c.amount("crossing", "plasma", r.Thickness, "a metre", "/m", &r.Plasma, "")
			c.amount("crossing", "oxy-fuel", r.Thickness, "a metre", "/m", &r.Flame, "")
		}
	}
	for _, in := range s.Inputs {
		c.row("input", "", "", text(in.Name), text(in.Unit), figure(in.Low), figure(in.Likely), figure(in.High), text(strings.TrimSpace(in.Basis+" "+in.Note)))
	}
	c.out.Flush()
	if err := c.out.Error(); err != nil {
		return nil, fmt.Errorf("write the account as CSV: %w", err)
	}
	return c.buf.Bytes(), nil
}

type costCSV struct {
	buf      bytes.Buffer
	out      *csv.Writer
	currency string
}

// row writes cells; the writer keeps its first error.
func (c *costCSV) row(cells ...string) { _ = c.out.Write(cells) }

func (c *costCSV) amount(part, way, cut, item, unit string, a *report.Amount, note string) {
	if a != nil {
		c.row(part, text(way), text(cut), text(item), strings.TrimSuffix(c.currency+unit, "/"), figure(a.Low), figure(a.Likely), figure(a.High), text(note))
	}
}

func (c *costCSV) way(part string, w report.CostWay) {
	if w.Why != "" {
		c.row(part, text(w.Name), text(w.Cut), "not worked out", "", "", "", "", text(w.Why))
		return
	}
	for _, l := range w.Lines {
		c.amount(part, w.Name, w.Cut, l.Name, "/m", &l.Cost, "")
	}
	c.amount(part, w.Name, w.Cut, "together", "/m", w.PerMetre, "")
	c.amount(part, w.Name, w.Cut, "together", "/year", w.PerYear, "")
}

func (c *costCSV) saving(o report.CostOffer) {
	c.amount("saving", o.Name, o.Cut, "saving", "/m", o.Saving, o.Verdict)
	c.amount("saving", o.Name, o.Cut, "saving", "/year", o.SavingAll, o.Verdict)
	c.amount("saving", o.Name, o.Cut, "net present value", "", o.Worth, o.Over)
	if o.Payback != "" {
		c.row("saving", text(o.Name), text(o.Cut), "payback", "", "", "", "", text(o.Payback))
	}
}

// figure writes a number as a number.
func figure(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// text keeps a spreadsheet from taking a text for a formula.
func text(s string) string {
	if s != "" && strings.ContainsRune("=+-@\t\r", rune(s[0])) {
		return "'" + s
	}
	return s
}
