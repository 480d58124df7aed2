package csvfile

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

// Fold makes header cells comparable: "Rated mm" is rated_mm.
func Fold(name string) string {
	return strings.NewReplacer(" ", "_", "-", "_").Replace(strings.ToLower(strings.TrimSpace(name)))
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
