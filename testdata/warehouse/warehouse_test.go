// Package warehouse shows that another program, here a real database engine, gets
// the totals of cutbrief review out of the files and of the export, with the
// queries beside this file. It is a module of its own, so that cutbrief does not
// depend on the engine.
package warehouse

import (
	"bytes"
	"database/sql"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	_ "github.com/duckdb/duckdb-go/v2"
)

// visits is how many invented visits are read.
const visits = 300

// export is the command that writes what the queries over export.ndjson read.
var export = []string{"review", "visits", "--format", "ndjson", "--fields", "date,company,rep,metals,thickest,critical,system,verdict,outcome,due,flags,unanswered,month,file"}

// firm is a folder of invented visits, its export, and the engine in it.
type firm struct {
	t       testing.TB
	program string
	db      *sql.DB
}

// newFirm builds the program and writes the folder. The test runs in it, as the
// queries name files below the present folder.
func newFirm(t *testing.T) *firm {
	dir := t.TempDir()
	f := &firm{t: t, program: filepath.Join(dir, "cutbrief")}
	build := exec.Command("go", "build", "-o", f.program, "./cmd/cutbrief")
	build.Dir = filepath.Join("..", "..")
	if out, err := build.CombinedOutput(); err != nil {
		t.Fatalf("build: %v\n%s", err, out)
	}
	t.Chdir(dir)
	f.run("many", fmt.Sprint(visits), "visits")
	f.vary()
	if err := os.WriteFile("export.ndjson", f.run(export...), 0o600); err != nil {
		t.Fatal(err)
	}
	db, err := sql.Open("duckdb", "")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { db.Close() })
	f.db = db
	return f
}

func (f *firm) run(args ...string) []byte {
	f.t.Helper()
	c := exec.Command(f.program, args...)
	c.Env = append(os.Environ(), "HOME="+filepath.Dir(f.program), "XDG_CACHE_HOME=")
	var failure bytes.Buffer
	c.Stderr = &failure
	out, err := c.Output()
	if err != nil {
		f.t.Fatalf("%v: %v\n%s", args, err, failure.Bytes())
	}
	return out
}

// vary makes the invented visits more different than they are: outcomes, systems
// shown, times measured, questions without an answer; and three files that are no
// visits.
func (f *firm) vary() {
	files, err := filepath.Glob("visits/*/*/*/*.json")
	if err != nil || len(files) != visits {
		f.t.Fatal(len(files), err)
	}
	for i, name := range files {
		data, err := os.ReadFile(name)
		if err != nil {
			f.t.Fatal(err)
		}
		var visit map[string]any
		if json.Unmarshal(data, &visit) != nil || visit["version"] != 2.0 {
			continue
		}
		change(visit, i)
		if data, err = json.Marshal(visit); err == nil {
			err = os.WriteFile(name, data, 0o600)
		}
		if err != nil {
			f.t.Fatal(err)
		}
	}
	for name, text := range map[string]string{"torn.json": `{"format": "cutbrief-visit", "ver`, "list.json": `["milk"]`, "later.json": `{"format": "cutbrief-visit", "version": 99}`} {
		if err := os.WriteFile(filepath.Join("visits", name), []byte(text), 0o600); err != nil {
			f.t.Fatal(err)
		}
	}
}

func change(visit map[string]any, i int) {
	dropped := []string{"use", "ventilation", "breaker", "none"}[i%4]
	visit["answers"] = slices.DeleteFunc(visit["answers"].([]any), func(a any) bool { return a.(map[string]any)["question"] == dropped })
	shown, _ := visit["showings"].([]any)
	if i%2 == 0 && len(shown) == 0 {
		cut := map[string]any{"cut": "everyday-straight", "name": "Straight cut", "metal": "mild-steel", "thickness_mm": 6, "output_a": 45, "length_mm": 300, "took_s": 10 + float64(i%17), "predicted_s": 18, "result": "good"}
		shown = []any{map[string]any{"date": "2026-10-20", "system": []string{"demo-45", "demo-70", "demo-110"}[i%3], "cuts": []any{cut}}}
	}
	for _, s := range shown {
		if outcome := []string{"order", "no", "quote", "second-visit", ""}[i%5]; outcome != "" {
			s.(map[string]any)["outcome"] = outcome
		}
		visit["showings"] = shown
	}
}

// table is what a query gives, or what review counts: a line each.
type table [][]any

// query runs a query of a file.
func (f *firm) query(name string) table { return f.lines(name, f.text(name)) }

