package review

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"cutbrief/rules/message"
)

// Order is the columns rows are sorted by, the first first.
type Order []struct {
	Field Field
	Down  bool // largest first
}

// ParseOrder reads names of columns with a comma between, such as
// "-date,company". A minus turns the order round.
func ParseOrder(text string) (Order, error) {
	var order Order
	for _, name := range strings.Split(text, ",") {
		name, down := strings.CutPrefix(strings.TrimSpace(name), "-")
		f, known := FindField(name)
		if !known {
			return nil, message.Errorf("{1} is not a field; one of {2}", message.Name(strconv.Quote(name)), message.Name(strings.Join(FieldIDs(), ", ")))
		}
		order = append(order, struct {
			Field Field
			Down  bool
		}{f, down})
	}
	return order, nil
}

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
	return slices.ContainsFunc(listed(), func(f Field) bool {
		return f.ID != "reasons" && strings.Contains(strings.ToLower(f.text(r)), text)
	})
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

// sortKeys are what one column says of the rows that are sorted: texts, or numbers
// of lengths and times.
type sortKeys struct {
	texts   []string
	numbers []float64
	down    bool
}

func (k *sortKeys) add(f *Field, r *Row) {
	if f.num != nil {
		k.numbers = append(k.numbers, f.num(r))
		return
	}
	k.texts = append(k.texts, f.text(r))
}

// compare compares what two rows say. What is not known comes last, either way.
func (k *sortKeys) compare(a, b int32) int {
	turn := 1
	if k.down {
		turn = -1
	}
	if k.numbers != nil {
		x, y := k.numbers[a], k.numbers[b]
		if (x == 0) != (y == 0) {
			return cmp.Compare(y, x)
		}
		return turn * cmp.Compare(x, y)
	}
	x, y := k.texts[a], k.texts[b]
	if (x == "") != (y == "") {
		return strings.Compare(y, x)
	}
	return turn * compareFold(x, y)
}

// sorted returns the places of the rows that are kept, in an order. Rows that are
// alike are in the order of their paths. What the columns say are parts of the
// blocks of rows, so that keeping it costs little.
func sorted(rows *Rows, keep Where, order Order) []int32 {
	keys := make([]sortKeys, len(order))
	places := make([]int32, 0, rows.Len())
	i := int32(-1)
	for r := range rows.All() {
		if i++; !keep(r) {
			continue
		}
		places = append(places, i)
		for k := range order {
			keys[k].down = order[k].Down
			keys[k].add(&order[k].Field, r)
		}
	}
	lines := make([]int32, len(places)) // of keys and places
	for i := range lines {
		lines[i] = int32(i)
	}
	slices.SortFunc(lines, func(a, b int32) int {
		for k := range keys {
			if c := keys[k].compare(a, b); c != 0 {
				return c
			}
		}
		return strings.Compare(rows.Path(int(places[a])), rows.Path(int(places[b])))
	})
	for i, line := range lines {
		lines[i] = places[line]
	}
	return lines
}

// compareFold compares texts without regard to capitals, and then with.
func compareFold(a, b string) int {
	for i := range min(len(a), len(b)) {
		if a[i] >= utf8.RuneSelf || b[i] >= utf8.RuneSelf {
			if c := strings.Compare(strings.ToLower(a[i:]), strings.ToLower(b[i:])); c != 0 {
				return c
			}
			return strings.Compare(a, b)
		}
		if a[i] == b[i] {
			continue
		}
		if c := cmp.Compare(small(a[i]), small(b[i])); c != 0 {
			return c
		}
	}
	return cmp.Or(cmp.Compare(len(a), len(b)), strings.Compare(a, b))
}

// small makes a small letter of a capital one.
func small(c byte) byte {
	if 'A' <= c && c <= 'Z' {
		c += 'a' - 'A'
	}
	return c
}
