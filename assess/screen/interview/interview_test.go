package interview

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"cutbrief/assess"
	"cutbrief/assess/screen/screentest"
	"cutbrief/rules"
)

func TestStartsAtTheFirstOpenQuestion(t *testing.T) {
	d := drive(t, newVisit())
	d.at(assess.FactUnits)
	d.Sees("The visit", "Do you work in millimetres or inches?", "not answered yet")
	d.keys("1", "1", "<enter>")
	d.at(rules.FactThickest)
	d.Sees("for example:", "^C leave")
	d.keys("<ctrl+c>")

	again := drive(t, d.disk.last)
	again.at(rules.FactThickest)
	again.keys("<esc>") // what was answered last comes before the first one shown
	again.at(rules.FactMetals)
}

func TestAnAnswerIsStoredAndSavedAtOnce(t *testing.T) {
	d := inOrder(t, newVisit()).keys("Alder Works", "<enter>")
	d.at(assess.FactContact)
	if got := d.answer(assess.FactCompany); got.Said != "Alder Works" || got.State != assess.Told {
		t.Errorf("stored %+v", got)
	}
	if d.disk.saves != 1 {
		t.Errorf("%d saves after one answer", d.disk.saves)
	}
}

func TestTheEchoShowsHowItIsUnderstood(t *testing.T) {
	d := drive(t, newVisit()).throughTo(rules.FactEveryday)
	d.keys("3/8 in")
	d.Sees("3/8 in = 9.5 mm", "Enter accepts it") // 3/8 × 25.4 = 9.525
}

func TestAWrongAnswerSaysSoInTwoLinesAndNeverHoldsUp(t *testing.T) {
	for _, back := range []string{"<esc>", "<shift+tab>"} {
		d := inOrder(t, newVisit()).throughTo(rules.FactEveryday).keys("thick", "<enter>")
		d.at(rules.FactEveryday)
		d.Sees("! everyday thickness, mild steel: \"thick\"", "give 6 mm")
		d.SeesNot("Enter accepts it") // it was tried, and was not taken
		d.keys(back)
		d.at(rules.FactMetals)
		d.keys("<enter>")
		d.at(rules.FactEveryday)
		d.Sees("› thick") // still there, to be put right
		d.keys("<ctrl+u>", "6", "<enter>")
		d.at(rules.FactThickest)
	}
}

func TestKeysTypedAheadReachTheirQuestion(t *testing.T) {
	d := drive(t, newVisit())
	d.keys("1", "<enter>", "1", "<enter>", "3/8", "<enter>", "2", "<enter>")
	if got := d.answer(rules.FactUse).Chosen; !slices.Equal(got, []string{"mixed"}) {
		t.Errorf("use %v", got)
	}
}

func TestPastedLineEndsReachTheirQuestion(t *testing.T) {
	d := drive(t, newVisit())
	d.Paste("1\r\n1, 3\n3/8 in\r8 mm\n")
	d.at(rules.FactUse)
	if got := d.answer(rules.FactMetals).Chosen; !slices.Equal(got, []string{"mild-steel", "stainless"}) {
		t.Errorf("metals %v", got)
	}
	if got, _ := d.m.Visit.Answer(rules.Asked{Fact: rules.FactThickest, Metal: "mild-steel"}); got.Said != "3/8 in" {
		t.Errorf("thickness %q", got.Said)
	}
}

// Letters read at once come as one message, whose name is that of a key if they
// spell it: these words were lost, "enter" went on, and "esc" went back.
func TestWordsThatNameKeysAreText(t *testing.T) {
	for _, word := range []string{"up", "down", "left", "right", "home", "end", "tab", "esc", "enter", "delete", "space", "f1", "ctrl+c"} {
		typed, pasted := inOrder(t, newVisit()), inOrder(t, newVisit())
		typed.keys(word, "<space>", "Farm", "<enter>")
		pasted.Paste(word + "\n")
		if said := typed.answer(assess.FactCompany).Said; said != word+" Farm" {
			t.Errorf("typed %q and Farm, kept %q", word, said)
		}
		if said := pasted.answer(assess.FactCompany).Said; said != word {
			t.Errorf("pasted %q, kept %q", word, said)
		}
	}
}

// A date typed or pasted where today's stood became "2026-11-252026-11-20".
func TestTypingReplacesWhatIsOnlySuggested(t *testing.T) {
	for want, keys := range map[string][]string{
		"2026-11-20": {"2026-11-20"},
		"2026-11-24": {"<backspace>", "4"},
		"2026-11-25": {},
	} {
		d := drive(t, newVisit())
		d.m.Suggest = map[rules.Fact]string{assess.FactDate: "2026-11-25"}
		d.throughTo(assess.FactDate).keys(append(keys, "<enter>")...)
		if got := d.answer(assess.FactDate).Said; got != want {
			t.Errorf("keys %q gave %q, want %q", keys, got, want)
		}
	}
}

