package system

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"slices"
	"strings"

	"cutbrief/rules/message"
	"cutbrief/rules/tabular"
	"cutbrief/rules/unit"
)

// Limits of a file. They keep a wrong or hostile file from costing memory.
const (
	MaxBytes   = tabular.MaxBytes // size of the file
	MaxSystems = 500              // rows, damaged ones included
)

// The names of columns that checks refer to.
const (
	colID        = "id"
	colName      = "name"
	colRated     = "rated_mm"
	colCleanMax  = "clean_max_mm"
	colSeverance = "severance_mm"
	colPierce    = "pierce_mm"
	colMetals    = "rated_other_metals"
	colOutMin    = "output_min_a"
	colOutMax    = "output_max_a"
	colDuty      = "duty"
	colSupplies  = "supplies"
	colFlow      = "air_flow_l_min"
	colPressure  = "air_pressure_bar"
	colWeight    = "weight_kg"
	colPrice     = "price" // in a file usually with a currency: price_eur
	colInvented  = "invented"
)

// record is a row of a file: a system, and whether it is invented, which is kept
// of the whole range only.
type record struct {
	System
	invented bool
}

type column = tabular.Column[record]

const (
	thickness message.ID = "a thickness such as 12, 12 mm or 1/2 in"
	current   message.ID = "a current such as 45 or 45 A"
)

// columns returns the columns in the order they are written.
func columns() []column {
	return []column{
		{Name: colID, Required: true, Accepts: "lower-case letters, digits and hyphens, at most 40, such as shop-45",
			Means: "short name that saved visits refer to; once used, never change it",
			Read:  named(func(r *record) *string { return &r.ID }, isID, "{1} cannot be an id"), Write: func(r *record) string { return r.ID }},
		{Name: colName, Required: true, Accepts: "a name of at most 60 characters that starts with a letter or digit",
			Means: "the name printed on the page",
			Read:  named(func(r *record) *string { return &r.Name }, isName, "{1} cannot be a name"), Write: func(r *record) string { return r.Name }},
		number(colRated, unit.Thickness, thickness, func(r *record) *unit.Millimetre { return &r.Rated },
			"thickest mild steel cut clean by hand at about 500 mm/min (20 in/min)"),
		number(colCleanMax, unit.Thickness, thickness, func(r *record) *unit.Millimetre { return &r.CleanMax },
			"thickest mild steel cut clean by hand at about 250 mm/min (10 in/min)"),
		number(colSeverance, unit.Thickness, thickness, func(r *record) *unit.Millimetre { return &r.Severance },
			"thickest mild steel it severs, at about 125 mm/min (5 in/min)"),
		{Name: colPierce, Accepts: "a thickness such as 12, 12 mm or 1/2 in, or blank if it is not known",
			Means: "thickest mild steel it starts in away from an edge; blank if not known: half the clean maximum is then taken",
			Read:  readPierce, Write: func(r *record) string { return written(r.Pierce) }},
		{Name: colMetals, Accepts: "pairs such as stainless 10 mm; aluminium 9 mm, or blank",
			Means: "rated thickness in other metals where the data sheet gives it, such as: stainless 10 mm; aluminium 9 mm",
			Read:  readMetals, Write: writeMetals},
		number(colOutMin, unit.Current, current, func(r *record) *unit.Ampere { return &r.OutputMin }, "smallest output current"),
		number(colOutMax, unit.Current, current, func(r *record) *unit.Ampere { return &r.OutputMax }, "largest output current"),
		{Name: colDuty, Required: true, Accepts: "pairs such as 45 A at 50 %; 32 A at 100 %",
			Means: "output current and duty cycle from the rating plate (ten minutes, 40 C), such as: 45 A at 50 %; 32 A at 100 %",
			Read:  readDuty, Write: writeDuty},
		{Name: colSupplies, Required: true, Accepts: "supplies such as 1 phase 200-240 V max 33 A eff 24 A",
			Means: "every supply it can be connected to, with the largest supply current (I1max, full output at the lowest voltage) and the effective one (I1eff), such as: 1 phase 200-240 V max 33 A eff 24 A; 3 phase 380-415 V max 16 A eff 11 A",
			Read:  readSupplies, Write: writeSupplies},
		number(colFlow, unit.Flow, "an air flow such as 150 or 150 l/min", func(r *record) *unit.LitrePerMinute { return &r.AirFlow },
			"free air it needs at full output"),
		number(colPressure, unit.Pressure, "a gauge pressure such as 5 or 5 bar", func(r *record) *unit.Bar { return &r.AirPressure },
			"gauge pressure it needs at its inlet while the air flows"),
		number(colWeight, unit.Weight, "a weight such as 14 or 14 kg", func(r *record) *unit.Kilogram { return &r.Weight },
			"weight without leads"),
		{Name: colPrice, Accepts: "a price above zero such as 1950, or blank if it is not known",
			Means: "list price in the currency the column is named after: price_eur, price_usd; blank if not known",
			Read:  readPrice, Write: func(r *record) string { return written(r.Price) }},
		flag("holds_gaps", func(r *record) *bool { return &r.HoldsGaps }, "holds or relights its arc across gaps: expanded metal, grating"),
		flag("gouges", func(r *record) *bool { return &r.Gouges }, "its manual has a gouging process"),
		flag("contact_tip", func(r *record) *bool { return &r.ContactTip }, "has a shielded tip made to rest on the work at full output"),
		flag("mechanised", func(r *record) *bool { return &r.Mechanised }, "has a torch for guided or mechanised travel"),
		invented(),
	}
}

