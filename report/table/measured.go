package table

import (
	"bufio"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"strconv"
	"strings"

	"cutbrief/assess/review"
)

// Measured is how timed cuts compare with their predictions, system by system.
type Measured struct {
	List    []Followed
	Visits  int // visits looked at
	Totals  review.Totals
	Enough  int // how many cuts a conclusion needs
	Caution string
}

// Followed is one system: what was summed up, its name, and the words for it.
type Followed struct {
	review.Measured
	Name  string
	Lines [][2]string // label and words
	Row   string      // what it says of the row
}

// Text writes a part for each system.
func (m Measured) Text(w io.Writer) error {
	out := bufio.NewWriter(w)
	if len(m.List) == 0 {
		out.WriteString("No cut was timed in these visits.\n\n")
	}
	for _, f := range m.List {
		fmt.Fprintf(out, "system: %s\n", f.title())
		for _, l := range f.Lines {
			fmt.Fprintf(out, "  %-10s  %s\n", strings.ToLower(l[0]), l[1])
		}
		if f.Unpredicted > 0 {
			fmt.Fprintf(out, "  %-10s  %d more timed, without a prediction to compare with\n", "left out", f.Unpredicted)
		}
		out.WriteString("\n")
	}
	if len(m.List) > 0 {
		fmt.Fprintf(out, "%s\n\n", m.Caution)
	}
	visits := "visits"
	if m.Visits == 1 {
		visits = "visit"
	}
	fmt.Fprintf(out, "%d %s looked at, of %s\n", m.Visits, visits, Sheet{Totals: m.Totals}.all())
	return out.Flush()
}

// title is the system's name with its identifier.
func (f Followed) title() string {
	switch {
	case f.System == "":
		return "not noted"
	case f.Name == "":
		return f.System
	}
	return f.Name + " (" + f.System + ")"
}

// figures are the numbers of one system, in the order they are written. Shares
// are per cent of the predicted speed: −22 is 22 % slower.
func (f Followed) figures(enough int) []figure {
	all, row := f.Track.All, f.Track.Row
	return []figure{
		{"timed_cuts", all.Cuts, true},
		{"visits", all.Visits, true},
		{"unpredicted_cuts", f.Unpredicted, true},
		{"median_error_percent", tenths(100 * all.Median), all.Cuts > 0},
		{"spread", f.spread(enough), all.Cuts > 0},
		{"low_error_percent", tenths(100 * all.Low), all.Cuts > 0},
		{"high_error_percent", tenths(100 * all.High), all.Cuts > 0},
		{"cuts_of_the_row", row.Cuts, true},
		{"visits_of_the_row", row.Visits, true},
		{"median_error_of_the_row_percent", tenths(100 * row.Median), row.Cuts > 0},
		{"verdict", string(f.Track.Off), f.Track.Off != ""},
		{"fitting_rated_mm", tenths(float64(f.Track.Rated.Or(0))), f.Track.Rated.IsKnown()},
		{"row", f.Row, true},
	}
}

// figure is a named value, if it is known.
type figure struct {
	name  string
	value any
	known bool
}

// tenths writes a number rounded to a tenth.
func tenths(v float64) json.Number {
	text := strconv.FormatFloat(v, 'f', 1, 64)
	if text == "-0.0" {
		text = "0.0"
	}
	return json.Number(text)
}

// spread names what low and high are.
func (f Followed) spread(enough int) string {
	if f.Track.All.Cuts < enough {
		return "full range"
	}
	return "quartiles"
}

// CSV writes a line for each system, as Sheet.CSV does. A number below 0 stands
// as it is: no spreadsheet takes one for a formula.
func (m Measured) CSV(w io.Writer) error {
	out := csv.NewWriter(w)
	out.UseCRLF = true
	head := []string{"system", "name"}
	for _, f := range (Followed{}).figures(m.Enough) {
		head = append(head, f.name)
	}
	if err := out.Write(head); err != nil {
		return err
	}
	for _, f := range m.List {
		record := []string{harmless(f.System), harmless(f.Name)}
		for _, one := range f.figures(m.Enough) {
			record = append(record, one.cell())
		}
		if err := out.Write(record); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// cell writes a figure for a spreadsheet.
func (f figure) cell() string {
	text, isText := f.value.(string)
	switch {
	case !f.known:
		return ""
	case isText:
		return harmless(text)
	}
	return fmt.Sprint(f.value)
}

// JSON writes one object: how many files there are, how many cannot be read, and
// the systems. What is not known is null.
func (m Measured) JSON(w io.Writer) error {
	out := bufio.NewWriter(w)
	fmt.Fprintf(out, "{\n  \"files\": %d,\n  \"unread\": %d,\n  \"visits\": %d,\n  \"systems\": [", m.Totals.Files, m.Totals.Unread, m.Visits)
	for i, f := range m.List {
		if i > 0 {
			out.WriteString(",")
		}
		out.WriteString("\n    ")
		if err := f.object(out, m.Enough); err != nil {
			return err
		}
	}
	out.WriteString("\n  ]\n}\n")
	return out.Flush()
}

// object writes one system.
func (f Followed) object(out *bufio.Writer, enough int) error {
	all := append([]figure{{"system", f.System, f.System != ""}, {"name", f.Name, f.Name != ""}}, f.figures(enough)...)
	for i, one := range all {
		if !one.known {
			one.value = nil
		}
		data, err := json.Marshal(one.value)
		if err != nil {
			return err
		}
		lead := ", "
		if i == 0 {
			lead = "{"
		}
		fmt.Fprintf(out, "%s%q: %s", lead, one.name, data)
	}
	return out.WriteByte('}')
}
