package export

import (
	"slices"
	"strings"

	"cutbrief/rules/message"
)

const (
	columnGap = 2
	fewCells  = 4 // of a column that was asked for where nothing else gives way
)

// fit says which columns are shown, how wide, and the names of those left out.
// wide is what the contents of each take; Width 0 shows them whole. Columns become
// as narrow as they may before others go, in the order of their rows in review;
// those asked for by name stay. So do the customer, how it stands, the flags and
// the file: a file that cannot be read shows in the last two alone.
func (s Sheet) fit(wide []int) (shown []int, widths []int, gone []string) {
	for i := range s.Fields {
		shown = append(shown, i)
	}
	widths = slices.Clone(wide)
	if s.Width <= 0 || total(shown, widths) <= s.Width {
		return shown, widths, nil
	}
	for i, f := range s.Fields {
		if f.Least > 0 {
			widths[i] = min(widths[i], f.Least)
		}
	}
	order := slices.DeleteFunc(slices.Clone(shown), func(i int) bool { return s.Chosen || s.Fields[i].Dispensable == 0 })
	slices.SortFunc(order, func(a, b int) int { return s.Fields[a].Dispensable - s.Fields[b].Dispensable })
	for _, i := range order {
		if total(shown, widths) > s.Width {
			gone = append(gone, s.Fields[i].ID)
			shown = slices.DeleteFunc(shown, func(k int) bool { return k == i })
		}
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
