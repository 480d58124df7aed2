package practice

import (
	"errors"
	"strings"
	"testing"
	"unicode"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/rules"
	"cutbrief/rules/message/catalog"
	"cutbrief/rules/system"
)

func meet(t *testing.T, name string) *casebook.Session {
	t.Helper()
	for _, c := range casebook.Cases() {
		if c.Name == name {
			return casebook.Start(&c, system.Demo())
		}
	}
	t.Fatalf("no case %s", name)
	return nil
}

// talkTo runs a practice on lines and returns what was printed.
func talkTo(t *testing.T, s *casebook.Session, lines ...string) (string, casebook.Mark, bool) {
	t.Helper()
	var out strings.Builder
	m, marked, err := Lines(strings.NewReader(strings.Join(append(lines, ""), "\n")), &out, s, nil)
	if err != nil {
		t.Fatal(err)
	}
	return out.String(), m, marked
}

func TestWords(t *testing.T) {
	for _, c := range []struct {
		name  string
		lines []string
		shows string
		used  int
	}{
		{"asking costs a minute", []string{"ask"}, "(41 minutes left)", 1},
		{"a note costs none", []string{"mild steel"}, "Noted: mild steel.", 0},
		{"by number", []string{"1, 3"}, "Noted: mild steel, stainless.", 0},
		{"a note that is none", []string{"gold"}, `Not noted: metals: "gold" is not one of the choices.`, 0},
		{"an empty line goes on", []string{"1", ""}, "How thick is the mild steel", 0},
		{"back", []string{"1", "next", "back"}, "Noted: mild steel.", 0},
		{"back at the first", []string{"back"}, "no further question in that direction", 0},
		{"the echo", []string{"1", "", "1/4 in"}, "Noted: 1/4 in = 6.4 mm.", 0}, // 6.35 mm
		{"not known", []string{"1", "", "not known"}, "Noted: not known.", 0},
		{"measured", []string{"1", "", "6 mm", "measured"}, "Kept as measured.", 0},
		{"again before asking", []string{"again"}, "Not done: that has not been asked yet.", 0},
		{"a caliper on no piece", []string{"measure"}, "Not done: there is no piece of that to hold a caliper to.", 0},
		{"vague, then a figure", []string{"1", "", "ask", "again"}, "6 mm", 2},
		{"the caliper", []string{"1", "", "measure"}, "6 mm", 3},
		{"the plate", []string{"plate"}, "air delivery 300 l/min; air receiver 150 l", 3},
		{"the breaker", []string{"breaker"}, "breaker 32 A", 3},
		{"help", []string{"help"}, "Choose all the metals you cut", 0},
		{"list and go", []string{"1", "list", "go 3"}, "What is the thickest mild steel you cut often", 0},
		{"go nowhere", []string{"go 99"}, "There is no question 99.", 0},
		{"so far", []string{"1", "so far"}, "Capacity needed so far: not known yet.", 0},
		{"clear", []string{"1", "clear", "list"}, "1. metals: not asked", 0},
		{"done and back", []string{"done", "back"}, "Type one number, or back to go on asking.", 0},
		{"quit", []string{"quit"}, "left before its mark, and is not counted", 0},
		{"the end of the input", nil, "The input has ended before the mark.", 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := meet(t, "bench-top")
			out, _, marked := talkTo(t, s, c.lines...)
			if !strings.Contains(out, c.shows) || s.Used() != c.used || marked {
				t.Errorf("%q is not in, or %d minutes are not %d:\n%s", c.shows, s.Used(), c.used, out)
			}
		})
	}
}

// A note is an answer of a real interview, with how it is known.
func TestNotesAreThoseOfTheInterview(t *testing.T) {
	s := meet(t, "bench-top")
	talkTo(t, s, "1", "", "measured", "6")
	a, _ := s.Notes.Answer(rules.Asked{Fact: rules.FactEveryday, Metal: "mild-steel"})
	if a.Said != "6" || a.Unit != "mm" || a.State != assess.Measured {
		t.Errorf("%+v", a)
	}
}

