package assess

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"cutbrief/rules"
	"cutbrief/rules/metal"
	"cutbrief/rules/system"
)

// The worked visits: each file argues its verdict in its first line, gives the
// answers as a customer would, and says after ">" what must come out. The
// expectations were worked by hand from the rules, never taken from a run.
func TestWorkedVisits(t *testing.T) {
	offered := caseRange(t)
	files, err := filepath.Glob("../testdata/case/*.txt")
	if err != nil || len(files) < 40 {
		t.Fatalf("%d worked visits (%v); want 40 or more", len(files), err)
	}
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txt"), func(t *testing.T) {
			data, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			runCase(t, string(data), offered)
		})
	}
}

func caseRange(t *testing.T) system.Range {
	t.Helper()
	f, err := os.Open("../testdata/case/range.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	offered, findings := system.Read(f, "range.csv")
	for _, finding := range findings {
		if finding.Severity == system.Error {
			t.Fatal(finding)
		}
	}
	return offered
}

func runCase(t *testing.T, text string, offered system.Range) {
	visit := New("case", time.Date(2026, 1, 2, 3, 4, 5, 0, time.UTC))
	var expect []string
	for _, line := range strings.Split(strings.TrimSpace(text), "\n") {
		if strings.HasPrefix(line, "#") {
			continue
		}
		if want, ok := strings.CutPrefix(line, "> "); ok {
			expect = append(expect, want)
			continue
		}
		key, said, _ := strings.Cut(line, ": ")
		answerCase(t, visit, key, said)
	}
	job, problems := visit.Job()
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	result := rules.Evaluate(job, offered)
	if len(expect) == 0 {
		t.Fatal("the case expects nothing")
	}
	for _, want := range expect {
		if got := holds(result, strings.Fields(want)); got != "" {
			t.Errorf("%s: %s", want, got)
		}
	}
}

// answerCase gives one answer, by the step's fact and metal.
func answerCase(t *testing.T, visit *Visit, key, said string) {
	fact, of, _ := strings.Cut(key, "/")
	for _, q := range Catalogue() {
		if q.ID != rules.Fact(fact) {
			continue
		}
		step := Step{q, metal.ID(of)}
		var answer Answer
		var err error
		switch {
		case said == "?":
			answer = Answer{Question: q.ID, Metal: step.Metal, State: Unknown}
		case q.Form == FormOne || q.Form == FormSeveral:
			answer, err = visit.Choose(step, strings.Split(said, ", "))
		default:
			answer, _, err = visit.Read(step, said)
		}
		if err != nil {
			t.Fatal(err)
		}
		visit.Set(answer)
		return
	}
	t.Fatalf("no question %q", fact)
}

// holds checks one expectation; it returns what is there instead, or "".
func holds(r rules.Result, want []string) string {
	rest := strings.Join(want[min(2, len(want)):], " ")
	switch want[0] {
	case "outcome":
		return differs(string(r.Outcome), want[1])
	case "system":
		if r.First == nil {
			return string(r.Outcome)
		}
		return differs(r.First.System.ID, want[1])
	case "need":
		need, _ := r.Need.Get()
		figure, _ := strconv.ParseFloat(want[1], 64)
		if math.Abs(float64(need.Rated)-figure) > 0.01 {
			return strconv.FormatFloat(float64(need.Rated), 'f', 3, 64)
		}
		return ""
	case "status":
		return differs(string(judged(r, want[1]).Status), rest)
	case "check":
		return differs(string(checked(r, want[1], want[2])), strings.Join(want[3:], " "))
	case "nocheck":
		return differs(string(checked(r, want[1], want[2])), "")
	case "critical":
		return differs(string(r.Critical.Requirement), want[1])
	case "tie":
		return lacks(r.Critical.Tie, rules.Requirement(want[1]))
	case "firm":
		return differs(map[bool]string{true: "yes", false: "no"}[r.Firm], want[1])
	case "asks":
		return lacks(facts(r), rules.Fact(want[1]))
	case "flag":
		var ids []string
		for _, f := range r.Flags {
			ids = append(ids, f.ID)
		}
		return lacks(ids, want[1])
	}
	return "no such expectation"
}

func differs(got, want string) string {
	if got == want {
		return ""
	}
	return "got " + strconv.Quote(got)
}

func lacks[T ~string](list []T, want T) string {
	if slices.Contains(list, want) {
		return ""
	}
	var all []string
	for _, item := range list {
		all = append(all, string(item))
	}
	return "got only " + strings.Join(all, ", ")
}

func facts(r rules.Result) []rules.Fact {
	var list []rules.Fact
	for _, q := range r.Open {
		list = append(list, q.Asked.Fact)
	}
	return list
}

func judged(r rules.Result, id string) rules.Candidate {
	for _, c := range r.Candidates {
		if c.System.ID == id {
			return c
		}
	}
	return rules.Candidate{}
}

func checked(r rules.Result, id, rule string) rules.Verdict {
	for _, c := range judged(r, id).Checks {
		if c.Rule == rules.RuleID(rule) {
			return c.Verdict
		}
	}
	return ""
}
