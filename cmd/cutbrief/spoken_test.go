package main

import (
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/rules/cite"
)

// english is a word that no German or Spanish text has, with its neighbours.
var english = regexp.MustCompile(`(?i)\S* ?(^|[\s("„“«»])(the|of|and|with|your|this|that|which|are|is|from|not|have|been|than|what|does|only|where|when|or|by|if|to)[\s,.;:)] ?\S*`)

// No English sentence is left where people read another language: what every
// command says of every sample and worked visit, without the titles of sources and
// what the customer said, has none of the words that English cannot do without.
func TestNoEnglishIsLeft(t *testing.T) {
	for tag, lines := range map[string][]string{
		"de": {"brief %s --format text", "brief %s --with checklist,working --format text", "why %s", "next %s", "compare %s", "cost %s", "rehearse %s --plain"},
		"es": {"brief %s --format text", "brief %s --with checklist,working --format text"},
	} {
		t.Run(tag, func(t *testing.T) {
			g := &golden{work: t.TempDir(), words: tag}
			var err error
			if g.root, err = filepath.Abs(filepath.Join("..", "..")); err != nil {
				t.Fatal(err)
			}
			t.Chdir(g.work)
			for _, name := range casebook.DemoVisits() {
				v, _ := casebook.DemoVisit(name)
				keepVisit(t, v, "visit.json")
				for _, line := range append(lines, "followup %s") {
					g.hold(t, v, strings.Replace(line, "%s", "visit.json", 1))
				}
			}
			files, _ := filepath.Glob(filepath.Join(g.root, "testdata", "case", "*.txt"))
			for _, file := range files {
				v := workedVisit(t, file)
				keepVisit(t, v, "visit.json")
				for _, line := range lines {
					g.hold(t, v, strings.Replace(line, "%s", "visit.json", 1)+" --systems "+filepath.Join(g.root, "testdata", "case", "range.csv"))
				}
			}
		})
	}
}

// hold runs a command about a visit and looks for English in what it says.
func (g *golden) hold(t *testing.T, v *assess.Visit, line string) {
	t.Helper()
	g.text.Reset()
	g.run(t, "", strings.Fields(line)...)
	_, said, _ := strings.Cut(g.text.String(), "\n")
	said = onOneLine(said)
	for _, foreign := range foreignTexts(v) {
		said = strings.ReplaceAll(said, foreign, "…")
	}
	for _, found := range english.FindAllString(said, 3) {
		t.Errorf("%s: %q is English", line, found)
	}
}

// foreignTexts are the texts that stay as they are in every language: titles of
// sources, and what was typed.
func foreignTexts(v *assess.Visit) []string {
	var list []string
	add := func(texts ...string) {
		for _, text := range texts {
			for line := range strings.SplitSeq(text, "\n") {
				if line = strings.TrimSuffix(onOneLine(line), "."); strings.Contains(line, " ") {
					list = append(list, line)
				}
			}
		}
	}
	for _, s := range cite.All() {
		add(s.Title)
	}
	for _, a := range v.Answers {
		add(a.Said, a.Note)
	}
	for _, d := range v.Demonstrations {
		add(d.Words, d.Because, d.Next.Step)
		for _, c := range d.Cuts {
			add(c.Why)
		}
		for _, o := range d.Objections {
			add(o.Said, o.Answer)
		}
	}
	slices.SortFunc(list, func(a, b string) int { return len(b) - len(a) }) // one may hold another
	return list
}

func onOneLine(s string) string {
	return strings.Join(strings.Fields(strings.NewReplacer("“", " ", "”", " ", "|", " ").Replace(s)), " ")
}
