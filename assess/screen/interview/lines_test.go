package interview

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"testing"
	"unicode"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/assess/screen"
	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/message/catalog"
	"cutbrief/rules/system"
)

// talk runs an interview on lines and returns what was printed.
func talk(t *testing.T, v *assess.Visit, lines ...string) (string, Outcome) {
	t.Helper()
	var out strings.Builder
	disk := &memory{}
	got, err := RunLines(Options{InOrder: true, Visit: v, Range: system.Demo(), Saver: disk, Pager: disk, Input: strings.NewReader(strings.Join(lines, "\n")), Output: &out})
	if err != nil {
		t.Fatal(err)
	}
	return out.String(), got
}

func stored(v *assess.Visit, f rules.Fact) assess.Answer {
	a, _ := v.Answer(rules.Asked{Fact: f})
	return a
}

// before answers the questions before the one about metals.
var before = []string{"Alder Works", "Marta", "Mill Lane", "2026-11-25", "Jo", "mm"}

func TestWords(t *testing.T) {
	for _, c := range []struct {
		name  string
		lines []string
		shows string // in what is printed
		fact  rules.Fact
		want  assess.Answer
	}{
		{"an answer", []string{"Alder Works"}, "Who am I talking to?", "company", assess.Answer{Said: "Alder Works", State: assess.Told}},
		{"a last line without an end", []string{"Alder"}, "saved in visit.json", "company", assess.Answer{Said: "Alder", State: assess.Told}},
		{"an empty line leaves open", []string{"", "Marta"}, "Skipped.", "company", assess.Answer{}},
		{"not known", []string{"not known"}, "Who am I", "company", assess.Answer{State: assess.Unknown}},
		{"a dash is not known", []string{"-"}, "Who am I", "company", assess.Answer{State: assess.Unknown}},
		{"back", []string{"Alder", "back", "Birch"}, "So far: Alder (customer said). An empty line keeps it.", "company", assess.Answer{Said: "Birch", State: assess.Told}},
		{"back and keep", []string{"Alder", "BACK", "", "Marta"}, "An empty line keeps it.", "company", assess.Answer{Said: "Alder", State: assess.Told}},
		{"back at the first", []string{"back"}, "This is the first question.", "company", assess.Answer{}},
		{"help", []string{"help", "Alder"}, "For example: Hillside", "company", assess.Answer{Said: "Alder", State: assess.Told}},
		{"a question mark is help", []string{"?"}, "For example: Hillside", "company", assess.Answer{}},
		{"a note", []string{"note ask at the gate", "Alder"}, "counts as not known", "company", assess.Answer{Said: "Alder", State: assess.Told, Note: "ask at the gate"}},
		{"an empty note", []string{"note"}, "Type note and then the text.", "company", assess.Answer{}},
		{"assumed", []string{"assumed", "Alder"}, "will be kept as assumed", "company", assess.Answer{Said: "Alder", State: assess.Assumed}},
		{"measured afterwards", []string{"Alder", "back", "measured"}, "Kept as measured.", "company", assess.Answer{Said: "Alder", State: assess.Measured}},
		{"clear", []string{"Alder", "back", "clear"}, "Answer removed.", "company", assess.Answer{}},
		{"list and go", []string{"Alder", "list", "go 1", "Birch"}, "1. company: Alder (customer said)", "company", assess.Answer{Said: "Birch", State: assess.Told}},
		{"go nowhere", []string{"go 999"}, "There is no question 999.", "company", assess.Answer{}},
		{"quit", []string{"quit", "Alder"}, "Which company", "company", assess.Answer{}},
		{"a wrong answer is asked again", []string{"Alder", "", "", "soon", "2026-11-25"}, "Not accepted: date: \"soon\" is not a date.\nHint: give year", "date", assess.Answer{Said: "2026-11-25", State: assess.Told}},
		{"carriage returns", []string{"Alder\r", "Marta\r"}, "Where are we?", "contact", assess.Answer{Said: "Marta", State: assess.Told}},
	} {
		t.Run(c.name, func(t *testing.T) {
			v := newVisit()
			out, _ := talk(t, v, c.lines...)
			if !strings.Contains(out, c.shows) {
				t.Errorf("%q is not in:\n%s", c.shows, out)
			}
			got := stored(v, c.fact)
			if got.Said != c.want.Said || got.State != c.want.State || got.Note != c.want.Note {
				t.Errorf("stored %+v, want %+v", got, c.want)
			}
		})
	}
}

