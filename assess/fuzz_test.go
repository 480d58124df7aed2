package assess

import (
	"reflect"
	"slices"
	"testing"
)

// FuzzGlance: a visit that can be read shows in a list what reading the whole
// of it shows, and one that cannot never stops the list.
func FuzzGlance(f *testing.F) {
	f.Add([]byte(file(`{"question":"thickest-clean","metal":"stainless","said":"14 ga"},{"question":"units","chosen":["in"]},{"question":"rep","state":"not-known"}`)))
	f.Add([]byte(shownFile(`{"date":"2026-12-01","outcome":"quote","next":{"d\u0061te":"2026-12-08"}}`)))
	f.Add([]byte(file(`{"question":"company","said":"A","state":"n\u006ft-known"},{"question":"metals","chosen":["stainless","mild-steel"]},{"question":"date","said":"2026-11-25"}`)))
	f.Add([]byte(recommended))
	f.Fuzz(func(t *testing.T, data []byte) {
		var g Glance
		refused := g.Look(data)
		v, _, err := Decode(data)
		if err != nil {
			return // for the sake of one answer only, perhaps: a glance may pass that
		}
		if refused != nil {
			t.Fatalf("can be read, and is refused in a list: %v", refused)
		}
		want := v.Glance()
		if !slices.Equal(g.Metals, want.Metals) {
			t.Fatalf("shows %v, is %v", g.Metals, want.Metals)
		}
		g.Metals, want.Metals, g.kept = nil, nil, nil
		for _, r := range []*Recommendation{&g.Recommended, &want.Recommended} {
			r.Rated, r.extra = 0, nil // a list does not show these
		}
		if !reflect.DeepEqual(g, want) {
			t.Fatalf("shows\n%+v, is\n%+v", g, want)
		}
	})
}
