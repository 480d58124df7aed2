package assess

import (
	"strings"
	"testing"

	"cutbrief/rules"
	"cutbrief/rules/metal"
)

// asks reports whether a step is among those asked.
func asks(v *Visit, f rules.Fact, m metal.ID) bool {
	for _, s := range v.Steps() {
		if s.Asked() == (rules.Asked{Fact: f, Metal: m}) {
			return true
		}
	}
	return false
}

func TestEveryQuestionIsComplete(t *testing.T) {
	group := -1
	for _, q := range Catalogue() {
		if q.Name == "" || q.Ask == "" || q.Why == "" || q.Example == "" {
			t.Errorf("%s lacks a text", q.ID)
		}
		if strings.Contains(string(q.Ask), "{1}") != q.PerMetal {
			t.Errorf("%s: the metal is named exactly where it is asked for each", q.ID)
		}
		chosen := q.Form == FormOne || q.Form == FormSeveral
		if chosen != (len(q.Options) > 0) {
			t.Errorf("%s: options do not go with form %s", q.ID, q.Form)
		}
		at := placeOfGroup(q.Group)
		if at < group {
			t.Errorf("%s stands outside its group", q.ID)
		}
		group = at
	}
	if len(places()) != len(catalogue) {
		t.Error("an identifier is used twice")
	}
}

func placeOfGroup(g Group) int {
	for i, known := range Groups() {
		if known.ID == g {
			return i
		}
	}
	return -1
}

// Every example is an answer the question takes.
func TestExamplesAreTaken(t *testing.T) {
	v := New("x", noon)
	for _, q := range Catalogue() {
		if q.Form != FormQuantity && q.Form != FormDate {
			continue
		}
		for _, example := range strings.FieldsFunc(strings.ReplaceAll(string(q.Example), " or ", ","), func(r rune) bool { return r == ',' }) {
			if _, _, err := v.Read(Step{q, metalFor(q)}, example); err != nil {
				t.Errorf("%s: %v", q.ID, err)
			}
		}
	}
}

func metalFor(q *Question) metal.ID {
	if q.PerMetal {
		return metal.MildSteel
	}
	return ""
}

func TestWhatCannotMatterIsNotAsked(t *testing.T) {
	for _, c := range []struct {
		given  rules.Fact
		option string
		fact   rules.Fact
		metal  metal.ID
		want   bool
	}{
		{rules.FactStart, "edge", rules.FactPierced, "stainless", false},
		{rules.FactStart, "middle", rules.FactPierced, "stainless", true},
		{rules.FactStart, "both", rules.FactPierced, "stainless", true},
		{rules.FactFeatures, "straight", rules.FactBevelAngle, "", false},
		{rules.FactFeatures, "bevels", rules.FactBevelAngle, "", true},
		{rules.FactFeatures, "bevels", rules.FactBevelled, "stainless", true},
		{rules.FactSource, "mains", rules.FactGenerator, "", false},
		{rules.FactSource, "generator", rules.FactGenerator, "", true},
		{rules.FactSource, "generator", rules.FactBreaker, "", false},
		{rules.FactSource, "both", rules.FactBreaker, "", true},
		{rules.FactDrier, "no-compressor", rules.FactAirDelivery, "", false},
		{rules.FactDrier, "no-compressor", rules.FactHoseBore, "", false},
		{rules.FactDrier, "none", rules.FactReceiver, "", true},
		{rules.FactAnnoysMost, "nothing", rules.FactAnnoysNext, "", false},
		{rules.FactAnnoysMost, "warps", rules.FactAnnoysNext, "", true},
	} {
		v := New("x", noon)
		tell(t, v, rules.FactMetals, "", "stainless")
		tell(t, v, c.given, "", c.option)
		if asks(v, c.fact, c.metal) != c.want {
			t.Errorf("%s %s: %s asked: %v", c.given, c.option, c.fact, !c.want)
		}
	}
}

func TestNoCordHasNoConductors(t *testing.T) {
	v := New("x", noon)
	tell(t, v, rules.FactCord, "", "none")
	if asks(v, rules.FactCordSection, "") {
		t.Error("conductor size is asked without a cord")
	}
}

// Thicknesses are asked metal by metal, in the order the metals were chosen.
func TestPerMetalOrder(t *testing.T) {
	v := New("x", noon)
	tell(t, v, rules.FactMetals, "", "stainless", "mild-steel")
	var got []string
	for _, s := range v.Steps() {
		if s.Question.PerMetal {
			got = append(got, string(s.Question.ID)+" "+string(s.Metal))
		}
	}
	want := "everyday-thickness stainless,thickest-clean stainless,rare-thickest stainless,everyday-thickness mild-steel,thickest-clean mild-steel,rare-thickest mild-steel"
	if strings.Join(got, ",") != want {
		t.Errorf("got %v", got)
	}
	if text := (step(t, rules.FactThickest, metal.Stainless)).Text().String(); !strings.Contains(text, "thickest stainless") {
		t.Errorf("the metal is not named: %s", text)
	}
}

// An interview that answers the next open question always gets to its end, and
// an unknown answer is not asked again.
func TestInterviewEnds(t *testing.T) {
	v := New("x", noon)
	for n := 0; ; n++ {
		s, open := v.NextOpen()
		if !open {
			break
		}
		if n > 200 {
			t.Fatal("no end")
		}
		switch s.Question.Form {
		case FormOne, FormSeveral:
			var all []string
			for _, o := range v.Options(s) {
				all = append(all, o.ID)
			}
			if s.Question.Form == FormOne {
				all = all[:1]
			}
			tell(t, v, s.Question.ID, s.Metal, all...)
		default:
			v.Set(NotKnown(s))
		}
	}
	if v.Open() != 0 {
		t.Errorf("%d steps still open", v.Open())
	}
}

func TestSkippedGroupIsLeftOut(t *testing.T) {
	v := New("x", noon)
	v.Skip(GroupVisit)
	if s, _ := v.NextOpen(); s.Question.ID != rules.FactMetals {
		t.Errorf("next is %s, want metals", s.Question.ID)
	}
	v.Ask(GroupVisit)
	if s, _ := v.NextOpen(); s.Question.ID != FactCompany {
		t.Errorf("next is %s, want company", s.Question.ID)
	}
}

// Every question that is not always asked says when it is, and no other.
func TestConditionsAreWorded(t *testing.T) {
	for _, q := range Catalogue() {
		if (q.applies != nil) != (q.When() != "") {
			t.Errorf("%s: asked on a condition: %v; its words: %q", q.ID, q.applies != nil, q.When())
		}
	}
}
