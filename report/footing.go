package report

import (
	"strings"

	"cutbrief/rules/cite"
	"cutbrief/rules/system"
)

// footing says what the figures rest on, which range they come from, and of
// which day they are.
func (b *builder) footing() []string {
	list := []string{
		"Range: " + b.rangeName() + ". Visit of " + day(b.date()) + ". Needs are rounded up, capabilities down.",
		"Resting on: " + strings.Join(b.kinds(), "; ") + ". The text form gives each figure's own source.",
	}
	return list
}

// rangeName is what the range is called: ours where it is the built-in one.
func (b *builder) rangeName() string {
	if b.offered.Name == system.DemoName {
		return clean(b.offered.Name)
	}
	return plain(b.offered.Name)
}

// kinds are the kinds of trust used, in the register's order.
func (b *builder) kinds() []string {
	used := map[cite.Trust]bool{}
	add := func(r cite.Ref) {
		if s, ok := r.Find(); ok {
			used[s.Trust] = true
		}
	}
	for _, c := range b.result.Candidates {
		for _, check := range c.Checks {
			add(check.Source)
		}
	}
	for _, e := range b.result.Critical.Evidence {
		add(e.Source)
	}
	for _, c := range b.plan {
		add(c.Source)
	}
	for _, c := range b.warned {
		add(c.Source)
	}
	if b.recommended() && b.job.Today.IsKnown() { // what it costs
		used[cite.Practice], used[cite.Memory] = true, true
	}
	if b.offered.Invented || b.visit.Demo || b.prices.Invented && b.recommended() && b.job.Today.IsKnown() {
		used[cite.Invented] = true
	}
	var list []string
	for _, t := range []cite.Trust{cite.Published, cite.Practice, cite.Memory, cite.Invented} {
		if used[t] {
			list = append(list, string(t))
		}
	}
	return list
}
