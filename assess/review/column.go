package review

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// Shape says how a field is compared and written.
type Shape uint8

// The shapes.
const (
	Text    Shape = iota // compared without regard to capitals
	List                 // several words, each compared by itself
	Date                 // year-month-day
	Length               // a thickness in mm; not known is no number
	Minutes              // a time in min; not known is no number
)

// Field is one column: what it is called, what it says of a row, how it is kept in
// the index, and how a list shows it. Filters, orders, groups, the index and the
// table of a list go by it.
type Field struct {
	ID          string     // as typed and written
	Says        message.ID // for the help
	Shape       Shape
	Usual       bool // shown when nobody says which
	Least       int  // how narrow it may become, in cells; 0 if no narrower than what it says
	Dispensable int  // from 1: where there is no room it goes before those of larger numbers; 0 if it stays

	text  func(*Row) string  // what it says, for a reader; "" if it is not known
	num   func(*Row) float64 // of a length or time; 0 if it is not known
	cut   string             // between the words of a list
	words func() []string    // all it can say; nil if that is not fixed
	keep  keeper             // nil where other columns say it
}

// columns are all columns, in the order a list shows them. It is only ever read.
var columns = []Field{
	{ID: "date", Says: "day of the visit", Shape: Date, Usual: true, Dispensable: 8,
		text: func(r *Row) string { return r.Date }, keep: alike(func(r *Row) *string { return &r.Date })},
	{ID: "company", Says: "customer", Usual: true, Least: 12,
		text: func(r *Row) string { return r.Company }, keep: own(func(r *Row) *string { return &r.Company })},
	{ID: "rep", Says: "who made the visit", Usual: true, Least: 10, Dispensable: 5,
		text: func(r *Row) string { return r.Rep }, keep: alike(func(r *Row) *string { return &r.Rep })},
	{ID: "metals", Says: "metals cut", Shape: List, Usual: true, Least: 12, Dispensable: 1, cut: ", ", words: metalWords,
		text: func(r *Row) string { return r.Metals }, keep: alike(func(r *Row) *string { return &r.Metals })},
	{ID: "thickest", Says: "thickest regular clean cut of any metal", Shape: Length, Usual: true, Dispensable: 6,
		text: thickest, num: func(r *Row) float64 { return float64(r.Thickest) }, keep: thickestKept{}},
	{ID: "critical", Says: "requirement that decides the sale", Usual: true, Least: 12, Dispensable: 2, words: criticalWords,
		text: func(r *Row) string { return string(r.Critical) }, keep: alike(func(r *Row) *string { return (*string)(&r.Critical) })},
	{ID: "system", Says: "system recommended, as recorded, or else today's", Usual: true, Dispensable: 7,
		text: func(r *Row) string { return r.System }, keep: alike(func(r *Row) *string { return &r.System })},
	{ID: "verdict", Says: "firm, open, falls short, none fits, not yet", Usual: true, words: verdictWords,
		text: func(r *Row) string { return string(r.Verdict) }, keep: alike(func(r *Row) *string { return (*string)(&r.Verdict) })},
	{ID: "outcome", Says: "how the sale ended, if recorded", Usual: true, Dispensable: 4, words: outcomeWords,
		text: func(r *Row) string { return r.Outcome }, keep: alike(func(r *Row) *string { return &r.Outcome })},
	{ID: "against", Says: "what weighed most where the outcome is no, if recorded", words: againstWords,
		text: func(r *Row) string { return string(r.Noted.Because()) }, keep: notedKept},
	{ID: "due", Says: "day of the next step, if recorded", Shape: Date, Usual: true, Dispensable: 3,
		text: func(r *Row) string { return r.Due }, keep: alike(func(r *Row) *string { return &r.Due })},
	{ID: "flags", Says: "what needs a second look", Shape: List, Usual: true, Least: 8, cut: ", ", words: flagWords,
		text: func(r *Row) string { return r.Flags.String() }, keep: flagsKept},
	{ID: "unanswered", Says: "questions that matter and have no answer", Shape: List, Least: 16, cut: "; ",
		text: func(r *Row) string { return r.Unanswered }, keep: alike(func(r *Row) *string { return &r.Unanswered })},
	{ID: "interview", Says: "time the interview took, if known", Shape: Minutes,
		text: interviewTime, num: func(r *Row) float64 { return float64(r.Noted.Minutes) }},
	{ID: "month", Says: "month of the visit, year-month", text: func(r *Row) string { return r.Date[:min(7, len(r.Date))] }},
	{ID: "file", Says: "path below the folder", Usual: true, Least: 12, text: (*Row).ShownPath},
	{ID: "reasons", Says: "why each flag is raised", Shape: List, Least: 20, cut: "\n",
		text: func(r *Row) string { return strings.Join(r.reasons(nil), "\n") }, keep: alike(func(r *Row) *string { return &r.Why })},
	{keep: stageKept}, // not listed
}

// listed are the columns with a name.
func listed() []Field { return columns[:len(columns)-1] }

// Fields lists all columns.
func Fields() []Field { return slices.Clone(listed()) }

// UsualFields lists the columns shown when nobody says which.
func UsualFields() []Field {
	return slices.DeleteFunc(Fields(), func(f Field) bool { return !f.Usual })
}

