package casebook

import (
	"strings"
	"testing"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
)

func caseOf(t *testing.T, name string) Customer {
	t.Helper()
	for _, c := range Cases() {
		if c.Name == name {
			return c
		}
	}
	t.Fatalf("no case %s", name)
	return Customer{}
}

// understood is a practice in which all is true but for some notes.
func understood(t *testing.T, c *Customer, notes map[rules.Asked]string) *Session {
	t.Helper()
	s := Start(c, system.Demo())
	for _, step := range c.Facts.Steps() {
		a := step.Asked()
		truth, known := c.truth(a)
		if !known {
			continue
		}
		line, other := notes[a]
		switch {
		case other && line == "":
			continue // not asked
		case other && len(truth.Chosen) > 0:
			truth.Chosen = []string{line}
		case other:
			truth, _, _ = s.Notes.Read(step, line)
		}
		s.Do(Ask, step)
		s.Notes.Set(truth)
	}
	return s
}

// together are messages in English, in one text.
func together(list []message.Message) string { return message.Join(" ", list...).String() }

func itemOf(m Mark, a rules.Asked) Item {
	for _, i := range m.Items {
		if i.Asked == a {
			return i
		}
	}
	return Item{}
}

var (
	thickest = rules.Asked{Fact: rules.FactThickest, Metal: "mild-steel"}
	annoys   = rules.Asked{Fact: rules.FactAnnoysMost}
	use      = rules.Asked{Fact: rules.FactUse}
)

// What each miss could have cost, argued by hand from the demo range.
func TestWhatAMissCosts(t *testing.T) {
	for _, c := range []struct {
		name  string
		asked rules.Asked
		note  string // "" is not asked
		state State
		costs Level
		says  string
	}{
		// With 12 mm in production, 24 mm rated: beyond the 22 mm of the 90, and one phase feeds none of these.
		{"own-pocket", use, "production", WrongFact, ChangesSystem, "the result is: no system fits. It should be: Demo 45, a 45 A unit"},
		// 10 mm in production is 20 mm rated; on one phase the largest is rated 18 mm.
		{"busy-yard", use, "production", WrongFact, ChangesSystem, "It should be: Demo 45"},
		// 15 mm in place of 10: rated 18 mm.
		{"bench-top", thickest, "15 mm", WrongFact, ChangesSystem, "With 15 mm in place of 10 mm, the result is: Demo 70, a 70 A unit"},
		// Within one nominal step, 6 %: 10.4 mm is the same size.
		{"bench-top", thickest, "10.4 mm", Right, ChangesNothing, ""},
		{"bench-top", annoys, "rough-edge", WrongFact, ChangesDeciding, "you would have shown edge quality; the deciding requirement is running cost"},
		{"bench-top", annoys, "", NotAsked, ChangesDeciding, "the deciding requirement is running cost"},
		{"bench-top", use, "", NotAsked, ChangesSystem, "the result is: not known yet"},
		{"bench-top", rules.Asked{Fact: rules.FactBreaker}, "", NotAsked, ChangesVerdict, "the verdict on breaker is “not known”"},
		{"bench-top", rules.Asked{Fact: rules.FactBreaker}, "10 A", WrongFact, ChangesVerdict, "the verdict on breaker is “not met”"},
		{"bench-top", rules.Asked{Fact: rules.FactExperience}, "experienced", WrongFact, ChangesNothing, ""},
	} {
		customer := caseOf(t, c.name)
		m := understood(t, &customer, map[rules.Asked]string{c.asked: c.note}).Mark(Decision{})
		i := itemOf(m, c.asked)
		if i.State != c.state || i.Effect.Level != c.costs || !strings.Contains(i.Effect.Sentence().String(), c.says) {
			t.Errorf("%s, %s as %q: %s, costs %d: %q", c.name, c.asked.Fact, c.note, i.State, i.Effect.Level, i.Effect.Sentence())
		}
	}
}

// The system picked is held against what is true, whatever the notes say.
func TestTheSystemPicked(t *testing.T) {
	c := caseOf(t, "own-pocket") // 12 mm: rated 12 mm is the 45
	for id, want := range map[string]string{
		"demo-45": "Right: Demo 45, a 45 A unit.",
		"demo-30": "You would have sold Demo 30, a 30 A unit. It is not enough: clean cut needs 12 mm, and there is 8 mm",
		"demo-70": "larger than needed: 24 kg in place of 14 kg, and EUR 1,150 more", // 3100 − 1950
		"":        "You said that none fits; Demo 45, a 45 A unit does.",
	} {
		m := understood(t, &c, nil).Mark(Decision{System: id})
		if got := together(m.System); !strings.Contains(got, want) || m.RightSystem != (id == "demo-45") {
			t.Errorf("%q: %s", id, got)
		}
	}
	none := caseOf(t, "ship-plates")
	if m := understood(t, &none, nil).Mark(Decision{Decides: rules.Speed}); !m.RightSystem || !m.Proven {
		t.Error(m.System, m.Showing)
	}
}

