package system

import (
	"encoding/csv"
	"fmt"
	"io"
	"strings"

	"cutbrief/rules/csvfile"
)

// Write writes r as a CSV file that Read reads back to the same systems. It
// refuses what Read would refuse for its text: an ID, a name or a currency
// that is none.
func Write(w io.Writer, r Range) error {
	if r.Currency != "" && !csvfile.IsCurrency(r.Currency) {
		return fmt.Errorf("write range: %q is not a currency code such as EUR", r.Currency)
	}
	out := csv.NewWriter(w)
	cols := columns()
	record := make([]string, len(cols))
	for i, c := range cols {
		record[i] = title(c, r.Currency)
	}
	_ = out.Write(record) // the writer keeps its first error for Error
	for i := range r.Systems {
		s := &r.Systems[i]
		if !isID(s.ID) || !isName(s.Name) {
			return fmt.Errorf("write range: system %d: %q, %q cannot be an id and a name", i+1, s.ID, s.Name)
		}
		for k, c := range cols {
			record[k] = written(c, s, r.Invented)
		}
		_ = out.Write(record)
	}
	out.Flush()
	return out.Error()
}

// title is a column's header cell.
func title(c column, currency string) string {
	if c.name == colPrice && currency != "" {
		return colPrice + "_" + strings.ToLower(currency)
	}
	return c.name
}

// written is a system's cell. Whether it is invented is known for the whole
// range only.
func written(c column, s *System, invented bool) string {
	if c.name == colInvented {
		return yesNo(invented)
	}
	return c.write(s)
}

// Template returns an example file to start from: every column explained, then
// rows of the demo range, marked as invented.
func Template() string {
	var b strings.Builder
	b.WriteString(preface)
	for _, c := range columns() {
		fmt.Fprintf(&b, "#   %-19s %s\n", title(c, exampleCurrency), strings.Join(c.means, "\n#                       "))
	}
	b.WriteString(epilogue)
	example := Demo()
	example.Currency = exampleCurrency
	_ = Write(&b, example) // a strings.Builder takes everything
	return b.String()
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
