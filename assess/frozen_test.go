package assess

import (
	"os"
	"strings"
	"testing"

	"cutbrief/rules"
	"cutbrief/rules/metal"
)

// A file of format version 1, never edited again, is read for ever, and written
// back as it was but for the version. 14 ga stainless is 5/64 in = 1.984375 mm (15 USC 206).
func TestFrozenFormat1(t *testing.T) {
	data, err := os.ReadFile("../testdata/format/visit-1.json")
	if err != nil {
		t.Fatal(err)
	}
	v, unknown, err := Decode(data)
	if err != nil || len(unknown) != 1 {
		t.Fatal(err, unknown)
	}
	want := strings.Replace(string(data), `"version": 1`, `"version": 2`, 1)
	if again, err := v.Encode(); err != nil || string(again) != want {
		t.Errorf("written back as %s (%v)", again, err)
	}
	j, problems := v.Job()
	if len(problems) > 0 || len(j.Pieces) != 2 || j.Pieces[0].Metal != metal.Stainless {
		t.Fatalf("%+v %v", j.Pieces, problems)
	}
	if got := j.Pieces[0].Thickest.Or(0); got != 1.984375 {
		t.Errorf("14 ga stainless became %v mm", got)
	}
	if j.Pieces[1].Thickest.Or(0) != 12 || j.Pieces[1].Rarest.IsKnown() {
		t.Errorf("mild steel became %+v", j.Pieces[1])
	}
	if j.Overrule == nil || j.Overrule.Requirement != rules.EdgeQuality {
		t.Errorf("overrule became %+v", j.Overrule)
	}
}
