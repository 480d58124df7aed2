package csvfile

import (
	"strings"

	"cutbrief/rules/message"
)

// Split takes one line apart into cells by RFC 4180. A quote that is still open
// at the end of the line is a problem of this line alone, so that it cannot
// swallow the lines that follow. bad is the cell, from 0, with the problem.
func Split(line string) (cells []string, bad int, problem message.ID) {
	for {
		var cell string
		if strings.HasPrefix(line, `"`) {
			cell, line, problem = unquote(line[1:])
		} else {
			cell, line = upTo(line, ',')
			if strings.Contains(cell, `"`) {
				problem = `has a quote (") in the middle`
			}
		}
		if problem != "" {
			return cells, len(cells), problem
		}
		cells = append(cells, cell)
		if line == "" {
			return cells, 0, ""
		}
		line = line[1:] // the comma
	}
}

// upTo cuts line before the first sep, which stays in rest.
func upTo(line string, sep byte) (cell, rest string) {
	if i := strings.IndexByte(line, sep); i >= 0 {
		return line[:i], line[i:]
	}
	return line, ""
}

// unquote reads the rest of a quoted cell, whose doubled quotes stand for one.
func unquote(line string) (cell, rest string, problem message.ID) {
	var b strings.Builder
	for {
		i := strings.IndexByte(line, '"')
		if i < 0 {
			return "", "", "opens a quote that is not closed on the same line"
		}
		b.WriteString(line[:i])
		line = line[i+1:]
		switch {
		case strings.HasPrefix(line, `"`):
			b.WriteByte('"')
			line = line[1:]
		case line == "" || line[0] == ',':
			return b.String(), line, ""
		default:
			return "", "", "goes on after its closing quote"
		}
	}
}
