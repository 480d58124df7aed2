package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/report"
	"cutbrief/report/pdf"
	"cutbrief/report/text"
	"cutbrief/rules"
	"cutbrief/rules/cite"
	"cutbrief/rules/cost"
	"cutbrief/rules/message"
	"cutbrief/rules/message/catalog"
	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// heldTo is the catalog of a language, and fails for every message it has no words
// for.
func heldTo(t *testing.T, tag string) *message.Catalog {
	return catalog.Watched(tag, func(id message.ID) { t.Errorf("no words of %s: %s", tag, id) })
}

// inEachLanguage runs a test with the catalog of every language.
func inEachLanguage(t *testing.T, test func(t *testing.T, book *message.Catalog)) {
	for _, tag := range catalog.Languages() {
		t.Run(tag, func(t *testing.T) { test(t, heldTo(t, tag)) })
	}
}

// Every question with all that belongs to it has words, for every metal.
func TestEveryQuestionIsSaid(t *testing.T) {
	inEachLanguage(t, sayQuestions)
}

func sayQuestions(_ *testing.T, book *message.Catalog) {
	for _, g := range assess.Groups() {
		book.Print(g.Title.Message())
	}
	for _, q := range assess.Catalogue() {
		for _, id := range []message.ID{q.Name, q.Why, q.Help, q.Example} {
			book.Print(id.Message())
		}
		for _, o := range q.Options {
			book.Print(o.Text.Message())
		}
		for _, m := range metal.List() {
			step := assess.Step{Question: q}
			if q.PerMetal {
				step.Metal = m.ID
			}
			book.Print(step.Text())
			book.Print(step.Name())
		}
	}
}

// Everything the rules name has German words.
func TestEveryTableIsSaidInGerman(t *testing.T) {
	book := heldTo(t, "de")
	say := func(ids ...message.ID) {
		for _, id := range ids {
			book.Print(id.Message())
		}
	}
	for _, r := range rules.Table() {
		say(r.Title, r.Words, r.Cure, r.Almost)
	}
	for _, r := range rules.Requirements() {
		say(report.RequirementName(r))
	}
	for _, m := range metal.List() {
		say(m.Name)
	}
	for _, v := range []rules.Verdict{rules.Met, rules.Borderline, rules.Short, rules.NotKnown} {
		say(message.ID(v))
	}
	for _, s := range []rules.Status{rules.Fits, rules.FitsAfterSite, rules.FitsNearly, rules.FallsShort} {
		say(message.ID(s))
	}
	for _, k := range []cite.Trust{cite.Published, cite.Practice, cite.Memory, cite.Invented, cite.Given} {
		say(message.ID(k))
	}
	for _, s := range cite.All() {
		if s.Title == strings.ToLower(s.Title[:1])+s.Title[1:] && strings.ContainsAny(s.Title[:1], "abcdefghijklmnopqrstuvwxyz") {
			say(message.ID(s.Title)) // a description; the title of a document stays
		}
	}
	for _, p := range []cost.Process{cost.OxyAcetylene, cost.OxyPropane, cost.Disc, cost.BandSaw, cost.Shear, cost.Nibbler, cost.SentOut, cost.OtherPlasma, cost.Unknown, cost.Plasma} {
		say(message.ID(p.Name()))
	}
	for p := cost.Cutting; p <= cost.Trips; p++ {
		say(message.ID(p.Name()))
	}
}

// tables are the files whose texts are all shown as they stand: cautions,
// checklists, cuts of the demonstration, evidence, flags.
var tables = []string{
	"rules/demonstration/catalogue.go", "rules/demonstration/caution.go", "rules/demonstration/checklist.go", "rules/demonstration/accuracy.go", "rules/demonstration/plan.go",
	"rules/table.go", "rules/demand.go", "rules/evidence.go", "rules/flags.go",
}

var verbs = regexp.MustCompile(`%(\.\d)?[dfs]`)

