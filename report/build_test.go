package report

import (
	"reflect"
	"strings"
	"testing"
	"time"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/message/catalog"
	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// farm is an invented repair shop that cuts 10 mm most days and 12 mm at most.
func farm(t *testing.T) *assess.Visit {
	t.Helper()
	v := assess.New("farm", time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC))
	say(t, v, assess.FactCompany, "", "Brook Farm Machinery Repair")
	say(t, v, assess.FactDate, "", "2026-11-20")
	choose(t, v, rules.FactMetals, string(metal.MildSteel))
	say(t, v, rules.FactEveryday, metal.MildSteel, "10 mm")
	say(t, v, rules.FactThickest, metal.MildSteel, "12 mm")
	say(t, v, rules.FactRarest, metal.MildSteel, "20 mm")
	choose(t, v, rules.FactUse, string(rules.Maintenance))
	choose(t, v, rules.FactStart, string(rules.AtEdge))
	choose(t, v, rules.FactFeatures, string(rules.Straight))
	choose(t, v, rules.FactToday, string(rules.OxyFuel))
	choose(t, v, rules.FactAnnoysMost, string(rules.Warps))
	choose(t, v, rules.FactPhases, string(rules.SinglePhase))
	say(t, v, rules.FactVolts, "", "230 V")
	return v
}

func say(t *testing.T, v *assess.Visit, f rules.Fact, m metal.ID, text string) {
	t.Helper()
	q, ok := assess.Find(f)
	if !ok {
		t.Fatalf("no question %q", f)
	}
	a, _, err := v.Read(assess.Step{Question: q, Metal: m}, text)
	if err != nil {
		t.Fatal(err)
	}
	v.Set(a)
}

func choose(t *testing.T, v *assess.Visit, f rules.Fact, options ...string) {
	t.Helper()
	q, _ := assess.Find(f)
	a, err := v.Choose(assess.Step{Question: q}, options)
	if err != nil {
		t.Fatal(err)
	}
	v.Set(a)
}

// steps is a hand-built range: three systems, single-phase, invented.
func steps() system.Range {
	sys := func(id string, rated, clean, sever unit.Millimetre) system.System {
		return system.System{
			ID: id, Name: "Test " + id, Rated: rated, CleanMax: clean, Severance: sever, OutputMin: 20, OutputMax: unit.Ampere(rated * 4),
			Supplies: []system.Supply{{Phases: 1, VoltMin: 200, VoltMax: 240, Input: 30, Effective: 20}},
			Duty:     []system.DutyPoint{{Output: unit.Ampere(rated * 4), Duty: 60}},
			AirFlow:  150, AirPressure: 5, Weight: 20, Price: unit.Known(unit.Money(2000)),
		}
	}
	return system.Range{Name: "test range", Invented: true, Currency: "EUR", Systems: []system.System{
		sys("8", 8, 11, 15), sys("12.7", 12.7, 18, 24), sys("20", 20, 28, 38),
	}}
}

// Needs are rounded up and capabilities down: 6.35 mm in production asks for
// 12.7 mm, which a 12 mm system falls 5.5 % short of.
func TestNumbersAreRoundedOnce(t *testing.T) {
	v := farm(t)
	v.Clear(rules.Asked{Fact: rules.FactRarest, Metal: metal.MildSteel})
	say(t, v, rules.FactThickest, metal.MildSteel, "1/4 in")
	say(t, v, rules.FactEveryday, metal.MildSteel, "1/4 in")
	choose(t, v, rules.FactUse, string(rules.Production))
	b := Build(v, steps(), Options{})
	if b.Headline != "Test 12.7" || b.Bars[0].Need != "needs 12.7 mm" || b.Bars[0].Have != "gives 12.7 mm" {
		t.Errorf("%q: %+v", b.Headline, b.Bars)
	}
	inch := Build(v, steps(), Options{Style: unit.Inch})
	if inch.Bars[0].Need != "needs 1/2 in" || !strings.Contains(inch.Need, "1/4 in") {
		t.Errorf("in inches: %q, %+v", inch.Need, inch.Bars[0])
	}
}

