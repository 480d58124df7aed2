package interview

import (
	"errors"
	"strings"
	"testing"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/message/catalog"
	"cutbrief/rules/system"

	tea "github.com/charmbracelet/bubbletea"
)

// A number takes an option at once; one key back undoes it; an Enter pressed out
// of habit does not run on into the next question.
func TestANumberTakesAndGoesOn(t *testing.T) {
	d := drive(t, newVisit()).throughTo(rules.FactPhases).keys("2")
	if got := d.answer(rules.FactPhases).Chosen; len(got) != 1 || got[0] != "three" {
		t.Fatalf("took %v", got)
	}
	d.Sees("supply phase: three-phase (Esc goes back)")
	at := d.m.step
	d.keys("<enter>")
	if d.m.step != at {
		t.Error("the Enter went on")
	}
	d.Sees("that number was enough")
	d.keys("<esc>")
	d.at(rules.FactPhases)
	d.Sees("› (x) 2 three-phase")
	d.keys("1")
	if got := d.answer(rules.FactPhases).Chosen; got[0] != "single" {
		t.Errorf("then took %v", got)
	}
	d.keys("<esc>", "7")
	d.at(rules.FactPhases)
	d.Sees("! there is no number 7 here", "choose a number from 1 to 3")
}

// Digits read at once are for one question after the other.
func TestDigitsTypedAheadReachTheirQuestions(t *testing.T) {
	d := inOrder(t, newVisit()).throughTo(rules.FactAnnoysMost).keys("12")
	if first, next := d.answer(rules.FactAnnoysMost).Chosen, d.answer(rules.FactAnnoysNext).Chosen; first[0] != "too-slow" || len(next) != 1 || next[0] != "rough-edge" {
		t.Errorf("most %v, next %v", first, next)
	}
}

// What is offered is shown as such, is no answer, and one key takes it.
func TestAnOfferIsTakenByItsKey(t *testing.T) {
	d := inOrder(t, newVisit()).throughTo(rules.FactEveryday).keys("3/8 in", "<enter>")
	d.at(rules.FactThickest)
	d.Sees("type = for 3/8 in: the same as the everyday thickness", "[ ] not answered yet")
	d.keys("<enter>", "<esc>") // an empty line never takes it
	d.Sees("[ ] not answered yet")
	d.keys("=")
	d.at(rules.FactRarest)
	if a, _ := d.m.Visit.Answer(rules.Asked{Fact: rules.FactThickest, Metal: "mild-steel"}); a.Said != "3/8 in" || a.State != assess.Told {
		t.Errorf("took %+v", a)
	}
	d.throughTo(rules.FactBreaker).keys("=")
	d.at(rules.FactBreaker)
	d.Sees("! there is nothing to repeat here")
}

// Where no likely answer could change the result, that is said, and one key ends
// the interview with all else open and nothing made up.
func TestTheInterviewCanEndInOneKey(t *testing.T) {
	d := drive(t, newVisit())
	for range 100 {
		if strings.Contains(unwrapped(d.View()), "no likely answer to the other questions can change the recommendation: ^R shows the result") {
			break
		}
		if d.m.state != asking {
			t.Fatalf("it is never said:\n%s", d.View())
		}
		d.keys(usual(d.m.step), "<enter>")
	}
	open, answers := d.m.open, len(d.m.Visit.Answers)
	if !d.m.Visit.Settled(&d.m.panel.Result) || open == 0 {
		t.Fatalf("%d open", open)
	}
	d.keys("<ctrl+r>")
	if d.m.state != reading || d.m.open != open || len(d.m.Visit.Answers) != answers {
		t.Errorf("%d open, %d answers:\n%s", d.m.open, len(d.m.Visit.Answers), d.View())
	}
	d.keys("<esc>")
	if d.m.state != asking {
		t.Error("no way back")
	}
}

// Before a system can be sized the panel says what is needed first, and nothing
// of what other answers could change.
func TestThePanelBegins(t *testing.T) {
	d := inOrder(t, newVisit())
	side := strings.Join(d.m.Panel(28), " ")
	for _, want := range []string{"To size a system, tell me", "- metals", "- thickest clean cut", "- repair or production"} {
		if !strings.Contains(side, want) {
			t.Errorf("%q is not in %q", want, side)
		}
	}
	if strings.Contains(side, "could") {
		t.Errorf("says what could change: %q", side)
	}
	german := strings.Join(newModel(Options{Visit: newVisit(), Range: system.Demo(), Saver: &memory{}, Words: catalog.For("de")}).Panel(40), " ")
	if !strings.Contains(german, catalog.For("de").Print(message.New("To size a system, tell me"))) || strings.Contains(german, catalog.For("de").Print(message.New("Ask next"))) {
		t.Errorf("in other words it says %q", german)
	}
	d.throughTo(rules.FactStart)
	if side = strings.Join(d.m.Panel(28), " "); strings.Contains(side, "tell me") || !strings.Contains(side, "Ask next") {
		t.Errorf("once sized it says %q", side)
	}
}