// Every sentence of these tables has German words, whether a visit leads to it or
// not.
func TestEverySentenceOfTheTablesIsSaidInGerman(t *testing.T) {
	book := heldTo(t, "de")
	for _, name := range tables {
		file, err := parser.ParseFile(token.NewFileSet(), filepath.Join("..", "..", name), nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		n := 0
		ast.Inspect(file, func(node ast.Node) bool {
			if pair, isPair := node.(*ast.KeyValueExpr); isPair && fmt.Sprint(pair.Key) == "When" {
				return false // for the manual
			}
			lit, ok := node.(*ast.BasicLit)
			if !ok || lit.Kind != token.STRING {
				return true
			}
			if s, _ := strconv.Unquote(lit.Value); strings.Count(s, " ") > 1 && !strings.HasPrefix(s, ", ") && !strings.HasSuffix(s, " ") {
				book.Print(message.ID(s).Message())
				n++
			}
			return true
		})
		if n == 0 {
			t.Errorf("%s: no sentence found", name)
		}
	}
}

// sayPage builds and prints what a customer is handed, and what the interview
// shows beside it.
func sayPage(book *message.Catalog, v *assess.Visit, offered system.Range, pages bool) {
	for _, style := range []unit.Style{unit.Metric, unit.Inch} {
		o := report.Options{Style: style, Checklist: true, Working: true, Pictures: true, Words: book}
		brief := report.Build(v, offered, o)
		text.Render(brief, 80)
		text.Render(brief, text.Markdown)
		if pages {
			pdf.Render(brief, "a4")
			pdf.Render(brief, "letter")
		}
		if f, err := report.Follow(v, offered, o); err == nil {
			text.Letter(f, 80)
		}
	}
	report.SoFar(book, v, offered)
}

// sayRest builds and prints everything else that can be printed of a visit.
func sayRest(book *message.Catalog, v *assess.Visit, offered system.Range) {
	for _, style := range []unit.Style{unit.Metric, unit.Inch} {
		o := report.Options{Style: style, Words: book}
		sheet := report.Costs(v, offered, o)
		text.CostSheet(sheet, 80)
		text.CostSheet(sheet, text.Markdown)
		if c, err := report.Compare(v, offered, o, nil); err == nil {
			text.Comparison(c, 80)
			text.Comparison(c, text.Markdown)
		}
		text.Bench(report.AtBench(v, offered, o), 80)
	}
	text.Next(book, report.Next(book, v, offered), 80)
}

// sayAll says a visit in a language: all of it in German, in another language the
// page and what goes with it.
func sayAll(book *message.Catalog, v *assess.Visit, offered system.Range, pages bool) {
	sayPage(book, v, offered, pages)
	if book.Tag() == "de" {
		sayRest(book, v, offered)
	}
}

// No text of a page, account, letter or plan is left unsaid: for every sample and
// every worked case.
func TestEveryPageIsSaid(t *testing.T) {
	inEachLanguage(t, func(t *testing.T, book *message.Catalog) {
		for _, name := range casebook.DemoVisits() {
			v, _ := casebook.DemoVisit(name)
			sayAll(book, v, system.Demo(), true)
		}
		sayAll(book, assess.New("new", time.Date(2026, 3, 12, 0, 0, 0, 0, time.UTC)), system.Demo(), true)
		offered := caseRange(t)
		files, _ := filepath.Glob("../../testdata/case/*.txt")
		if len(files) < 40 {
			t.Fatalf("%d worked cases", len(files))
		}
		for _, file := range files {
			sayAll(book, caseVisit(t, file), offered, false)
		}
	})
}

// Nor for any visit at all.
func TestEveryRandomPageIsSaid(t *testing.T) {
	demo := system.Demo()
	inEachLanguage(t, func(t *testing.T, book *message.Catalog) {
		rapid.Check(t, func(rt *rapid.T) { sayAll(book, randomVisit(rt), demo, false) })
	})
}

func caseRange(t *testing.T) system.Range {
	t.Helper()
	f, err := os.Open("../../testdata/case/range.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	offered, _ := system.Read(f, "range.csv")
	return offered
}

// caseVisit reads the answers of a worked case: "fact/metal: said" a line.
func caseVisit(t *testing.T, file string) *assess.Visit {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	v := assess.New("case", time.Date(2026, 1, 2, 3, 4, 5, 0, time.UTC))
	for line := range strings.SplitSeq(strings.TrimSpace(string(data)), "\n") {
		key, said, found := strings.Cut(line, ": ")
		if !found || strings.HasPrefix(line, "#") || strings.HasPrefix(line, "> ") {
			continue
		}
		fact, of, _ := strings.Cut(key, "/")
		q, ok := assess.Find(rules.Fact(fact))
		if !ok {
			t.Fatalf("%s: no question %q", file, fact)
		}
		step := assess.Step{Question: q, Metal: metal.ID(of)}
		var a assess.Answer
		switch {
		case said == "?":
			a = assess.NotKnown(step)
		case q.Form == assess.FormOne || q.Form == assess.FormSeveral:
			a, err = v.Choose(step, strings.Split(said, ", "))
		default:
			a, _, err = v.Read(step, said)
		}
		if err != nil {
			t.Fatal(err)
		}
		v.Set(a)
	}
	return v
}