func TestRecommendationSaysWhyAndWhatRemains(t *testing.T) {
	b := Build(farm(t), steps(), Options{})
	want := "You cut mild steel, 10 mm most days and 12 mm at most, and now and then a severance cut in 20 mm (the piece only has to come apart), for repair work at irregular times."
	if b.Need != want {
		t.Errorf("need %q", b.Need)
	}
	if b.Outcome != "recommended" || b.Headline != "Test 12.7" || b.Critical != "Low distortion" {
		t.Errorf("%s: %q decided by %q", b.Outcome, b.Headline, b.Critical)
	}
	if b.Evidence[0].Label != "said" || b.Evidence[0].Trust == "" {
		t.Errorf("evidence %+v", b.Evidence)
	}
	if !holds(b.Confirm, "licensed electrician") {
		t.Errorf("nobody confirms the supply: %+v", b.Confirm)
	}
	if !holds(b.Excluded, "needs 12 mm, gives 8 mm") || !holds(b.Excluded, "more to spare") {
		t.Errorf("excluded without a reason: %+v", b.Excluded)
	}
	if len(b.Plan) == 0 || b.ShownBy == "" || len(b.PlanNote) == 0 || !strings.Contains(b.Demo, "systems do not exist") {
		t.Errorf("plan %+v, shown by %q, banner %q", b.Plan, b.ShownBy, b.Demo)
	}
}

func holds(lines []Line, text string) bool {
	for _, l := range lines {
		if strings.Contains(l.Label+" "+l.Value+" "+l.Why, text) {
			return true
		}
	}
	return false
}

func TestNotARecommendationYet(t *testing.T) {
	b := Build(assess.New("empty", time.Date(2026, 1, 2, 3, 4, 5, 0, time.UTC)), steps(), Options{})
	if b.Outcome != "not-yet" || strings.Contains(b.Headline, "Test") || len(b.Plan) != 0 || len(b.Bars) != 0 || len(b.Excluded) != 0 {
		t.Errorf("%+v", b)
	}
	text := strings.Join(b.Because, " ")
	if !strings.Contains(text, "not a recommendation") || !strings.Contains(text, "To ask first") {
		t.Errorf("because %q", text)
	}
	if len(b.Cautions) == 0 || !b.Date.Equal(time.Date(2026, 1, 2, 0, 0, 0, 0, time.UTC)) {
		t.Errorf("cautions %d, date %v", len(b.Cautions), b.Date)
	}
}

func TestNoneFitsSaysWhatWould(t *testing.T) {
	v := farm(t)
	say(t, v, rules.FactThickest, metal.MildSteel, "60 mm")
	b := Build(v, steps(), Options{})
	text := strings.Join(b.Because, " ")
	if b.Outcome != "none-fits" || !strings.Contains(text, "What would do: a larger system, or mechanised cutting") || !strings.Contains(text, "Another process") {
		t.Errorf("%s: %q", b.Outcome, text)
	}
	if len(b.Plan) != 0 || len(b.Excluded) != 3 {
		t.Errorf("plan %d, excluded %d", len(b.Plan), len(b.Excluded))
	}
}

// 120 V feeds none of these plates, which ask for 200 to 240 V: the page says
// what supply was told, and the derivation holds the check that failed.
func TestASupplyThatFeedsNone(t *testing.T) {
	v := farm(t)
	say(t, v, rules.FactVolts, "", "120 V")
	b := Build(v, steps(), Options{})
	if b.Outcome != "none-fits" || len(b.Because) == 0 || b.Because[0] != "The supply here, as given: single-phase, 120 V." {
		t.Errorf("%s: %q", b.Outcome, b.Because)
	}
	for _, r := range Why(v, steps(), Options{}) {
		if r.Topic == string(rules.RuleSupply) {
			if r.Value != string(rules.Short) || r.Parts[0].Title != "checked with the nearest system" || r.Parts[0].Value != "Test 12.7" {
				t.Errorf("%+v", r)
			}
			return
		}
	}
	t.Error("the supply is not derived")
}

