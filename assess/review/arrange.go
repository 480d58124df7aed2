package review

import (
	"strings"
	"time"
)

// Find reads what is typed to filter a list: a filter as ParseWhere reads it, or
// else words, each of which some field of a row must hold.
func Find(text string, today time.Time) Where {
	if keep, err := ParseWhere(text, today); err == nil {
		return keep
	}
	words := strings.Fields(strings.ToLower(text))
	return func(r *Row) bool {
		for _, w := range words {
			if !r.mentions(w) {
				return false
			}
		}
		return true
	}
}

// mentions reports whether some field holds a text in small letters.
func (r *Row) mentions(text string) bool {
	for i := range fields {
		if fields[i].ID != "reasons" && strings.Contains(strings.ToLower(fields[i].text(r)), text) {
			return true
		}
	}
	return false
}

// Listing is rows in an order, under heads if they are grouped. A line is the place
// of a row, or ^n for the head n.
type Listing struct {
	Lines []int32
	Heads []Head
}

// Head is the head of a group.
type Head struct {
	Text string // what the rows of the group share
	Rows int    // how many they are
}

// Head returns the head at a line, nil where there is a row.
func (l *Listing) Head(line int) *Head {
	if n := l.Lines[line]; n < 0 {
		return &l.Heads[^n]
	}
	return nil
}

// Rows is how many rows are listed.
func (l *Listing) Rows() int { return len(l.Lines) - len(l.Heads) }

// Arrange keeps the rows a filter holds for, in an order, under a head for each
// group if there is a column to group by. It changes nothing.
func Arrange(rows *Rows, keep Where, order Order, group *Field) Listing {
	if group != nil {
		order = append(Order{{Field: *group}}, order...)
	}
	places := sorted(rows, keep, order)
	if group == nil {
		return Listing{Lines: places}
	}
	l := Listing{Lines: make([]int32, 0, len(places)+64)}
	k := 0
	for r := range rows.Pick(places) {
		if text := group.Text(r); len(l.Heads) == 0 || l.Heads[len(l.Heads)-1].Text != text {
			l.Lines = append(l.Lines, ^int32(len(l.Heads)))
			l.Heads = append(l.Heads, Head{Text: text})
		}
		l.Heads[len(l.Heads)-1].Rows++
		l.Lines = append(l.Lines, places[k])
		k++
	}
	return l
}
