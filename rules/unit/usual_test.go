package unit

import "testing"

// What is read at little cost is read as with care: a second space between figures
// and unit takes the long way.
func TestUsualReadsAsWithCare(t *testing.T) {
	taken := 0
	for i := range kinds {
		kind := Kind(i)
		for _, m := range kinds[i].measures {
			names := append([]string{m.name}, m.spelled...)
			for _, name := range names {
				for _, number := range []string{"0", "7", "007", "12", "12.5", ".5", "5.", "0.25", "3.175", "12.000", "1.2.3", "100000000000", "99999999999999999999", "0.0001"} {
					for _, style := range []Style{Metric, Inch} {
						r := reader{kind: kind, row: kind.row(), style: style}
						if _, ok := r.usual(number + " " + name); ok {
							taken++
						}
						got, err1 := Read(number+" "+name, kind, style, NoGauge)
						want, err2 := Read(number+"  "+name, kind, style, NoGauge)
						if got != want || (err1 == nil) != (err2 == nil) {
							t.Errorf("%s %s: got %v, %v; with care %v, %v", number, name, got, err1, want, err2)
						}
					}
				}
			}
		}
	}
	if taken == 0 {
		t.Error("nothing is read at little cost")
	}
}
