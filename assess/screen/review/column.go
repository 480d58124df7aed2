package review

import (
	"strings"

	"cutbrief/assess/review"
	"cutbrief/assess/screen"

	"github.com/charmbracelet/x/ansi"
)

// column is a field with its width in the list, in cells.
type column struct {
	field review.Field
	width int
}

type columns []column

// offered are the columns in their order: how wide, and how soon one goes where
// there is no room (0 never).
var offered = []struct {
	id    string
	width int
	spare int
}{
	{"date", 10, 0}, {"company", 18, 0}, {"rep", 13, 2}, {"metals", 18, 6}, {"thickest", 8, 3}, {"critical", 14, 5},
	{"system", 9, 1}, {"verdict", 11, 0}, {"outcome", 12, 8}, {"due", 10, 7}, {"flags", 10, 0},
}

const gap = 2

// columnsFor chooses the columns for a width; what is left over goes to the
// customer and the flags.
func columnsFor(width int) columns {
	var cols columns
	for spare := 9; spare > 0; spare-- {
		cols = cols[:0]
		for _, o := range offered {
			if f, ok := review.FindField(o.id); ok && o.spare < spare {
				cols = append(cols, column{f, o.width})
			}
		}
		if cols.wide() <= width {
			break
		}
	}
	left := width - cols.wide()
	for i := range cols {
		switch id := cols[i].field.ID; {
		case id == "flags":
			cols[i].width = max(4, cols[i].width+left-left/2)
		case id == "company":
			cols[i].width = max(8, cols[i].width+left/2)
		}
	}
	return cols
}

// wide is how wide all are, with the mark of the focus.
func (c columns) wide() int {
	n := ansi.StringWidth(screen.Focus)
	for _, col := range c {
		n += col.width + gap
	}
	return n - gap
}

// line puts cells into their columns.
func (c columns) line(cell func(column) string) string {
	var b strings.Builder
	for i, col := range c {
		text := screen.Cut(cell(col), col.width)
		b.WriteString(text)
		if i < len(c)-1 {
			b.WriteString(strings.Repeat(" ", col.width-ansi.StringWidth(text)+gap))
		}
	}
	return strings.TrimRight(b.String(), " ")
}

// unread is the line of a file that cannot be read: its path and the flag.
func (c columns) unread(r *review.Row) string { return r.Flags.String() + ": " + r.ShownPath() }
