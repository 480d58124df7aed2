package plain

import (
	"errors"
	"io"
	"strings"
	"testing"
	"time"
	"unicode"

	"cutbrief/assess"
	texts "cutbrief/assess/screen/words"
	"cutbrief/rules"
	"cutbrief/rules/system"
)

type memory struct {
	saves int
	fail  error
}

func (m *memory) Save(v *assess.Visit) (string, error) {
	if m.fail == nil {
		m.saves++
	}
	return "visit.json", m.fail
}

func (m *memory) Page(*assess.Visit) (string, error) { return "page.pdf", m.fail }

func newVisit() *assess.Visit {
	return assess.New("test-visit", time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC))
}

// talk runs an interview on lines and returns what was printed.
func talk(t *testing.T, v *assess.Visit, lines ...string) (string, Outcome) {
	t.Helper()
	var out strings.Builder
	disk := &memory{}
	got, err := Run(strings.NewReader(strings.Join(lines, "\n")), &out, Options{Visit: v, Range: system.Demo(), Saver: disk, Pager: disk})
	if err != nil {
		t.Fatal(err)
	}
	return out.String(), got
}

func said(v *assess.Visit, f rules.Fact) assess.Answer {
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
		{"an empty line leaves open", []string{"", "Marta"}, "Left open.", "company", assess.Answer{}},
		{"not known", []string{"not known"}, "Who am I", "company", assess.Answer{State: assess.Unknown}},
		{"a dash is not known", []string{"-"}, "Who am I", "company", assess.Answer{State: assess.Unknown}},
		{"back", []string{"Alder", "back", "Birch"}, "So far: Alder (told). An empty line keeps it.", "company", assess.Answer{Said: "Birch", State: assess.Told}},
		{"back and keep", []string{"Alder", "BACK", "", "Marta"}, "An empty line keeps it.", "company", assess.Answer{Said: "Alder", State: assess.Told}},
		{"back at the first", []string{"back"}, "This is the first question.", "company", assess.Answer{}},
		{"help", []string{"help", "Alder"}, "Such as: Hillside", "company", assess.Answer{Said: "Alder", State: assess.Told}},
		{"a question mark is help", []string{"?"}, "Such as: Hillside", "company", assess.Answer{}},
		{"a note", []string{"note ask at the gate", "Alder"}, "counts as not known", "company", assess.Answer{Said: "Alder", State: assess.Told, Note: "ask at the gate"}},
		{"an empty note", []string{"note"}, "Say note and then the text.", "company", assess.Answer{}},
		{"assumed", []string{"assumed", "Alder"}, "will be kept as assumed", "company", assess.Answer{Said: "Alder", State: assess.Assumed}},
		{"measured afterwards", []string{"Alder", "back", "measured"}, "Kept as measured.", "company", assess.Answer{Said: "Alder", State: assess.Measured}},
		{"clear", []string{"Alder", "back", "clear"}, "taken back", "company", assess.Answer{}},
		{"list and go", []string{"Alder", "list", "go 1", "Birch"}, "1. company: Alder (told)", "company", assess.Answer{Said: "Birch", State: assess.Told}},
		{"go nowhere", []string{"go 999"}, "There is no question 999.", "company", assess.Answer{}},
		{"quit", []string{"quit", "Alder"}, "Which company", "company", assess.Answer{}},
		{"a wrong answer is asked again", []string{"Alder", "", "", "soon", "2026-11-25"}, "Not taken: date: \"soon\" is not a date.\nHint: give year", "date", assess.Answer{Said: "2026-11-25", State: assess.Told}},
		{"carriage returns", []string{"Alder\r", "Marta\r"}, "Where are we?", "contact", assess.Answer{Said: "Marta", State: assess.Told}},
	} {
		t.Run(c.name, func(t *testing.T) {
			v := newVisit()
			out, _ := talk(t, v, c.lines...)
			if !strings.Contains(out, c.shows) {
				t.Errorf("%q is not in:\n%s", c.shows, out)
			}
			got := said(v, c.fact)
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
		if got := strings.Join(said(v, rules.FactMetals).Chosen, ","); got != want {
			t.Errorf("%q chose %q, want %q", line, got, want)
		}
		if refused := strings.Contains(out, "Not taken"); refused != (want == "") {
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
	if got := said(v, assess.FactWords).Said; got != "It comes out\nlike a crisp.\nback" {
		t.Errorf("kept %q", got)
	}
}

func TestSkipAndTakeBackIn(t *testing.T) {
	v := newVisit()
	listed, _ := talk(t, v, "Alder", "skip", "list")
	_, number, _ := strings.Cut(listed, "Left out: The visit. Say go ")
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
	if !got.InputEnd || got.Finished || got.Path != "visit.json" || !strings.Contains(out, "The input has ended. All answers taken are saved in visit.json.") {
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
	got, err := Run(strings.NewReader("Alder\nquit\n"), &out, Options{Visit: newVisit(), Saver: disk})
	if err != nil || got.Unsaved == nil || strings.Count(out.String(), "Not saved: the disk is full.") != 2 {
		t.Errorf("%+v, %v\n%s", got, err, out.String())
	}
}

func TestSuggestionsAreTakenByAnEmptyLine(t *testing.T) {
	v := newVisit()
	var out strings.Builder
	o := Options{Visit: v, Saver: &memory{}, Suggest: map[rules.Fact]string{assess.FactDate: "2026-11-25"}}
	Run(strings.NewReader("Alder\n\n\n\n"), &out, o)
	if got := said(v, assess.FactDate); got.Said != "2026-11-25" || !strings.Contains(out.String(), "An empty line takes: 2026-11-25") {
		t.Errorf("%+v\n%s", got, out.String())
	}
}

// whole answers every question with its own example, in the order asked.
func whole(t *testing.T) (lines []string) {
	s := &session{Options: Options{Visit: newVisit(), Range: system.Demo()}}
	v := s.Visit
	step, more := s.course.Next(v, assess.Step{}, s.soFar())
	for more {
		line, _, _ := strings.Cut(string(step.Question.Example), ", ")
		line, _, _ = strings.Cut(line, " or ")
		var a assess.Answer
		var err error
		switch step.Question.Form {
		case assess.FormOne, assess.FormSeveral:
			line = "1"
			a, err = v.Choose(step, texts.Choices(v.Options(step), line))
		default:
			a, _, err = v.Read(step, line)
		}
		if err != nil {
			t.Fatal(err)
		}
		v.Set(a)
		lines = append(lines, line)
		if step.Question.Form == assess.FormLong {
			lines = append(lines, ".")
		}
		step, more = s.course.Next(v, step, s.soFar())
	}
	return lines
}

func TestTheWholeInterviewPrintsTheResult(t *testing.T) {
	v := newVisit()
	out, got := talk(t, v, append(whole(t), "overrule", "overrule 5 gas is dear here", "page", "quit")...)
	if !got.Finished || got.Open != 0 || got.Page != "page.pdf" || strings.Contains(out, "Not taken") {
		t.Errorf("%+v\n%s", got, out)
	}
	for _, want := range []string{"Customer", "Hillside Farm Services", "The page is in page.pdf", "Say page (make the page)"} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not printed:\n%s", want, out)
		}
	}
	if v.Overrule == nil || v.Overrule.Requirement != rules.RunningCost || v.Overrule.Reason != "gas is dear here" {
		t.Errorf("overrule %+v", v.Overrule)
	}
	out, _ = talk(t, v, "overrule 0", "go 1", "Birch", "result", "quit") // finished: starts at the result
	if v.Overrule != nil || said(v, "company").Said != "Birch" || !strings.Contains(out, "Say page") {
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
	if _, err := Run(broken{}, io.Discard, Options{Visit: newVisit(), Saver: &memory{}}); err != io.ErrUnexpectedEOF {
		t.Errorf("got %v", err)
	}
}

// Later leaves the rest of a group open, says what, and back brings it up again;
// skip leaves it out, and says what.
func TestLaterAndSkip(t *testing.T) {
	v := newVisit()
	out, _ := talk(t, v, append(before, "later", "back", "later", "quit")...)
	for _, want := range []string{"“The work”, put off: 6 questions, from metals to length of each busy cut.", "come back last; back asks them now", "Do your cuts start at an edge"} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not in:\n%s", want, out)
		}
	}
	if v.Skips(assess.GroupWork) || strings.Count(out, "Which metals do you cut?") != 2 {
		t.Errorf("left out, or not asked again:\n%s", out)
	}
	out, _ = talk(t, newVisit(), append(before[:5:5], "skip", "quit")...)
	if !strings.Contains(out, "is left out: 1 question, ") {
		t.Errorf("one question is not said to be one:\n%s", out)
	}
	out, _ = talk(t, newVisit(), append(append(before, "later"), make([]string, 60)...)...)
	if strings.Count(out, "Which metals do you cut?") != 2 {
		t.Errorf("the question it was said at does not come back:\n%s", out)
	}
	out, _ = talk(t, newVisit(), append(before, "skip", "quit")...)
	if !strings.Contains(out, "“The work” is left out: 6 questions, from metals to") {
		t.Error(out)
	}
}

// What is offered is said to be, and "=" takes it; an empty line does not.
func TestAnOfferInPlainLines(t *testing.T) {
	for line, want := range map[string]string{"=": "6", "": ""} {
		v := newVisit()
		out, _ := talk(t, v, append(before, "1", "6", line)...)
		a, _ := v.Answer(rules.Asked{Fact: rules.FactThickest, Metal: "mild-steel"})
		if !strings.Contains(out, "= takes 6 mm: the same as the everyday thickness") || a.Said != want {
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
	o := Options{Visit: v, Saver: &memory{}, Range: system.Demo(), Suggest: map[rules.Fact]string{assess.FactUnits: "in"}}
	Run(strings.NewReader(strings.Join(before[:5], "\n")+"\n\n"), &out, o)
	if got := said(v, assess.FactUnits).Chosen; len(got) != 1 || got[0] != "in" || !strings.Contains(out.String(), "An empty line takes: inches") {
		t.Errorf("%v\n%s", got, out.String())
	}
}
