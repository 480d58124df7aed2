// Package catalog reads the words of other languages from CSV files of two
// columns, and holds those that are built in.
package catalog

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode"

	"golang.org/x/text/language"

	"cutbrief/rules/csvfile"
	"cutbrief/rules/message"
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

// Read reads a catalog from a CSV file (RFC 4180, UTF-8, one message a line) and
// checks every line. name is what the catalog is called, such as the file's base
// name. Lines that start with # are comments; a line without words leaves its
// message as it is. A line with an error is left out of the catalog.
func Read(r io.Reader, name string) (*message.Catalog, []csvfile.Finding) {
	f := &file{source: message.Source{Name: name, Tag: language.English, Units: map[string]string{}}, seen: map[string]int{}, english: -1, words: -1}
	text, err := csvfile.Load(r)
	if err != nil {
		f.report(0, "", csvfile.Error, err.Error(), csvfile.Loadable(err))
		return message.NewCatalog(f.source), f.findings
	}
	csvfile.Each(text, f.line)
	if f.english < 0 && len(f.findings) == 0 {
		f.report(0, "", csvfile.Error, "has no header row", "a first line "+colEnglish+","+colWords+"; start from the template")
	}
	return message.NewCatalog(f.source), f.findings
}

// file is a file while it is read.
type file struct {
	source         message.Source
	findings       []csvfile.Finding
	english, words int            // where the columns are, −1 until the header was read
	seen           map[string]int // identifiers, and the line each is on
	rows           int
}

func (f *file) report(line int, column string, severity csvfile.Severity, problem, accepted string) {
	f.findings = append(f.findings, csvfile.Finding{Line: line, Column: column, Severity: severity, Problem: problem, Accepted: accepted})
}

// line takes the next line in and reports whether to go on.
func (f *file) line(n int, text string) bool {
	if csvfile.Skipped(text) {
		return true
	}
	cells, _, problem := csvfile.Split(text)
	if f.english < 0 {
		return f.header(n, cells, problem)
	}
	if f.rows++; f.rows > maxRows {
		f.report(n, "", csvfile.Error, fmt.Sprintf("has more than %d lines; this one and those after it were not read", maxRows), "")
		return false
	}
	switch most := max(f.english, f.words) + 1; {
	case problem != "":
		f.report(n, "", csvfile.Error, "a cell "+problem, `text without quotes, or "in quotes" with each inner quote doubled`)
	case len(cells) > most && strings.Join(cells[most:], "") != "":
		f.report(n, "", csvfile.Error, fmt.Sprintf("has %d cells where the header has %d", len(cells), most), "a cell with a comma in it stands in quotes")
	case len(cells) < most:
		f.report(n, "", csvfile.Error, "lacks the column "+colWords, "both columns, parted by a comma")
	default:
		f.row(n, strings.TrimSpace(cells[f.english]), strings.TrimSpace(cells[f.words]))
	}
	return true
}

// header finds the columns and reports whether rows can be read by it.
func (f *file) header(n int, cells []string, problem string) bool {
	for i := range cells {
		cells[i] = csvfile.Fold(cells[i])
	}
	f.english, f.words = slices.Index(cells, colEnglish), slices.Index(cells, colWords)
	if problem == "" && (f.english < 0 || f.words < 0) {
		problem = "lacks a column"
	}
	if problem != "" {
		f.report(n, "", csvfile.Error, "the header "+problem, "a first line "+colEnglish+","+colWords)
		return false
	}
	return true
}

// row checks a row and puts it into the book.
func (f *file) row(n int, english, words string) {
	for column, cell := range map[string]string{colEnglish: english, colWords: words} {
		if flaw := csvfile.Flaw(cell); flaw != "" {
			f.report(n, column, csvfile.Error, flaw, "plain text, at most 300 characters")
			return
		}
	}
	switch {
	case english == "":
		f.report(n, colEnglish, csvfile.Error, "is empty", "the sentence as the program words it")
	case words == "": // not filled in: the sentence stays as it is
	case f.seen[english] > 0:
		f.report(n, colEnglish, csvfile.Error, fmt.Sprintf("stands on line %d already", f.seen[english]), "")
	default:
		f.seen[english] = n
		f.take(n, english, words)
	}
}