func TestAssumedAnswersAreToBeConfirmed(t *testing.T) {
	v := farm(t)
	asked := rules.Asked{Fact: rules.FactThickest, Metal: metal.MildSteel}
	a, _ := v.Answer(asked)
	a.State = assess.Assumed
	v.Set(a)
	b := Build(v, steps(), Options{})
	if !holds(b.Confirm, "assumed 12 mm") || !holds(b.Confirm, "The choice holds up to 12.7 mm") {
		t.Errorf("confirm %+v", b.Confirm)
	}
}

// A guess is a word of ours beside a figure of theirs.
func TestAGuessIsSaidInTheWordsOfTheBook(t *testing.T) {
	v := farm(t)
	say(t, v, rules.FactEveryday, metal.MildSteel, "about 10 mm")
	book, _ := catalog.Read(strings.NewReader("english,words\nassumed {1},angenommen {1}\nabout {1},etwa {1}\n"), "test")
	for _, c := range []struct {
		words *message.Catalog
		want  string
	}{{nil, "assumed about 10 mm"}, {book, "angenommen etwa 10 mm"}} {
		if b := Build(v, steps(), Options{Words: c.words}); !holds(b.Confirm, c.want) {
			t.Errorf("no %q in %+v", c.want, b.Confirm)
		}
	}
}

// What a visit holds reaches the page as words only.
func TestTextsPassTheGate(t *testing.T) {
	v := farm(t)
	v.Set(assess.Answer{Question: assess.FactCompany, Said: "A\x1b[31m\u202eB\xff", State: assess.Told})
	v.Set(assess.Answer{Question: assess.FactNotes, Said: "one\n\n two\x1b]0;t\x07", State: assess.Told})
	b := Build(v, steps(), Options{})
	if b.Who[0].Value != "A<U+202E>B\ufffd" {
		t.Errorf("company %q", b.Who[0].Value)
	}
	if len(b.Notes) != 2 || b.Notes[1] != "two" {
		t.Errorf("notes %q", b.Notes)
	}
}

func TestSameVisitSameBrief(t *testing.T) {
	if !reflect.DeepEqual(Build(farm(t), steps(), Options{}), Build(farm(t), steps(), Options{})) {
		t.Error("the same visit gave another brief")
	}
}

// Every fact that carries a number says what it rests on.
func TestEveryFigureSaysWhatItRestsOn(t *testing.T) {
	b := Build(farm(t), steps(), Options{})
	for _, x := range b.Bars {
		if x.Source == "" || x.Trust == "" || x.Why == "" {
			t.Errorf("bar without a basis: %+v", x)
		}
	}
	for _, l := range append(b.Cautions, b.Evidence...) {
		if l.Source == "" || strings.Contains(l.Source, "unregistered") {
			t.Errorf("line without a source: %+v", l)
		}
	}
	for _, r := range b.Plan {
		if r.Source == "" {
			t.Errorf("cut without a source: %+v", r)
		}
	}
}

func TestSoFar(t *testing.T) {
	p := SoFar(nil, farm(t), steps())
	if p.Need != "12 mm rated, in mild steel" || p.Critical != "low distortion" || p.Out != 1 || len(p.In) != 2 {
		t.Errorf("%+v", p)
	}
	empty := SoFar(nil, assess.New("empty", time.Time{}), steps())
	if empty.Need != "not known yet" || empty.Critical != "not clear yet" || len(empty.Ask) == 0 {
		t.Errorf("%+v", empty)
	}
}

// In inches a stand-off reads as it is kept: 3 mm is 1/8 in and 6 mm 1/4 in,
// by 25.4 mm to the inch and sixteenths.
func TestStandOffInInches(t *testing.T) {
	b := Build(farm(t), steps(), Options{Style: unit.Inch})
	last := b.Plan[len(b.Plan)-1]
	if !strings.Contains(last.Setting, "stand-off 1/8 to 1/4 in") {
		t.Errorf("setting %q", last.Setting)
	}
}
