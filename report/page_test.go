package report

import (
	"slices"
	"strings"
	"testing"

	"cutbrief/rules/demonstration"
)

var hazards = []demonstration.Hazard{
	demonstration.Arc, demonstration.Fire, demonstration.Explosion, demonstration.Fume, demonstration.ClosedSpace, demonstration.Height,
	demonstration.HotMetal, demonstration.Shock, demonstration.Noise, demonstration.MagneticField, demonstration.AnyHazard,
}

// Every hazard has a sign of its own, whose outlines lie inside their square:
// what is to be worn is a disc, what is warned of a triangle.
func TestSigns(t *testing.T) {
	seen := map[string]bool{}
	points := map[byte]int{'M': 2, 'L': 2, 'C': 6, 'Z': 0, 'O': 3}
	for _, h := range hazards {
		s := SignOf(h)
		if seen[s.Number] || s.Name == "" {
			t.Errorf("%s: number %q, name %q", h, s.Number, s.Name)
		}
		seen[s.Number] = true
		want := byte('W')
		if s.Shapes[0].Path == disc {
			want = 'M'
		}
		if s.Number[0] != want {
			t.Errorf("%s: %s on the other background", h, s.Number)
		}
		for _, shape := range s.Shapes {
			for _, step := range shape.Steps {
				if len(step.At) != points[step.Op] {
					t.Errorf("%s: step %c of %q has %v", h, step.Op, shape.Path, step.At)
				}
				for _, v := range step.At {
					if v < 0 || v > SignSide {
						t.Errorf("%s: %q leaves the square", h, shape.Path)
					}
				}
			}
		}
	}
}

// Every caution of every job is about a hazard that has a sign.
func TestEveryCautionHasItsHazard(t *testing.T) {
	for _, w := range demonstration.Warnings() {
		if !slices.Contains(hazards, w.Hazard) {
			t.Errorf("%s: hazard %q", w.ID, w.Hazard)
		}
		if w.Raised() != (w.When != "") {
			t.Errorf("%s: raised %v, given when %q", w.ID, w.Raised(), w.When)
		}
	}
}

// GroupCautions come once each, grouped, what the job raises first; a source has one
// letter wherever it is cited, and common practice none.
func TestCautionsAreGrouped(t *testing.T) {
	groups, key := GroupCautions([]Line{
		{Value: "general fire", Hazard: demonstration.Fire, Source: "29 CFR 1910.252(a)(2)"},
		{Value: "general noise", Hazard: demonstration.Noise, Source: "common practice", Trust: "common practice"},
		{Value: "raised fume", Hazard: demonstration.Fume, Source: "29 CFR 1910.252(c)(4)", Raised: true},
		{Value: "general fume", Hazard: demonstration.Fume, Source: "29 CFR 1910.252(a)(2)"},
		{Value: " ", Hazard: demonstration.Shock},
	})
	var got []string
	for _, g := range groups {
		for _, i := range g.Items {
			got = append(got, g.Sign.Number+" "+i.Text+" "+i.Letter)
		}
	}
	want := []string{"W016 raised fume a", "W016 general fume b", "W021 general fire b", "M003 general noise "}
	if !slices.Equal(got, want) || !groups[0].Raised() || groups[1].Raised() {
		t.Errorf("%q", got)
	}
	if text := strings.ReplaceAll(SourceKey(nil, key), "\u00a0", " "); text != "Sources: 29 CFR 1910.252 [a] (c)(4), [b] (a)(2). Without a letter: common practice." {
		t.Error(text)
	}
	if SourceKey(nil, nil) != "" {
		t.Error("a key without sources")
	}
}

// Letters go on after z.
func TestLetters(t *testing.T) {
	for n, want := range map[int]string{0: "a", 25: "z", 26: "aa", 27: "ab", 52: "ba"} {
		if got := sourceLetter(n); got != want {
			t.Errorf("%d: %s", n, got)
		}
	}
}
