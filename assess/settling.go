package assess

import (
	"math"
	"slices"
	"strings"

	"cutbrief/rules"
	"cutbrief/rules/system"
)

// ways is how many ways the open questions may be answered are looked at for
// one choice: the likeliest, and others spread evenly over the priors.
const ways = 5

// mostTelling is the open question that is worth most per second: in each of
// several ways the open questions may be answered, some smallest set of answers
// already settles the recommendation, and the question that stands in most of
// those sets, the small ones first, is asked. The zero Step means that none of
// these ways settles it.
func (v *Visit) mostTelling(open []Step, offered system.Range, usual Priors) Step {
	worth := map[rules.Asked]float64{}
	for n := range ways {
		world, added := v.answeredAsUsual(n, usual)
		set := world.settlingSet(added, offered)
		for _, s := range set {
			worth[s.Asked()] += 1 / float64(len(set))
		}
	}
	best, most := Step{}, 0.0
	for _, s := range open {
		value := worth[s.Asked()]
		for a, w := range worth {
			if hangsOn(a.Fact, s.Question.ID) && !slices.ContainsFunc(open, func(o Step) bool { return o.Asked() == a }) {
				value = max(value, w)
			}
		}
		if p := priorOf(s.Question.ID); p != nil && value > 0 {
			value /= math.Sqrt(p.seconds) // a dear question is put off, but not for ever
			if value > most {
				best, most = s, value
			}
		}
	}
	return best
}

// answeredAsUsual is the visit with every open question that has a prior answered
// in way n, and the steps that were: in way 0 each as most customers do.
func (v *Visit) answeredAsUsual(n int, usual Priors) (*Visit, []Step) {
	world := &Visit{Answers: slices.Clone(v.Answers), Skipped: v.Skipped, Overrule: v.Overrule}
	var added []Step
	for {
		before := len(added)
		for _, s := range world.Steps() {
			p := usual.of(s.Question.ID)
			if p == nil || world.has(s) {
				continue
			}
			said := p.likeliest()
			if n > 0 {
				said = p.at(point(n, len(added)))
			}
			world.Set(world.usual(s, said))
			added = append(added, s)
		}
		if len(added) == before {
			return world, added
		}
	}
}

// point spreads way n of question k over 0 to 1: multiples of irrational steps, so
// that few ways cover the answers evenly and no two questions go in step.
func point(n, k int) float64 {
	_, fraction := math.Modf(float64(n)*math.Phi + float64(k)*math.Sqrt2*float64(n))
	return fraction
}

// usual makes an answer of what a prior says; a test reads every row of it.
func (v *Visit) usual(s Step, said string) Answer {
	var a Answer
	var err error
	if s.Question.Form == FormOne || s.Question.Form == FormSeveral {
		a, err = v.Choose(s, strings.Split(said, ", "))
	} else {
		a, _, err = v.Read(s, said)
	}
	if err != nil {
		return NotKnown(s)
	}
	return a
}

// settlingSet takes away every added answer that the recommendation does not need,
// the dearest first, and returns those that are left; nil if all of them together
// settle nothing. The visit is changed.
func (v *Visit) settlingSet(added []Step, offered system.Range) []Step {
	if !v.settledIn(offered) {
		return nil
	}
	slices.SortStableFunc(added, func(a, b Step) int {
		return int(priorOf(b.Question.ID).seconds - priorOf(a.Question.ID).seconds)
	})
	var set []Step
	for _, s := range added {
		a, _ := v.Answer(s.Asked())
		v.Clear(s.Asked())
		if !v.settledIn(offered) {
			v.Set(a)
			set = append(set, s)
		}
	}
	return set
}

// settledIn reports that no likely answer to an open question could change what
// the answers say is recommended, or that nothing fits.
func (v *Visit) settledIn(offered system.Range) bool {
	job, _ := v.Job()
	switch r := rules.Summarise(job, offered); r.Outcome {
	case rules.Recommended:
		return r.Firm
	case rules.NoneFits:
		all := rules.Evaluate(job, offered)
		return v.nothingFits(&all)
	}
	return false
}

// nothingFits reports that nothing fits, whatever the open answers are.
func (v *Visit) nothingFits(r *rules.Result) bool {
	return r.Outcome == rules.NoneFits && v.asked(r.Open)
}
