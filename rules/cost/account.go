// Package cost works out what a metre of cut costs today and what it would
// cost with a system, as ranges: labour, gas, electricity, air, consumables,
// blades, rental, work sent out. It says what a saving rests on, when a system
// pays for itself, and above which thickness oxy-fuel is cheaper. It refuses to
// compute what a process cannot do, and says so in a plain sentence; it formats
// nothing. The report and commands import it.
//
// How ranges are worked out: every uncertain input has a low, a likely and a
// high figure. The likely result takes the likely figure of each. Then one
// input at a time goes to its low and its high end, and the effects on either
// side are added as the root of the sum of their squares, as for inputs that do
// not depend on each other (gum, 5.1.2, from memory). The range is what is to
// be expected, not the worst that could be: that everything goes wrong at once
// lies outside. The test of samples says how often.
package cost

import (
	"slices"

	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// Verdict on a saving.
type Verdict string

// The verdicts. NoClear means that the range of the saving includes zero.
const (
	Saves     Verdict = "saves"
	NoClear   Verdict = "no clear saving"
	CostsMore Verdict = "costs more"
)

// Account is what cutting costs today and would cost, for one job.
type Account struct {
	Prices  PriceList
	Metal   metal.ID // of the cut the systems are worked out for
	T       unit.Maybe[unit.Millimetre]
	Metres  unit.Maybe[Estimate] // a year; known zero is zero
	Methods []Method             // today's, in the order told
	Against int                  // which of Methods the systems are held against; −1 if none can be
	Offers  []Offer              // one a system, in the order asked for
	Assumed bool                 // some price used is nobody's
	Why     message.Message      // why there is no account at all, "" if there is
}

// Method is one method of cutting, worked out or not.
type Method struct {
	Process  Process
	Metal    metal.ID
	T        unit.Millimetre
	PerMetre Estimate
	PerYear  unit.Maybe[Estimate]
	Lines    []Line
	Inputs   []Input
	Why      message.Message // why it is not worked out, "" if it is
}

// Offer is one system worked out, and held against today's method.
type Offer struct {
	System *system.System
	Method Method
	Saving unit.Maybe[Saving]
}

// Saving is what a system saves against today's method; below zero it costs more.
type Saving struct {
	PerMetre Estimate
	PerYear  unit.Maybe[Estimate]
	Verdict  Verdict
	Movers   []Mover // the strongest first, of what the verdict rests on
	Pays     unit.Maybe[Payback]
}

// Payback is what an investment does over the years. A time that is not known
// is never.
type Payback struct {
	Cost                    unit.Money
	Soonest, Likely, Latest unit.Maybe[float64] // years
	Years, Interest         float64             // over which, and at which likely rate in %; 0 years where either is not known
	Worth                   Estimate            // net present value
}

// Reckon makes the account of a job for some systems of a range. It reads its
// arguments and changes none; the systems are pointed at.
func Reckon(job rules.Job, prices PriceList, systems []*system.System) Account {
	s := newScenario(&job, &prices)
	a := Account{Prices: prices, Against: -1, Metres: metres(&job, s)}
	cuts := cutsOf(&job)
	if len(cuts) == 0 {
		a.Why = message.New("What is cut, and how thick, is not known yet.")
		for _, sys := range systems {
			a.Offers = append(a.Offers, Offer{System: sys, Method: Method{Process: Plasma, Why: a.Why}})
		}
		return a
	}
	chosen := cuts[0]
	var against *method
	basis := s
	for i, p := range processes(&job) {
		mine := s.clone()
		w, c, made := present(mine, p, cuts)
		a.Methods = append(a.Methods, w)
		if made != nil && a.Against < 0 {
			a.Against, against, chosen, basis = i, made, c, mine
		}
	}
	a.Metal, a.T = chosen.metal, unit.Known(chosen.t)
	for _, sys := range systems {
		a.Offers = append(a.Offers, basis.offer(sys, chosen, against, a.Metres))
	}
	a.Assumed = a.assumed()
	return a
}

// metres are those cut in a year; a known zero stays zero.
func metres(j *rules.Job, s *scenario) unit.Maybe[Estimate] {
	if s.in[metresAYear].known {
		return unit.Known(s.in[metresAYear].Estimate)
	}
	if j.CutPerWeek.IsKnown() {
		return unit.Known(Estimate{})
	}
	return unit.Maybe[Estimate]{}
}

// cutsOf are the everyday cuts of each metal, the most common metal first.
func cutsOf(j *rules.Job) []cut {
	var list []cut
	for _, p := range j.Pieces {
		t, told := p.Everyday.Get()
		if !told {
			t, told = p.Thickest.Get()
		}
		if told && t > 0 {
			list = append(list, cut{p.Metal, t})
		}
	}
	return list
}

// processes are today's ways, in the order told.
func processes(j *rules.Job) []Process {
	var list []Process
	told, _ := j.Today.Get()
	for _, p := range told {
		if p == rules.OxyFuel {
			list = append(list, flameOf(j))
		} else {
			list = append(list, Process(p)) // the two have the same identifiers
		}
	}
	return list
}

// flameOf is the process of an oxy-fuel torch: with acetylene until the
// customer says otherwise.
func flameOf(j *rules.Job) Process {
	if j.Prices.Fuel.Or(rules.Acetylene) == rules.Propane {
		return OxyPropane
	}
	return OxyAcetylene
}

// present works one of today's ways out, in the first cut it can make.
func present(s *scenario, p Process, cuts []cut) (Method, cut, *method) {
	for _, c := range cuts {
		if !cannot(p, c.metal, c.t).IsEmpty() {
			continue
		}
		w := s.method(p, c)
		if why := s.lacking(); !why.IsEmpty() {
			return Method{Process: p, Metal: c.metal, T: c.t, Why: why}, c, nil
		}
		out := s.worked(w, c)
		if !out.Why.IsEmpty() {
			w = nil
		}
		return out, c, w
	}
	c := cuts[0]
	return Method{Process: p, Metal: c.metal, T: c.t, Why: cannot(p, c.metal, c.t)}, c, nil
}

// worked turns a method into its account.
func (s *scenario) worked(w *method, c cut) Method {
	out := Method{Process: w.process, Metal: c.metal, T: c.t}
	x := s.likely()
	if t := w.metre(&x); t.err != nil {
		out.Why = message.New("A figure it needs is missing.")
		return out
	}
	list, movers := s.spreads(2+int(parts), func(x *values, out []float64) {
		t := w.metre(x)
		out[0] = t.sum()
		out[1] = out[0] * x[metresAYear]
		copy(out[2:], t.cost[:])
	})
	for i := range list {
		list[i].Low = max(list[i].Low, 0) // a cost is never below zero
	}
	out.PerMetre = list[0]
	if w.yearly {
		out.PerYear = unit.Known(list[1])
	}
	for p, line := range list[2:] {
		if line.High > 0 {
			out.Lines = append(out.Lines, Line{Part(p), line})
		}
	}
	for _, m := range movers {
		out.Inputs = append(out.Inputs, m.Input)
	}
	out.Inputs = append(out.Inputs, s.sure(w)...)
	return out
}

// sure are the prices a method takes that have one value: they move nothing, and
// yet it rests on them.
func (s *scenario) sure(w *method) []Input {
	x := s.likely()
	base := w.metre(&x)
	var list []Input
	for i := range s.in {
		in := &s.in[i]
		if !in.known || !in.Money || in.Estimate.Low != in.Estimate.High {
			continue
		}
		x[i] = 2 * in.Estimate.Likely
		if t := w.metre(&x); t.sum() != base.sum() {
			list = append(list, *in)
		}
		x[i] = in.Estimate.Likely
	}
	return list
}

// offer works a system out and holds it against today's method, if there is one.
func (s *scenario) offer(sys *system.System, c cut, against *method, year unit.Maybe[Estimate]) Offer {
	mine := s.clone()
	w, why := mine.system(sys, c)
	if !why.IsEmpty() {
		return Offer{System: sys, Method: Method{Process: Plasma, Metal: c.metal, T: c.t, Why: why}}
	}
	o := Offer{System: sys, Method: mine.worked(w, c)}
	if against != nil {
		o.Saving = unit.Known(mine.saving(sys, w, against, year))
	}
	return o
}

// saving is today's cost less the system's. Where metres are known the verdict
// rests on the year, else on the metre.
func (s *scenario) saving(sys *system.System, w, against *method, year unit.Maybe[Estimate]) Saving {
	metre := func(x *values) float64 {
		a, b := against.metre(x), w.metre(x)
		return a.sum() - b.sum()
	}
	var out Saving
	out.PerMetre, out.Movers = s.spread(metre)
	out.Verdict = verdict(out.PerMetre)
	if w.yearly {
		saved, movers := s.spread(func(x *values) float64 { return metre(x) * x[metresAYear] })
		out.PerYear, out.Movers, out.Verdict = unit.Known(saved), movers, verdict(saved)
	} else if _, told := year.Get(); told {
		out.PerYear, out.Verdict = unit.Known(Estimate{}), NoClear
	}
	if saved, told := out.PerYear.Get(); told {
		x := s.likely()
		a, b := against.metre(&x), w.metre(&x)
		out.Pays = s.pays(sys, saved, a.moving()-b.moving())
	}
	return out
}

func verdict(s Estimate) Verdict {
	switch {
	case s.Low > 0:
		return Saves
	case s.High < 0:
		return CostsMore
	}
	return NoClear
}

// pays works out when a system has paid for itself. A system whose metre is no
// cheaper never does: the rental of cylinders alone is no reason to buy one.
func (s *scenario) pays(sys *system.System, saved Estimate, moving float64) unit.Maybe[Payback] {
	money, listed := sys.Price.Get()
	if !listed {
		return unit.Maybe[Payback]{}
	}
	years, _ := s.prices.Get(ItemYears)
	rate, known := s.prices.Get(ItemInterest)
	p := Payback{Cost: money}
	if moving > 0 {
		p.Soonest, p.Likely, p.Latest = Pays(money, unit.Money(saved.High)), Pays(money, unit.Money(saved.Likely)), Pays(money, unit.Money(saved.Low))
	}
	if known && years.Likely > 0 {
		p.Years, p.Interest = years.Likely, rate.Likely
		p.Worth = worth(money, saved, rate.Estimate, years.Likely)
	}
	return unit.Known(p)
}

// worth is the net present value at the ends of saving and rate.
func worth(cost unit.Money, saved, rate Estimate, years float64) Estimate {
	at := func(saving, percent float64) float64 {
		v, _ := NetPresent(cost, unit.Money(saving), 0, percent/100, years) // both were read as zero or more
		return float64(v)
	}
	return Estimate{
		Low:    min(at(saved.Low, rate.Low), at(saved.Low, rate.High)),
		Likely: at(saved.Likely, rate.Likely),
		High:   max(at(saved.High, rate.Low), at(saved.High, rate.High)),
	}
}

// assumed reports whether some price in use is nobody's.
func (a *Account) assumed() bool {
	invented := func(in Input) bool { return in.Money && in.Assumed() }
	return slices.ContainsFunc(a.Methods, func(w Method) bool { return slices.ContainsFunc(w.Inputs, invented) }) ||
		slices.ContainsFunc(a.Offers, func(o Offer) bool { return slices.ContainsFunc(o.Method.Inputs, invented) })
}