// A pasted line that is not taken holds up those behind it, and they follow once
// it is put right. They ran together into one answer.
func TestAPasteWaitsForAWrongLine(t *testing.T) {
	d := inOrder(t, newVisit()).throughTo(rules.FactEveryday)
	d.Paste("thick\n12 mm\n\nnone\n1\nEdge\n")
	d.at(rules.FactEveryday)
	d.Sees("\"thick\" is not a thickness", "4 more pasted lines will follow this answer")
	d.keys("<ctrl+u>", "6", "<enter>")
	for f, want := range map[rules.Fact]string{rules.FactEveryday: "6", rules.FactThickest: "12 mm", rules.FactRarest: "none"} {
		if a, _ := d.m.Visit.Answer(rules.Asked{Fact: f, Metal: "mild-steel"}); a.Said != want {
			t.Errorf("%s is %q, want %q", f, a.Said, want)
		}
	}
	if got := d.answer(rules.FactUse).Chosen; len(got) != 1 || got[0] != "maintenance" {
		t.Errorf("use %v", got)
	}
}

// A pasted "=" takes the offer and no more: the line behind it is for the next
// question.
func TestAPastedOfferTakesOneQuestion(t *testing.T) {
	d := inOrder(t, newVisit()).throughTo(rules.FactEveryday)
	d.Paste("6 mm\n=\n20 mm\n")
	for f, want := range map[rules.Fact]string{rules.FactThickest: "6 mm", rules.FactRarest: "20 mm"} {
		if a, _ := d.m.Visit.Answer(rules.Asked{Fact: f, Metal: "mild-steel"}); a.Said != want {
			t.Errorf("%s is %q, want %q", f, a.Said, want)
		}
	}
}

// Lines that never found their question are named, not lost unseen.
func TestPastedLinesLeftOverAreNamed(t *testing.T) {
	d := drive(t, newVisit()).throughTo(rules.FactEveryday)
	d.Paste("thick\n12 mm\n")
	d.keys("<esc>")
	d.Sees("1 more pasted line not used: 12 mm")
	d = drive(t, newVisit()).throughTo(rules.FactEveryday)
	d.Paste("thick\n12 mm\n")
	d.keys("<ctrl+c>")
	if out := d.m.finish(); !strings.Contains(strings.Join(out.Unkept, "; "), "12 mm") {
		t.Errorf("unkept %q", out.Unkept)
	}
}

// A list takes a pasted line by number or by text, whole.
func TestAListTakesPastedText(t *testing.T) {
	for line, want := range map[string]string{"2": "inches", "inches": "inches", "MM": "millimetres", "furlongs": "", "12": ""} {
		d := drive(t, newVisit()).throughTo(assess.FactUnits)
		d.Paste(line + "\n")
		got := d.answer(assess.FactUnits)
		if want == "" {
			d.at(assess.FactUnits)
			d.Sees("is not one of the choices", "choose 1 (millimetres), 2 (inches)")
		}
		if (len(got.Chosen) > 0) != (want != "") {
			t.Errorf("%q took %v", line, got.Chosen)
		}
	}
}

// Each of these is one key on every form of question, also while something is
// typed, and the last lines of a window of 60 columns say so.
func TestOneKeyEachOnEveryForm(t *testing.T) {
	for f, typed := range map[rules.Fact][]string{
		assess.FactCompany: {"Alder"}, assess.FactDate: {"2026"}, rules.FactEveryday: {"6"},
		rules.FactStart: {"<down>"}, rules.FactFeatures: {"1"}, assess.FactWords: {"It is"},
	} {
		at := func() *driver {
			d := drive(t, newVisit())
			d.Resize(60, 20)
			d.throughTo(f).keys(typed...)
			d.Sees("not known", "Esc back", "leave", "all keys")
			return d
		}
		d := at().keys("<ctrl+n>")
		if a, has := d.m.Visit.Answer(d.m.trail[len(d.m.trail)-1]); !has || a.State != assess.Unknown {
			t.Errorf("%s: not known gave %+v", f, a)
		}
		at().keys("<ctrl+o>").Sees("note for this question")
		at().keys("<f1>").Sees("for example:", "r, ^R result")
		at().keys("<f1>", "<end>").Sees("l, ^L list")
		d = at().keys("<ctrl+l>", "<home>", "<enter>")
		d.at(assess.FactCompany)
		if d = at().keys("<ctrl+o>", "x", "<enter>"); f != d.m.step.Question.ID || d.m.field.Draft().Empty() {
			t.Errorf("%s: a note lost what was typed", f)
		}
	}
}

