package tabular

import (
	"errors"
	"slices"
	"strings"
	"testing"
)

// RFC 4180, section 2: quotes around a cell, doubled inside it.
func TestSplit(t *testing.T) {
	for _, c := range []struct {
		line    string
		cells   []string
		problem bool
	}{
		{`a,b,c`, []string{"a", "b", "c"}, false},
		{`"a,b",c`, []string{"a,b", "c"}, false},
		{`"say ""hm""",`, []string{`say "hm"`, ""}, false},
		{``, []string{""}, false},
		{`a"b,c`, nil, true},
		{`"open,c`, nil, true},
		{`"a"b,c`, nil, true},
	} {
		cells, _, problem := Split(c.line)
		if (problem != "") != c.problem || !c.problem && !slices.Equal(cells, c.cells) {
			t.Errorf("%s: %q, %q", c.line, cells, problem)
		}
	}
}

func TestLoadRefuses(t *testing.T) {
	if _, err := Load(strings.NewReader(strings.Repeat("x", MaxBytes+1))); !errors.Is(err, ErrLarge) {
		t.Error(err)
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
	} {
		if !Flaw(text).IsEmpty() != flawed {
			t.Errorf("%q: %q", text, Flaw(text))
		}
	}
}
