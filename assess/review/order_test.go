package review

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// The order is that of comparing what the rows say, and then their paths.
func TestSortedAsRowsCompare(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		order, err := ParseOrder(strings.Join(rapid.SliceOfN(rapid.SampledFrom([]string{"date", "-date", "company", "-company", "rep", "-interview", "interview", "flags", "file"}), 1, 3).Draw(t, "by"), ","))
		if err != nil {
			t.Fatal(err)
		}
		var list []*Row
		var rows Rows
		for _, e := range rapid.SliceOfDistinct(rapid.Custom(drawn), func(e entry) string { return e.path }).Draw(t, "rows") {
			e.row.Company = rapid.StringMatching(`([A-Ca-cÉé ]{0,12}){0,2}`).Draw(t, "company")
			list = append(list, &e.row)
		}
		rows.Add(list...)
		want := make([]int32, 0, len(list))
		for i := range list {
			want = append(want, int32(i))
		}
		slices.SortFunc(want, func(a, b int32) int {
			for _, o := range order {
				x, y := o.Field.Text(list[a]), o.Field.Text(list[b])
				switch {
				case x == y:
				case x == "" || y == "": // not known last, either way
					return strings.Compare(y, x)
				case o.Down:
					x, y = y, x
					fallthrough
				default:
					if o.Field.num != nil {
						nx, _ := strconv.ParseFloat(strings.Fields(x)[0], 64)
						ny, _ := strconv.ParseFloat(strings.Fields(y)[0], 64)
						return cmp.Compare(nx, ny)
					}
					return compareFold(x, y)
				}
			}
			return strings.Compare(list[a].Path, list[b].Path)
		})
		all := func(*Row) bool { return true }
		if got := sorted(&rows, all, order); !slices.Equal(got, want) {
			t.Fatalf("got %v, want %v", got, want)
		}
	})
}

// By hand: capitals do not count, and then they do; a longer text is behind.
func TestCompareFold(t *testing.T) {
	list := []string{"Ab", "ab", "abc", "B", "É", "é", "éa", "Êa"}
	for i, a := range list {
		for j, b := range list {
			if got, want := compareFold(a, b), sign(i-j); got != want {
				t.Errorf("%q, %q: %d, want %d", a, b, got, want)
			}
		}
	}
}

func sign(n int) int { return min(max(n, -1), 1) }