func TestChoices(t *testing.T) {
	for line, want := range map[string]string{
		"1": "mild-steel", "1, 3": "mild-steel,stainless", "3,1": "stainless,mild-steel",
		"Stainless": "stainless", "mild-steel, aluminium": "mild-steel,aluminium", "copper or brass": "copper-brass",
		"9": "", "gold": "", "1, gold": "",
	} {
		v := newVisit()
		out, _ := talk(t, v, append(before, line)...)
		if got := strings.Join(stored(v, rules.FactMetals).Chosen, ","); got != want {
			t.Errorf("%q chose %q, want %q", line, got, want)
		}
		if refused := strings.Contains(out, "Not accepted"); refused != (want == "") {
			t.Errorf("%q refused: %v\n%s", line, refused, out)
		}
	}
}

func TestTheEchoIsPrinted(t *testing.T) {
	v := newVisit()
	out, _ := talk(t, v, append(before, "1", "3/8 in")...)
	if !strings.Contains(out, "Understood: 3/8 in = 9.5 mm") { // 3/8 × 25.4 = 9.525
		t.Error(out)
	}
}

func TestALongTextEndsWithADot(t *testing.T) {
	v := newVisit()
	for _, g := range assess.Groups() {
		if g.ID != assess.GroupToday {
			v.Skip(g.ID)
		}
	}
	talk(t, v, "1", "1", "2", "It comes out", "like a crisp.", "back", ".", "quit")
	if got := stored(v, assess.FactWords).Said; got != "It comes out\nlike a crisp.\nback" {
		t.Errorf("kept %q", got)
	}
}

func TestSkipAndTakeBackIn(t *testing.T) {
	v := newVisit()
	listed, _ := talk(t, v, "Alder", "skip", "list")
	_, number, _ := strings.Cut(listed, "Skipped: The visit. Type go ")
	number, _, _ = strings.Cut(number, " ")
	out, _ := talk(t, v, "go "+number, "quit")
	if !strings.Contains(listed, "Which metals do you cut?") || !strings.Contains(out, "Which company is this for?") {
		t.Error(listed, out)
	}
	if strings.Contains(out, "There is no question") || v.Skips(assess.GroupVisit) {
		t.Errorf("not taken back in:\n%s", out)
	}
}

func TestTheEndOfTheInputSaves(t *testing.T) {
	out, got := talk(t, newVisit(), "Alder")
	if !got.InputEnd || got.Finished || got.Path != "visit.json" || !strings.Contains(out, "The input has ended. All accepted answers are saved in visit.json.") {
		t.Errorf("%+v\n%s", got, out)
	}
	out, got = talk(t, newVisit())
	if !got.InputEnd || got.Path != "" || !strings.Contains(out, "nothing is saved") {
		t.Errorf("%+v\n%s", got, out)
	}
}

func TestAFailedSaveIsSaidAndTriedAgain(t *testing.T) {
	var out strings.Builder
	disk := &memory{fail: errors.New("the disk is full")}
	got, err := RunLines(Options{InOrder: true, Visit: newVisit(), Saver: disk, Input: strings.NewReader("Alder\nquit\n"), Output: &out})
	if err != nil || got.Unsaved == nil || strings.Count(out.String(), "Not saved: the disk is full.") != 2 {
		t.Errorf("%+v, %v\n%s", got, err, out.String())
	}
}

