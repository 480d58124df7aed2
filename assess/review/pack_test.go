package review

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"cutbrief/rules/demonstration"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// drawn fills every field of a row with something, so that one that is not packed
// is noticed.
func drawn(t *rapid.T) entry {
	text := rapid.StringMatching(`[a-z é;]{0,12}`)
	e := entry{path: rapid.StringMatching(`[a-z/]{1,20}\.json`).Draw(t, "path")}
	row := reflect.ValueOf(&e.row).Elem()
	for i := range row.NumField() {
		switch f, name := row.Field(i), row.Type().Field(i).Name; f.Kind() {
		case reflect.String:
			f.SetString(text.Draw(t, name))
		case reflect.Float64:
			f.SetFloat(rapid.Float64Range(0, 1e6).Draw(t, name))
		case reflect.Uint8, reflect.Uint32:
			f.SetUint(rapid.Uint64Range(0, 200).Draw(t, name))
		}
	}
	e.row.Path = e.path
	e.row.Noted = Noted{Minutes: rapid.Uint16().Draw(t, "minutes"), Poor: rapid.Bool().Draw(t, "poor"), Fast: rapid.Uint8().Draw(t, "fast")}
	e.stamp = stamp{size: rapid.Int64().Draw(t, "size"), modified: rapid.Int64().Draw(t, "modified"), changed: rapid.Int64().Draw(t, "changed"), inode: rapid.Uint64().Draw(t, "inode")}
	for range rapid.IntRange(0, 2).Draw(t, "cuts") {
		c := demonstration.Timed{Visit: e.path, Metal: metal.ID(text.Draw(t, "metal")), Took: unit.Second(rapid.Float64().Draw(t, "took")), Predicted: 1}
		if rapid.Bool().Draw(t, "known") {
			c.Thickness, c.Output, c.Length = unit.Known(unit.Millimetre(1.5)), unit.Known(unit.Ampere(45)), unit.Known(unit.Millimetre(0))
		}
		e.cuts = append(e.cuts, timing{text.Draw(t, "with"), c})
	}
	return e
}

// What is kept comes back as it was, whatever is put behind it, and a
// snapshot keeps what there was.
func TestEntriesComeBackAsTheyWere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var s entries
		all := rapid.SliceOfN(rapid.Custom(drawn), 1, 20).Draw(t, "entries")
		for i := range all {
			s.put(&all[i])
		}
		before := s.snapshot()
		s.put(&some1)
		before.put(&entry{path: "other"})
		before.refs = before.refs[:len(all)]
		for _, s := range []*entries{&s, &before} {
			for i := range all {
				var got entry
				if s.get(i, &got); !reflect.DeepEqual(got, all[i]) || s.path(i) != all[i].path {
					t.Fatalf("%d: got\n%+v, want\n%+v", i, got, all[i])
				}
			}
		}
	})
}

// Blocks fill up, entries larger than a block are kept too, and so are more texts
// than are shared.
func TestEntriesInManyBlocks(t *testing.T) {
	var s entries
	at := func(i int) entry {
		return entry{path: fmt.Sprint(i), row: Row{Path: fmt.Sprint(i), Company: strings.Repeat("x", i*i%500), Why: fmt.Sprint("reason ", i)}}
	}
	for i := range 2 * mostTexts {
		e := at(i)
		s.put(&e)
	}
	huge := entry{path: "huge", row: Row{Path: "huge", Company: strings.Repeat("y", 3*blockSize)}}
	s.put(&huge)
	for i := range 2 * mostTexts {
		var got entry
		if s.get(i, &got); !reflect.DeepEqual(got, at(i)) {
			t.Fatalf("%d: got %+v", i, got)
		}
	}
	var got entry
	if s.get(2*mostTexts, &got); !reflect.DeepEqual(got, huge) {
		t.Error("the huge one differs")
	}
	if len(s.full) < 10 || len(s.texts) != mostTexts {
		t.Errorf("%d blocks, %d texts", len(s.full), len(s.texts))
	}
}
