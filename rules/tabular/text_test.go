package tabular

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"cutbrief/rules/message"
)

// RFC 4180, section 2: quotes around a cell, doubled inside it.
func TestSplit(t *testing.T) {
	for _, c := range []struct {
		line    string
		cells   []string // up to the one with the problem
		problem bool
	}{
		{`a,b,c`, []string{"a", "b", "c"}, false},
		{`"a,b",c`, []string{"a,b", "c"}, false},
		{`"say ""hm""",`, []string{`say "hm"`, ""}, false},
		{``, []string{""}, false},
		{`""`, []string{""}, false},
		{`"""a"""`, []string{`"a"`}, false},
		{`"a"","`, []string{`a",`}, false},
		{`a"b,c`, nil, true},
		{`"open,c`, nil, true},
		{`"a"b,c`, nil, true},
		{`a,"b""`, []string{"a"}, true},
		{`a,b,"`, []string{"a", "b"}, true},
	} {
		cells, bad, problem := Split(c.line)
		if (problem != "") != c.problem || !slices.Equal(cells, c.cells) || c.problem && bad != len(c.cells) {
			t.Errorf("%s: %q, %q", c.line, cells, problem)
		}
	}
}

func TestLoadRefuses(t *testing.T) {
	const mebibyte = 1048576
	if _, err := Load(strings.NewReader(strings.Repeat("x", mebibyte+1))); !errors.Is(err, ErrLarge) {
		t.Error(err)
	}
	if text, err := Load(strings.NewReader(strings.Repeat("x", mebibyte))); len(text) != mebibyte || err != nil {
		t.Errorf("%d bytes, %v", len(text), err)
	}
	if _, err := Load(strings.NewReader("\xff\xfea\x00")); !errors.Is(err, ErrUTF16) {
		t.Error(err)
	}
	if text, err := Load(strings.NewReader("\ufeffid")); text != "id" || err != nil {
		t.Errorf("%q, %v", text, err)
	}
}

func TestFlaw(t *testing.T) {
	for text, flawed := range map[string]bool{
		"12 mm": false, "Ölmühle": false, "a\x1b[31m": true, "a\u202eb": true, "\xff": true, strings.Repeat("x", 301): true,
		strings.Repeat("é", 300): false, " ~": false, "\x7f": true, "\x1f": true,
	} {
		if !Flaw(text).IsEmpty() != flawed {
			t.Errorf("%q: %q", text, Flaw(text))
		}
	}
}

// Lines are counted from 1, lose their ends, and are taken until no more are wanted.
func TestEach(t *testing.T) {
	var got []string
	all := Each("a\r\nb\nc", func(n int, line string) bool { got = append(got, strconv.Itoa(n)+line); return n < 2 })
	if strings.Join(got, " ") != "1a 2b" || all || !Each("a\nb", func(int, string) bool { return true }) {
		t.Errorf("%v %t", got, all)
	}
	for line, want := range map[string]bool{"#": true, `"#,"`: true, ", \t,": true, "": true, "a": false, `"a"`: false, ", a": false} {
		if Skipped(line) != want {
			t.Errorf("%q: skipped %t", line, !want)
		}
	}
}

// Plain numbers, whole texts, codes of a currency, and findings as they are said.
func TestPlainTexts(t *testing.T) {
	for text, want := range map[string]string{"12.50": "12.5 2 true", "7": "7 0 true", ".5": "0.5 1 true", "1,5": "0 0 false", "": "0 0 false", "1.2.3": "0 3 false"} {
		if v, n, ok := Plain(text); fmt.Sprint(v, n, ok) != want {
			t.Errorf("%q: %v %d %t, want %s", text, v, n, ok, want)
		}
	}
	for _, text := range []string{"1e3", "-1", "+1", "0x1p-2", "NaN", "Inf"} {
		if _, _, ok := Plain(text); ok {
			t.Errorf("%q is plain", text)
		}
	}
	for v, want := range map[float64]string{0.1: "0.1", 1e21: "1000000000000000000000", 1.0 / 3: "0.3333333333333333", 12: "12"} {
		if got := Number(v); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
	for code, want := range map[string]bool{"EUR": true, "AZZ": true, "EURO": false, "EU": false, "eur": false, "E1R": false, "": false} {
		if IsCurrency(code) != want {
			t.Errorf("%q: %t", code, !want)
		}
	}
	for n, want := range map[int]string{40: strings.Repeat("é", 40), 41: strings.Repeat("é", 39) + "…"} {
		if got := Quoted(strings.Repeat("é", n)); got != strconv.Quote(want) {
			t.Errorf("%d letters: %s", n, got)
		}
	}
	found := []Finding{{Severity: Error, Problem: message.New("is bad")}, {Line: 1, Severity: Note, Problem: message.New("is odd")},
		{Line: 7, Cell: "B7", Column: "n", Severity: Error, Problem: message.New("is bad"), Accepted: message.New("good")}}
	for i, want := range []string{"file: error: is bad", "line 1: note: is odd", "cell B7, column n: error: is bad; accepted: good"} {
		if got := found[i].String(); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
	if Count(found, Error) != 2 || Count(found, Note) != 1 || Count(found, Warning) != 0 {
		t.Error("findings are miscounted")
	}
}
