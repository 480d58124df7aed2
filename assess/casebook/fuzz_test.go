package casebook

import (
	"reflect"
	"strings"
	"testing"
	"unicode"

	"cutbrief/rules/system"
	"cutbrief/rules/tabular"
)

// FuzzCheck: whatever cases a file holds, they can be looked through, and what
// is found can be shown on a terminal.
func FuzzCheck(f *testing.F) {
	f.Add("case: a\nlevel: 1\nmanner: precise\nminutes: 40\ncompany: A\nunits: mm\nmetals: mild-steel\neveryday-thickness mild-steel: 3 mm\nthickest-clean mild-steel: 5 mm\nuse: mixed\npower-source: mains\nsupply-phase: single\nbudget: 2500\n")
	f.Add(Template())
	f.Fuzz(func(t *testing.T, text string) {
		list, findings := Read(strings.NewReader(text))
		for i := range list[:min(len(list), 3)] {
			findings = append(findings, Check(&list[i], system.Demo())...)
		}
		for _, found := range findings {
			fitToShow(t, found)
		}
	})
}

// fitToShow fails if a finding could steer a terminal.
func fitToShow(t *testing.T, f tabular.Finding) {
	t.Helper()
	bad := func(r rune) bool { return unicode.IsControl(r) || unicode.Is(unicode.Cf, r) }
	for _, s := range []string{f.Row, f.Column, f.Problem.String(), f.Accepted.String()} {
		if strings.ContainsFunc(s, bad) {
			t.Errorf("not fit for a terminal: %q", f)
		}
	}
}

// FuzzProgress: progress that is read can be written, and is read back the same.
func FuzzProgress(f *testing.F) {
	f.Add([]byte(`{"format":"cutbrief-practice","version":1,"practices":[{"at":"2026-11-25T09:30:00Z","case":"bench-top","seed":7,"level":2,"manner":"vague","minutes":12,"of_minutes":20,"system_right":true,"skills":{"x":{}}}]}`))
	f.Add([]byte(`{"format":"cutbrief-practice","version":2}`))
	f.Add([]byte(`{"format":"cutbrief-practice","version":1,"practices":null}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		p, err := DecodeProgress(data)
		if err != nil {
			return
		}
		out, err := p.Encode()
		if err != nil {
			t.Fatal(err)
		}
		if len(out) > ProgressMost {
			return // indenting can push a packed file over the limit
		}
		again, err := DecodeProgress(out)
		if err != nil || len(p.Practices) > 0 && !reflect.DeepEqual(p, again) {
			t.Fatalf("%v\n%+v\n%+v", err, p, again)
		}
	})
}
