package cost

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"cutbrief/rules/message"
	"cutbrief/rules/tabular"
)

// maxPrices keeps a wrong file from costing memory.
const maxPrices = 200

// maxNote is what still fits a line of the account.
const maxNote = 120

// The columns of a price list.
const (
	colItem   = "item"
	colUnit   = "unit"
	colLow    = "low"
	colLikely = "likely"
	colHigh   = "high"
	colBasis  = "basis"
	colNote   = "note"
)

// priceLine is a line of a price list as it was written.
type priceLine struct{ item, unit, low, likely, high, basis, note string }

const (
	aFigure  message.ID = "a number above zero with a decimal point, such as 12.50"
	leaveOut message.ID = "leave the line out if it is not known"
	likelyIs message.ID = "a number above zero with a decimal point, such as 12.50; leave the line out if it is not known"
)

// priceFormat is how a price list is kept as a file.
func priceFormat() *tabular.Format[priceLine] {
	columns := []tabular.Column[priceLine]{
		tabular.TextColumn(colItem, "the name of an item, as in the template", func(l *priceLine) *string { return &l.item }),
		tabular.TextColumn(colUnit, "", func(l *priceLine) *string { return &l.unit }),
		tabular.TextColumn(colLow, "", func(l *priceLine) *string { return &l.low }),
		tabular.TextColumn(colLikely, likelyIs, func(l *priceLine) *string { return &l.likely }),
		tabular.TextColumn(colHigh, "", func(l *priceLine) *string { return &l.high }),
		tabular.TextColumn(colBasis, "", func(l *priceLine) *string { return &l.basis }),
		tabular.TextColumn(colNote, "", func(l *priceLine) *string { return &l.note }),
	}
	for i, c := range columns {
		columns[i].Required = c.Name == colItem || c.Name == colLikely
	}
	return &tabular.Format[priceLine]{
		Columns: columns, MaxRows: maxPrices, Ragged: true, Missing: "is missing",
		Name: func(l *priceLine) string { return strings.ToLower(l.item) },
	}
}

// about are the rows that say what a list is; their text stands in the column
// likely.
var about = []struct {
	row, example string
	fits         func(string) bool
	problem      message.ID // what is said of a text that does not fit
	accepts      message.ID
	field        func(*PriceList) *string
}{
	{"currency", "EUR", tabular.IsCurrency, "{1} is not a currency code", "three letters of ISO 4217, such as EUR", func(l *PriceList) *string { return &l.Currency }},
	{"date", "2026-01-31", isDay, "{1} is not a date", "year, month and day, such as 2026-01-31", func(l *PriceList) *string { return &l.Date }},
	{"place", "Velmoor", fitsNote, "{1} is not a place", "a text of at most 120 characters", func(l *PriceList) *string { return &l.Place }},
}

func fitsNote(text string) bool { return text != "" && utf8.RuneCountInString(text) <= maxNote }

// isDay reports whether a text is a day of the Gregorian calendar, as ISO 8601
// writes it. Rules know no clock, so the days of a month are counted here.
func isDay(text string) bool {
	if len(text) != len("2026-01-31") || text[4] != '-' || text[7] != '-' {
		return false
	}
	y, err := strconv.ParseUint(text[:4], 10, 16)
	m, _ := strconv.ParseUint(text[5:7], 10, 16) // 0 is neither a month nor a day
	d, _ := strconv.ParseUint(text[8:], 10, 16)
	if err != nil || m < 1 || m > 12 {
		return false
	}
	most := [...]uint64{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}[m-1]
	if m == 2 && y%4 == 0 && (y%100 != 0 || y%400 == 0) {
		most = 29
	}
	return 1 <= d && d <= most
}

// ReadPrices reads a price list from a CSV file (RFC 4180, UTF-8, one price a
// line) and checks every line. name is what the list is called, such as the
// file's base name. Columns may come in any order; lines that start with # are
// comments. A line with an error is left out of the list.
func ReadPrices(r io.Reader, name string) (PriceList, []tabular.Finding) {
	rd := &priceReader{out: PriceList{Name: name, prices: map[ItemID]Price{}}, seen: map[string]int{}}
	f := priceFormat()
	f.Check = rd.line
	list := f.Read(r)
	if list.Complete {
		list.Findings = append(list.Findings, rd.lacking()...)
	}
	return rd.out, list.Findings
}

