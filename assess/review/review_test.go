package review

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

var today = time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC)

// visit is an invented visit: production in 6.35 mm mild steel needs 12.7 mm
// rated (twice the thickness), which the built-in 50 A system gives exactly and
// the 30 A system, rated 8 mm, does not.
func visit(t testing.TB, answers ...string) *assess.Visit {
	t.Helper()
	v := assess.New("x", today)
	base := []string{"company: A", "rep: R", "date: 2026-11-01", "metals: mild-steel", "use: production", "everyday-thickness/mild-steel: 6.35 mm", "thickest-clean/mild-steel: 6.35 mm"}
	for _, line := range append(base, answers...) {
		tell(t, v, line)
	}
	return v
}

// tell gives one answer, such as "thickest-clean/stainless: 3/8 in".
func tell(t testing.TB, v *assess.Visit, line string) {
	t.Helper()
	key, said, _ := strings.Cut(line, ": ")
	fact, of, _ := strings.Cut(key, "/")
	q, ok := assess.Find(rules.Fact(fact))
	if !ok {
		t.Fatalf("no question %q", fact)
	}
	step := assess.Step{Question: q, Metal: metal.ID(of)}
	a, err := assess.Answer{}, error(nil)
	if q.Form == assess.FormOne || q.Form == assess.FormSeveral {
		a, err = v.Choose(step, strings.Split(said, ", "))
	} else {
		a, _, err = v.Read(step, said)
	}
	if err != nil {
		t.Fatal(err)
	}
	v.Set(a)
}

func judge(t testing.TB, v *assess.Visit) Row {
	t.Helper()
	return NewCriteria(system.Demo(), today).Judge("a.json", v)
}

func reason(r Row, f Flag) string {
	for _, raised := range r.Raised() {
		if raised.Flag == f {
			return raised.Reason.String()
		}
	}
	return ""
}

func TestARowSaysWhatTheListShows(t *testing.T) {
	r := judge(t, visit(t))
	if r.Company != "A" || r.Rep != "R" || r.Date != "2026-11-01" || r.Metals != "mild-steel" || r.Thickest != 6.35 || r.Stage != Judged || r.System == "" || r.Verdict != Open {
		t.Errorf("got %+v", r)
	}
}

// 12.7 mm is needed; 8 mm falls short of it.
func TestSmallerThanTheNeed(t *testing.T) {
	v := visit(t)
	v.Recommended = &assess.Recommendation{Outcome: rules.Recommended, System: "demo-30", Rules: rules.Edition}
	r := judge(t, v)
	if r.Verdict != FallsShort || r.System != "demo-30" {
		t.Errorf("got %s, %s", r.Verdict, r.System)
	}
	if got := reason(r, Smaller); !strings.Contains(got, "needs 12.7 mm, Demo 30 gives 8 mm") {
		t.Errorf("reason %q", got)
	}
	if got := reason(r, Differs); !strings.Contains(got, "system demo-30, today demo-") || !strings.Contains(got, "another range") {
		t.Errorf("reason %q", got)
	}
}

// Field by field: 12.7 mm are needed, 10 were; the rules were of the edition before.
func TestWhatDiffersIsSaidFieldByField(t *testing.T) {
	v := visit(t)
	job, _ := v.Job()
	v.Recommended = assess.Conclude(rules.Evaluate(job, system.Demo()), system.Fingerprint(system.Demo()))
	today := v.Recommended.System
	v.Recommended.System, v.Recommended.Rated, v.Recommended.Rules = "demo-999", unit.Known(unit.Millimetre(10)), rules.Edition+1
	want := fmt.Sprintf("system demo-999, today %s; rated thickness needed 10 mm, today 12.7 mm (rules of edition %d, today %d)", today, rules.Edition+1, rules.Edition)
	if got := reason(judge(t, v), Differs); got != want {
		t.Errorf("got  %q\nwant %q", got, want)
	}
}

// Without a metal and a thickness nothing can be sized: there is no system yet, and
// both are named. With every answer of a sample told, nothing is open.
func TestOpenQuestionsThatMatter(t *testing.T) {
	v := assess.New("x", today)
	tell(t, v, "company: A")
	r := judge(t, v)
	if got := reason(r, StillOpen); r.Verdict != NotYet || !strings.Contains(got, "metals") {
		t.Errorf("%s, %q", r.Verdict, got)
	}
	tell(t, v, "metals: stainless")
	if got := reason(judge(t, v), StillOpen); strings.Contains(got, "metals") || !strings.Contains(got, "thickest clean cut, stainless") {
		t.Errorf("%q", got)
	}
	whole, _ := casebook.DemoVisit("farm-repair")
	if r := judge(t, whole); r.Flags.Has(StillOpen) || r.Verdict != Firm {
		t.Errorf("%s, %q", r.Verdict, reason(r, StillOpen))
	}
}

