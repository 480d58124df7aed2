package casebook

import (
	"encoding/csv"
	"encoding/json"
	"errors"
	"reflect"
	"strings"
	"testing"
	"time"
)

var day = time.Date(2026, 3, 12, 14, 0, 0, 0, time.UTC)

// tried is a practice in which some skills went well and others did not.
func tried(well, badly []Skill) Practice {
	p := Practice{At: day, Case: "bench-top", Seed: 7, Level: 1, Manner: Vague, Used: 20, Of: 42, Skills: map[Skill]Tally{}}
	for _, s := range well {
		p.Skills[s] = Tally{4, 4}
	}
	for _, s := range badly {
		p.Skills[s] = Tally{1, 4}
	}
	return p
}

func progressOf(list ...Practice) *Progress {
	var p Progress
	for _, one := range list {
		p.Add(one)
	}
	return &p
}

// A skill that went well comes back after 1, then 2, then 4, then 8 practices;
// one that did not comes back in the next.
func TestRepetition(t *testing.T) {
	well := func(s ...Skill) Practice { return tried(s, nil) }
	badly := func(s ...Skill) Practice { return tried(nil, s) }
	for _, c := range []struct {
		name string
		p    *Progress
		want Skill
	}{
		{"nothing yet", progressOf(), ""},
		{"the one that did not go well", progressOf(tried([]Skill{SkillSizes}, []Skill{SkillSite})), SkillSite},
		{"once well: it rests one practice", progressOf(well(SkillSizes), badly(SkillSite), badly(SkillSite), well(SkillSite)), SkillSizes},
		{"twice well rests two, once well one", progressOf(well(SkillSizes, SkillUse), well(SkillUse)), SkillSizes},
		{"of equals, the worse", progressOf(tried(nil, []Skill{SkillSizes}), tried(nil, []Skill{SkillSizes, SkillUse}), Practice{Skills: map[Skill]Tally{SkillSizes: {3, 4}, SkillUse: {0, 4}}}), SkillUse},
	} {
		if got := c.p.Due(); got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
}

// The next customer is drawn towards the skill that is due, and is a new one.
func TestDraw(t *testing.T) {
	p := progressOf(tried([]Skill{SkillSizes, SkillSite}, []Skill{SkillDecides}))
	if c, ok := p.Draw(Cases(), 0); !ok || c.Manner != FixedIdea {
		t.Errorf("%s, %v", c.Manner, ok)
	}
	if c, ok := p.Draw(Cases(), 1); ok {
		t.Errorf("%s of level 1 trains what decides", c.Name)
	}
	if c, ok := progressOf().Draw(Cases(), 3); !ok || c.Level != 3 {
		t.Error(c.Name, ok)
	}
	one := tried(nil, []Skill{SkillDecides})
	one.Case = "only-speed"
	if c, ok := progressOf(one).Draw(Cases(), 0); ok {
		t.Errorf("%s is met again", c.Name)
	}
}

func TestProgressIsKeptAsItIs(t *testing.T) {
	p := progressOf(tried([]Skill{SkillSizes}, []Skill{SkillSite}), tried(nil, []Skill{SkillSafety}))
	data, err := p.Encode()
	if err != nil {
		t.Fatal(err)
	}
	again, err := DecodeProgress(data)
	if err != nil || !reflect.DeepEqual(again.Practices, p.Practices) {
		t.Errorf("%v\n%+v", err, again)
	}
	for _, bad := range []string{"", "{", "[]", `{"format":"cutbrief-visit","version":1}`, `{"format":"cutbrief-practice","version":2}`, string(data[:len(data)/2])} {
		if _, err := DecodeProgress([]byte(bad)); !errors.Is(err, ErrNotProgress) {
			t.Errorf("%q: %v", bad, err)
		}
	}
	odd, err := DecodeProgress([]byte(`{"format":"cutbrief-practice","version":1,"practices":[{"case":"\u001b[31m","skills":{"sizes":{"right":9,"of":2},"x":{"right":1,"of":1}}}]}`))
	if err != nil || len(odd.Practices[0].Skills) != 0 || odd.Practices[0].Case != "" {
		t.Errorf("%v %+v", err, odd)
	}
}

func TestTheOldestPracticesGo(t *testing.T) {
	var p Progress
	for i := range practicesKept + 3 {
		p.Add(Practice{Seed: uint64(i)})
	}
	if len(p.Practices) != practicesKept || p.Practices[0].Seed != 3 {
		t.Errorf("%d, first %d", len(p.Practices), p.Practices[0].Seed)
	}
}

// The report says the same in each form. 4 of 4 and 1 of 4 are 5 of 8: six bars
// of ten.
func TestReport(t *testing.T) {
	p := progressOf(tried([]Skill{SkillSizes}, nil), tried(nil, []Skill{SkillSizes}))
	for _, want := range []string{"how thick            ######....  5 of 8          +-\n", "safety                           not tried yet", "2026-03-12  bench-top", "LEVEL  MINUTES    SYSTEM  DECIDES  SHOWN\n", "  1   20 of 42  no      no       no\n", "Next: how thick."} {
		if !strings.Contains(p.Text(nil), want) {
			t.Errorf("%q is not in:\n%s", want, p.Text(nil))
		}
	}
	data, err := p.CSV()
	rows, _ := csv.NewReader(strings.NewReader(string(data))).ReadAll()
	if err != nil || len(rows) != 3 || rows[1][10] != "4" || rows[2][10] != "1" || rows[1][12] != "" || rows[0][10] != "skill_sizes_right" {
		t.Errorf("%v\n%s", err, data)
	}
	seen := map[string]bool{}
	for _, name := range rows[0] { // a program reads a column by its name
		if seen[name] {
			t.Errorf("two columns are called %s", name)
		}
		seen[name] = true
	}
	data, err = p.JSON()
	var out struct {
		Due    Skill
		Skills []struct {
			Skill            Skill
			Right, Of, Tries int
		}
	}
	if json.Unmarshal(data, &out) != nil || err != nil || out.Due != SkillSizes || out.Skills[0].Right != 5 || out.Skills[0].Of != 8 || out.Skills[0].Tries != 2 {
		t.Errorf("%v\n%s", err, data)
	}
	if text := progressOf().Text(nil); !strings.Contains(text, "No practice yet") {
		t.Error(text)
	}
}