func TestAPasteHidesNothing(t *testing.T) {
	d := inOrder(t, newVisit())
	d.Paste("Al\x1b[31mder\u202e\u200b\tWorks\x07")
	d.keys("<enter>")
	if got := d.answer(assess.FactCompany).Said; got != "Al[31mder Works" {
		t.Errorf("stored %q", got)
	}
}

func TestAListShowsThatNothingIsAnswered(t *testing.T) {
	d := drive(t, newVisit()).throughTo(assess.FactUnits)
	d.Sees("› not answered yet", "( ) 1 millimetres", "[ ] not answered yet")
	d.keys("<enter>") // going through makes no answer up
	d.at(rules.FactMetals)
	if got := d.answer(assess.FactUnits); got.State != "" {
		t.Errorf("stored %+v", got)
	}
	d.keys("<esc>", "<down>", "<down>")
	d.Sees("› ( ) 2 inches", "Enter accepts it")
	d.keys("<enter>", "<esc>")
	d.Sees("› (x) 2 inches", "[x] inches · customer said", "remove the answer")
}

func TestSeveralAreKeptInTheOrderOfChoosing(t *testing.T) {
	d := drive(t, newVisit()).throughTo(rules.FactMetals)
	d.keys("3", "1", "4", "4")
	d.Sees("[x] 1 mild steel", "[ ] 4 aluminium")
	d.keys("<enter>")
	if got := d.answer(rules.FactMetals).Chosen; !slices.Equal(got, []string{"stainless", "mild-steel"}) {
		t.Errorf("metals %v", got)
	}
}

// Digits typed ahead come as one message; "134" was taken for a number too
// large, and nothing was ticked.
func TestDigitsTypedAheadTickEach(t *testing.T) {
	d := drive(t, newVisit()).throughTo(rules.FactMetals).keys("134", "<enter>")
	if got := d.answer(rules.FactMetals).Chosen; !slices.Equal(got, []string{"mild-steel", "stainless", "aluminium"}) {
		t.Errorf("ticked %v", got)
	}
}

func TestAnAnswerCanBeTakenBack(t *testing.T) {
	d := inOrder(t, newVisit()).keys("Alder", "<enter>", "<esc>", "<ctrl+u>", "<enter>")
	if got := d.answer(assess.FactCompany); got.State != "" {
		t.Errorf("still stored: %+v", got)
	}
	d.Sees("answer removed")
}

func TestNotKnownIsAnAnswer(t *testing.T) {
	for _, k := range []string{"<ctrl+n>", "n"} {
		d := drive(t, newVisit()).throughTo(rules.FactUse).keys(k, "<esc>")
		d.at(rules.FactUse)
		d.Sees("[?] not known", "› keep it as not known")
		d.keys("<enter>")
		if got := d.answer(rules.FactUse); got.State != assess.Unknown {
			t.Errorf("after going through: %+v", got)
		}
	}
}

func TestANoteStaysBesideItsAnswer(t *testing.T) {
	d := drive(t, newVisit()).throughTo(rules.FactUse)
	d.keys("<ctrl+o>", "ask the", "<space>", "owner", "<ctrl+j>", "on Monday", "<enter>")
	d.at(rules.FactUse)
	d.Sees("counts as not known until it is answered", "note: ask the owner on Monday")
	d.keys("1", "<enter>")
	if got := d.answer(rules.FactUse); got.Note != "ask the owner\non Monday" || got.State != assess.Told {
		t.Errorf("stored %+v", got)
	}
	d.keys("<esc>", "<up>", "<enter>") // takes the answer back, not the note
	if got := d.answer(rules.FactUse); got.Note == "" || got.State != assess.Unknown {
		t.Errorf("after taking back: %+v", got)
	}
}

func TestHowItIsKnownTurns(t *testing.T) {
	d := drive(t, newVisit()).throughTo(rules.FactEveryday)
	d.keys("<f1>", "h")
	d.Sees("will be kept as measured")
	d.keys("6", "<enter>", "<esc>")
	d.Sees("6", "· measured")
	d.keys("<f1>", "h")
	d.Sees("[~]", "· assumed")
	if got := d.disk.last.Answers[len(d.disk.last.Answers)-1].State; got != assess.Assumed {
		t.Errorf("saved as %q", got)
	}
}

func TestTheExplanationIsOneKeyAway(t *testing.T) {
	d := drive(t, newVisit()).throughTo(rules.FactUse)
	d.keys("<down>", "<down>", "<down>", "<f1>")
	d.Sees("Maintenance: repairs and odd jobs")
	d.keys("<esc>")
	d.Sees("› ( ) 3 production")
}