// The demonstration proves what decides, or does not; each cut says why.
func TestTheDemonstrationPicked(t *testing.T) {
	c := caseOf(t, "bench-top") // running cost: the timed cut, and the same beside today's way
	for _, row := range []struct {
		cuts   []string
		proven bool
		says   string
	}{
		{[]string{"everyday-straight", "own-piece"}, true, "it shows the deciding requirement"},
		{[]string{"own-piece", "side-by-side"}, true, "does not open with it"},
		{[]string{"own-piece"}, false, "Nothing in it shows running cost"},
		{[]string{"gaps"}, false, "it is not for this customer"},
		{nil, false, "You planned no cut"},
	} {
		m := understood(t, &c, nil).Mark(Decision{Decides: rules.RunningCost, System: "demo-45", Cuts: row.cuts})
		if got := together(m.Showing); m.Proven != row.proven || !strings.Contains(got, row.says) {
			t.Errorf("%v: proven %v\n%s", row.cuts, m.Proven, got)
		}
	}
}

// Whoever believes the first answers is told which were not so, and whoever
// follows up is told that too.
func TestContradictionsCaught(t *testing.T) {
	c := caseOf(t, "own-pocket")
	s := Start(&c, system.Demo())
	step := stepOf(thickest)
	s.Notes.Set(assess.Answer{Question: rules.FactMetals, Chosen: []string{"mild-steel"}, State: assess.Told})
	s.Do(Ask, step)
	s.Notes.Set(c.Wrong[thickest])
	if m := s.Mark(Decision{}); len(m.Caught) != 0 || len(m.Let) != 1 || !strings.Contains(m.Let[0].String(), "first heard as 6 mm; it is 12 mm") {
		t.Error(m.Caught, m.Let)
	}
	if said, err := s.Do(Repeat, step); err != nil || !strings.Contains(said.String(), "12 mm") {
		t.Error(said, err)
	}
	truth, _ := c.truth(thickest)
	s.Notes.Set(truth)
	if m := s.Mark(Decision{}); len(m.Caught) != 1 || len(m.Let) != 0 || m.Skills[SkillFollow] != (Tally{1, 1}) {
		t.Error(m.Caught, m.Let, m.Skills)
	}
}

func TestSafetyForgotten(t *testing.T) {
	c := caseOf(t, "trade-school")
	s := Start(&c, system.Demo())
	s.Do(Ask, stepOf(rules.Asked{Fact: rules.FactEyes}))
	m := s.Mark(Decision{})
	if len(m.Safety) != 2 || !strings.Contains(together(m.Safety), "nothing takes it away") {
		t.Error(m.Safety)
	}
	if page := m.Page(nil, 80); !strings.Contains(page, "SAFETY QUESTIONS FORGOTTEN") {
		t.Error(page)
	}
}

// Acts cost what they say, cannot be done out of turn, and end with the
// patience.
func TestMinutes(t *testing.T) {
	c := caseOf(t, "pasture-fence") // 24 minutes
	s := Start(&c, system.Demo())
	step := stepOf(rules.Asked{Fact: rules.FactUse})
	for act, want := range map[Act]error{Again: ErrNotAsked, Explain: ErrNotAsked, Repeat: ErrNotAsked, Measure: ErrNoPiece} {
		if _, err := s.Do(act, step); err != want || s.Used() != 0 {
			t.Errorf("%s: %v, %d minutes", act, err, s.Used())
		}
	}
	s.Do(Ask, step)
	if _, err := s.Do(Repeat, step); err != ErrNoNote || s.Used() != 1 {
		t.Error(err, s.Used())
	}
	s.Do(Plate, step)
	s.Do(Explain, step)
	if s.Used() != 6 { // 1 + 3 + 2
		t.Errorf("%d minutes", s.Used())
	}
	if _, err := s.Do(Breaker, step); err != nil { // the panel's label still says the voltage
		t.Error(err)
	}
	for !s.Over() {
		s.Do(Ask, step)
	}
	if _, err := s.Do(Ask, step); err != ErrOver || s.Left != 0 {
		t.Error(err, s.Left)
	}
}

// Every line of the page fits its width, at any width it is given.
func TestThePageFits(t *testing.T) {
	for _, c := range Cases() {
		m := Start(&c, system.Demo()).Mark(Decision{System: "demo-125", Cuts: []string{"gaps"}})
		for _, width := range []int{40, 78, 100} {
			for _, line := range strings.Split(m.Page(nil, width), "\n") {
				if n := len([]rune(line)); n > width {
					t.Errorf("%s: %d characters: %q", c.Name, n, line)
				}
			}
		}
	}
}