func (f *file) take(n int, english, words string) {
	if strings.HasPrefix(english, "@") {
		f.setting(n, english, words)
		return
	}
	ours, theirs := message.Holes(english), message.Holes(words)
	switch accepted := misfit(ours, theirs); {
	case accepted != "":
		f.report(n, colWords, csvfile.Error, "does not have the holes of its sentence", accepted)
	case len(ours) == 0 && strings.ContainsFunc(english, unicode.IsLetter) && !strings.ContainsFunc(words, unicode.IsLetter):
		f.report(n, colWords, csvfile.Error, "says nothing in place of a sentence", "words, or an empty cell to leave it as it is")
	case strings.Trim(english, " {}123456789") == "":
		f.report(n, colEnglish, csvfile.Error, "is nothing but holes", "a sentence with words of its own")
	default:
		f.source.Rows = append(f.source.Rows, message.Row{ID: english, Words: words})
	}
}

// misfit says which holes the words should have, "" if they have them.
func misfit(ours, theirs []int) string {
	if slices.Equal(ours, theirs) {
		return ""
	}
	if len(ours) == 0 {
		return "no holes, as in the sentence"
	}
	var names []string
	for _, h := range ours {
		names = append(names, fmt.Sprintf("{%d}", h))
	}
	return strings.Join(names, ", ") + ", as in the sentence"
}

// setting takes a row that is no sentence.
func (f *file) setting(n int, name, value string) {
	unit, isUnit := strings.CutPrefix(name, rowUnit)
	word, isWord := strings.CutPrefix(name, rowWord)
	answer, isAnswer := strings.CutPrefix(name, rowAnswer)
	switch {
	case name == rowLanguage:
		f.source.Language = value
	case name == rowTag:
		f.tag(n, value)
	case message.IsPluralForm(name):
		f.source.Forms = append(f.source.Forms, message.Row{ID: name, Words: value})
	case name == rowDecimal:
		f.mark(n, value, &f.source.Decimal)
	case name == rowThousands:
		f.mark(n, value, &f.source.Thousands)
	case isUnit:
		f.source.Units[unit] = value
	case isWord:
		f.typed(n, word, value, &f.source.Words)
	case isAnswer:
		f.typed(n, answer, value, &f.source.Answers)
	default:
		f.report(n, colEnglish, csvfile.Error, csvfile.Quoted(name)+" is not a row this program knows", "a row of the template")
	}
}

// tag takes the language's tag by BCP 47, which chooses plurals and the marks of
// counts.
func (f *file) tag(n int, value string) {
	tag, err := language.Parse(value)
	if err != nil {
		f.report(n, colWords, csvfile.Error, csvfile.Quoted(value)+" is no tag of a language", "such as de or pt-BR")
		return
	}
	f.source.Tag = tag
}

// mark takes a decimal or thousands mark.
func (f *file) mark(n int, value string, into *string) {
	if !slices.Contains([]string{".", ",", "’", "'", "space"}, value) {
		f.report(n, colWords, csvfile.Error, csvfile.Quoted(value)+" is not a mark for numbers", "one of . , ’ or the word space")
		return
	}
	*into = strings.Replace(value, "space", "\u00a0", 1)
}

// typed takes a row that says what may be typed for one of our words or
// answers: several ways are parted by a bar.
func (f *file) typed(n int, ours, theirs string, into *[]message.Row) {
	for way := range strings.SplitSeq(theirs, "|") {
		way = strings.TrimSpace(way)
		if accepted := misfit(message.Holes(ours), message.Holes(way)); way == "" || accepted != "" {
			f.report(n, colWords, csvfile.Error, "a way to type it is empty or has other holes", accepted)
			continue
		}
		*into = append(*into, message.Row{ID: strings.ToLower(way), Words: ours})
	}
}
