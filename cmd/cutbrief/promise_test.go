package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os/exec"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"cutbrief/assess"
	"cutbrief/report"
	"cutbrief/report/export"
	"cutbrief/report/pdf"
	"cutbrief/report/text"
	"cutbrief/rules"
	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// thick and amounts are tried as answers to questions for a thickness and for
// any other quantity; what is out of range for a question leaves it open.
var thick = []string{"none", "1", "14 ga", "2", "3", "5", "6", "1/4 in", "8", "10", "3/8 in", "12", "20", "30"}

var amounts = []string{"none", "0.5", "1", "2", "3", "5", "6", "1/4 in", "8", "10", "3/8 in", "12", "16", "20", "25", "30", "45", "60", "100", "150", "230", "300", "1000", "4000"}

// randomVisit answers the questions of an interview at random, some of them not.
func randomVisit(t *rapid.T) *assess.Visit {
	v := assess.New("random", time.Date(2026, 3, 12, 14, 30, 0, 0, time.UTC))
	done := map[rules.Asked]bool{}
	for {
		steps := v.Steps()
		i := slices.IndexFunc(steps, func(s assess.Step) bool { return !done[s.Asked()] })
		if i < 0 {
			return v
		}
		done[steps[i].Asked()] = true
		answerAny(t, v, steps[i])
	}
}

// answerAny gives one answer, or none.
func answerAny(t *rapid.T, v *assess.Visit, s assess.Step) {
	name := fmt.Sprint(s.Question.ID, s.Metal)
	switch how := rapid.IntRange(0, 29).Draw(t, name); {
	case how == 0:
		return
	case how == 1:
		v.Set(assess.NotKnown(s))
		return
	}
	var a assess.Answer
	var err error
	switch s.Question.Form {
	case assess.FormOne, assess.FormSeveral:
		most := 1
		if s.Question.Form == assess.FormSeveral {
			most = 3
		}
		options := v.Options(s)
		picked := rapid.SliceOfNDistinct(rapid.IntRange(0, len(options)-1), 1, min(most, len(options)), rapid.ID[int]).Draw(t, name)
		var chosen []string
		for _, i := range picked {
			chosen = append(chosen, options[i].ID)
		}
		a, err = v.Choose(s, chosen)
	case assess.FormQuantity:
		list := amounts
		if s.Question.Kind == unit.Thickness {
			list = thick
		}
		a, _, err = v.Read(s, rapid.SampledFrom(list).Draw(t, name))
	case assess.FormDate:
		a, _, err = v.Read(s, "2026-03-12")
	default:
		a, _, err = v.Read(s, rapid.SampledFrom([]string{"Alder Vale", "7 men, 3 torches", "Łąka 12"}).Draw(t, name))
	}
	if err == nil {
		v.Set(a)
	}
}

// shortInSteel says where a system is short of a lower bound of what the rules ask of a system in mild steel,
// worked out again from the answers: the thickest regular cut times 1, 1.5 or 2
// for maintenance, mixed work and production; the rare thickest as severance;
// a pierce within the pierce thickness, or half of the clean maximum. 12 mm and
// 1/2 in are one size, so 6 % short is let pass as borderline.
func shortInSteel(j *rules.Job, s *system.System) (why []string) {
	factor := map[rules.Use]float64{rules.Mixed: 1.5, rules.Production: 2}[j.Use.Or("")]
	factor = max(factor, 1)
	beyond := func(what string, need, have unit.Millimetre) {
		if float64(need) > float64(have)*1.06+1e-9 {
			why = append(why, fmt.Sprintf("%s: %g mm needed, %g mm given", what, float64(need), float64(have)))
		}
	}
	for _, p := range j.Pieces {
		if p.Metal != metal.MildSteel {
			continue
		}
		beyond("clean cut", max(p.Everyday.Or(0), p.Thickest.Or(0))*unit.Millimetre(factor), s.Rated)
		beyond("rare thickest", p.Rarest.Or(0), s.Severance)
		if j.Start.Or(rules.AtEdge) != rules.AtEdge {
			beyond("pierce", p.Pierced.Or(0), s.Pierce.Or(s.CleanMax/2))
		}
		if slices.Contains(j.Features.Or(nil), rules.Bevels) {
			angle := float64(j.BevelAngle.Or(0)) * math.Pi / 180
			beyond("bevel", p.Bevelled.Or(0)/unit.Millimetre(math.Cos(angle)), s.Severance)
		}
	}
	return why
}