// Saving elsewhere is one key on every screen, and what is typed there stays.
func TestAnotherPlaceFromEveryScreen(t *testing.T) {
	for name, keys := range map[string][]string{
		"question": {"Mar"}, "note": {"<ctrl+o>", "Mar"}, "list": {"<ctrl+l>"},
		"result": {"<ctrl+r>"}, "derivation": {"Mar", "<f1>", "w"}, "overrule": {"<ctrl+r>", "y", "<down>"},
		"reason": {"<ctrl+r>", "y", "3", "<enter>", "Mar"},
	} {
		d, disk := full(t)
		d.keys(keys...)
		before := d.View()
		d.Sees("^S where to save")
		d.elsewhere()
		d.Sees("Where else should the visit be saved?")
		d.keys("<esc>")
		if d.View() != before {
			t.Errorf("%s: not as before:\n%s\n%s", name, before, d.View())
		}
		d.elsewhere()
		d.keys("stick", "<enter>")
		if len(disk.places) != 1 || disk.last == nil {
			t.Errorf("%s: kept in %v", name, disk.places)
		}
	}
}

// Where nothing is wrong the same key says where the answers are.
func TestTheKeyForAnotherPlaceSaysWhereItIsSaved(t *testing.T) {
	d := inOrder(t, newVisit())
	d.Send(tea.KeyMsg{Type: tea.KeyCtrlS})
	d.Sees("nothing is answered yet")
	d.keys("Alder", "<enter>", "<ctrl+s>")
	d.Sees("all answers are saved in visit.json")
	d.disk.fail = errors.New("the disk is full")
	d.keys("Marta", "<enter>", "<ctrl+s>")
	d.SeesNot("all answers are saved")
}

// Putting off says how many questions wait, which, and how to get at them; they
// stay open, are not left out, and Esc brings them back at once.
func TestAGroupIsPutOffAndComesBack(t *testing.T) {
	d := inOrder(t, newVisit()).throughTo(rules.FactStart).keys("<ctrl+g>")
	d.at(rules.FactSource)
	d.Sees("How it is cut: 5 questions come at the end, from where cuts start to where the work is done. Esc asks them now")
	open := d.m.open
	d.keys("<esc>")
	d.at(rules.FactStart)
	if d.m.open != open || len(d.m.Visit.Skipped) > 0 {
		t.Errorf("%d open, want %d; skipped %v", d.m.open, open, d.m.Visit.Skipped)
	}
	d.keys("<ctrl+g>", "<ctrl+l>")
	d.Sees("How it is cut – comes at the end")
	d.keys("<esc>").throughTo(rules.FactStart) // last of all, without being asked for
	d.at(rules.FactStart)
	d.Sees("How it is cut · skipped before")
	d.keys("<ctrl+g>")
	if d.m.open < 5 || d.m.step.Question.Group == assess.GroupHow {
		t.Errorf("%d open; asked once more:\n%s", d.m.open, d.View())
	}
}

func TestAGroupIsLeftOutAndTakenBackIn(t *testing.T) {
	d := drive(t, newVisit()).throughTo(rules.FactMetals).keys("<ctrl+l>", "x")
	d.Sees("The work – skipped; Enter brings it back", "The work is skipped: 6 questions, from metals to length of each busy cut; Enter brings it back")
	if !d.m.rows[d.m.at].skipped || !d.disk.last.Skips(assess.GroupWork) {
		t.Error("the focus is not on the group, or it is not saved so")
	}
	d.keys("<enter>")
	d.SeesNot("– skipped")
	d.Sees("[ ] metals")
}

// Who puts off the site is told whom to ask.
func TestTheSiteIsForTheElectrician(t *testing.T) {
	d := inOrder(t, newVisit()).throughTo(rules.FactSource).keys("<ctrl+g>")
	d.at(rules.FactToday)
	d.Sees("The site: 14 questions come at the end", "The electrician can tell you about the power")
}