// What was concluded with the same rules, range and answers does not differ.
func TestNothingDiffersTheSameDay(t *testing.T) {
	offered := system.Demo()
	for _, name := range casebook.DemoVisits() {
		v, _ := casebook.DemoVisit(name)
		job, _ := v.Job()
		v.Recommended = assess.Conclude(rules.Evaluate(job, offered), system.Fingerprint(offered))
		if r := judge(t, v); r.Flags.Has(Differs) || r.Flags.Has(Smaller) {
			t.Errorf("%s: %s", name, r.Why)
		}
		v.Recommended.Critical = rules.AcrossGaps
		if r := judge(t, v); v.Recommended.Critical != r.Critical && !strings.Contains(reason(r, Differs), "the answers were changed since") {
			t.Errorf("%s: a change is not seen: %s", name, r.Why)
		}
	}
}

// 10 m a week is less than the 20 m below which production is doubted.
func TestProductionThatTheMetresDeny(t *testing.T) {
	if r := judge(t, visit(t, "cut-length: 10 m a week")); !strings.Contains(reason(r, Contradicted), "less than 20 m a week") {
		t.Errorf("got %q", r.Why)
	}
	if r := judge(t, visit(t, "cut-length: 200 m a week")); r.Flags.Has(Contradicted) {
		t.Errorf("got %q", r.Why)
	}
}

func TestOverruledWithoutAReason(t *testing.T) {
	v := visit(t)
	v.Overrule = &rules.Overrule{Requirement: rules.EdgeQuality, Reason: "  "}
	if got := reason(judge(t, v), Unreasoned); got != "the rep chose edge quality and gave no reason" {
		t.Errorf("got %q", got)
	}
	v.Overrule.Reason = "they paint it"
	if judge(t, v).Flags.Has(Unreasoned) {
		t.Error("a reason is not seen")
	}
}

// What was ordered counts before what was recommended.
func TestOrderedSmallerThanTheNeed(t *testing.T) {
	v := visit(t)
	v.Recommended = &assess.Recommendation{Outcome: rules.Recommended, System: "demo-125"}
	v.Demonstrations = []assess.Demonstration{{Date: "2026-11-20", System: "demo-30", Outcome: assess.Ordered, Next: assess.Next{Date: "2026-12-01"}}}
	r := judge(t, v)
	if !r.Flags.Has(Smaller) || r.System != "demo-30" || r.Outcome != "order" || r.Due != "2026-12-01" {
		t.Errorf("got %+v", r)
	}
}

// The rep chose speed; the timed straight cut at the everyday thickness proves
// it, and a cut of a mesh does not.
func TestADemonstrationThatProvesNothing(t *testing.T) {
	v := visit(t)
	v.Overrule = &rules.Overrule{Requirement: rules.Speed, Reason: "they wait for parts"}
	v.Demonstrations = []assess.Demonstration{{Date: "2026-11-20", Cuts: []assess.ShownCut{{Cut: "mesh"}}}}
	if got := reason(judge(t, v), Unproven); !strings.Contains(got, "no cut shown on 2026-11-20 proves cutting speed; one that could:") {
		t.Errorf("got %q", got)
	}
	v.Demonstrations[0].Cuts = []assess.ShownCut{{Cut: "everyday-straight"}}
	if r := judge(t, v); r.Flags.Has(Unproven) {
		t.Errorf("got %q", r.Why)
	}
}

// "Not known" was asked; only what was never asked is skipped.
func TestSafetyQuestionsSkipped(t *testing.T) {
	r := judge(t, visit(t, "eye-protection: none"))
	if got := reason(r, Unsafe); got != "not asked: ventilation, hot-work limits" && !strings.HasPrefix(got, "not asked: ventilation, ") {
		t.Errorf("got %q", got)
	}
	r = judge(t, visit(t, "eye-protection: none", "ventilation: none", "hot-work: none"))
	if r.Flags.Has(Unsafe) {
		t.Errorf("got %q", r.Why)
	}
}

func TestAnAnswerThatCannotBeUnderstood(t *testing.T) {
	v := visit(t)
	v.Set(assess.Answer{Question: rules.FactThickest, Metal: metal.MildSteel, Said: "12 kg", State: assess.Told})
	if got := reason(judge(t, v), Unclear); !strings.Contains(got, "12 kg") {
		t.Errorf("got %q", got)
	}
}

func TestFlagsStandInTheirOrder(t *testing.T) {
	var r Row
	for _, f := range []Flag{Twice, Smaller, Overdue, Damaged, Smaller} {
		r.raise(f, message.Text(f.Kind().ID+"\nreason"))
	}
	var got []string
	for _, raised := range r.Raised() {
		got = append(got, raised.Reason.String())
	}
	if want := []string{"damaged reason", "smaller reason", "overdue reason", "twice reason"}; !slices.Equal(got, want) || r.Flags.Count() != 4 {
		t.Errorf("got %v", got)
	}
	if got := r.Flags.String(); got != "damaged, smaller, overdue, twice" {
		t.Errorf("got %s", got)
	}
}