// shortOtherwise are the hard requirements that are yes or no.
func shortOtherwise(j *rules.Job, s *system.System) (why []string) {
	features := j.Features.Or(nil)
	switch {
	case slices.Contains(features, rules.Gaps) && !s.HoldsGaps:
		why = append(why, "gaps")
	case slices.Contains(features, rules.Gouging) && !s.Gouges:
		why = append(why, "gouging")
	case j.Guidance.Or("") == rules.Mechanised && !s.Mechanised:
		why = append(why, "carriage")
	}
	if j.Power.Source.Or("") != rules.Mains || j.Power.Phases.Or("") != rules.SinglePhase {
		return why
	}
	if !slices.ContainsFunc(s.Supplies, func(p system.Supply) bool { return p.Phases == 1 }) {
		why = append(why, "three phases needed, one there")
	}
	return why
}

// warnings are words that a page must hold for an answer. Source: the table of
// safety figures in testdata/reference/safety.csv, by its subjects.
var warnings = map[string]string{
	string(metal.Stainless): "chromium VI", string(metal.Galvanised): "zinc fume", string(metal.Copper): "Copper and brass fume",
	string(metal.Aluminium): "hydrogen", string(metal.CastIron): "Cast iron may spit",
	string(rules.HotWorkPermit): "permit is signed before the first arc", string(rules.HotWorkSensitive): "cannot be moved",
	string(rules.HotWorkClosed): "confined-space permit", string(rules.UpHigh): "Up high:", string(rules.InPlace): "In place:",
	string(rules.Field): "In the field:", string(rules.Gouging): "Gouging throws",
}

// always are on every page: of all requirements of the table, those that depend
// on no answer. Shade 8 is OSHA's minimum below 300 A.
var always = []string{"Filter lens shade 8", "35 ft", "at least 30 min after the last cut", "Hearing protection", "Dry gloves", "pacemaker", "No drum, tank or pipe", "licensed electrician"}

// cautionsFor is what a page must say for these answers.
func cautionsFor(j *rules.Job) []string {
	list := slices.Clone(always)
	add := func(key string) {
		if words, there := warnings[key]; there {
			list = append(list, words)
		}
	}
	for _, p := range j.Pieces {
		add(string(p.Metal))
	}
	for _, p := range j.Places.Or(nil) {
		add(string(p))
	}
	for _, f := range j.Features.Or(nil) {
		add(string(f))
	}
	if limit, told := j.HotWork.Get(); told {
		add(string(limit))
	} else {
		list = append(list, "whether this site needs a hot-work permit")
	}
	return list
}

// figures are the numbers in a text, as written.
var figures = regexp.MustCompile(`\d+(?:[.,]\d+)*`)

// strangers are the numbers of a page that are not in the data of the brief;
// what counts the rows of the plan, or a page, is let pass.
func strangers(page string, known map[string]bool) (list []string) {
	for _, n := range figures.FindAllString(page, -1) {
		if small, err := strconv.Atoi(n); !known[n] && (err != nil || small > 12) {
			list = append(list, n)
		}
	}
	return list
}

// figured is a text in the data that holds a number, and where it stands there.
type figured struct{ field, text string }

// figuredIn are the texts with a number in a brief's JSON.
func figuredIn(t *rapid.T, data []byte) (list []figured) {
	var fields any
	if err := json.Unmarshal(data, &fields); err != nil {
		t.Fatal(err)
	}
	var walk func(string, any)
	walk = func(field string, value any) {
		switch value := value.(type) {
		case string:
			if figures.MatchString(value) {
				list = append(list, figured{field, value})
			}
		case []any:
			for _, v := range value {
				walk(field, v)
			}
		case map[string]any:
			for name, v := range value {
				walk(field+"."+name, v)
			}
		}
	}
	walk("", fields)
	return list
}

