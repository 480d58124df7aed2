package handbook_test

import (
	"strings"
	"testing"

	"github.com/mattn/go-runewidth"

	"cutbrief/assess"
	"cutbrief/report/handbook"
	"cutbrief/rules"
	"cutbrief/rules/cite"
	"cutbrief/rules/cost"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/metal"
	"cutbrief/rules/system"
)

// pages are all of them, by name.
func pages(t *testing.T) map[string]handbook.Page {
	t.Helper()
	all := map[string]handbook.Page{"rules": handbook.Rules(nil)}
	for _, name := range handbook.Formats() {
		p, ok := handbook.Format(name, nil)
		if !ok {
			t.Fatalf("no page %s", name)
		}
		all[name] = p
	}
	return all
}

// TestNothingIsLeftOut looks for what each page is about, by the lists that the
// program works with.
func TestNothingIsLeftOut(t *testing.T) {
	wanted := map[string][]string{"cases": {"patience", "caliper"}, "words": {"{1}"}}
	for _, r := range rules.Table() {
		wanted["rules"] = append(wanted["rules"], string(r.Title), string(r.Words))
	}
	for _, m := range metal.List() {
		wanted["rules"] = append(wanted["rules"], string(m.Name))
	}
	for _, w := range demonstration.Cautions(rules.Job{}, rules.Result{}) {
		wanted["rules"] = append(wanted["rules"], string(w.Text))
	}
	for _, f := range cost.Figures() {
		wanted["rules"] = append(wanted["rules"], f.Name.String())
	}
	for _, s := range cite.All() {
		wanted["rules"] = append(wanted["rules"], s.ID, s.Title)
	}
	for _, q := range assess.Catalogue() {
		wanted["visit"] = append(wanted["visit"], string(q.ID), string(q.Name))
	}
	wanted["visit"] = append(wanted["visit"], "format", "showings", "took_s", "objections", "0.3 mm", "300 mm")
	for _, c := range system.Columns() {
		wanted["systems"] = append(wanted["systems"], c.Name, string(c.Accepts))
	}
	for _, i := range cost.Items() {
		wanted["prices"] = append(wanted["prices"], string(i.ID), string(i.Name))
	}
	for name, p := range pages(t) {
		text := strings.Join(strings.Fields(p.Text(1000)), " ")
		if strings.Contains(text, "e+0") {
			t.Errorf("%s: a number is not written in full", name)
		}
		for _, w := range wanted[name] {
			if !strings.Contains(text, strings.Join(strings.Fields(w), " ")) {
				t.Errorf("%s: lacks %q", name, w)
			}
		}
	}
}

// TestEverySourceIsKnown: no rule, metal or caution on the page rests on a
// source that is not in the register.
func TestEverySourceIsKnown(t *testing.T) {
	for _, s := range handbook.Rules(nil).Sections {
		last := len(s.Head) - 1
		for _, row := range s.Rows {
			if s.Head[last] == "Known as" && (row[last] == "" || row[last] == "not known") && row[0] != "other metal" {
				t.Errorf("%s: %s: does not say how it is known", s.Title, row[0])
			}
		}
	}
}

// TestPagesAreWhole: rows are as wide as their head, no table is empty, and a
// line is longer than asked for only if one word is.
func TestPagesAreWhole(t *testing.T) {
	const width = 60
	for name, p := range pages(t) {
		for _, s := range p.Sections {
			if len(s.Rows) == 0 {
				t.Errorf("%s: %s is empty", name, s.Title)
			}
			for _, row := range s.Rows {
				if len(row) != len(s.Head) || row[0] == "" {
					t.Errorf("%s: %s: row %q under head %q", name, s.Title, row, s.Head)
				}
			}
		}
		titles := map[string]bool{}
		for _, s := range p.Sections {
			for _, row := range s.Rows {
				titles[row[0]] = true // a row begins with what it is about, on a line of its own
			}
		}
		for line := range strings.Lines(p.Text(width)) {
			line = strings.TrimSuffix(line, "\n")
			if runewidth.StringWidth(line) > width && !titles[line] && strings.Contains(strings.TrimSpace(line), " ") {
				t.Errorf("%s: too wide: %q", name, line)
			}
		}
	}
}

// TestEveryFieldIsExplained: a field of a saved visit says what it means and what
// it holds.
func TestEveryFieldIsExplained(t *testing.T) {
	p, _ := handbook.Format("visit", nil)
	for _, s := range p.Sections[:len(p.Sections)-1] {
		for _, row := range s.Rows {
			if row[1] == "" || row[2] == "" {
				t.Errorf("%s: %q does not say what it means and holds", s.Title, row)
			}
		}
	}
}

// TestMarkdownRows: a cell that holds what means something in a table stays one
// cell. By CommonMark's table extension a bar inside a cell is escaped.
func TestMarkdownRows(t *testing.T) {
	p := handbook.Page{Title: "T", Sections: []handbook.Section{{Title: "S", Head: []string{"A", "B"}, Rows: [][]string{{"a|b", "*c* <d>"}}}}}
	want := "# T\n\n## S\n\n| A | B |\n|---|---|\n| a\\|b | \\*c\\* &lt;d> |\n"
	if got := p.Markdown(); got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

// TestGuides: each reader has one, its commands stand behind a margin and no
// mark of Markdown is left.
func TestGuides(t *testing.T) {
	for _, name := range handbook.Readers() {
		title, markdown := handbook.Guide(name, nil)
		if markdown == "" {
			t.Errorf("no guide for %s", name)
			continue
		}
		text := handbook.Told(title, markdown, 80)
		if strings.Contains(text, "`") || !strings.Contains(text, "\n     cutbrief ") {
			t.Errorf("%s: %s", name, text)
		}
		for line := range strings.Lines(text) {
			if runewidth.StringWidth(line) > 81 && !strings.HasPrefix(line, "     ") {
				t.Errorf("%s: too wide: %q", name, line)
			}
		}
	}
}

// TestEveryRuleIsWorkedOut: the page says of each rule, in its order, how it comes
// to its figures.
func TestEveryRuleIsWorkedOut(t *testing.T) {
	for _, s := range handbook.Rules(nil).Sections {
		if s.Title != "How a check is worked out" {
			continue
		}
		table := rules.Table()
		if len(s.Rows) != len(table) {
			t.Fatalf("%d rules are worked out, of %d", len(s.Rows), len(table))
		}
		for i, row := range s.Rows {
			if row[0] != string(table[i].Title) || row[1] == "" {
				t.Errorf("row %d is about %q, not %q", i, row[0], table[i].Title)
			}
		}
		return
	}
	t.Fatal("no such section")
}
