package assess

import (
	"slices"

	"cutbrief/rules/unit"
)

// Figures are the steps whose answers are figures a recommendation may hang on,
// in the order they are asked.
func (v *Visit) Figures() []Step {
	job, _ := v.Job()
	return slices.DeleteFunc(v.Steps(), func(s Step) bool { return !job.Figure(s.Asked()).IsKnown() })
}

// Clone is a copy of the visit that later answers do not reach.
func (v *Visit) Clone() *Visit {
	c := *v
	c.Answers, c.Skipped = slices.Clone(v.Answers), slices.Clone(v.Skipped)
	if v.Overrule != nil {
		o := *v.Overrule
		c.Overrule = &o
	}
	return &c
}

// With is a copy of the visit with one answer given otherwise. The visit itself
// stays as it is.
func (v *Visit) With(a Answer) *Visit {
	c := v.Clone()
	c.Set(a)
	return c
}

// Moved is the answer to a step of Figures one notch higher or lower, in the units
// of the visit; false where that would not be plausible.
func (v *Visit) Moved(s Step, up bool) (Answer, bool) {
	job, _ := v.Job()
	q, told := job.Figure(s.Asked()).Get()
	if !told {
		return Answer{}, false
	}
	next := unit.Next(q, v.Style(), up)
	a, _, err := v.Read(s, unit.Show(next, v.Style(), unit.Nearest))
	return a, err == nil && next.Value > 0
}
