package report

import (
	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
)

// Supposed is what a visit would come to with one figure moved.
type Supposed struct {
	Name  string // of the answer: "thickest clean cut, mild steel"
	Value string // as it is supposed: "14 mm"

	Headline string
	Decides  string // the requirement that decides
	Cost     string // in one line, "" while nothing can be said
	Plan     string // the cuts to show, "" without any

	Scale []string  // which system leads from where to where, the smallest figure first
	Here  int       // the line of Scale that Value lies in, −1 if in none
	Ends  []float64 // where each line of Scale ends, as a share of all of them
	At    float64   // where Value lies, as a share of the same
}

// Suppose words what a visit comes to with one figure moved, and how far it may move
// before another system leads. The scale stands around the figure as it was told.
func Suppose(told, moved *assess.Visit, a rules.Asked, offered system.Range, o Options) Supposed {
	b := newBuilder(moved, &offered, o)
	b.plans()
	now, _ := b.job.Figure(a).Get()
	s := Supposed{
		Name: b.print(askedName(a).Capital()), Value: b.print(b.told(now)), Headline: b.print(b.headline()),
		Decides: b.print(b.decides()), Here: -1,
	}
	if c := b.cost(); c != nil && len(c.Lines) > 0 {
		s.Cost = c.Lines[0]
	}
	s.Plan = b.print(message.Join("; ", mapped(b.plan, func(c *demonstration.Cut) message.Message { return c.Name })...))
	was, _ := told.Job()
	around, _ := was.Figure(a).Get()
	list := rules.Scale(b.job, a, around.Value, offered)
	if len(list) == 0 {
		return s
	}
	low, high := list[0].From.Value, list[len(list)-1].To.Value
	share := func(v float64) float64 { return (v - low) / (high - low) }
	s.At = share(now.Value)
	for i, stretch := range list {
		leads := b.standing(&stretch)
		switch {
		case len(list) == 1:
			leads = msg("from {1} to {2}: {3}", b.needed(stretch.From), b.given(stretch.To), leads)
		case i == len(list)-1:
			leads = msg("above that: {1}", leads)
		default:
			leads = msg("up to {1}: {2}", b.given(stretch.To), leads)
		}
		s.Scale, s.Ends = append(s.Scale, b.print(leads)), append(s.Ends, share(stretch.To.Value))
		if s.Here < 0 && now.Value <= stretch.To.Value {
			s.Here = i
		}
	}
	return s
}

// SupposedPart is one line of what would follow.
type SupposedPart struct {
	Label message.Message
	Text  string
}

// SupposedParts are what would follow, in the order it is said; what cannot be said
// yet is left out.
func SupposedParts(s *Supposed) (list []SupposedPart) {
	for _, p := range []SupposedPart{
		{msg("Recommended:"), s.Headline}, {msg("What decides:"), s.Decides}, {msg("Cost:"), s.Cost}, {msg("To show:"), s.Plan},
	} {
		if p.Text != "" {
			list = append(list, p)
		}
	}
	return list
}

// standing says which system leads in a stretch, and how it stands.
func (b *builder) standing(s *rules.Stretch) message.Message {
	if s.System == nil || s.Status == rules.FallsShort {
		return msg("no system fits")
	}
	return reserved(outside(s.System.Name), s.Status)
}

// reserved is the name of a system with what has to be said of it in one breath.
func reserved(name message.Message, s rules.Status) message.Message {
	switch s {
	case rules.FitsAfterSite:
		return msg("{1}, once the site is changed", name)
	case rules.FitsNearly:
		return msg("{1}, borderline", name)
	}
	return name
}

// Movable are the figures of a visit that would change what is recommended if they
// moved, in the order they are asked.
func Movable(v *assess.Visit, offered system.Range) (list []assess.Step) {
	job, _ := v.Job()
	for _, s := range v.Figures() {
		if now, _ := job.Figure(s.Asked()).Get(); len(rules.Scale(job, s.Asked(), now.Value, offered)) > 1 {
			list = append(list, s)
		}
	}
	return list
}
