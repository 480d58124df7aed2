package review

import (
	"cmp"
	"fmt"
	"strings"
	"unicode/utf8"
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
			return nil, fmt.Errorf("%q is not a field; one of %s", name, strings.Join(FieldIDs(), ", "))
		}
		order = append(order, struct {
			Field Field
			Down  bool
		}{f, down})
	}
	return order, nil
}

// ParseFields reads names of columns with a comma between.
func ParseFields(text string) ([]Field, error) {
	order, err := ParseOrder(text)
	if err != nil {
		return nil, err
	}
	var list []Field
	for _, o := range order {
		if o.Down {
			return nil, fmt.Errorf("-%s is not a field; a minus belongs into the order", o.Field.ID)
		}
		list = append(list, o.Field)
	}
	return list, nil
}

// order compares what two rows say. What is not known comes last, either way.
func (f *Field) order(a, b *Row, down bool) int {
	turn := 1
	if down {
		turn = -1
	}
	if f.num != nil {
		x, y := f.num(a), f.num(b)
		if (x == 0) != (y == 0) {
			return cmp.Compare(y, x) // not known last
		}
		return turn * cmp.Compare(x, y)
	}
	x, y := f.text(a), f.text(b)
	if (x == "") != (y == "") {
		return strings.Compare(y, x)
	}
	return turn * compareFold(x, y)
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
