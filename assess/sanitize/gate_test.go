package sanitize_test

import (
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"cutbrief/assess/sanitize"
	"golang.org/x/text/unicode/norm"
)

// The characters and sequences are those of ECMA-48 and of Unicode Standard
// Annex 9 (directional marks); what becomes of them is the package's promise.
func TestLine(t *testing.T) {
	for _, c := range []struct{ name, in, want string }{
		{"plain", "Harbour Repair, bay 3", "Harbour Repair, bay 3"},
		{"accents and other scripts", "Łódź Żuraw 鋼板 Ωμέγα", "Łódź Żuraw 鋼板 Ωμέγα"},
		{"quantity", `3/8" ≤ 9.5 mm`, `3/8" ≤ 9.5 mm`},
		{"colour", "\x1b[31mred\x1b[0m", "red"},
		{"clear screen", "a\x1b[2J\x1b[Hb", "ab"},
		{"title", "\x1b]0;owned\x07name", "name"},
		{"link", "\x1b]8;;http://a.example\x1b\\text\x1b]8;;\x1b\\", "text"},
		{"device control", "\x1bP1;2|abc\x1b\\x", "x"},
		{"raw C1", "\x9b31mred", "red"},
		{"C1 as a character", "a\u009b31mred", "a<U+009B>31mred"},
		{"lone escape at the end", "name\x1b", "name"},
		{"NUL", "a\x00b", "a<U+0000>b"},
		{"BEL", "a\ab", "a<U+0007>b"},
		{"backspace", "a\bb", "a<U+0008>b"},
		{"DEL", "a\x7fb", "a<U+007F>b"},
		{"tab and line ends", " a\tb\r\nc\nd\re\u2028f\u2029g\u0085h ", "a b c d e f g h"},
		{"override", "abc\u202etxt.exe", "abc<U+202E>txt.exe"},
		{"isolates", "\u2066a\u2069", "<U+2066>a<U+2069>"},
		{"mark", "a\u200fb", "a<U+200F>b"},
		{"zero width", "1\u200b2\ufeff mm\u00ad", "12 mm"},
		{"tag characters", "a\U000e0041b", "ab"},
		{"invalid UTF-8", "a\xffb", "a\ufffdb"},
		{"Latin-1", "M\xfcller caf\xe9 \x1b[1m12\xb0", "M\ufffdller caf\ufffd 12\ufffd"},
		{"cut in a character", "mm\xc2", "mm\ufffd"},
		{"normal form", "e\u0301te\u0301", "été"},
		{"normal form behind a dropped character", "e\u200b\u0301", "é"},
		{"only spaces", " \t\u00a0 ", ""},
		{"empty", "", ""},
	} {
		if got := sanitize.Line(c.in); got != c.want {
			t.Errorf("%s: Line(%q) = %q, want %q", c.name, c.in, got, c.want)
		}
	}
}

func TestLineIsCapped(t *testing.T) {
	if exact := strings.Repeat("é", 200); sanitize.Line(exact) != exact {
		t.Error("200 characters were shortened")
	}
	if got, want := sanitize.Line(strings.Repeat("é", 201)), strings.Repeat("é", 199)+"…"; got != want {
		t.Errorf("201 characters became %q", got)
	}
}

func TestLines(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"\n\n one \r\n\x1b[1mtwo\x1b[0m\n\nthree\u2028four\n\n", "one\ntwo\n\nthree\nfour"},
		{"one\x1b]0;never ended\ntwo", "one\ntwo"},
		{"\x00\n\u202eb", "<U+0000>\n<U+202E>b"},
		{"", ""},
	} {
		if got := sanitize.Lines(c.in); got != c.want {
			t.Errorf("Lines(%q) = %q, want %q", c.in, got, c.want)
		}
	}
	forty := strings.TrimSpace(strings.Repeat("x\n", 40))
	if sanitize.Lines(forty) != forty {
		t.Error("40 lines were shortened")
	}
	if got := sanitize.Lines(strings.Repeat("x\n", 41)); got != strings.Repeat("x\n", 39)+"…" {
		t.Errorf("41 lines became %q", got)
	}
	if got := sanitize.Lines(strings.Repeat("y", 501) + "\nz"); got != strings.Repeat("y", 499)+"…\nz" {
		t.Errorf("501 characters became %q", got)
	}
}

// broken are what a hostile or broken file holds.
var broken = []string{
	"plain", "\x1b[31mred\x1b[0m", "\x1b]8;;x\x1b\\y", "\x9b31m", "\u009b31m", "\x00\a\b\x7f", "\u202eabc\u2066",
	"\xff\xfe", "e\u200b\u0301", "a\r\nb\rc", strings.Repeat("ab ", 300), strings.Repeat("x\n", 90), "\x1b\x1b[[31m",
	"\xc2\x1b[m\x9b", "\u0958\u0344", "\u2000 \u1680", "<U+202E>", "\x1bP", "\x1b]0;never ended",
}

func FuzzLine(f *testing.F) {
	for _, s := range broken {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		got := sanitize.Line(s)
		fit(t, s, got, 200)
		if again := sanitize.Line(got); again != got {
			t.Fatalf("Line(%q) = %q, and again %q", s, got, again)
		}
	})
}

func FuzzLines(f *testing.F) {
	for _, s := range broken {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		got := sanitize.Lines(s)
		rows := strings.Split(got, "\n")
		if len(rows) > 40 {
			t.Fatalf("Lines(%q) has %d lines", s, len(rows))
		}
		for _, row := range rows {
			fit(t, s, row, 500)
		}
		if again := sanitize.Lines(got); again != got {
			t.Fatalf("Lines(%q) = %q, and again %q", s, got, again)
		}
	})
}

// fit checks what every line out of the gate promises.
func fit(t *testing.T, in, out string, limit int) {
	t.Helper()
	hostile := func(r rune) bool {
		return unicode.IsControl(r) || unicode.In(r, unicode.Cf, unicode.Bidi_Control, unicode.Zl, unicode.Zp)
	}
	switch {
	case !utf8.ValidString(out):
		t.Fatalf("%q became %q, which is not UTF-8", in, out)
	case strings.ContainsFunc(out, hostile):
		t.Fatalf("%q became %q, which holds a character that is not text", in, out)
	case utf8.RuneCountInString(out) > limit:
		t.Fatalf("%q became %d characters", in, utf8.RuneCountInString(out))
	case !norm.NFC.IsNormalString(out):
		t.Fatalf("%q became %q, which is not in normal form", in, out)
	case out != strings.TrimSpace(out):
		t.Fatalf("%q became %q, which is not trimmed", in, out)
	}
}