func TestTheListLeadsAnywhere(t *testing.T) {
	d := inOrder(t, newVisit()).throughTo(rules.FactMetals).keys("<ctrl+l>")
	d.Sees("› [ ] metals", "[x] company Hillside Farm Services", "[ ] repair or production")
	d.keys("<home>", "<enter>")
	d.at(assess.FactCompany)
	d.keys("<ctrl+l>", "<tab>")
	d.at(rules.FactMetals)
}

func TestLaterKeepsWhatIsTyped(t *testing.T) {
	d := inOrder(t, newVisit()).keys("Alder", "<tab>")
	d.at(assess.FactContact)
	if d.disk.saves != 0 {
		t.Error("saved an answer nobody accepted")
	}
	d.keys("<esc>")
	d.Sees("› Alder")
}

func TestLeavingKeepsWhatIsTyped(t *testing.T) {
	d := drive(t, newVisit()).throughTo(rules.FactEveryday).keys("6 mm", "<ctrl+c>")
	if !d.Quit {
		t.Fatalf("still here:\n%s", d.View())
	}
	if got := d.disk.last.Answers; got[len(got)-1].Said != "6 mm" {
		t.Errorf("last saved %+v", got[len(got)-1])
	}
	d = drive(t, newVisit()).throughTo(rules.FactEveryday).keys("thick", "<ctrl+c>")
	if out := d.m.finish(); !d.Quit || len(out.Unkept) != 1 {
		t.Errorf("unkept %q", out.Unkept)
	}
}

func TestLeavingAtOnceSavesNothing(t *testing.T) {
	for _, k := range []string{"<ctrl+c>", "<esc>"} {
		d := drive(t, newVisit()).keys(k)
		if out := d.m.finish(); !d.Quit || d.disk.saves != 0 || out.Path != "" {
			t.Errorf("%s: quit %v, %d saves, %+v", k, d.Quit, d.disk.saves, out)
		}
	}
}

func TestAFailedSaveIsShownAndTriedAgain(t *testing.T) {
	d := inOrder(t, newVisit())
	d.disk.fail = errors.New("the disk is full")
	d.keys("Alder", "<enter>")
	d.Sees("! not saved: the disk is full", "your answers are still here")
	d.keys("<ctrl+c>")
	if d.Quit {
		t.Fatal("left with unsaved answers without a word")
	}
	d.Sees("not saved", "Esc back to the questions", "leave without saving")
	d.keys("<esc>")
	d.at(assess.FactContact)
	d.keys("<ctrl+c>")
	d.disk.fail = nil
	d.keys("<enter>")
	if !d.Quit || d.disk.last.Answers[0].Said != "Alder" {
		t.Error("the second try did not save and leave")
	}
}

func TestASignalLeavesEvenIfSavingFails(t *testing.T) {
	d := inOrder(t, newVisit())
	d.disk.fail = errors.New("the disk is full")
	d.keys("Alder", "<enter>")
	d.Run(d.m.Leave())
	if out := d.m.finish(); !d.Quit || out.Unsaved == nil {
		t.Errorf("quit %v, %+v", d.Quit, out)
	}
}

func TestSavesBuildOnEachOther(t *testing.T) {
	d := drive(t, newVisit()).throughTo(rules.FactMetals)
	if d.disk.last.Revision != d.disk.saves {
		t.Errorf("revision %d after %d saves", d.disk.last.Revision, d.disk.saves)
	}
	d.keys("<ctrl+c>")
	if d.m.finish(); d.m.Visit.Revision != d.disk.saves {
		t.Errorf("the visit's own revision is %d after %d saves", d.m.Visit.Revision, d.disk.saves)
	}
}

func TestAnOvertakenSaveIsLeftOut(t *testing.T) {
	disk := &memory{}
	w := &writer{saver: disk}
	newer, older := newVisit(), newVisit()
	w.save(newer, 2)
	if msg := w.save(older, 1); msg.change != 2 || disk.last != newer {
		t.Errorf("an older state was written over a newer: %+v", msg)
	}
}

func TestTheWholeInterviewEndsInTheResult(t *testing.T) {
	d := drive(t, newVisit()).throughTo("")
	if d.m.state != reading || d.m.Visit.Open() != 0 {
		t.Fatalf("not at the result:\n%s", d.View())
	}
	d.Sees("all answered", "Hillside Farm Services", "p make the page", "more below")
	d.keys("p")
	d.Sees("the page is in page.pdf")
	d.keys("<end>")
	d.SeesNot("more below")
	d.keys("q")
	if out := d.m.finish(); !d.Quit || !out.Finished || out.Page != "page.pdf" || out.Path != "visit.json" {
		t.Errorf("%+v", out)
	}
}

