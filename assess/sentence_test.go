package assess

import (
	"math"
	"os"
	"strings"
	"testing"

	"cutbrief/rules"
	"cutbrief/rules/unit"
)

// Two hundred invented sentences, half of them kept for wrong readings, and a hundred
// that were written without knowing the words. A wrong
// fact is worse than a missed one.
func TestUnderstand(t *testing.T) {
	for _, file := range []string{"testdata/sentences.txt", "testdata/sentences-heldout.txt"} {
		t.Run(file, func(t *testing.T) { understands(t, file) })
	}
}

func understands(t *testing.T, file string) {
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	sentences, clean, wanted, got := 0, 0, 0, 0
	for line := range strings.Lines(string(data)) {
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		metals := "mild-steel"
		if inside, behind, ok := strings.Cut(line, "] "); ok && strings.HasPrefix(inside, "[") {
			metals, line = inside[1:], behind
		}
		sentence, expected, _ := strings.Cut(line, " | ")
		v := &Visit{}
		if metals != "" {
			q, _ := Find(rules.FactMetals)
			a, err := v.Choose(Step{Question: q}, strings.Split(metals, ", "))
			if err != nil {
				t.Fatal(err)
			}
			v.Set(a)
		}
		want := map[string]string{}
		for _, fact := range strings.Split(expected, "; ") {
			if name, value, ok := strings.Cut(fact, "="); ok {
				want[name] = value
			}
		}
		found, _ := v.Understand(sentence)
		wrong := false
		for _, f := range found {
			name := string(f.Step.Question.ID)
			if f.Step.Metal != "" {
				name += "/" + string(f.Step.Metal)
			}
			value := f.Answer.Said
			if value == "" {
				value = strings.Join(f.Answer.Chosen, ", ")
			}
			switch {
			case sameSaid(f.Step, want[name], value):
				got++
			default:
				wrong = true
				t.Logf("wrong: %q: %s=%s, want %q", sentence, name, value, want[name])
			}
			delete(want, name)
			if _, answered := v.Answer(f.Answer.Asked()); answered && name != "metals" {
				t.Errorf("%q: %s is answered by being found", sentence, name)
			}
		}
		for name, value := range want {
			if value != "-" {
				t.Logf("missed: %q: %s=%s", sentence, name, value)
			}
		}
		sentences++
		if !wrong {
			clean++
		}
		if expected != "-" {
			wanted += strings.Count(expected, "=")
		}
	}
	t.Logf("%d sentences, %d without a wrong fact; %d of %d facts found", sentences, clean, got, wanted)
	if sentences < 100 || clean*100 < sentences*98 || got*100 < wanted*70 {
		t.Errorf("98 of 100 sentences without a wrong fact and 70 of 100 facts are promised")
	}
}

// sameSaid reports that two answers to a step mean the same, whatever their words:
// "half inch" and "1/2 in".
func sameSaid(s Step, a, b string) bool {
	if strings.EqualFold(a, b) || s.Question.Form != FormQuantity {
		return strings.EqualFold(a, b)
	}
	v := &Visit{}
	first, _, err1 := v.Read(s, a)
	second, _, err2 := v.Read(s, b)
	if err1 != nil || err2 != nil {
		return false
	}
	m, _ := meaningOf(s, &first, unit.Metric)
	n, _ := meaningOf(s, &second, unit.Metric)
	return m.period == n.period && math.Abs(m.reading.Quantity.Value-n.reading.Quantity.Value) < 1e-9
}

// Whatever is said, what is found can be accepted as it is, and nothing is answered
// by being found.
func FuzzUnderstand(f *testing.F) {
	for _, s := range []string{"half inch plate most days", "no 3/8 in, and 1,5 Zoll?", "6 or 8 mm - 12", "and and und", "“½ in” 230 V (single phase)"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, sentence string) {
		v := said(t, map[rules.Fact]string{rules.FactMetals: "mild-steel"})
		found, _ := v.Understand(sentence)
		if len(v.Answers) != 1 {
			t.Fatal("an answer was taken")
		}
		for _, fact := range found {
			v.Set(fact.Answer)
		}
		if _, problems := v.Job(); len(problems) > 0 {
			t.Fatal(problems)
		}
	})
}