// lines runs a query.
func (f *firm) lines(name, query string) table {
	f.t.Helper()
	rows, err := f.db.Query(query)
	if err != nil {
		f.t.Fatalf("%s: %v", name, err)
	}
	defer rows.Close()
	columns, err := rows.Columns()
	if err != nil {
		f.t.Fatal(err)
	}
	var got table
	for rows.Next() {
		line, to := make([]any, len(columns)), make([]any, len(columns))
		for i := range line {
			to[i] = &line[i]
		}
		if err := rows.Scan(to...); err != nil {
			f.t.Fatal(err)
		}
		for i, v := range line {
			if n, whole := v.(int64); whole {
				line[i] = float64(n) // as JSON has it
			}
		}
		got = append(got, line)
	}
	if err := rows.Err(); err != nil {
		f.t.Fatalf("%s: %v", name, err)
	}
	return got
}

// text reads a query.
func (f *firm) text(name string) string {
	f.t.Helper()
	data, err := queries.ReadFile(name + ".sql")
	if err != nil {
		f.t.Fatal(err)
	}
	return string(data)
}

// counted are the groups that review counts by a column: the members named, and a
// line for each group.
func (f *firm) counted(by string, members ...string) (lines table, groups []map[string]any) {
	f.t.Helper()
	var doc struct{ Groups []map[string]any }
	if err := json.Unmarshal(f.run("review", "visits", "--by", by, "--format", "json"), &doc); err != nil {
		f.t.Fatal(err)
	}
	for _, g := range doc.Groups {
		lines = append(lines, picked(g, members))
	}
	return lines, doc.Groups
}

func picked(from map[string]any, members []string) (line []any) {
	for _, m := range members {
		line = append(line, from[m])
	}
	return line
}

// same fails unless both have the same lines, in any order: groups of one size may
// be in either.
func same(t *testing.T, name string, got, want table) {
	t.Helper()
	sorted := func(list table) []string {
		var lines []string
		for _, line := range list {
			lines = append(lines, fmt.Sprint(line...))
		}
		slices.Sort(lines)
		return lines
	}
	if g, w := sorted(got), sorted(want); len(w) < 2 || !reflect.DeepEqual(g, w) {
		t.Errorf("%s: the engine says\n%q\nreview says\n%q", name, g, w)
	}
}

func TestTheEngineCountsAsReviewDoes(t *testing.T) {
	f := newFirm(t)
	for name, by := range map[string]string{"verdicts": "verdict", "systems": "system", "months": "month", "folder": "month"} {
		want, _ := f.counted(by, "of", "visits")
		same(t, name, f.query(name), want)
	}
	want, _ := f.counted("critical", "of", "visits", "firm", "ordered", "lost", "waiting")
	same(t, "requirements", f.query("requirements"), want)
	same(t, "questions", f.query("questions"), f.questions())
	same(t, "measured", f.query("measured"), f.measured())
	if got, want := f.query("files"), f.files(); !reflect.DeepEqual(got, want) {
		t.Errorf("files: the engine says %v, review %v", got, want)
	}
}

// What README.md says to type makes a Parquet file of the export and counts it as
// review does.
func TestTheStepsInTheReadme(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "..", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	steps := regexp.MustCompile("(?ms)^```sql\n(.*?)^```$").FindSubmatch(text)
	if steps == nil {
		t.Fatal("README.md has no steps for an engine")
	}
	f := newFirm(t)
	convert, count, found := strings.Cut(strings.TrimSpace(string(steps[1])), "\n")
	if !found {
		t.Fatalf("two steps are expected: %s", steps[1])
	}
	if _, err := f.db.Exec(convert); err != nil {
		t.Fatal(err)
	}
	want, _ := f.counted("verdict", "of", "visits")
	same(t, "README.md", f.lines("README.md", count), want)
	for name, by := range map[string]string{"verdicts": "verdict", "systems": "system", "months": "month"} {
		want, _ := f.counted(by, "of", "visits")
		same(t, name+" over Parquet", f.lines(name, strings.ReplaceAll(f.text(name), "export.ndjson", "visits.parquet")), want)
	}
}

// questions are those without an answer, rep by rep. Review names the five
// commonest, and there are no more here.
func (f *firm) questions() (want table) {
	_, groups := f.counted("rep")
	for _, g := range groups {
		for _, q := range g["unanswered"].([]any) {
			want = append(want, append([]any{g["of"]}, picked(q.(map[string]any), []string{"question", "visits"})...))
		}
	}
	return want
}

// timings is what review says of timed cuts.
func (f *firm) timings() (doc struct {
	Files, Unread float64
	Systems       []map[string]any
}) {
	if err := json.Unmarshal(f.run("review", "visits", "--measured", "--format", "json"), &doc); err != nil {
		f.t.Fatal(err)
	}
	return doc
}

func (f *firm) measured() (want table) {
	for _, s := range f.timings().Systems {
		want = append(want, picked(s, []string{"system", "timed_cuts", "visits", "median_error_percent"}))
	}
	return want
}

// files are all files and those that are no visits, of which vary wrote three.
func (f *firm) files() table {
	doc := f.timings()
	if doc.Unread < 3 {
		f.t.Errorf("%v files are no visits", doc.Unread)
	}
	return table{{doc.Files, doc.Unread}}
}
