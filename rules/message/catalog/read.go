// Package catalog reads the words of other languages from CSV files of two
// columns, and holds those that are built in.
package catalog

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"golang.org/x/text/language"

	"cutbrief/rules/message"
	"cutbrief/rules/tabular"
)

// maxRows keeps a wrong file from costing memory.
const maxRows = 5000

// The columns of a file.
const (
	colEnglish = "english"
	colWords   = "words"
)

// Rows whose first cell begins with @ are no sentences: they say how the book
// writes numbers, what its language is called, and what may be typed.
const (
	rowLanguage  = "@language"
	rowTag       = "@language tag"
	rowDecimal   = "@decimal mark"
	rowThousands = "@thousands mark"
	rowUnit      = "@unit "   // and a unit
	rowWord      = "@word "   // and a word of the plain interview; words are parted by |
	rowAnswer    = "@answer " // and an answer that means something, such as none
)

// line is a line of a catalog.
type line struct{ english, words string }

// format is how a catalog is kept as a file.
func format() *tabular.Format[line] {
	english := tabular.TextColumn(colEnglish, "the sentence as the program words it", func(l *line) *string { return &l.english })
	words := tabular.TextColumn(colWords, "plain text, at most 300 characters", func(l *line) *string { return &l.words })
	english.Required, words.Required, words.Blank = true, true, true
	return &tabular.Format[line]{MaxRows: maxRows, Columns: []tabular.Column[line]{english, words}}
}

// Read reads a catalog from a CSV file (RFC 4180, UTF-8, one message a line) and
// checks every line. name is what the catalog is called, such as the file's base
// name. Lines that start with # are comments; a line without words leaves its
// message as it is. A line with an error is left out of the catalog.
func Read(r io.Reader, name string) (*message.Catalog, []tabular.Finding) {
	f, findings := reading(r, name)
	return message.NewCatalog(f.source), findings
}

func reading(r io.Reader, name string) (*file, []tabular.Finding) {
	f := &file{source: message.Source{Name: name, Tag: language.English, Units: map[string]string{}}, seen: map[string]int{}}
	form := format()
	form.Check = f.check
	return f, form.Read(r).Findings
}

// file is a file while it is read.
type file struct {
	source message.Source
	seen   map[string]int // identifiers, and the line each is on
	row    *tabular.Row[line]
}

// report adds an error of the row that is read.
func (f *file) report(column string, accepted message.Message, problem message.ID, args ...any) {
	f.row.Report(tabular.Finding{Column: column, Severity: tabular.Error, Problem: message.New(problem, args...), Accepted: accepted})
}

// check checks a row and puts it into the book.
func (f *file) check(row *tabular.Row[line]) {
	f.row = row
	english, words := row.Value.english, row.Value.words
	switch {
	case !row.Sound() || words == "": // not filled in: the sentence stays as it is
	case f.seen[english] > 0:
		f.report(colEnglish, message.Message{}, "stands on line {1} already", message.Figure(strconv.Itoa(f.seen[english])))
	default:
		f.seen[english] = row.Line
		f.take(english, words)
	}
}

func (f *file) take(english, words string) {
	if strings.HasPrefix(english, "@") {
		f.setting(english, words)
		return
	}
	ours, theirs := message.Holes(english), message.Holes(words)
	switch accepted := misfit(ours, theirs); {
	case !accepted.IsEmpty():
		f.report(colWords, accepted, "does not have the holes of its sentence")
	case len(ours) == 0 && strings.ContainsFunc(english, unicode.IsLetter) && !strings.ContainsFunc(words, unicode.IsLetter):
		f.report(colWords, message.New("words, or an empty cell to leave it as it is"), "says nothing in place of a sentence")
	case strings.Trim(english, " {}123456789") == "":
		f.report(colEnglish, message.New("a sentence with words of its own"), "is nothing but holes")
	default:
		f.source.Rows = append(f.source.Rows, message.Row{ID: english, Words: words})
	}
}

// misfit says which holes the words should have; empty if they have them.
func misfit(ours, theirs []int) message.Message {
	if slices.Equal(ours, theirs) {
		return message.Message{}
	}
	if len(ours) == 0 {
		return message.New("no holes, as in the sentence")
	}
	var names []string
	for _, h := range ours {
		names = append(names, fmt.Sprintf("{%d}", h))
	}
	return message.New("{1}, as in the sentence", message.Name(strings.Join(names, ", ")))
}

// setting takes a row that is no sentence.
func (f *file) setting(name, value string) {
	unit, isUnit := strings.CutPrefix(name, rowUnit)
	word, isWord := strings.CutPrefix(name, rowWord)
	answer, isAnswer := strings.CutPrefix(name, rowAnswer)
	switch {
	case name == rowLanguage:
		f.source.Language = value
	case name == rowTag:
		f.tag(value)
	case message.IsPluralForm(name):
		f.source.Forms = append(f.source.Forms, message.Row{ID: name, Words: value})
	case name == rowDecimal:
		f.mark(value, &f.source.Decimal)
	case name == rowThousands:
		f.mark(value, &f.source.Thousands)
	case isUnit:
		f.source.Units[unit] = value
	case isWord:
		f.typed(word, value, &f.source.Words)
	case isAnswer:
		f.typed(answer, value, &f.source.Answers)
	default:
		f.report(colEnglish, message.New("a row of the template"), "{1} is not a row this program knows", message.Name(tabular.Quoted(name)))
	}
}

// tag takes the language's tag by BCP 47, which chooses plurals and the marks of
// counts.
func (f *file) tag(value string) {
	tag, err := language.Parse(value)
	if err != nil {
		f.report(colWords, message.New("such as de or pt-BR"), "{1} is no tag of a language", message.Name(tabular.Quoted(value)))
		return
	}
	f.source.Tag = tag
}

// mark takes a decimal or thousands mark.
func (f *file) mark(value string, into *string) {
	if !slices.Contains([]string{".", ",", "’", "'", "space"}, value) {
		f.report(colWords, message.New("one of . , ’ or the word space"), "{1} is not a mark for numbers", message.Name(tabular.Quoted(value)))
		return
	}
	*into = strings.Replace(value, "space", "\u00a0", 1)
}

// typed takes a row that says what may be typed for one of our words or
// answers: several ways are parted by a bar.
func (f *file) typed(ours, theirs string, into *[]message.Row) {
	for way := range strings.SplitSeq(theirs, "|") {
		way = strings.TrimSpace(way)
		if accepted := misfit(message.Holes(ours), message.Holes(way)); way == "" || !accepted.IsEmpty() {
			f.report(colWords, accepted, "a way to type it is empty or has other holes")
			continue
		}
		*into = append(*into, message.Row{ID: strings.ToLower(way), Words: ours})
	}
}

// Special explains the rows of a book that are no sentences: how the first cell
// begins, and what the second holds.
func Special() [][2]message.ID {
	return [][2]message.ID{
		{rowLanguage, "what the language is called"},
		{rowTag, "its tag by BCP 47, such as de; it chooses plurals and the marks of counts"},
		{message.PluralForm("few") + "{1} systems", "the wording for a plural form besides one and other, where the language has it: zero, two, few, many"},
		{rowDecimal, "the mark before decimals, such as a comma"},
		{rowThousands, "the mark between thousands"},
		{rowUnit + "in", "how a unit is written, one row a unit"},
		{rowWord + "back", "what may be typed for a word of the plain interview; several are separated by |"},
		{rowAnswer + "none", "what may be typed for an answer that means something; several are separated by |"},
	}
}