func TestSuggestionsAreTakenByAnEmptyLine(t *testing.T) {
	v := newVisit()
	var out strings.Builder
	o := Options{InOrder: true, Visit: v, Saver: &memory{}, Suggest: map[rules.Fact]string{assess.FactDate: "2026-11-25"}, Input: strings.NewReader("Alder\n\n\n\n"), Output: &out}
	RunLines(o)
	if got := stored(v, assess.FactDate); got.Said != "2026-11-25" || !strings.Contains(out.String(), "An empty line takes: 2026-11-25") {
		t.Errorf("%+v\n%s", got, out.String())
	}
}

// whole answers every question with its own example, in the order asked.
func whole() (lines []string) {
	m := newModel(Options{InOrder: true, Visit: newVisit(), Range: system.Demo(), Saver: &memory{}})
	l := &lineView{Lines: screen.NewLines(strings.NewReader(""), io.Discard, nil), m: m}
	for m.state == asking {
		lines = append(lines, usual(m.step))
		if m.step.Question.Form == assess.FormLong {
			lines = append(lines, ".")
		}
		l.answer(usual(m.step))
	}
	return lines
}

func TestTheWholeInterviewPrintsTheResult(t *testing.T) {
	v := newVisit()
	out, got := talk(t, v, append(whole(), "overrule", "overrule 5 gas is dear here", "page", "quit")...)
	if !got.Finished || got.Open != 0 || got.Page != "page.pdf" || strings.Contains(out, "Not accepted") {
		t.Errorf("%+v\n%s", got, out)
	}
	for _, want := range []string{"Customer", "Hillside Farm Services", "The page is in page.pdf", "Type page (make the page)"} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not printed:\n%s", want, out)
		}
	}
	if v.Overrule == nil || v.Overrule.Requirement != rules.RunningCost || v.Overrule.Reason != "gas is dear here" {
		t.Errorf("overrule %+v", v.Overrule)
	}
	out, _ = talk(t, v, "overrule 0", "go 1", "Birch", "result", "quit") // finished: starts at the result
	if v.Overrule != nil || stored(v, "company").Said != "Birch" || !strings.Contains(out, "Type page") {
		t.Errorf("overrule %+v\n%s", v.Overrule, out)
	}
}

func TestNoControlSequenceIsWritten(t *testing.T) {
	v := newVisit()
	v.Set(assess.Answer{Question: "company", Said: "A\x1b[31m\u202elder\x07", State: assess.Told, Note: "\x1b]0;x\x07"})
	out, _ := talk(t, v, "list", "go 1", "help", "", "x\x1b[2Jx", "", "soon\x1b[2J", "quit")
	for _, r := range out {
		if r != '\n' && (unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r)) {
			t.Fatalf("%q is written:\n%q", r, out)
		}
	}
}

type broken struct{}

func (broken) Read([]byte) (int, error) { return 0, io.ErrUnexpectedEOF }

func TestABrokenInputIsReported(t *testing.T) {
	if _, err := RunLines(Options{InOrder: true, Visit: newVisit(), Saver: &memory{}, Input: broken{}, Output: io.Discard}); err != io.ErrUnexpectedEOF {
		t.Errorf("got %v", err)
	}
}

// Later leaves the rest of a group open, says what, and back brings it up again;
// skip leaves it out, and says what.
func TestLaterAndSkip(t *testing.T) {
	v := newVisit()
	out, _ := talk(t, v, append(before, "later", "back", "later", "quit")...)
	for _, want := range []string{"The work: 6 questions come at the end, from metals to length of each busy cut.", "back asks them now", "Do your cuts start at an edge"} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not in:\n%s", want, out)
		}
	}
	if v.Skips(assess.GroupWork) || strings.Count(out, "Which metals do you cut?") != 2 {
		t.Errorf("left out, or not asked again:\n%s", out)
	}
	out, _ = talk(t, newVisit(), append(before[:5:5], "skip", "quit")...)
	if !strings.Contains(out, "is skipped: one question, ") {
		t.Errorf("one question is not said to be one:\n%s", out)
	}
	out, _ = talk(t, newVisit(), append(append(before, "later"), make([]string, 60)...)...)
	if strings.Count(out, "Which metals do you cut?") != 2 {
		t.Errorf("the question it was said at does not come back:\n%s", out)
	}
	out, _ = talk(t, newVisit(), append(before, "skip", "quit")...)
	if !strings.Contains(out, "The work is skipped: 6 questions, from metals to") {
		t.Error(out)
	}
}

