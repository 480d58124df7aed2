package assess

import (
	"strings"
	"testing"

	"cutbrief/rules"
	"cutbrief/rules/system"
)

const recommended = `{"format":"cutbrief-visit","version":1,"recommended":{"outcome":"recommended","system":"demo-45","firm":true,"critical":"reach","rated_mm":12.7,"rules":1,"range":"0123456789ab","by":"me"},"answers":[]}`

func TestRecommendationIsKept(t *testing.T) {
	v, unknown, err := Decode([]byte(recommended))
	if err != nil {
		t.Fatal(err)
	}
	r := v.Recommended
	if r == nil || r.Outcome != rules.Recommended || r.System != "demo-45" || !r.Firm || r.Critical != rules.Reach || r.Rated.Or(0) != 12.7 || r.Rules != 1 || r.Range != "0123456789ab" {
		t.Errorf("got %+v", r)
	}
	if got := strings.Join(unknown, "|"); got != `recommended: field "by"` {
		t.Errorf("listed %s", got)
	}
	out, err := v.Encode()
	if err != nil {
		t.Fatal(err)
	}
	if err := validate(t, compiled(t), string(out)); err != nil {
		t.Error(err)
	}
	squeezed := strings.Join(strings.Fields(string(out)), "")
	_, want, _ := strings.Cut(recommended, `"recommended":`)
	if !strings.Contains(squeezed, strings.TrimSuffix(want, `,"answers":[]}`)) {
		t.Errorf("lost something in\n%s", out)
	}
}

func TestRecommendationRefuses(t *testing.T) {
	for _, part := range []string{`1`, `{}`, `{"outcome":"perhaps"}`, `{"outcome":"recommended","firm":"yes"}`,
		`{"outcome":"not-yet","critical":"colour"}`, `{"outcome":"not-yet","rated_mm":-1}`, `{"outcome":"not-yet","rated_mm":null}`} {
		_, _, err := Decode([]byte(`{"format":"cutbrief-visit","version":1,"recommended":` + part + `,"answers":[]}`))
		if err == nil || !strings.Contains(err.Error(), "recommended") {
			t.Errorf("%s: %v", part, err)
		}
	}
}

// A visit with no answers concludes that nothing can be recommended yet.
func TestConcludeNothing(t *testing.T) {
	job, _ := New("x", noon).Job()
	offered := system.Demo()
	v, _, err := Decode([]byte(recommended))
	if err != nil {
		t.Fatal(err)
	}
	v.Record(rules.Evaluate(job, offered), system.Fingerprint(offered))
	c := v.Recommended
	if string(c.extra["by"]) != `"me"` {
		t.Error("what is not known is lost")
	}
	if c.Outcome != rules.NotYet || c.System != "" || c.Rated.IsKnown() || c.Rules != rules.Edition || len(c.Range) != 12 {
		t.Errorf("got %+v", c)
	}
}