// number is a column of one quantity that every system has.
func number[Q ~float64](name string, kind unit.Kind, accepts message.ID, field func(*record) *Q, means message.ID) column {
	return column{Name: name, Required: true, Accepts: accepts, Means: means,
		Read: func(c *tabular.Cell, r *record) {
			if v, ok := quantity(c, c.Text, kind, unit.NoGauge); ok {
				*field(r) = Q(v)
			}
		},
		Write: func(r *record) string { return tabular.Number(*field(r)) }}
}

// flag is a column of yes, no or blank.
func flag(name string, field func(*record) *bool, means message.ID) column {
	return column{Name: name, Accepts: "yes, no or blank", Means: means,
		Read:  func(c *tabular.Cell, r *record) { *field(r) = yes(c) },
		Write: func(r *record) string { return map[bool]string{true: "yes", false: "no"}[*field(r)] }}
}

// invented is a flag that nobody misses: a blank says nothing of a system.
func invented() column {
	c := flag(colInvented, func(r *record) *bool { return &r.invented },
		"yes marks an example row: as long as one row says yes, every page is marked as made from an invented range; no or blank on your own rows")
	read := c.Read
	c.Optional, c.Read = true, func(c *tabular.Cell, r *record) {
		if c.Text != "" {
			read(c, r)
		}
	}
	return c
}

// format is how a range is kept as a file.
func format() *tabular.Format[record] {
	return &tabular.Format[record]{
		Columns: columns(), MaxRows: MaxSystems, Missing: "is missing: not known for any system", Empty: "holds no systems", Headed: unpriced,
		Base: func(heading string) string { base, _ := inCurrency(heading); return base },
		Name: func(r *record) string { return r.ID },
	}
}

// Read reads a range from a CSV file (RFC 4180, UTF-8, one system a line) and
// checks every line. name is what the range is called, such as the file's base
// name. Columns may come in any order; lines that start with # are comments.
//
// A row with an error is left out of the range, and every finding is returned,
// in the order of the file. A range read with errors is incomplete: show them
// before using it. Reading stops at the limits, with an error that says so.
func Read(r io.Reader, name string) (Range, []Finding) {
	f, taken := format(), names{}
	f.Check = func(row *tabular.Row[record]) {
		check(row)
		taken.unique(row)
	}
	list := f.Read(r)
	out := Range{Name: name, lines: map[string]int{}}
	for _, row := range list.Rows {
		out.Systems = append(out.Systems, row.Value.System)
		out.Invented = out.Invented || row.Value.invented
		out.lines[row.Value.ID] = row.Line
	}
	for _, heading := range list.Header {
		if base, currency := inCurrency(heading); base == colPrice {
			out.Currency = currency
		}
	}
	return out, list.Findings
}

// unpriced warns of prices in no currency.
func unpriced(header []string) []Finding {
	if !slices.Contains(header, colPrice) {
		return nil
	}
	return []Finding{{Column: colPrice, Severity: Warning, Problem: message.New("names no currency"), Accepted: message.New("price_eur, price_usd and the like")}}
}