// What is offered is said to be, and "=" takes it; an empty line does not.
func TestAnOfferInPlainLines(t *testing.T) {
	for line, want := range map[string]string{"=": "6", "": ""} {
		v := newVisit()
		out, _ := talk(t, v, append(before, "1", "6", line)...)
		a, _ := v.Answer(rules.Asked{Fact: rules.FactThickest, Metal: "mild-steel"})
		if !strings.Contains(out, "Type = for 6 mm: the same as the everyday thickness") || a.Said != want {
			t.Errorf("%q gave %+v\n%s", line, a, out)
		}
	}
	v := newVisit()
	talk(t, v, append(before, "1", "6", "measured", "=")...)
	if a, _ := v.Answer(rules.Asked{Fact: rules.FactThickest, Metal: "mild-steel"}); a.State != assess.Measured {
		t.Errorf("said to be measured, kept as %s", a.State)
	}
}

// The units of the last visit are offered by their text, and taken by an empty
// line.
func TestUsualUnitsInPlainLines(t *testing.T) {
	v := newVisit()
	var out strings.Builder
	o := Options{InOrder: true, Visit: v, Saver: &memory{}, Range: system.Demo(), Suggest: map[rules.Fact]string{assess.FactUnits: "in"}, Input: strings.NewReader(strings.Join(before[:5], "\n") + "\n\n"), Output: &out}
	RunLines(o)
	if got := stored(v, assess.FactUnits).Chosen; len(got) != 1 || got[0] != "in" || !strings.Contains(out.String(), "An empty line takes: inches") {
		t.Errorf("%v\n%s", got, out.String())
	}
}

func TestAnotherPlaceInPlainLines(t *testing.T) {
	disk := &movable{memory: memory{fail: errors.New("the disk is full")}}
	var out strings.Builder
	in := "Alder\nsave in nowhere\nSave in stick\nMarta\nsave in our yard\nquit\n"
	v := newVisit()
	got, err := RunLines(Options{InOrder: true, Visit: v, Range: system.Demo(), Saver: disk, Input: strings.NewReader(in), Output: &out})
	if err != nil || got.Unsaved != nil || len(disk.places) != 1 {
		t.Fatalf("%+v %v, moved to %q", got, err, disk.places)
	}
	for _, want := range []string{"Not saved: the disk is full", "type save in,", "Not saved: there is no folder nowhere.", "Saved in "} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("does not say %q:\n%s", want, out.String())
		}
	}
	// With nothing unsaved the same words are an answer.
	if len(v.Answers) != 3 || v.Answers[2].Said != "save in our yard" {
		t.Errorf("kept %+v", v.Answers)
	}
}

