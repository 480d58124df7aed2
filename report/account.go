package report

import (
	"slices"
	"strconv"
	"strings"
	"time"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/cost"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// CostSheet is the whole account.
type CostSheet struct {
	Title    string      `json:"title"`
	Demo     string      `json:"demo,omitempty"`
	Date     time.Time   `json:"date"` // the day of the visit
	Currency string      `json:"currency"`
	Prices   []Line      `json:"prices"`
	Cut      string      `json:"cut"`
	Today    []CostWay   `json:"today"`
	Systems  []CostOffer `json:"systems"`
	Crossing *CostChart  `json:"crossing,omitempty"`
	Inputs   []CostInput `json:"inputs"`
	Notes    []string    `json:"notes"`

	Words *message.Catalog `json:"-"` // the texts are worded by; nil for our own words
}

// CostWay is one way of cutting.
type CostWay struct {
	Name     string     `json:"name"`
	Cut      string     `json:"cut"`       // "10 mm mild steel"
	Each     string     `json:"texts_for"` // what the texts are for: "a metre", "a foot"; figures are for a metre
	PerMetre *Amount    `json:"per_metre,omitempty"`
	PerYear  *Amount    `json:"per_year,omitempty"`
	Lines    []CostLine `json:"lines,omitempty"`
	Why      string     `json:"why,omitempty"` // why it is not worked out
}

// CostLine is one part of the cost of a metre.
type CostLine struct {
	ID   string `json:"id"`
	Name string `json:"name"`
	Cost Amount `json:"per_metre"`
}

// CostOffer is one system, held against the way of today.
type CostOffer struct {
	CostWay
	Against   string   `json:"against,omitempty"`
	Verdict   string   `json:"verdict,omitempty"`
	Saving    *Amount  `json:"saving_per_metre,omitempty"`
	SavingAll *Amount  `json:"saving_per_year,omitempty"`
	Movers    []string `json:"moved_most_by,omitempty"`
	Payback   string   `json:"payback,omitempty"`
	Worth     *Amount  `json:"net_present_value,omitempty"`
	Over      string   `json:"over,omitempty"` // "5 years at 5 %"
}

// CostChart compares plasma and oxy-fuel on mild steel by thickness.
type CostChart struct {
	Title string      `json:"title"`
	Says  string      `json:"says"`
	Rows  []CostPoint `json:"rows"`
}

// CostPoint is one thickness of the chart.
type CostPoint struct {
	Thickness   string  `json:"thickness"`
	Plasma      Amount  `json:"plasma"`
	Flame       Amount  `json:"oxy_fuel"`
	PlasmaShare float64 `json:"plasma_share"`
	FlameShare  float64 `json:"oxy_fuel_share"`
}

// CostInput is one figure the account rests on.
type CostInput struct {
	Name   string  `json:"name"`
	Unit   string  `json:"unit"`
	Low    float64 `json:"low"`
	Likely float64 `json:"likely"`
	High   float64 `json:"high"`
	Basis  string  `json:"basis"`
	Note   string  `json:"note,omitempty"`
}

// Costs words the whole account of a visit: today's ways, and every system
// that does not fall short.
func Costs(v *assess.Visit, offered system.Range, o Options) CostSheet {
	b := newBuilder(v, &offered, o)
	var fitting []*system.System // those that do not fall short, best first
	for _, c := range b.result.Candidates {
		if c.Status != rules.FallsShort {
			fitting = append(fitting, c.System)
		}
	}
	a := b.account(fitting...)
	s := CostSheet{
		Title: b.print(msg("What cutting costs")), Demo: b.demo(), Date: b.date(), Currency: b.currency(), Prices: b.priceLines(&a),
		Cut: b.print(b.costCut(&a)), Crossing: b.costChart(), Inputs: b.costInputs(&a), Notes: b.costNotes(&a), Words: o.Words,
	}
	s.Today = mapped(a.Methods, b.costWay)
	if a.Why.IsEmpty() { // else it is said once
		s.Systems = mapped(a.Offers, func(o *cost.Offer) CostOffer { return b.costOffer(&a, o) })
	}
	return s
}

func (b *builder) costWay(w *cost.Method) CostWay {
	out := CostWay{Name: b.print(worded(w.Process.Name())), Cut: b.print(b.cutOf(w)), Each: b.print(b.each().Message()), Why: b.print(w.Why)}
	if out.Why != "" {
		return out
	}
	out.PerMetre, out.PerYear = new(b.perMetre(w.PerMetre)), b.perYearOf(w.PerYear)
	out.Lines = mapped(w.Lines, func(l *cost.Line) CostLine {
		return CostLine{l.Part.ID(), b.print(worded(l.Part.Name())), b.perMetre(l.Cost)}
	})
	return out
}

func (b *builder) costOffer(a *cost.Account, o *cost.Offer) CostOffer {
	out := CostOffer{CostWay: b.costWay(&o.Method)}
	out.Name = b.print(outside(o.System.Name))
	s, ok := o.Saving.Get()
	if !ok {
		return out
	}
	out.Against, out.Verdict = b.print(worded(a.Methods[a.Against].Process.Name())), b.print(worded(s.Verdict))
	out.Saving, out.SavingAll = new(b.perMetre(s.PerMetre)), b.perYearOf(s.PerYear)
	out.Movers = mapped(s.Movers[:min(2, len(s.Movers))], func(m *cost.Mover) string { return b.print(message.Join(", ", m.Name, b.taken(m.Input))) })
	if p, ok := s.Pays.Get(); ok {
		out.Payback = b.print(payback(p))
		if p.Years > 0 {
			out.Worth, out.Over = new(b.perYear(p.Worth)), b.print(msg("{1} years at {2} %", message.Figure(short(p.Years)), message.Figure(short(p.Interest))))
		}
	}
	return out
}

// costInputs lists every uncertain figure once, today's way first.
func (b *builder) costInputs(a *cost.Account) []CostInput {
	var list []CostInput
	var all []cost.Input
	if a.Against >= 0 {
		all = a.Methods[a.Against].Inputs
	}
	if len(a.Offers) > 0 {
		all = slices.Concat(all, a.Offers[0].Method.Inputs)
	}
	seen := map[string]bool{}
	for _, in := range all {
		name := b.print(in.Name)
		if seen[name] {
			continue
		}
		seen[name] = true
		in = b.inUnits(in)
		s, per := in.Estimate, worded(in.Unit)
		if in.Money { // "EUR per h"
			per = msg("{1} per {2}", message.Name(b.currency()), per)
		}
		list = append(list, CostInput{name, b.print(per), tidied(s.Low), tidied(s.Likely), tidied(s.High), b.print(worded(in.Basis)), b.print(b.listed(in.Note))})
	}
	return list
}

// tidied drops the digits that only arithmetic has.
func tidied(v float64) float64 {
	out, _ := strconv.ParseFloat(strings.ReplaceAll(short(v), "−", "-"), 64)
	return out
}

// costCut says for which cut and how many metres the account is made.
func (b *builder) costCut(a *cost.Account) message.Message {
	t, ok := a.T.Get()
	if !ok {
		return a.Why
	}
	cut := b.pieceOf(a.Metal, t)
	length := func(v float64, r unit.Round) message.Message { return b.show(quantity(v, unit.Length), r) }
	switch m, told := a.Metres.Get(); {
	case !told:
		return message.Join(" ", msg("For {1}.", cut), msg("How much is cut a year is not known, so no cost per year is given."))
	case m.High == 0:
		return msg("For {1}, nothing cut in a year: nothing is saved, and nothing pays back.", cut)
	default:
		return msg("For {1}, {2} a year ({3} to {4}: the weeks worked, and how well the length is known).",
			cut, length(m.Likely, unit.Nearest), length(m.Low, unit.Down), length(m.High, unit.Up))
	}
}

// priceLines say which prices the account is made with.
func (b *builder) priceLines(a *cost.Account) []Line {
	l := b.prices()
	none := msg("not given")
	list := []Line{
		b.line(msg("Price list"), b.listed(l.Name)), b.line(msg("Currency"), outside(l.Currency).Or(none)),
		b.line(msg("Date"), outside(l.Date).Or(none)), b.line(msg("Place"), b.listed(l.Place).Or(none)),
	}
	if text := b.priceDoubt(a); !text.IsEmpty() {
		list = append(list, b.line(msg("Note"), text))
	}
	return list
}

// costNotes say how ranges are meant, and what is left out.
func (b *builder) costNotes(a *cost.Account) []string {
	acetylene := slices.ContainsFunc(a.Methods, func(w cost.Method) bool { return w.Process == cost.OxyAcetylene && w.Why.IsEmpty() })
	return b.prints(
		message.Join(" ", msg("Each range shows what to expect when every uncertain figure moves by itself between its low and high: the effects are added as the root of the sum of squares."),
			msg("That everything goes wrong at once is outside it.")),
		message.Join(" ", msg("A saving whose range includes zero is called no clear saving."),
			msg("Speeds and habits are common practice or from memory: a trial cut on the customer's own piece is surer.")),
		msg("Not included: a compressor, the resale value of a system, tips of the gas torch, waiting for work that is sent out."),
		when(b.currenciesDiffer(), "The systems list is priced in {1} and the price list in {2}: no payback is calculated.", outside(b.offered.Currency), message.Name(b.currency())),
		when(acetylene && !b.job.Prices.Fuel.IsKnown(), "The fuel gas is not given: acetylene is assumed."),
	)
}

func (b *builder) costChart() *CostChart {
	c := b.crossing()
	if c == nil {
		return nil
	}
	title := msg("{1} and {2}, {3} of mild steel", outside(c.System.Name), worded(c.Fuel.Name()), b.each())
	longest := dearest(c.Points)
	return &CostChart{Title: b.print(title), Says: b.print(b.crossingSays(c)), Rows: mapped(c.Points, func(p *cost.Point) CostPoint { return b.costPoint(p, 1, longest) })}
}
