// Package tabular reads the lists a rep keeps as CSV files or workbooks, line by
// line: what was found wrong and where, cells taken apart, texts that could disturb
// a terminal refused. It writes tables as workbooks, the part of Office Open XML
// (ECMA-376) that they need. What lists and tables hold is the business of the
// packages that import it.
package tabular

import (
	"errors"
	"io"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"cutbrief/rules/message"
)

// MaxBytes is the largest file read. It keeps a wrong or hostile file from
// costing memory.
const MaxBytes = 1 << 20

// maxCell is the longest cell accepted, in characters.
const maxCell = 300

// What Load refuses.
var (
	ErrLarge = message.Errorf("is larger than 1 MiB")
	ErrUTF16 = message.Errorf("is in UTF-16")
)

// Load reads a whole file, but never more than the limit, without the mark
// some programs put at its beginning.
func Load(r io.Reader) (string, error) {
	raw, err := io.ReadAll(io.LimitReader(r, MaxBytes+1))
	switch {
	case err != nil:
		return "", message.Errorf("cannot be read: {1}", err)
	case len(raw) > MaxBytes:
		return "", ErrLarge
	}
	text := string(raw)
	if strings.HasPrefix(text, "\xff\xfe") || strings.HasPrefix(text, "\xfe\xff") {
		return "", ErrUTF16
	}
	return strings.TrimPrefix(text, "\ufeff"), nil
}

// Loadable says what file would be read in place of one that Load refused, empty
// where the refusal says it.
func Loadable(err error) message.Message {
	if errors.Is(err, ErrUTF16) {
		return message.New("CSV in UTF-8; spreadsheets offer it when saving")
	}
	return message.Message{}
}

// Each gives the lines of a text to take, counted from 1 and without their ends,
// until take wants no more; it reports whether take had them all.
func Each(text string, take func(n int, line string) bool) bool {
	n := 0
	for line := range strings.SplitSeq(text, "\n") {
		n++
		if !take(n, strings.TrimSuffix(line, "\r")) {
			return false
		}
	}
	return true
}

// Skipped reports whether a line is blank or a comment. A spreadsheet puts a
// comment that holds a comma in quotes.
func Skipped(line string) bool {
	return strings.HasPrefix(line, "#") || strings.HasPrefix(line, `"#`) || strings.Trim(line, ", \t") == ""
}

// Split takes one line apart into cells by RFC 4180. A quote that is still open
// at the end of the line is a problem of this line alone, so that it cannot
// swallow the lines that follow. bad is the cell, from 0, with the problem.
func Split(line string) (cells []string, bad int, problem message.ID) {
	for rest := line + ","; rest != ""; {
		cell, after, _ := strings.Cut(rest, ",")
		if strings.HasPrefix(rest, `"`) {
			cell, after, problem = unquote(rest[1:])
		} else if strings.Contains(cell, `"`) {
			problem = `has a quote (") in the middle`
		}
		if problem != "" {
			return cells, len(cells), problem
		}
		cells, rest = append(cells, cell), after
	}
	return cells, 0, ""
}

// unquote reads the rest of a quoted cell, whose doubled quotes stand for one, and
// the comma behind it.
func unquote(text string) (cell, after string, problem message.ID) {
	end := strings.IndexByte(text, '"')
	for end >= 0 && strings.HasPrefix(text[end+1:], `"`) {
		next := strings.IndexByte(text[end+2:], '"')
		if end += 2 + next; next < 0 {
			end = -1
		}
	}
	switch {
	case end < 0:
		return "", "", "opens a quote that is not closed on the same line"
	case text[end+1] != ',':
		return "", "", "goes on after its closing quote"
	}
	return strings.ReplaceAll(text[:end], `""`, `"`), text[end+2:], ""
}

// Fold makes header cells comparable: "Rated mm" is rated_mm.
func Fold(name string) string {
	return strings.ReplaceAll(strings.ReplaceAll(strings.ToLower(strings.TrimSpace(name)), " ", "_"), "-", "_")
}