// inCurrency takes price_eur apart into price and EUR (a code of ISO 4217).
func inCurrency(heading string) (base, currency string) {
	code, ok := strings.CutPrefix(heading, colPrice+"_")
	if ok && tabular.IsCurrency(strings.ToUpper(code)) {
		return colPrice, strings.ToUpper(code)
	}
	return heading, ""
}

// Write writes r as a CSV file that Read reads back to the same systems. It
// refuses what Read would refuse for its text: an ID, a name or a currency
// that is none.
func Write(w io.Writer, r Range) error {
	if r.Currency != "" && !tabular.IsCurrency(r.Currency) {
		return fmt.Errorf("write range: %q is not a currency code such as EUR", r.Currency)
	}
	rows := make([]record, len(r.Systems))
	for i, s := range r.Systems {
		if !isID(s.ID) || !isName(s.Name) {
			return fmt.Errorf("write range: system %d: %q, %q cannot be an id and a name", i+1, s.ID, s.Name)
		}
		rows[i] = record{s, r.Invented}
	}
	return format().Write(w, func(c *column) string { return title(c, r.Currency) }, rows)
}

// title is a column's header cell.
func title(c *column, currency string) string {
	if c.Name == colPrice && currency != "" {
		return colPrice + "_" + strings.ToLower(currency)
	}
	return c.Name
}

// Fingerprint returns 12 hexadecimal digits that stand for what r holds, so
// that a saved visit can say which range it was sized with. Every figure of
// every system, their order, the currency and the mark "invented" count; the
// range's name does not, nor how its file was laid out: renaming a file,
// reordering columns or writing 1/2 in for 12.7 mm changes nothing. It tells
// ranges apart; it does not prove who wrote them.
func Fingerprint(r Range) string {
	h, cols := sha256.New(), columns()
	fmt.Fprintf(h, "range 1 %q %t\n", r.Currency, r.Invented)
	for i := range r.Systems {
		row := &record{System: r.Systems[i]}
		for _, c := range cols {
			if c.Name != colInvented {
				fmt.Fprintf(h, "%s %q\n", c.Name, c.Write(row))
			}
		}
	}
	return hex.EncodeToString(h.Sum(nil)[:6])
}

// Column is what the file says in one column.
type Column struct {
	Name     string // with its unit, where it has one
	Required bool   // every row must fill it
	Means    message.ID
	Accepts  message.ID
}

// Columns returns the columns in the order they are written.
func Columns() []Column {
	var list []Column
	for _, c := range columns() {
		list = append(list, Column{title(&c, exampleCurrency), c.Required, c.Means, c.Accepts})
	}
	return list
}

// Template returns an example file to start from: every column explained, then
// rows of the demo range, marked as invented.
func Template() string {
	var b strings.Builder
	b.WriteString(preface)
	for _, c := range columns() {
		fmt.Fprintf(&b, "#   %-19s %s\n", title(&c, exampleCurrency), strings.Join(lines(string(c.Means), 78), "\n#                       "))
	}
	b.WriteString(epilogue)
	example := Demo()
	example.Currency = exampleCurrency
	_ = Write(&b, example) // a strings.Builder takes everything
	return b.String()
}

// lines breaks a text between words, into lines of at most so many letters.
func lines(text string, most int) []string {
	var list []string
	for w := range strings.FieldsSeq(text) {
		if last := len(list) - 1; last >= 0 && len(list[last])+1+len(w) <= most {
			list[last] += " " + w
		} else {
			list = append(list, w)
		}
	}
	return list
}

const exampleCurrency = "EUR"

// The text around the columns is plain ASCII: some spreadsheets misread more.
const preface = `# The cutting systems you can offer: one line a system, commas between cells.
# Lines that start with # are comments. Replace the example rows by your own,
# taking every figure from the system's rating plate or data sheet.
#
# A number without a unit has the unit in the column's name; a cell may also
# carry its own, such as 1/2 in or 31 lb. Decimals have a point. A blank cell means
# not known; never write 0 for it. Columns may stand in any order.
#
# Columns:
`

const epilogue = `#
# pierce_mm, rated_other_metals and the price may be blank, and so may the columns
# of yes and no, where a blank counts as no. All other cells must be filled.
#
# The rows below are invented examples.
`