// FindField returns the column of a name, in any capitals.
func FindField(id string) (Field, bool) {
	for i := range listed() {
		if f := &columns[i]; strings.EqualFold(f.ID, id) {
			return *f, true
		}
	}
	return Field{}, false
}

// FieldIDs lists the names of all columns.
func FieldIDs() []string {
	var ids []string
	for _, f := range listed() {
		ids = append(ids, f.ID)
	}
	return ids
}

// ParseFields reads names of columns with a comma between.
func ParseFields(text string) ([]Field, error) {
	order, err := ParseOrder(text)
	var list []Field
	for _, o := range order {
		if o.Down {
			return nil, message.Errorf("-{1} is not a field; a minus belongs into the order", message.Name(o.Field.ID))
		}
		list = append(list, o.Field)
	}
	return list, err
}

// Vocabulary lists all a column can say; nil if that is not fixed.
func (f Field) Vocabulary() []string {
	if f.words == nil {
		return nil
	}
	return f.words()
}

// Text is what a column says of a row, for a reader; "" if it is not known.
func (f Field) Text(r *Row) string { return f.text(r) }

// Items are the words of a list.
func (f Field) Items(r *Row) []string {
	text := f.text(r)
	switch {
	case text == "":
		return nil
	case f.cut == "":
		return []string{text}
	}
	return strings.Split(text, f.cut)
}

// Number is what a column of lengths or times says, in its unit.
func (f Field) Number(r *Row) (n float64, known bool) {
	n = f.num(r)
	return n, n > 0
}

// Unit is that of the numbers of a column; "" if it has none.
func (f Field) Unit() string {
	switch f.Shape {
	case Length:
		return "mm"
	case Minutes:
		return "min"
	}
	return ""
}

// interviewTime writes the time an interview took.
func interviewTime(r *Row) string {
	if r.Noted.Minutes == 0 {
		return ""
	}
	return strconv.Itoa(int(r.Noted.Minutes)) + " min"
}

// thickest writes the thickness in mm, to at most two decimals.
func thickest(r *Row) string {
	if r.Thickest == 0 {
		return ""
	}
	return strconv.FormatFloat(float64(int(float64(r.Thickest)*100+0.5))/100, 'f', -1, 64) + " mm"
}

// parse reads a number as it is typed beside a column, in its unit, such as
// 3/8 in, 20 min or a bare number; accepted is what would do.
func (f Field) parse(said string) (n float64, accepted message.Message) {
	if f.Shape == Length {
		reading, err := unit.Read(said, unit.Thickness, unit.Metric, unit.NoGauge)
		if err != nil {
			return 0, message.New("give a thickness such as 10 mm or 3/8 in")
		}
		return reading.Quantity.Value, accepted
	}
	text := strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(said), "min"))
	n, err := strconv.ParseFloat(text, 64)
	if err != nil || !(n >= 0 && n <= math.MaxUint16) {
		return 0, message.New("give a time such as 20 min")
	}
	return n, accepted
}

// strs are words as texts.
func strs[S ~string](words []S) []string {
	list := make([]string, len(words))
	for i, w := range words {
		list[i] = string(w)
	}
	return list
}

func criticalWords() []string { return strs(rules.Requirements()) }
func verdictWords() []string  { return strs([]Verdict{Firm, Open, FallsShort, NoneFits, NotYet}) }
func againstWords() []string  { return strs(assess.AllAgainst()) }
func outcomeWords() []string {
	return strs([]assess.Outcome{assess.Ordered, assess.Quote, assess.SecondVisit, assess.No})
}

func metalWords() []string {
	var list []string
	for _, m := range metal.List() {
		list = append(list, string(m.ID))
	}
	return list
}

func flagWords() []string {
	var list []string
	for _, k := range kinds {
		list = append(list, k.ID)
	}
	return list
}

// misspelt says which words a column has, where a value is none of them: a filter
// that can keep nothing would look like good news. "" if the value may stand.
func (f Field) misspelt(op, value string) message.Message {
	if f.words == nil || op == "~" {
		return message.Message{}
	}
	words := f.words()
	if slices.ContainsFunc(words, func(w string) bool { return strings.EqualFold(w, value) }) {
		return message.Message{}
	}
	return message.New("it is one of {1}, or ? for not known", message.Name(strings.Join(words, ", ")))
}

// Worded is one of the words a column can say, in the words of a catalog where it
// has some: "verdict: open" is the row for the verdict open.
func (f Field) Worded(words *message.Catalog, value string) string {
	if id := message.ID(f.ID + ": " + value); words != nil && f.Vocabulary() != nil && words.Has(id) {
		return words.Print(id.Message())
	}
	if f.ID != "unanswered" {
		return value
	}
	parts := strings.Split(value, ", ") // a question, and its metal
	return words.Print(message.Join(", ", message.Each(parts, message.Worded)...))
}

// Cell is what a column says of a row to a reader, "–" if that is not known.
func (f Field) Cell(words *message.Catalog, r *Row) string {
	if f.ID == "reasons" {
		return cmp.Or(strings.Join(r.reasons(words), ", "), "–")
	}
	items := f.Items(r)
	for i := range items {
		items[i] = f.Worded(words, items[i])
		if f.Shape == Length {
			items[i] = words.Print(message.New("{1}", message.Figure(items[i])))
		}
	}
	if len(items) == 0 {
		return "–"
	}
	return strings.Join(items, ", ")
}
