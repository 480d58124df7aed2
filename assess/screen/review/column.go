package review

import (
	"slices"
	"strings"

	"cutbrief/assess/review"
	"cutbrief/assess/screen"
	"cutbrief/rules/message"

	"github.com/charmbracelet/x/ansi"
)

// column is a field of the list, which is also its name: how wide it is in cells,
// and how soon it goes where there is no room (0 never).
type column struct {
	id       message.ID
	width    int
	optional int
}

// columns are those of the list in their order.
var columns = []column{
	{"date", 10, 0}, {"company", 18, 0}, {"rep", 13, 2}, {"metals", 18, 6}, {"thickest", 8, 3}, {"critical", 14, 5},
	{"system", 9, 1}, {"verdict", 11, 0}, {"outcome", 12, 8}, {"due", 10, 7}, {"flags", 10, 0},
}

const gap = 2

// row is the columns of one width of the list.
type row []column

// columnsFor chooses the columns for a width; what is left over goes to the
// customer and the flags.
func columnsFor(width int) row {
	var cols row
	for optional := 9; optional > 0; optional-- {
		cols = slices.DeleteFunc(slices.Clone(columns), func(c column) bool { return c.optional >= optional })
		if cols.wide() <= width {
			break
		}
	}
	left := width - cols.wide()
	for i := range cols {
		switch cols[i].id {
		case "flags":
			cols[i].width = max(4, cols[i].width+left-left/2)
		case "company":
			cols[i].width = max(8, cols[i].width+left/2)
		}
	}
	return cols
}

// wide is how wide all are, with the mark of the focus.
func (r row) wide() int {
	n := ansi.StringWidth(screen.Focus) - gap
	for _, c := range r {
		n += c.width + gap
	}
	return n
}

// line puts cells into their columns.
func (r row) line(cell func(column) string) string {
	var b strings.Builder
	for _, c := range r {
		text := screen.Cut(cell(c), c.width)
		b.WriteString(text + strings.Repeat(" ", c.width-ansi.StringWidth(text)+gap))
	}
	return strings.TrimRight(b.String(), " ")
}

// field is the field of a column.
func (c column) field() review.Field {
	f, _ := review.FindField(string(c.id))
	return f
}
