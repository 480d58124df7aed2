package table

import (
	"slices"
	"strings"

	"cutbrief/rules/message"
)

// dispensable are the columns that go where there is no room, in this order, unless they
// were asked for by name. The customer, how it stands, the flags and the file
// stay: a file that cannot be read shows in the last two alone.
var dispensable = []string{"metals", "critical", "due", "outcome", "rep", "thickest", "system", "date"}

// least is how narrow a column may become, in cells, before others go; the rest is
// as wide as what it says. Not one of them hides a figure.
var least = map[string]int{"company": 12, "rep": 10, "metals": 12, "critical": 12, "flags": 8, "unanswered": 16, "file": 12, "reasons": 20}

const (
	columnGap = 2
	fewCells  = 4 // of a column that was asked for where nothing else gives way
)

// fit says which columns are shown, how wide, and the names of those left out.
// wide is what the contents of each take; Width 0 shows them whole.
func (s Sheet) fit(wide []int) (shown []int, widths []int, gone []string) {
	for i := range s.Fields {
		shown = append(shown, i)
	}
	widths = slices.Clone(wide)
	if s.Width <= 0 || total(shown, widths) <= s.Width {
		return shown, widths, nil
	}
	for i, f := range s.Fields {
		if n, known := least[f.ID]; known {
			widths[i] = min(widths[i], n)
		}
	}
	for _, id := range dispensable {
		if s.Chosen || total(shown, widths) <= s.Width {
			break
		}
		shown = slices.DeleteFunc(shown, func(i int) bool {
			if s.Fields[i].ID != id {
				return false
			}
			gone = append(gone, id)
			return true
		})
	}
	s.squeeze(shown, widths)
	s.widen(shown, widths, wide)
	return shown, widths, gone
}

func total(shown, widths []int) int {
	n := -columnGap
	for _, i := range shown {
		n += widths[i] + columnGap
	}
	return n
}

// squeeze takes from the widest column, cell by cell, what is too much.
func (s Sheet) squeeze(shown, widths []int) {
	for over := total(shown, widths) - s.Width; over > 0; over-- {
		widest := slices.MaxFunc(shown, func(a, b int) int { return widths[a] - widths[b] })
		if widths[widest] <= fewCells {
			return
		}
		widths[widest]--
	}
}

// widen gives what is left over to the columns that say more, a cell each in turn.
func (s Sheet) widen(shown, widths, wide []int) {
	for left := s.Width - total(shown, widths); left > 0; {
		given := false
		for _, i := range shown {
			if left > 0 && widths[i] < wide[i] {
				widths[i]++
				left--
				given = true
			}
		}
		if !given {
			return
		}
	}
}

// cut shortens a cell: a path at its beginning, anything else at its end.
func cut(id, text string, width int) string {
	if cells.StringWidth(text) <= width {
		return text
	}
	if id == "file" {
		return cells.TruncateLeft(text, cells.StringWidth(text)-width+1, "…")
	}
	return cells.Truncate(text, width, "…")
}

// leftOut says which columns had no room.
func (s Sheet) leftOut(gone []string) string {
	if len(gone) == 0 {
		return ""
	}
	return s.Words.Print(message.New("No room for {1}: --fields names columns, and a pipe or a file gets all.", message.Name(strings.Join(gone, ", "))))
}
