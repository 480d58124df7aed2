package export

import (
	"encoding/json"
	"fmt"
	"io"
	"iter"
	"strconv"
	"strings"

	"cutbrief/assess/review"
	"cutbrief/report"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// Measured is how timed cuts compare with their predictions, system by system.
type Measured struct {
	List   []Followed
	Visits int // visits looked at
	Totals review.Totals
	Enough int // how many cuts a conclusion needs
	Words  *message.Catalog
}

// Followed is one system: what was summed up, its name, and the words for it.
type Followed struct {
	review.Measured
	Name  string
	Lines []report.Line
	Row   string // what it says of the row
}

// MeasuredOf holds the timed cuts of the rows of a sheet against their
// predictions, and says what they mean for the rows of a range.
func MeasuredOf(s Sheet, timings *review.Timings, offered system.Range) Measured {
	m := Measured{Totals: s.Totals, Enough: demonstration.FewestCuts, Words: s.Words}
	for r := range s.Rows {
		if r.Stage == review.Judged {
			m.Visits++
		}
	}
	for _, one := range timings.Measured(s.Rows, offered) {
		f := Followed{Measured: one}
		var row *system.System
		if s, known := offered.Find(one.System); known {
			row, f.Name = &s, s.Name
		}
		f.Lines = report.Track(one.Track, row, unit.Metric, m.Words)
		f.Row = f.Lines[len(f.Lines)-1].Value // the last says what it means for the row
		m.List = append(m.List, f)
	}
	return m
}

// Text writes a part for each system.
func (m Measured) Text(w io.Writer) error {
	var b strings.Builder
	say := func(id message.ID, args ...any) string { return m.Words.Print(message.New(id, args...)) }
	line := func(label, text string) { fmt.Fprintf(&b, "  %s  %s\n", padded(label, 10), text) }
	if len(m.List) == 0 {
		b.WriteString(say("No cut was timed in these visits.") + "\n\n")
	}
	for _, f := range m.List {
		b.WriteString(say("system: {1}", f.title()) + "\n")
		for _, l := range f.Lines {
			line(l.Label, l.Value)
		}
		if f.Unpredicted > 0 {
			line(say("left out"), say("{1} more timed, without a prediction", message.Count(f.Unpredicted)))
		}
		b.WriteString("\n")
	}
	if len(m.List) > 0 {
		b.WriteString(say("The band is the one at the bench: common practice, no source. No row is changed: that is for whoever answers for the range.") + "\n\n")
	}
	b.WriteString(m.Words.Print(message.Counted(m.Visits, "{1} visit looked at, of {2}", "{1} visits looked at, of {2}", all(m.Totals))) + "\n")
	_, err := io.WriteString(w, b.String())
	return err
}

// title is the system's name with its identifier.
func (f Followed) title() message.Message {
	switch {
	case f.System == "":
		return message.ID("not noted").Message()
	case f.Name == "":
		return message.Text(f.System)
	}
	return message.New("{1} ({2})", message.Name(f.Name), message.Name(f.System))
}

// CSV writes a line for each system, as Sheet.CSV does.
func (m Measured) CSV(w io.Writer) error {
	return writeCSV(w, Followed{}.record(m.Enough), m.records())
}

// JSON writes one object: how many files there are, how many cannot be read, and
// the systems. What is not known is null.
func (m Measured) JSON(w io.Writer) error {
	return writeJSON(w, []value{{"files", m.Totals.Files}, {"unread", m.Totals.Unread}, {"visits", m.Visits}}, "systems", m.records())
}

func (m Measured) records() iter.Seq[[]value] {
	return func(yield func([]value) bool) {
		for _, f := range m.List {
			if !yield(f.record(m.Enough)) {
				return
			}
		}
	}
}

// record are the values of one system, in the order they are written. Errors are
// per cent of the predicted speed: −22 is 22 % slower.
func (f Followed) record(enough int) []value {
	all, row := f.Track.All, f.Track.Row
	spread := "quartiles"
	if all.Cuts < enough {
		spread = "full range"
	}
	return []value{
		{"system", known(f.System, f.System != "")},
		{"name", known(f.Name, f.Name != "")},
		{"timed_cuts", all.Cuts},
		{"visits", all.Visits},
		{"unpredicted_cuts", f.Unpredicted},
		{"median_error_percent", known(tenths(100*all.Median), all.Cuts > 0)},
		{"spread", known(spread, all.Cuts > 0)},
		{"low_error_percent", known(tenths(100*all.Low), all.Cuts > 0)},
		{"high_error_percent", known(tenths(100*all.High), all.Cuts > 0)},
		{"cuts_of_the_row", row.Cuts},
		{"visits_of_the_row", row.Visits},
		{"median_error_of_the_row_percent", known(tenths(100*row.Median), row.Cuts > 0)},
		{"verdict", known(string(f.Track.Off), f.Track.Off != "")},
		{"fitting_rated_mm", known(tenths(float64(f.Track.Rated.Or(0))), f.Track.Rated.IsKnown())},
		{"row", f.Row},
	}
}

// known is a value, or nil where it is not known.
func known(v any, is bool) any {
	if !is {
		return nil
	}
	return v
}

// tenths writes a number rounded to a tenth.
func tenths(v float64) json.Number {
	text := strconv.FormatFloat(v, 'f', 1, 64)
	if text == "-0.0" {
		text = "0.0"
	}
	return json.Number(text)
}