// speak is talk in the words of a book.
func speak(t *testing.T, book *message.Catalog, disk *memory, v *assess.Visit, lines ...string) string {
	t.Helper()
	var out strings.Builder
	_, err := RunLines(Options{InOrder: true, Input: strings.NewReader(strings.Join(lines, "\n") + "\n"), Output: &out,
		Visit: v, Range: system.Demo(), Saver: disk, Pager: disk, Width: 80, Words: book, Suggest: map[rules.Fact]string{assess.FactDate: "2026-11-25"},
	})
	if err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// Every text of the plain interview has German words: every question of a new
// visit, with help, the list, notes and wrong answers, and all that can be said at
// the end.
func TestNoLineIsLeftUnsaid(t *testing.T) {
	book := catalog.Watched("de", func(id message.ID) { t.Errorf("no German words: %s", id) })
	each := []string{"help", "list", "note", "note well", "measured", "assumed", "told", "clear", "clear", "half a thumb, 99", "99999999", "go 9999", "not known", "back", "measured", "note again", "-"}
	var lines []string
	for range 60 {
		lines = append(lines, each...)
	}
	speak(t, book, &memory{}, newVisit(), lines...)
	speak(t, book, &memory{}, newVisit(), append(whole(), "list", "page", "overrule", "overrule 1 seen", "overrule 0", "result", "back", "back", "skip", "list", "quit")...)
	speak(t, book, &memory{}, newVisit(), "later", "later", "later", "back", "later", "later", "later", "later", "quit")
	speak(t, book, &memory{}, newVisit(), append(whole(), "go 1", "later", "go 38", "clear", "later", "quit")...)
	speak(t, book, &memory{}, newVisit(), append(before, "1", "about 6", "=", "quit")...)
	speak(t, book, &memory{}, newVisit(), "say nothing", "say "+told, "yes", "no", "back", "not known", "say single phase, and a cat", "yes", "quit")
	speak(t, book, &memory{}, newVisit(), "back", "", "", "skip", "list", "go 60", "")
	speak(t, book, &memory{fail: errors.New("no room")}, newVisit(), "Alder Vale", "")
	speak(t, book, &memory{}, newVisit())
	for _, name := range casebook.DemoVisits() {
		v, _ := casebook.DemoVisit(name)
		speak(t, book, &memory{}, v, "list", "go 1", "", "result", "page", "quit")
	}
}

// The words of the book are understood beside our own, and a comma for decimals.
func TestGermanIsUnderstood(t *testing.T) {
	book := catalog.For("de")
	v := newVisit()
	out := speak(t, book, &memory{}, v,
		"Schlosserei Ahorn", "zurück", "hilfe", "", "weiß nicht", "nicht bekannt", "", "Ossi Berg", "1", "Baustahl",
		"12,5 mm", "20", "keine", "liste", "ergebnis", "ende")
	there := slices.IndexFunc(v.Steps(), func(s assess.Step) bool { return s.Question.ID == rules.FactCutLength })
	speak(t, book, &memory{}, v, fmt.Sprintf("gehe %d", there+1), "40 m am Tag", "ende")
	for f, want := range map[rules.Asked]string{
		{Fact: assess.FactCompany}:                      "Schlosserei Ahorn",
		{Fact: rules.FactEveryday, Metal: "mild-steel"}: "12,5 mm",
		{Fact: rules.FactRarest, Metal: "mild-steel"}:   "none",
		{Fact: rules.FactCutLength}:                     "40 m a day",
	} {
		if a, _ := v.Answer(f); a.Said != want {
			t.Errorf("%v: %q, want %q\n%s", f, a.Said, want, out)
		}
	}
	if a, _ := v.Answer(rules.Asked{Fact: assess.FactContact}); a.State != assess.Unknown {
		t.Errorf("weiß nicht: %v", a)
	}
	for _, text := range []string{"Für welche Firma ist das?", "Verstanden: 20 → 20 mm", "1. Baustahl", "Schlosserei Ahorn"} {
		if !strings.Contains(out, text) {
			t.Errorf("%q is not in\n%s", text, out)
		}
	}
}

// What a customer said stays as it was typed, also where it begins like a word of
// the book: "gehe zu" and a number goes to a question, and "gehe zu" anything else
// is an answer.
func TestAnAnswerThatBeginsLikeAWordStays(t *testing.T) {
	const company = "Gehe zu Stahlbau und Hof"
	v := newVisit()
	speak(t, catalog.For("de"), &memory{}, v, company, "ende")
	if got := stored(v, assess.FactCompany).Said; got != company {
		t.Errorf("%q became %q", company, got)
	}
}