// priceReader is a list while it is read.
type priceReader struct {
	out  PriceList
	seen map[string]int // the line of each item
}

// line takes a line in, if nothing is wrong with it.
func (rd *priceReader) line(row *tabular.Row[priceLine]) {
	item := strings.ToLower(row.Value.item)
	if first := rd.seen[item]; first != 0 {
		refuse(row, colItem, message.New("one line for each item"), "{1} is in line {2} too", quoted(item), message.Figure(strconv.Itoa(first)))
		return
	}
	if rd.seen[item] = row.Line; !row.Sound() {
		return
	}
	for _, a := range about {
		if a.row == item {
			text := row.Value.likely
			if a.row == "currency" {
				text = strings.ToUpper(text)
			}
			if !a.fits(text) {
				refuse(row, colLikely, a.accepts.Message(), a.problem, quoted(text))
				return
			}
			*a.field(&rd.out) = text
			return
		}
	}
	known, ok := FindItem(ItemID(item))
	if !ok {
		refuse(row, colItem, message.New("one of {1}", message.Name(itemNames())), "{1} is not an item this program knows", quoted(item))
		return
	}
	if p, ok := priceOf(row, known); ok {
		rd.out.prices[known.ID] = p
		rd.out.Invented = rd.out.Invented || p.Basis == BasisInvented
	}
}

func quoted(text string) message.Name { return message.Name(tabular.Quoted(text)) }

func refuse(row *tabular.Row[priceLine], column string, accepted message.Message, problem message.ID, args ...any) {
	row.Report(tabular.Finding{Column: column, Severity: tabular.Error, Problem: message.New(problem, args...), Accepted: accepted})
}

// priceOf reads the three figures of an item, into its own unit; ok is false if
// something is wrong with them.
func priceOf(row *tabular.Row[priceLine], item Item) (p Price, ok bool) {
	l := &row.Value
	factor := factorOf(row, item)
	likely := figureOf(row, item, colLikely, l.likely)
	p = Price{Estimate: Exact(likely), Basis: basisOf(row), Note: l.note}
	for _, end := range []struct {
		column, text string
		field        *float64
	}{{colLow, l.low, &p.Low}, {colHigh, l.high, &p.High}} {
		if end.text == "" {
			row.Report(tabular.Finding{Column: end.column, Severity: tabular.Note, Problem: message.New("is blank: taken as sure, the same as likely")})
		} else {
			*end.field = figureOf(row, item, end.column, end.text)
		}
	}
	if utf8.RuneCountInString(l.note) > maxNote {
		refuse(row, colNote, message.Message{}, "is longer than {1} characters", message.Figure(strconv.Itoa(maxNote)))
	}
	if row.Sound() && !(p.Low <= p.Likely && p.Likely <= p.High) {
		refuse(row, colLikely, message.New("low, likely and high in rising order"), "does not lie between low and high")
	}
	p.Estimate = p.Times(factor)
	return p, row.Sound()
}

// factorOf finds the unit of a line; blank is the item's own.
func factorOf(row *tabular.Row[priceLine], item Item) float64 {
	text := strings.TrimPrefix(strings.ReplaceAll(strings.ReplaceAll(row.Value.unit, "³", "3"), "²", "2"), "per ")
	for _, m := range item.units {
		if text == "" || strings.EqualFold(text, string(m.name)) {
			return m.factor
		}
	}
	refuse(row, colUnit, message.New("{1}", message.Name(unitNames(item))), "{1} is not a unit of {2}", quoted(text), message.Name(item.ID))
	return 0
}

