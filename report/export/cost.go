package export

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
	return JSON(s)
}

// CostCSV writes the account as CSV, one figure a line, low, likely and high in
// columns of their own. Numbers stay numbers; a text that a spreadsheet could
// take for a formula is kept from it.
func CostCSV(s report.CostSheet) ([]byte, error) {
	var buf bytes.Buffer
	out := csv.NewWriter(&buf)
	_ = out.Write(costHeads) // the writer keeps its first error
	for _, r := range costRows(s) {
		line := make([]string, len(r))
		for i, cell := range r {
			switch cell := cell.(type) {
			case float64:
				line[i] = figure(cell)
			case string:
				line[i] = harmless(cell)
			}
		}
		_ = out.Write(line)
	}
	out.Flush()
	if err := out.Error(); err != nil {
		return nil, fmt.Errorf("write the account as CSV: %w", err)
	}
	return buf.Bytes(), nil
}

// The columns of the account, and those that others are named after.
var costHeads = []string{"part", "way", "cut", "item", "unit", "low", "likely", "high", "note"}

const (
	unitColumn = 4
	lowColumn  = 5
	highColumn = 7
)

// costRows are the rows of the account: texts, and numbers where they are known.
func costRows(s report.CostSheet) [][]any {
	c := &costTable{currency: s.Currency}
	for _, l := range s.Prices {
		c.row("prices", "", "", l.Label, "", nil, l.Value, nil, "")
	}
	if s.Demo != "" {
		c.row("prices", "", "", "mark", "", nil, nil, nil, s.Demo)
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
		c.row("input", "", "", in.Name, in.Unit, in.Low, in.Likely, in.High, strings.TrimSpace(in.Basis+" "+in.Note))
	}
	return c.rows
}

type costTable struct {
	rows     [][]any
	currency string
}

func (c *costTable) row(cells ...any) { c.rows = append(c.rows, cells) }

func (c *costTable) amount(part, way, cut, item, unit string, a *report.Amount, note string) {
	if a != nil {
		c.row(part, way, cut, item, c.currency+unit, a.Low, a.Likely, a.High, note)
	}
}

func (c *costTable) way(part string, w report.CostWay) {
	if w.Why != "" {
		c.row(part, w.Name, w.Cut, "not worked out", "", nil, nil, nil, w.Why)
		return
	}
	for _, l := range w.Lines {
		c.amount(part, w.Name, w.Cut, l.Name, "/m", &l.Cost, "")
	}
	c.amount(part, w.Name, w.Cut, "together", "/m", w.PerMetre, "")
	c.amount(part, w.Name, w.Cut, "together", "/year", w.PerYear, "")
}

func (c *costTable) saving(o report.CostOffer) {
	c.amount("saving", o.Name, o.Cut, "saving", "/m", o.Saving, o.Verdict)
	c.amount("saving", o.Name, o.Cut, "saving", "/year", o.SavingAll, o.Verdict)
	c.amount("saving", o.Name, o.Cut, "net present value", "", o.Worth, o.Over)
	if o.Payback != "" {
		c.row("saving", o.Name, o.Cut, "payback", "", nil, nil, nil, o.Payback)
	}
}

// figure writes a number as a number.
func figure(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
