package review

import (
	"fmt"
	"strings"
	"testing"
)

func arranged(t *testing.T, text, order, group string) string {
	t.Helper()
	o, err := ParseOrder(order)
	if err != nil {
		t.Fatal(err)
	}
	var by *Field
	if f, ok := FindField(group); ok {
		by = &f
	}
	var rows Rows
	rows.Add(&some[0], &some[1], &some[2])
	l := Arrange(&rows, Find(text, today), o, by)
	var list []string
	for line, place := range l.Lines {
		if h := l.Head(line); h != nil {
			list = append(list, fmt.Sprintf("[%s %d]", h.Text, h.Rows))
			continue
		}
		list = append(list, rows.Path(int(place)))
	}
	return strings.Join(list, " ")
}

// By reading the three rows of the test of filters.
func TestArrange(t *testing.T) {
	for _, c := range [][4]string{
		{"", "-date", "", "2 1 3"},
		{"", "company", "verdict", "[falls short 1] 2 [not yet 1] 3 [open 1] 1"},
		{"", "date", "rep", "[Osric Dale 1] 2 [Runa Feltham 1] 1 [ 1] 3"},
		{"runa", "date", "", "1"}, {"MILD stain", "date", "", "1"}, {"12.7", "date", "", "1"}, {"order osric", "date", "", "2"},
		{"verdict = open or verdict = not yet", "date", "", "1 3"}, {"verdict =", "date", "", ""},
	} {
		if got := arranged(t, c[0], c[1], c[2]); got != c[3] {
			t.Errorf("%q by %s in %s: %s, want %s", c[0], c[1], c[2], got, c[3])
		}
	}
}
