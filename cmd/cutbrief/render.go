package main

import (
	"bytes"
	"encoding/json"
	"strings"

	"cutbrief/report"
	"cutbrief/report/data"
	"cutbrief/report/pdf"
	"cutbrief/report/text"
)

// render writes briefs in one document. A PDF takes exactly one.
func render(f format, briefs []report.Brief, paper string) ([]byte, error) {
	switch f {
	case pdfFormat:
		return pdf.Render(briefs[0], pdf.Paper(paper))
	case jsonFormat:
		return renderJSON(briefs)
	}
	var parts []string
	for _, b := range briefs {
		if f == markdownFormat {
			parts = append(parts, text.Markdown(b))
		} else {
			parts = append(parts, text.Render(b, text.DefaultWidth))
		}
	}
	return []byte(strings.Join(parts, "\n---\n\n")), nil
}

// renderJSON writes one brief as an object, several as a list of them.
func renderJSON(briefs []report.Brief) ([]byte, error) {
	var parts [][]byte
	for _, b := range briefs {
		part, err := data.JSON(b)
		if err != nil {
			return nil, err
		}
		parts = append(parts, part)
	}
	if len(parts) == 1 {
		return parts[0], nil
	}
	var out bytes.Buffer
	list := append([]byte("["), append(bytes.Join(parts, []byte(",")), ']')...)
	err := json.Indent(&out, list, "", "  ")
	out.WriteByte('\n')
	return out.Bytes(), err
}