func TestTogether(t *testing.T) {
	var rows Rows
	for i, name := range []string{"hill  sons ltd", "Hill & Sons Ltd.", "Other", "", "", "HILL SONS, LTD"} {
		rows.Add(&Row{Path: string("213456"[i]), Company: name})
	}
	rows.Together()
	var got []string
	for r := range rows.All() {
		got = append(got, r.Path+": "+reason(*r, Twice))
	}
	want := []string{"2: also in 1", "1: also in 2", "3: ", "4: ", "5: ", "6: also in 1"}
	if !slices.Equal(got, want) {
		t.Errorf("got %q", got)
	}
}

// Due yesterday is overdue, today is not, and neither is what is settled.
func TestOverdue(t *testing.T) {
	for _, c := range []struct {
		due     string
		outcome assess.Outcome
		want    string
	}{{"2026-11-24", "", "the next step was due on 2026-11-24"}, {"2026-11-24", assess.Quote, "the next step was due on 2026-11-24"}, {"2026-11-25", "", ""}, {"2026-11-24", assess.Ordered, ""}, {"", "", ""}} {
		r := Row{Due: c.due, Outcome: string(c.outcome)}
		if r.overdue("2026-11-25"); reason(r, Overdue) != c.want {
			t.Errorf("%+v: %q", c, reason(r, Overdue))
		}
	}
}

// A row keeps the path that the disk has, so that its file can be opened, and
// shows it made fit to be shown.
func TestARowFindsItsFile(t *testing.T) {
	name := "Cafe\u0301 \u202e " + strings.Repeat("long ", 30) + ".json"
	dir := folder(t, map[string]string{name: "{"})
	o := Options{Index: filepath.Join(t.TempDir(), "folder.index"), Now: later}
	for _, pass := range []string{"read", "out of the index"} {
		rows, _ := read(t, dir, o)
		r, found := rows[name]
		if !found {
			t.Fatalf("%s: no row of that path in %v", pass, rows)
		}
		if _, err := os.Stat(filepath.Join(dir, r.Path)); err != nil {
			t.Error(pass, err)
		}
		if shown := r.ShownPath(); !strings.HasPrefix(shown, "Caf\u00e9 <U+202E> long") {
			t.Errorf("%s: shown as %q", pass, shown)
		}
	}
}

// folder writes files below a new folder, old enough for the index.
func folder(t testing.TB, files map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	for path, content := range files {
		write(t, dir, path, content, time.Now().Add(-time.Hour))
	}
	return dir
}

func write(t testing.TB, dir, path, content string, at time.Time) {
	t.Helper()
	name := filepath.Join(dir, filepath.FromSlash(path))
	if err := os.MkdirAll(filepath.Dir(name), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, []byte(content), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Chtimes(name, at, at); err != nil {
		t.Fatal(err)
	}
}

func encoded(t testing.TB, v *assess.Visit) string {
	t.Helper()
	data, err := v.Encode()
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// later is long enough after the files were written for the index to trust them.
func later() time.Time { return time.Now().Add(time.Hour) }

// read returns the rows of a folder by path.
func read(t testing.TB, dir string, o Options) (map[string]Row, Totals) {
	t.Helper()
	if o.Criteria == nil {
		o.Criteria = NewCriteria(system.Demo(), today)
	}
	if o.Now == nil {
		o.Now = later
	}
	rows := map[string]Row{}
	totals, err := Read(context.Background(), dir, o, func(batch []*Row) {
		for _, r := range batch {
			rows[r.Path] = *r
		}
	})
	if err != nil {
		t.Fatal(err)
	}
	return rows, totals
}

// Every file is a row: a damaged, foreign or newer one with its reason, and all
// are counted.
func TestNoFileIsHidden(t *testing.T) {
	files := map[string]string{
		"good.json": encoded(t, visit(t)), "torn.json": encoded(t, visit(t))[:200], "in/foreign.json": `{"format":"shopping-list"}`,
		"newer.json": `{"format":"cutbrief-visit","version":99}`, "large.json": strings.Repeat(" ", assess.MaxSize+1), "empty.json": "",
	}
	dir := folder(t, files)
	want := map[string]Flag{"torn.json": Damaged, "in/foreign.json": Foreign, "newer.json": Newer, "large.json": Unreadable, "empty.json": Damaged}
	rows, totals := read(t, dir, Options{})
	if len(rows) != len(files) || totals.Files != len(files) || totals.Unread != len(want) {
		t.Errorf("%d rows, %+v", len(rows), totals)
	}
	for path, flag := range want {
		r := rows[path]
		if r.Stage != Unread || !r.Flags.Has(flag) || reason(r, flag) == "" {
			t.Errorf("%s: %s %q", path, r.Flags, r.Why)
		}
	}
}
