package export

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"cutbrief/assess/store"
	"cutbrief/report/text"
)

// Format is a form that something is written in.
type Format string

// The formats, as named on the command line.
const (
	FormatPDF      Format = "pdf"
	FormatHTML     Format = "html"
	FormatText     Format = "text"
	FormatMarkdown Format = "markdown"
	FormatJSON     Format = "json"
	FormatCSV      Format = "csv"
	FormatCalendar Format = "ics"
	FormatTable    Format = "table"
	FormatNDJSON   Format = "ndjson"
	FormatWorkbook Format = "xlsx"
)

// Width is the width of a text in this format.
func (f Format) Width() int {
	if f == FormatMarkdown {
		return text.Markdown
	}
	return text.DefaultWidth
}

// briefFormats are those a brief can take, with the file endings that mean each.
var briefFormats = []struct {
	format  Format
	endings []string
}{
	{FormatPDF, []string{".pdf"}},
	{FormatHTML, []string{".html", ".htm"}},
	{FormatText, []string{".txt", ".text"}},
	{FormatMarkdown, []string{".md", ".markdown"}},
	{FormatJSON, []string{".json"}},
}

// FormatNames are the names of some formats.
func FormatNames(list []Format) []string {
	var names []string
	for _, f := range list {
		names = append(names, string(f))
	}
	return names
}

// FormatOf is the format named, else the one that the name of a file means, else
// pdf.
func FormatOf(named Format, path string) Format {
	ending := strings.ToLower(filepath.Ext(path))
	for _, f := range briefFormats {
		if named == "" && slices.Contains(f.endings, ending) {
			return f.format
		}
	}
	if named == "" {
		return FormatPDF
	}
	return named
}

// Ending is what the name of a file in this format ends in.
func (f Format) Ending() string {
	for _, known := range briefFormats {
		if known.format == f {
			return known.endings[0]
		}
	}
	return ""
}

// ForPeople reports a format whose words are those asked for. JSON, CSV and
// calendars are for programs and stay in English.
func (f Format) ForPeople() bool {
	return f == FormatPDF || f == FormatHTML || f == FormatText || f == FormatMarkdown || f == FormatTable || f == FormatWorkbook
}

// NameAfter is the name of the document of a visit.
func NameAfter(file string, f Format) string {
	if file == "-" {
		file = "brief"
	}
	name := filepath.Base(file)
	return strings.TrimSuffix(name, filepath.Ext(name)) + f.Ending()
}

// PagesBelow are the paths of the pages of files below a folder, by file: named
// after the way to the file, and numbered where two would be alike.
func PagesBelow(dir, out string, files []string, form Format) map[string]string {
	paths, taken := map[string]string{}, map[string]int{}
	for _, file := range files {
		name, _ := filepath.Rel(dir, file) // it is below
		name = NameAfter(strings.ReplaceAll(filepath.ToSlash(name), "/", "-"), form)
		path := filepath.Join(out, name)
		n := taken[store.Alike(path)] + 1
		if taken[store.Alike(path)] = n; n > 1 {
			path = fmt.Sprintf("%s (%d)%s", strings.TrimSuffix(path, form.Ending()), n, form.Ending())
		}
		paths[file] = path
	}
	return paths
}
