package main

import (
	"os/exec"
	"strings"
	"testing"

	"github.com/spf13/pflag"
)

// TestManual: every command a user can see has a page, and every flag of it is
// on that page.
func TestManual(t *testing.T) {
	all := commands(t)
	a := &app{environment: fixedEnvironment()}
	pages := a.manual(a.tree(), nil)
	for _, c := range all {
		text, ok := pages[strings.ReplaceAll(c.CommandPath(), " ", "-")+".1"]
		if !ok {
			t.Errorf("no page of %s", c.CommandPath())
		}
		c.Flags().VisitAll(func(f *pflag.Flag) {
			if !strings.Contains(text, asRoff("--"+f.Name)) {
				t.Errorf("%s: the page lacks --%s", c.CommandPath(), f.Name)
			}
		})
		for _, line := range examples(c.Example) {
			if !strings.Contains(text, asRoff(line)) {
				t.Errorf("%s: the page lacks the example %q", c.CommandPath(), line)
			}
		}
	}
	if len(pages) != len(all) {
		t.Errorf("%d pages of %d commands", len(pages), len(all))
	}
}

// TestManualIsSetWithoutAWarning has the typesetter of manuals read each page.
func TestManualIsSetWithoutAWarning(t *testing.T) {
	groff, err := exec.LookPath("groff")
	if err != nil {
		t.Skip("not installed: groff")
	}
	a := &app{environment: fixedEnvironment()}
	for name, page := range a.manual(a.tree(), nil) {
		cmd := exec.Command(groff, "-man", "-Tutf8", "-Kutf8", "-ww", "-z")
		cmd.Stdin = strings.NewReader(page)
		if out, err := cmd.CombinedOutput(); err != nil || len(out) > 0 {
			t.Errorf("%s: %v\n%s", name, err, out)
		}
	}
}

// asRoff is a text of one line as man(1) is given it: a hyphen and a backslash have
// a meaning of their own (groff_man(7), from memory).
func asRoff(s string) string { return strings.NewReplacer(`\`, `\e`, "-", `\-`).Replace(s) }
