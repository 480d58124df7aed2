package main

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"
)

// format is a form a brief can take.
type format string

// The formats, as named on the command line.
const (
	pdfFormat      format = "pdf"
	textFormat     format = "text"
	markdownFormat format = "markdown"
	jsonFormat     format = "json"
)

// csvFormat is a form no brief takes, but tables of figures do.
const csvFormat format = "csv"

// formats are all of them, with the file endings that mean each.
var formats = []struct {
	format  format
	endings []string
}{
	{pdfFormat, []string{".pdf"}},
	{textFormat, []string{".txt", ".text"}},
	{markdownFormat, []string{".md", ".markdown"}},
	{jsonFormat, []string{".json"}},
}

func formatNames() []string {
	var names []string
	for _, f := range formats {
		names = append(names, string(f.format))
	}
	return names
}

// formatOf is the format named, else the one the output path ends in, else pdf.
func formatOf(name, out string) (format, error) {
	ending := strings.ToLower(filepath.Ext(out))
	for _, f := range formats {
		if string(f.format) == strings.ToLower(name) || name == "" && slices.Contains(f.endings, ending) {
			return f.format, nil
		}
	}
	if name == "" {
		return pdfFormat, nil
	}
	return "", misuse(fmt.Sprintf("--format %q is not a format we write", name), "one of "+strings.Join(formatNames(), ", "))
}

// ending is what the name of a file in this format ends in.
func (f format) ending() string {
	for _, known := range formats {
		if known.format == f {
			return known.endings[0]
		}
	}
	return ""
}

// complete offers the values of a flag to the shell. It fails only for a flag
// that does not exist, which would be our own slip and shows in the tests.
func complete(c *cobra.Command, flag string, values []string) {
	_ = c.RegisterFlagCompletionFunc(flag, cobra.FixedCompletions(values, cobra.ShellCompDirectiveNoFileComp))
}