// knownFigures are the numbers in the words of a brief's JSON.
func knownFigures(texts []figured) map[string]bool {
	list := map[string]bool{}
	for _, f := range texts {
		for _, n := range figures.FindAllString(f.text, -1) {
			list[n] = true
		}
	}
	return list
}

// drawn are fields that a page draws, or writes in another form: the date as a
// machine reads it, what stands at the axes of pictures, and the short form of a
// cost for a narrow column.
var drawn = []string{".date", ".speeds.", ".timeline.", ".cost.bars.brief", ".cost.by_thickness."}

// unwritten are the texts with a number that the data has and a page has not.
func unwritten(texts []figured, page string) (list []string) {
	for _, f := range texts {
		isDrawn := slices.ContainsFunc(drawn, func(field string) bool { return strings.HasPrefix(f.field, field) })
		if !isDrawn && !strings.Contains(page, joined(f.text)) {
			list = append(list, f.field+": "+f.text)
		}
	}
	return list
}

// leftOut is how a page counts what it had no room for.
var leftOut = regexp.MustCompile(`\(\d+ of \d+ left\s+out\)`)

// unescaped is Markdown as it is read: a backslash shields a mark and is no text.
func unescaped(s string) string { return strings.ReplaceAll(s, `\`, "") }

// joined is a text without spaces, so that wrapping does not matter.
func joined(s string) string { return strings.Join(strings.Fields(s), "") }

// TestThePageKeepsItsPromises makes pages of random visits. None recommends a
// system that falls short where that cannot be changed, every caution that
// metals, place and current ask for is there, figures are rounded to the safe
// side, and a page says the numbers of the data and no others.
func TestThePageKeepsItsPromises(t *testing.T) {
	offered := system.Demo()
	outcomes := map[string]int{}
	pages, rounded := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		v := randomVisit(t)
		job, problems := v.Job()
		if len(problems) > 0 {
			t.Fatalf("answers that were taken are not understood: %v", problems)
		}
		brief := report.Build(v, offered, report.Options{})
		outcomes[brief.Outcome]++
		if brief.Outcome == string(rules.Recommended) {
			keepsHardRules(t, &job, &brief, offered)
		}
		rounded += roundsSafely(t, &brief, rules.Evaluate(job, offered))
		data, err := render(export.FormatJSON, []report.Brief{brief}, "a4")
		if err != nil {
			t.Fatal(err)
		}
		plain := joined(text.Render(brief, 100))
		for _, words := range cautionsFor(&job) {
			if !strings.Contains(plain, joined(words)) {
				t.Errorf("the page lacks the caution %q", words)
			}
		}
		says := append([]string{brief.Headline, brief.Need}, brief.Because...)
		for _, b := range brief.Bars {
			says = append(says, b.Need, b.Have)
		}
		for _, words := range says {
			if !strings.Contains(plain, joined(words)) {
				t.Errorf("the page lacks %q", words)
			}
		}
		texts := figuredIn(t, data)
		if lost := unwritten(texts, plain); len(lost) > 0 {
			t.Errorf("the data says %q, the page does not:\n%s", lost, text.Render(brief, 100))
		}
		known := knownFigures(texts)
		if odd := strangers(text.Render(brief, 100)+unescaped(text.Render(brief, text.Markdown)), known); len(odd) > 0 {
			t.Errorf("the page says %q, the data does not:\n%s", odd, text.Render(brief, 100))
		}
		if rapid.IntRange(0, 9).Draw(t, "printed") == 0 { // it takes longer
			pages++
			printed(t, brief, known, cautionsFor(&job))
		}
	})
	for _, o := range []rules.Outcome{rules.Recommended, rules.NoneFits, rules.NotYet} {
		if outcomes[string(o)] == 0 {
			t.Errorf("no page came to %s: %v", o, outcomes)
		}
	}
	t.Logf("%v, %d of them printed, %d bars held to their figures", outcomes, pages, rounded)
	if rounded == 0 {
		t.Error("no bar could be held to its figures")
	}
}

// keepsHardRules fails if the system on the page falls short of a hard rule, by
// the rules or by a second reckoning of our own.
func keepsHardRules(t *rapid.T, job *rules.Job, brief *report.Brief, offered system.Range) {
	result := rules.Evaluate(*job, offered)
	first := result.First
	if first == nil || !strings.HasPrefix(brief.Headline, first.System.Name) {
		t.Fatalf("the page recommends %q", brief.Headline)
	}
	for _, c := range first.Checks {
		if r, _ := c.Rule.Find(); r.Hard && c.Verdict == rules.Short {
			t.Errorf("%s falls short in %s", first.System.ID, r.ID)
		}
	}
	if why := append(shortInSteel(job, first.System), shortOtherwise(job, first.System)...); len(why) > 0 {
		t.Errorf("%s is recommended: %q", first.System.ID, why)
	}
}

// displayed is a figure of a bar in the unit that the rules reckon in.
var displayed = regexp.MustCompile(`(\d[\d,]*(?:\.(\d+))?) (mm|A|kVA|l/min|bar|%)$`)

// figureOf reads a bar's figure, and half a step of its last digit; ok is false
// for one in another unit.
func figureOf(words string) (value, half float64, ok bool) {
	found := displayed.FindStringSubmatch(words)
	if found == nil {
		return 0, 0, false
	}
	value, err := strconv.ParseFloat(strings.ReplaceAll(found[1], ",", ""), 64)
	return value, math.Pow10(-len(found[2])) / 2, err == nil
}

// roundsSafely fails if a bar shows less needed than there is need, or more
// given than there is. Where a need is met within one step of the display, both
// may be shown to the nearest, so that 50.2 against 50.4 is not 51 against 50;
// even then no more is shown as needed than as given. It returns how many bars
// it could judge.
func roundsSafely(t *rapid.T, brief *report.Brief, r rules.Result) (judged int) {
	if r.First == nil {
		return 0
	}
	bars := brief.Bars
	for _, c := range r.First.Checks {
		if !(c.Need.Value > 0 && c.Have.Value > 0) || c.Verdict == rules.NotKnown {
			continue
		}
		bar := bars[0]
		bars = bars[1:]
		least, step, known := figureOf(bar.Need)
		most, other, also := figureOf(bar.Have)
		if !known || !also {
			continue
		}
		judged++
		safe := least >= c.Need.Value-1e-6 && most <= c.Have.Value+1e-6
		if !safe && !(c.Verdict == rules.Met && least <= most && most-c.Have.Value <= other && c.Need.Value-least <= step) {
			t.Errorf("%s: %s, %s; truly %g and %g", bar.Label, bar.Need, bar.Have, c.Need.Value, c.Have.Value)
		}
	}
	return judged
}

// printed looks at the printed page, where its text can be read back: its
// cautions and its numbers are those of the data.
func printed(t *rapid.T, brief report.Brief, known map[string]bool, cautions []string) {
	page, err := pdf.Render(brief, pdf.A4)
	if err != nil {
		t.Fatal(err)
	}
	reader, err := exec.LookPath("pdftotext")
	if err != nil {
		return
	}
	cmd := exec.Command(reader, "-raw", "-", "-") // in the order written, column by column
	cmd.Stdin = bytes.NewReader(page)
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	if odd := strangers(leftOut.ReplaceAllString(string(out), ""), known); len(odd) > 0 {
		t.Errorf("the printed page says %q, the data does not:\n%s", odd, out)
	}
	for _, words := range cautions {
		if !strings.Contains(joined(string(out)), joined(words)) {
			t.Errorf("the printed page lacks the caution %q:\n%s", words, out)
		}
	}
}