// Flaw says what keeps a cell from being plain text; empty if nothing does. Control, format
// (which includes the bidirectional overrides), private and separator
// characters could disturb a terminal or hide what is read.
func Flaw(s string) message.Message {
	if !utf8.ValidString(s) {
		return message.New("is not valid UTF-8")
	}
	if utf8.RuneCountInString(s) > maxCell {
		return message.New("is longer than {1} characters", message.Figure(strconv.Itoa(maxCell)))
	}
	for _, r := range s {
		if r >= ' ' && r <= '~' { // most of every file
			continue
		}
		if unicode.In(r, unicode.Cc, unicode.Cf, unicode.Co, unicode.Zl, unicode.Zp) {
			return message.New("holds the invisible character {1}", message.Name(strconv.QuoteRuneToASCII(r)))
		}
	}
	return message.Message{}
}

// Quoted writes text from a file for a finding: escaped and shortened.
func Quoted(s string) string {
	const most = 40
	if r := []rune(s); len(r) > most {
		s = string(r[:most-1]) + "…"
	}
	return strconv.Quote(s)
}

// IsCurrency reports whether s has the form of a currency code of ISO 4217.
func IsCurrency(s string) bool {
	return len(s) == 3 && strings.Trim(s, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") == ""
}

// Plain reads digits with a decimal point and nothing else. Grouped thousands
// and decimal commas are refused, as 1.950 means two different numbers in two
// countries.
func Plain(s string) (value float64, decimals int, ok bool) {
	value, err := strconv.ParseFloat(s, 64)
	_, cents, _ := strings.Cut(s, ".")
	return value, len(cents), err == nil && strings.Trim(s, "0123456789.") == ""
}

// Number writes a number in full, so that reading it back gives the same number.
func Number[Q ~float64](q Q) string { return strconv.FormatFloat(float64(q), 'f', -1, 64) }

// Severity says how much a finding matters.
type Severity string

// The severities. A row with an Error is left out of the list; one with a
// Warning is kept but should be looked at; a Note says what was assumed.
const (
	Error   Severity = "error"
	Warning Severity = "warning"
	Note    Severity = "note"
)

// Finding is one thing to know about one place in a file.
type Finding struct {
	Line     int    // counted from 1; 0 for the file as a whole
	Cell     string // as a workbook names it, "B7"; "" in a CSV file
	Column   string // as in the header; "" for the whole line
	Row      string // what the row is called, "" if it could not be read
	Severity Severity
	Problem  message.Message // what is wrong, without a full stop
	Accepted message.Message // what would be accepted; empty if the problem says it
}

// String is Message in English, for example:
// line 7, column duty: error: 60 A is above output_max_a; accepted: ...
func (f Finding) String() string { return f.Message().String() }

// Message is the finding on one line.
func (f Finding) Message() message.Message {
	m := message.ID("file").Message()
	switch {
	case f.Cell != "":
		m = message.New("cell {1}", message.Name(f.Cell))
	case f.Line > 0:
		m = message.New("line {1}", message.Name(strconv.Itoa(f.Line)))
	}
	if f.Column != "" {
		m = message.New("{1}, column {2}", m, message.Name(f.Column))
	}
	return f.accepting(message.New("{1}: {2}: {3}", m, message.ID(f.Severity), f.Problem))
}

// Said is Message without the place, for whoever knows it.
func (f Finding) Said() message.Message {
	return f.accepting(message.New("{1}: {2}", message.ID(f.Severity), f.Problem))
}

// accepting adds what would be accepted.
func (f Finding) accepting(m message.Message) message.Message {
	if f.Accepted.IsEmpty() {
		return m
	}
	return message.New("{1}; accepted: {2}", m, f.Accepted)
}

// Count returns how many findings have this severity.
func Count(findings []Finding, severity Severity) int {
	n := 0
	for _, f := range findings {
		if f.Severity == severity {
			n++
		}
	}
	return n
}