func TestAFinishedVisitOpensAtItsResult(t *testing.T) {
	d := drive(t, drive(t, newVisit()).throughTo("").disk.last)
	d.Sees("all answered", "p make the page")
	d.keys("l", "<home>", "<enter>")
	d.at(assess.FactCompany)
	d.keys("<ctrl+u>", "Birch", "<enter>") // a change leads back to the list
	d.Sees("[x] company Birch")
	d.keys("r")
	d.Sees("Customer Birch")
}

func TestWhatDecidesCanBeOverruledWithAReason(t *testing.T) {
	d := drive(t, newVisit()).throughTo("").keys("y")
	d.Sees("let the answers decide", "5 running cost")
	d.keys("5", "<enter>", "<enter>")
	d.Sees("needs a reason")
	d.keys("they said gas is dear", "<enter>")
	if o := d.disk.last.Overrule; o == nil || *o != (rules.Overrule{Requirement: rules.RunningCost, Reason: "they said gas is dear"}) {
		t.Fatalf("saved %+v", o)
	}
	d.keys("y", "<home>", "<enter>")
	if d.disk.last.Overrule != nil {
		t.Error("not withdrawn")
	}
}

func TestAResizeKeepsWhatIsTyped(t *testing.T) {
	d := inOrder(t, newVisit()).keys("Alder Wor")
	for _, s := range [][2]int{{60, 20}, {200, 60}, {40, 15}, {80, 24}} {
		d.Resize(s[0], s[1])
		d.Sees("› Alder Wor")
	}
	d.keys("ks", "<enter>")
	if got := d.answer(assess.FactCompany).Said; got != "Alder Works" {
		t.Errorf("company %q", got)
	}
	d.throughTo(rules.FactMetals).keys("1", "3", "<up>")
	d.Resize(60, 20)
	d.Sees("[x] 1 mild steel", "› [ ] 2", "[x] 3 stainless")
}

func TestThePanelNeedsRoom(t *testing.T) {
	d := drive(t, newVisit()).throughTo(rules.FactStart)
	if view := d.View(); !strings.Contains(view, "│ Capacity needed") || !strings.Contains(view, "│ Systems that fit so far") {
		t.Errorf("no panel:\n%s", view)
	}
	d.Resize(79, 24)
	d.SeesNot("Capacity needed")
}

func TestForeignTextIsCleaned(t *testing.T) {
	v := newVisit()
	v.Set(assess.Answer{Question: assess.FactCompany, Said: "A\x1b]0;x\x07l\u202eder", State: assess.Told, Note: "\x1b[2J"})
	d := drive(t, v)
	d.keys("<ctrl+l>")
	for _, r := range d.m.View() {
		if r == '\x1b' || r == '\u202e' || r == '\x07' {
			t.Fatalf("%q reached the terminal", r)
		}
	}
}

func BenchmarkKey(b *testing.B) {
	d := drive(b, newVisit()).throughTo(rules.FactStart)
	down, up := screentest.Key("<down>"), screentest.Key("<up>")
	for i := 0; b.Loop(); i++ {
		k := down
		if i%2 == 1 {
			k = up
		}
		d.m.Update(k)
		d.m.View()
	}
}

// The first figure stands on the panel after four answers.
func TestFourAnswersReachTheFirstFigure(t *testing.T) {
	d := drive(t, newVisit())
	for _, keys := range [][]string{{"1"}, {"1", "<enter>"}, {"12", "<enter>"}, {"1"}} {
		if side := strings.Join(d.m.Panel(40), " "); !strings.Contains(side, "not known yet") {
			t.Errorf("%d answers, and it says %q", len(d.m.Visit.Answers), side)
		}
		d.keys(keys...)
	}
	if side := strings.Join(d.m.Panel(40), " "); len(d.m.Visit.Answers) != 4 || !strings.Contains(side, "12 mm rated, in mild steel") {
		t.Errorf("%d answers, and it says %q", len(d.m.Visit.Answers), side)
	}
	d.throughTo(rules.FactLabour)
	if company := d.answer(assess.FactCompany); company.Said == "" {
		t.Error("who it is was not asked before what changes nothing")
	}
}

// BenchmarkChoose is one answer taken, and the choice of the next question, where
// most is open.
func BenchmarkChoose(b *testing.B) {
	d := drive(b, newVisit()).throughTo(rules.FactGuidance)
	next, back := screentest.Key("1"), screentest.Key("<esc>")
	for b.Loop() {
		d.m.Update(next)
		d.m.Update(back)
	}
}

func BenchmarkAccept(b *testing.B) {
	d := drive(b, newVisit()).throughTo(rules.FactThickest).keys("12 mm")
	enter, esc := screentest.Key("<enter>"), screentest.Key("<esc>")
	for b.Loop() {
		d.m.Update(enter)
		d.m.Update(esc)
		d.m.View()
	}
}