func TestTheWholePractice(t *testing.T) {
	s := meet(t, "bench-top")
	out, m, marked := talkTo(t, s, "ask", "1", "done", "nine", "running cost", "12", "3", "99", "8, 13", "why", "page", "sing", "quit")
	if !marked || !m.RightSystem || !m.RightDecides || !m.Proven || strings.Count(out, "HOW IT WENT") != 2 {
		t.Errorf("%v %s\n%s", marked, m.Summary(), out)
	}
	for _, want := range []string{"Demo 45: rated 12 mm, 45 A, 14 kg\n", `"nine" is none of the numbers.`, `"12" is none of the numbers.`, `"99" is none of the numbers.`, "Clean cut [clean-cut]: needs 10 mm, gives 12 mm", "Type why for how the right answer is derived"} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not in:\n%s", want, out)
		}
	}
}

func TestThatNoneFitsIsAnAnswer(t *testing.T) {
	out, m, marked := talkTo(t, meet(t, "ship-plates"), "done", "1", "0")
	if !marked || !m.RightSystem || !strings.Contains(out, "no system of this range fits, and you said so") {
		t.Error(out)
	}
}

// With German words all is said in German, and the words of the dialogue can be
// typed in German as well as in ours.
func TestGermanLines(t *testing.T) {
	s := meet(t, "bench-top")
	var out strings.Builder
	lines := []string{"fragen", "1", "weiter", "fragen", "Nachfragen", "etwa 6 mm", "Gemessen", "liste", "gehe 5", "repair", "zurück", "?", "fertig", "neun", "laufende Kosten", "3", "8", "warum", "beenden"}
	if _, marked, err := Lines(strings.NewReader(strings.Join(lines, "\n")), &out, s, catalog.For("de")); err != nil || !marked {
		t.Fatal(marked, err)
	}
	for _, want := range []string{"Übung, Zeile für Zeile.", "Noch 42 Minuten.", "Edda Brandle, Inhaberin", "\"Kommen Sie herein.", "Notiert: Baustahl.", "2. alltägliche Dicke, Baustahl: etwa 6 mm",
		`"neun" ist keine der Nummern.`, "SO IST ES GELAUFEN", "Anlage richtig, entscheidende Anforderung richtig", "[recommendation]: Demo 45"} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("%q is not in:\n%s", want, out.String())
		}
	}
	for _, english := range []string{" your ", "minutes", "Noted", "Type "} {
		if strings.Contains(out.String(), english) {
			t.Errorf("%q is said", english)
		}
	}
}

// When the patience is used up the customer goes; notes can still be taken.
func TestTheCustomerGoesInLines(t *testing.T) {
	s := meet(t, "pasture-fence")
	var lines []string
	for range 9 {
		lines = append(lines, "plate")
	}
	out, _, _ := talkTo(t, s, append(lines, "galvanised-steel", "ask", "done")...)
	for _, want := range []string{"The time is used up.", "Not done: the customer has gone back to work.", "Noted: coated or galvanised steel.", "Which requirement decides this sale?"} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not in:\n%s", want, out)
		}
	}
}

func TestNoControlSequenceIsWritten(t *testing.T) {
	out, _, _ := talkTo(t, meet(t, "bench-top"), "x\x1b[2Jx", "go \x1b[2J", "1", "", "6\x1b[31m mm", "done", "\x1b[2J", "5", "3", "\x1b[2J\u202e")
	for _, r := range out {
		if r != '\n' && (unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r)) {
			t.Fatalf("%q is written:\n%q", r, out)
		}
	}
}

type broken struct{}

func (broken) Read([]byte) (int, error) { return 0, errors.New("input/output error") }

func TestABrokenInputIsReported(t *testing.T) {
	if _, _, err := Lines(broken{}, &strings.Builder{}, meet(t, "bench-top"), nil); err == nil {
		t.Error("not reported")
	}
}
