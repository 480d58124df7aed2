package assess

import (
	"bytes"
	"slices"
	"testing"

	"cutbrief/rules"
)

// FuzzDecodeInto reads one text and then another into the room of a visit, as a
// review of very many does. What is read is what Decode reads of a fresh copy, the
// bytes it is part of are left alone, and so is a visit that Decode returned.
func FuzzDecodeInto(f *testing.F) {
	small, answered := []byte(file(``)), []byte(file(`{"question":"metals","chosen":["stainless","mild-steel"],"state":"told"},{"question":"company","said":"A \u00e9 b","note":"n","x":{"y":[1]}}`))
	shown := []byte(shownFile(`{"date":"2026-12-01","cuts":[{"cut":"a","took_s":1e3,"x":1}],"objections":[{"said":"b"}],"next":{"date":"2026-12-08"},"y":[]}`))
	for _, pair := range [][2][]byte{{small, answered}, {answered, small}, {shown, answered}, {answered, shown}, {[]byte(`{`), shown}, {shown, []byte("\uFEFF" + file(``))}} {
		f.Add(pair[0], pair[1])
	}
	f.Fuzz(func(t *testing.T, first, second []byte) {
		var used Visit
		kept, _, _ := Decode(first)
		var before []byte
		if kept != nil {
			before, _ = kept.Encode()
		}
		_ = DecodeInto(&used, slices.Clone(first)) // what it leaves behind is the test
		text := slices.Clone(second)
		err := DecodeInto(&used, text)
		if !bytes.Equal(text, second) {
			t.Fatalf("the bytes were changed:\n%q\n%q", second, text)
		}
		want, _, wanted := Decode(second)
		if (err == nil) != (wanted == nil) || err != nil && err.Error() != wanted.Error() {
			t.Fatalf("got %v, want %v", err, wanted)
		}
		if err == nil {
			got, _ := used.Encode()
			fresh, _ := want.Encode()
			if !bytes.Equal(got, fresh) {
				t.Fatalf("into used room:\n%s\nafresh:\n%s", got, fresh)
			}
			for i := range text {
				text[i] = 'x'
			}
			if again, _ := want.Encode(); !bytes.Equal(again, fresh) {
				t.Fatal("a visit that was decoded shares bytes with the text")
			}
			used.Set(Answer{Question: rules.FactMetals, Chosen: []string{"stainless"}, State: Told}) // room for more is not shared
		}
		if kept != nil {
			if after, _ := kept.Encode(); !bytes.Equal(before, after) {
				t.Fatalf("an older visit was changed:\n%s\n%s", before, after)
			}
		}
	})
}
