package assess

import (
	"encoding/json"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// jsonTexts are well-formed and broken texts, by the grammar of RFC 8259.
var jsonTexts = []string{
	`{}`, `[]`, ` { "a" : [ 1 , -2.5e+3 , true , false , null , "x\u00e9\n" ] } `, `"a"`, `0`, `-0.0E-1`, "",
	`{"a":1,}`, `{"a"}`, `{"a":}`, `{a:1}`, `[1,]`, `[,1]`, `[1 2]`, `{"a":1 "b":2}`, `01`, `1.`, `.5`, `-`, `1e`, `+1`, `1e+`,
	`"\x"`, `"\u12g4"`, `"\u123`, "\"a\nb\"", `"a`, `"\`, `tru`, `nul`, `truex`, `{} {}`, `[}`, `{]`, `{"a":[}`, "\v1", "\u00a01", `[1]]`,
	`{"a":{"b":[[],{}]}}`, strings.Repeat(" ", 40) + `{` + strings.Repeat(" ", 17) + `}`,
}

// What the scanner takes for well-formed is what the standard library does, as far
// as it is not nested too deeply.
func TestScannerAgreesWithTheStandardLibrary(t *testing.T) {
	for _, text := range jsonTexts {
		if got, want := isWellFormed([]byte(text)), json.Valid([]byte(text)); got != want {
			t.Errorf("%q: %v, want %v", text, got, want)
		}
	}
	part := rapid.SampledFrom([]string{`{`, `}`, `[`, `]`, `,`, `:`, `"a"`, `"\u0041"`, `"`, `\`, ` `, "\n", `1`, `-`, `.5`, `e3`, `0`, `true`, `null`, `"b"`, `fals`})
	rapid.Check(t, func(rt *rapid.T) {
		text := strings.Join(rapid.SliceOfN(part, 0, 24).Draw(rt, "parts"), "")
		if got, want := isWellFormed([]byte(text)), json.Valid([]byte(text)); got != want {
			rt.Fatalf("%q: %v, want %v", text, got, want)
		}
	})
}

// Damage at any one byte of an honest file is noticed exactly when the standard
// library notices it.
func TestScannerSeesDamage(t *testing.T) {
	whole := []byte(file(`{"question":"company","said":"A \"B\" é","state":"told","x":[1.5e3,-2,null]}`))
	rapid.Check(t, func(rt *rapid.T) {
		text := append([]byte(nil), whole...)
		at := rapid.IntRange(0, len(text)-1).Draw(rt, "at")
		text[at] = rapid.Byte().Draw(rt, "byte")
		if cut := rapid.IntRange(0, 2*len(text)).Draw(rt, "cut"); cut < len(text) {
			text = text[:cut]
		}
		if got, want := isWellFormed(text), json.Valid(text); got != want {
			rt.Fatalf("%q: %v, want %v", text, got, want)
		}
	})
}

// 32 levels are accepted, 33 are not: the limit of the format.
func TestScannerKeepsTheDepth(t *testing.T) {
	for depth, want := range map[int]bool{1: true, 32: true, 33: false, 100000: false} {
		text := strings.Repeat(`[`, depth) + strings.Repeat(`]`, depth)
		if got := isWellFormed([]byte(text)); got != want {
			t.Errorf("%d levels: %v, want %v", depth, got, want)
		}
	}
}

func FuzzScanner(f *testing.F) {
	for _, text := range jsonTexts {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		if got, want := isWellFormed(text), json.Valid(text); got != want && shallow(text) {
			t.Fatalf("%q: %v, want %v", text, got, want)
		}
	})
}
