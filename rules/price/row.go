package price

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode/utf8"

	"cutbrief/rules/csvfile"
)

// maxNote is what still fits a line of the account.
const maxNote = 120

// row is one row while it is read.
type row struct {
	*file
	line    int
	item    string
	cells   map[string]string
	refused bool
}

func (r *row) say(severity csvfile.Severity, column, problem, accepted string) {
	r.refused = r.refused || severity == csvfile.Error
	r.report(r.line, column, r.item, severity, problem, accepted)
}

// readRow reads and checks one row. It joins the list only without an error.
func (f *file) readRow(n int, cells []string) {
	r := &row{file: f, line: n, cells: map[string]string{}}
	for i, name := range f.header {
		if i < len(cells) && slices.Contains(columns, name) {
			r.cells[name] = strings.TrimSpace(cells[i])
		}
	}
	for _, name := range columns {
		if problem := csvfile.Flaw(r.cells[name]); problem != "" {
			r.say(csvfile.Error, name, csvfile.Quoted(r.cells[name])+" "+problem, "")
		}
	}
	if r.refused {
		return
	}
	r.item = strings.ToLower(r.cells[colItem])
	if first := f.seen[r.item]; first > 0 {
		r.say(csvfile.Error, colItem, fmt.Sprintf("%s stands in line %d too", csvfile.Quoted(r.item), first), "one line for each item")
		return
	}
	r.read()
}

func (r *row) read() {
	switch r.item {
	case rowCurrency:
		r.currency(strings.ToUpper(r.cells[colLikely]))
	case rowDate:
		r.date(r.cells[colLikely])
	case rowPlace:
		r.place(r.cells[colLikely])
	default:
		item, known := FindItem(ID(r.item))
		if !known {
			r.say(csvfile.Error, colItem, csvfile.Quoted(r.item)+" is not an item this program knows", "one of "+itemNames())
			return
		}
		r.price(item)
	}
	r.seen[r.item] = r.line
}

func (r *row) currency(text string) {
	if !csvfile.IsCurrency(text) {
		r.say(csvfile.Error, colLikely, csvfile.Quoted(text)+" is not a currency code", "three letters of ISO 4217, such as EUR")
		return
	}
	r.out.Currency = text
}

var day = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^(\d{4})-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$`)
})

// isDay reports whether a text is a day of the Gregorian calendar, as ISO 8601
// writes it. Rules know no clock, so the days of a month are counted here.
func isDay(text string) bool {
	parts := day().FindStringSubmatch(text)
	if parts == nil {
		return false
	}
	y, _ := strconv.Atoi(parts[1])
	m, _ := strconv.Atoi(parts[2])
	d, _ := strconv.Atoi(parts[3])
	most := []int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}[m-1]
	if m == 2 && y%4 == 0 && (y%100 != 0 || y%400 == 0) {
		most = 29
	}
	return d <= most
}

func (r *row) date(text string) {
	if !isDay(text) {
		r.say(csvfile.Error, colLikely, csvfile.Quoted(text)+" is not a date", "year, month and day, such as 2026-01-31")
		return
	}
	r.out.Date = text
}

func (r *row) place(text string) {
	if text == "" || utf8.RuneCountInString(text) > maxNote {
		r.say(csvfile.Error, colLikely, csvfile.Quoted(text)+" is not a place", fmt.Sprintf("a text of at most %d characters", maxNote))
		return
	}
	r.out.Place = text
}

// price reads the three figures of an item.
func (r *row) price(item Item) {
	factor, ok := r.unit(item)
	likely, known := r.figure(item, colLikely)
	if !ok || !known {
		return
	}
	p := Price{Spread: Sure(likely), Basis: r.basis(), Note: r.note()}
	for _, end := range []struct {
		column string
		field  *float64
	}{{colLow, &p.Low}, {colHigh, &p.High}} {
		if r.cells[end.column] == "" {
			r.say(csvfile.Note, end.column, "is blank: taken as sure, the same as likely", "")
		} else if v, ok := r.figure(item, end.column); ok {
			*end.field = v
		}
	}
	if !r.refused && !(p.Low <= p.Likely && p.Likely <= p.High) {
		r.say(csvfile.Error, colLikely, "does not lie between low and high", "low, likely and high in rising order")
	}
	if r.refused {
		return
	}
	p.Spread = p.Times(factor)
	r.out.prices[item.ID] = p
	r.out.Invented = r.out.Invented || p.Basis == Invented
}

// unit finds the unit of the row; blank is the item's own.
func (r *row) unit(item Item) (float64, bool) {
	text := strings.TrimPrefix(strings.ReplaceAll(strings.ReplaceAll(r.cells[colUnit], "³", "3"), "²", "2"), "per ")
	for _, m := range item.units {
		if text == "" || strings.EqualFold(text, m.name) {
			return m.factor, true
		}
	}
	r.say(csvfile.Error, colUnit, csvfile.Quoted(text)+" is not a unit of "+string(item.ID), unitNames(item))
	return 0, false
}

// figure reads a number above zero. Interest may be zero.
func (r *row) figure(item Item, column string) (float64, bool) {
	text := r.cells[column]
	v, _, ok := csvfile.Plain(text)
	accepted := "a number above zero with a decimal point, such as 12.50"
	switch {
	case text == "":
		r.say(csvfile.Error, column, "is blank", accepted+"; leave the line out if it is not known")
	case !ok:
		r.say(csvfile.Error, column, csvfile.Quoted(text)+" is not a plain number", accepted)
	case v == 0 && item.ID != Interest:
		r.say(csvfile.Error, column, "is zero, and not known is not zero", "leave the line out if it is not known")
	case v > item.most:
		r.say(csvfile.Error, column, csvfile.Quoted(text)+" is beyond belief", fmt.Sprintf("at most %g; check the unit", item.most))
	default:
		return v, true
	}
	return 0, false
}

// basis says where the figure comes from; blank is the rep's own.
func (r *row) basis() Basis {
	text := strings.ToLower(r.cells[colBasis])
	if text == "" {
		return Own
	}
	if !isBasis(text) {
		r.say(csvfile.Error, colBasis, csvfile.Quoted(text)+" is not a basis", baseNames())
	}
	if Basis(text) == Public && r.cells[colNote] == "" {
		r.say(csvfile.Warning, colNote, "is blank: a public figure should say whose it is and of when", "")
	}
	return Basis(text)
}

func (r *row) note() string {
	note := r.cells[colNote]
	if utf8.RuneCountInString(note) > maxNote {
		r.say(csvfile.Error, colNote, fmt.Sprintf("is longer than %d characters", maxNote), "")
	}
	return note
}

func itemNames() string {
	names := []string{rowCurrency, rowDate, rowPlace}
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
	return strings.Join(names, ", ") + "; blank is own"
}
