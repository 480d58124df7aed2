package review

import (
	"slices"
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

// Item is a line of an arranged list: a row, or the head of a group.
type Item struct {
	Row   int    // place in the rows; −1 for the head of a group
	Head  string // what the rows of a group share
	Count int    // how many they are
}

// Arrange keeps the rows a filter holds for, in an order, under a head for each
// group if there is a column to group by. It changes nothing.
func Arrange(rows []*Row, keep Where, order Order, group *Field) []Item {
	var places []int
	for i, r := range rows {
		if keep(r) {
			places = append(places, i)
		}
	}
	slices.SortFunc(places, func(a, b int) int {
		if group != nil {
			if c := group.order(rows[a], rows[b], false); c != 0 {
				return c
			}
		}
		return order.compare(rows[a], rows[b])
	})
	items := make([]Item, 0, len(places)+8)
	head := -1
	for _, i := range places {
		if group != nil {
			if text := group.Text(rows[i]); head < 0 || items[head].Head != text {
				head = len(items)
				items = append(items, Item{Row: -1, Head: text})
			}
			items[head].Count++
		}
		items = append(items, Item{Row: i})
	}
	return items
}
