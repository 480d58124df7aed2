package review

import (
	"math"
	"strconv"
	"strings"

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

// Field is one column: what it is called, what it says.
type Field struct {
	ID    string // as typed and written
	Says  string // for the help
	Shape Shape

	text func(*Row) string
	cut  string             // between the words of a list
	num  func(*Row) float64 // of a length or time; 0 if it is not known

	words func() []string // all it can say; nil if that is not fixed
}

// fields are all columns, in the order a list shows them. It is only ever read.
var fields = []Field{
	{ID: "date", Says: "day of the visit", Shape: Date, text: func(r *Row) string { return r.Date }},
	{ID: "company", Says: "customer", text: func(r *Row) string { return r.Company }},
	{ID: "rep", Says: "who made the visit", text: func(r *Row) string { return r.Rep }},
	{ID: "metals", Says: "metals cut", Shape: List, cut: ", ", text: func(r *Row) string { return r.Metals }, words: metalWords},
	{ID: "thickest", Says: "thickest regular clean cut of any metal", Shape: Length, text: thickest, num: func(r *Row) float64 { return float64(r.Thickest) }},
	{ID: "critical", Says: "requirement that decides the sale", text: func(r *Row) string { return string(r.Critical) }, words: criticalWords},
	{ID: "system", Says: "system recommended, as recorded, or else today's", text: func(r *Row) string { return r.System }},
	{ID: "verdict", Says: "firm, open, falls short, none fits, not yet", text: func(r *Row) string { return string(r.Verdict) }, words: verdictWords},
	{ID: "outcome", Says: "how the sale ended, if recorded", text: func(r *Row) string { return r.Outcome }, words: outcomeWords},
	{ID: "against", Says: "what weighed most where the outcome is no, if recorded", text: func(r *Row) string { return string(r.Noted.Because()) }, words: againstWords},
	{ID: "due", Says: "day of the next step, if recorded", Shape: Date, text: func(r *Row) string { return r.Due }},
	{ID: "flags", Says: "what needs a second look", Shape: List, cut: ", ", text: func(r *Row) string { return r.Flags.String() }, words: flagWords},
	{ID: "unanswered", Says: "questions that matter and have no answer", Shape: List, cut: "; ", text: func(r *Row) string { return r.Unanswered }},
	{ID: "interview", Says: "time the interview took, if known", Shape: Minutes, text: interviewTime, num: func(r *Row) float64 { return float64(r.Noted.Minutes) }},
	{ID: "month", Says: "month of the visit, year-month", text: month},
	{ID: "file", Says: "path below the folder", text: (*Row).ShownPath},
	{ID: "reasons", Says: "why each flag is raised", Shape: List, cut: "\n", text: func(r *Row) string { return r.Why }},
}

// usual are the columns shown when nobody says which.
var usual = []string{"date", "company", "rep", "metals", "thickest", "critical", "system", "verdict", "outcome", "due", "flags", "file"}

// Fields lists all columns.
func Fields() []Field { return append([]Field(nil), fields...) }

// UsualFields lists the columns shown when nobody says which.
func UsualFields() []Field {
	var list []Field
	for _, id := range usual {
		f, _ := FindField(id)
		list = append(list, f)
	}
	return list
}

// FindField returns the column of a name, in any capitals.
func FindField(id string) (Field, bool) {
	for _, f := range fields {
		if strings.EqualFold(f.ID, id) {
			return f, true
		}
	}
	return Field{}, false
}

// FieldIDs lists the names of all columns.
func FieldIDs() []string {
	var ids []string
	for _, f := range fields {
		ids = append(ids, f.ID)
	}
	return ids
}

// Text is what a column says of a row, for a reader; "" if it is not known.
func (f Field) Text(r *Row) string { return f.text(r) }

// Items are the words of a list.
func (f Field) Items(r *Row) []string {
	text := f.text(r)
	if text == "" {
		return nil
	}
	if f.cut == "" {
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

// minutesOf reads a time such as 20 min or a bare number of minutes.
func minutesOf(said string) (float64, error) {
	text := strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(said), "min"))
	n, err := strconv.ParseFloat(text, 64)
	if err == nil && !(n >= 0 && n <= math.MaxUint16) {
		err = strconv.ErrRange
	}
	return n, err
}

// thickest writes the thickness in mm, to at most two decimals.
func thickest(r *Row) string {
	if r.Thickest == 0 {
		return ""
	}
	return strconv.FormatFloat(float64(int(float64(r.Thickest)*100+0.5))/100, 'f', -1, 64) + " mm"
}

// month is the month of the visit.
func month(r *Row) string {
	if len(r.Date) < 7 {
		return ""
	}
	return r.Date[:7]
}

// length reads a thickness such as 10 mm, 3/8 in or a bare number of mm.
func length(said string) (mm float64, err error) {
	reading, err := unit.Read(said, unit.Thickness, unit.Metric, unit.NoGauge)
	if err != nil {
		return 0, err
	}
	return reading.Quantity.Value, nil
}