// figureOf reads a number above zero. Interest may be zero.
func figureOf(row *tabular.Row[priceLine], item Item, column, text string) float64 {
	v, _, ok := tabular.Plain(text)
	switch {
	case !ok:
		refuse(row, column, aFigure.Message(), "{1} is not a plain number", quoted(text))
	case v == 0 && item.ID != ItemInterest:
		refuse(row, column, leaveOut.Message(), "is zero, and not known is not zero")
	case v > item.most:
		refuse(row, column, message.New("at most {1}; check the unit", message.Figure(fmt.Sprintf("%g", item.most))), "{1} is beyond belief", quoted(text))
	}
	return v
}

// basisOf says where a figure comes from; blank is the rep's own.
func basisOf(row *tabular.Row[priceLine]) Basis {
	basis := Basis(strings.ToLower(row.Value.basis))
	switch {
	case basis == "":
		return BasisOwn
	case !slices.Contains(bases, basis):
		refuse(row, colBasis, message.New("{1}; blank is own", message.Name(baseNames())), "{1} is not a basis", quoted(string(basis)))
	case basis == BasisPublic && row.Value.note == "":
		row.Report(tabular.Finding{Column: colNote, Severity: tabular.Warning, Problem: message.New("is blank: a public figure should give its source and date")})
	}
	return basis
}

// lacking says what the list has no line for.
func (rd *priceReader) lacking() (list []tabular.Finding) {
	for _, a := range about {
		f := tabular.Finding{Row: a.row, Severity: tabular.Warning, Problem: message.New("gives no {1}, and prices depend on it", message.ID(a.row)),
			Accepted: message.New("a line such as {1}", message.Name(a.row+",,,"+a.example))}
		if a.row == "currency" {
			f.Severity, f.Problem = tabular.Error, message.New("names no currency")
		}
		if rd.seen[a.row] == 0 {
			list = append(list, f)
		}
	}
	for _, i := range items {
		if rd.seen[string(i.ID)] == 0 {
			list = append(list, tabular.Finding{Row: string(i.ID), Severity: tabular.Note, Problem: message.New("has no line for {1}: not known", message.Name(i.ID))})
		}
	}
	return list
}

func itemNames() string {
	var names []string
	for _, a := range about {
		names = append(names, a.row)
	}
	for _, i := range items {
		names = append(names, string(i.ID))
	}
	return strings.Join(names, ", ")
}

func unitNames(item Item) string { return strings.Join(item.Units(), " or ") }

func baseNames() string {
	var names []string
	for _, b := range bases {
		names = append(names, string(b))
	}
	return strings.Join(names, ", ")
}

// PricesTemplate returns an example file to start from: every item explained, then
// the demo list, marked as invented.
func PricesTemplate() string {
	var b strings.Builder
	b.WriteString(pricesPreface)
	for _, i := range items {
		means := string(i.Name) + ", for each " + unitNames(i)
		if i.Means != "" {
			means += ": " + string(i.Means)
		}
		fmt.Fprintf(&b, "#   %-15s %s\n", i.ID, means)
	}
	b.WriteString("#\n# The lines below are an invented example.\n")
	_ = priceFormat().Write(&b, nil, DemoPrices().lines()) // a strings.Builder takes everything
	return b.String()
}

// lines are the list as it is written to a file.
func (l PriceList) lines() []priceLine {
	var list []priceLine
	for _, a := range about {
		list = append(list, priceLine{item: a.row, likely: *a.field(&l)})
	}
	for _, i := range items {
		if p, ok := l.prices[i.ID]; ok {
			list = append(list, priceLine{string(i.ID), i.Unit(), tabular.Number(p.Low), tabular.Number(p.Likely), tabular.Number(p.High), string(p.Basis), p.Note})
		}
	}
	return list
}

// The text around the items is plain ASCII: some spreadsheets misread more.
const pricesPreface = `# Your prices: one a line, commas between cells. Lines that start with # are
# comments. Replace the example lines by your customer's prices or your own.
#
# Each has a low, a likely and a high figure, in the currency of the list and for
# the unit named; decimals have a point. Leave a line out if the price is not
# known; never write 0 for it. basis is customer, own, public, practice or
# invented; public figures say in the note whose they are and of when.
#
# Items and their units:
`
