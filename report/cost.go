package report

import (
	"cutbrief/rules/cite"
	"cutbrief/rules/cost"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// Cost is what cutting costs, on the page: the verdict first, and two bars.
type Cost struct {
	Verdict string    `json:"verdict"` // "saves", "no clear saving", "costs more"; "" if nothing is worked out
	Lines   []string  `json:"lines"`   // at most three, the most important first
	Bars    []CostBar `json:"bars,omitempty"`
	Assumed bool      `json:"assumed"`                // some price is nobody's; the lines say so
	Curves  *Curves   `json:"by_thickness,omitempty"` // nil unless mild steel is cut with a flame today
}

// CostBar is the cost of a metre, in words and as a share of the dearer one.
type CostBar struct {
	Label string  `json:"label"`
	Value string  `json:"value"`
	Brief string  `json:"brief"` // the likely figure alone
	Share float64 `json:"share"` // 0..1
	Low   float64 `json:"-"`     // the range, as shares of the highest there is
	Mid   float64 `json:"-"`
	High  float64 `json:"-"`
}

// account makes the account for some systems. Where the range and the price
// list have different currencies, no price of a system is taken.
func (b *builder) account(systems ...*system.System) cost.Account {
	for i := range systems {
		if b.currenciesDiffer() {
			systems[i] = new(*systems[i])
			systems[i].Price = unit.Maybe[unit.Money]{}
		}
	}
	return cost.Reckon(b.job, b.prices(), systems)
}

// currenciesDiffer reports whether range and price list have different
// currencies.
func (b *builder) currenciesDiffer() bool {
	return b.offered.Currency != "" && b.prices().Currency != "" && b.offered.Currency != b.prices().Currency
}

// cost is the part of the page about cost; nil while nothing is recommended,
// or nothing is told of how they cut today.
func (b *builder) cost() *Cost {
	if !b.recommended() || !b.job.Today.IsKnown() {
		return nil
	}
	a := b.account(b.result.First.System)
	if len(a.Methods) == 0 || len(a.Offers) == 0 {
		return nil
	}
	o := &a.Offers[0]
	s, ok := o.Saving.Get()
	if !ok {
		why := b.prints(mapped(a.Methods, func(w *cost.Method) message.Message { return w.Why })...)
		if own := b.print(a.Offers[0].Method.Why); own != "" && a.Against >= 0 {
			why = []string{own}
		}
		return &Cost{Lines: unique(why[:min(3, len(why))]), Assumed: a.Assumed}
	}
	// A real customer is not shown sums that rest on invented prices: where nobody
	// stands behind the hour of work, which is most of what a cut costs, and no bill
	// was told. The account (cost, why) still shows them, marked.
	p := &b.job.Prices
	told := p.Labour.IsKnown() || p.GasYear.IsKnown() || p.SentOutYear.IsKnown()
	if hour, listed := b.prices().Get(cost.ItemLabour); listed && hour.Basis == cost.BasisInvented && !b.visit.Demo && !told {
		return &Cost{Lines: b.prints(msg("Savings are not calculated: you gave no price of your own, and the price of an hour of work in the list is invented.")), Assumed: true}
	}
	today := &a.Methods[a.Against]
	var crossing *cost.Crossing // for those who cut with a flame today
	var crosses message.Message
	if today.Process == cost.OxyAcetylene || today.Process == cost.OxyPropane {
		crossing = b.crossing()
	}
	if crossing != nil {
		likely, ok := crossing.Likely.Get()
		crosses = when(ok, "{1} is likely cheaper above about {2} of mild steel.", worded(crossing.Fuel.Name()).Capital(), b.wholeMillimetres(likely))
	}
	return &Cost{
		Verdict: b.print(worded(s.Verdict)), Assumed: a.Assumed, Bars: b.costBars(today, o), Curves: b.curves(today, crossing),
		Lines: []string{
			b.print(b.savingLine(today, s)),
			b.print(message.Join(" ", b.paybackLine(s), crosses)),
			b.print(b.movers(&a, s)),
		},
	}
}

func (b *builder) costBars(today *cost.Method, o *cost.Offer) []CostBar {
	longest := max(today.PerMetre.Likely, o.Method.PerMetre.Likely)
	most := max(today.PerMetre.High, o.Method.PerMetre.High)
	if longest <= 0 {
		return nil
	}
	bar := func(label message.Message, s cost.Estimate) CostBar {
		a := b.perMetre(s)
		return CostBar{
			b.print(label), b.print(b.forEach(message.Text(a.Text))), b.print(b.forEach(b.likely(&a))),
			s.Likely / longest, s.Low / most, s.Likely / most, s.High / most,
		}
	}
	return []CostBar{bar(msg("Today"), today.PerMetre), bar(outside(o.System.Name), o.Method.PerMetre)}
}

// likely is the likely figure of an amount with its currency.
func (b *builder) likely(a *Amount) message.Message {
	return message.Join(" ", message.Text(b.currency()), message.Text(a.Shown[1]))
}

// savingLine is the verdict in words.
func (b *builder) savingLine(today *cost.Method, s cost.Saving) message.Message {
	against, cut := worded(today.Process.Name()), b.cutOf(today)
	switch s.Verdict {
	case cost.Saves:
		return msg("Likely saves {1}, against {2} in {3}.", b.sums(s, 1), against, cut)
	case cost.CostsMore:
		return msg("Costs more: {1}, against {2} in {3}.", b.sums(s, -1), against, cut)
	}
	return message.Join(" ", msg("No clear saving against {1} in {2}: {3}.", against, cut, b.sums(s, 1)), msg("The range includes zero."))
}

// sums are what is saved for each length and in a year; with sign −1 what it
// costs more.
func (b *builder) sums(s cost.Saving, sign float64) message.Message {
	signed := func(s cost.Estimate) cost.Estimate {
		if sign < 0 {
			return cost.Estimate{Low: -s.High, Likely: -s.Likely, High: -s.Low}
		}
		return s
	}
	year, ok := s.PerYear.Get()
	return message.Join(", ", b.forEach(message.Text(b.perMetre(signed(s.PerMetre)).Text)), when(ok, "{1} a year", message.Text(b.perYear(signed(year)).Text)))
}

// paybackLine says when it has paid for itself, and what that is worth.
func (b *builder) paybackLine(s cost.Saving) message.Message {
	p, ok := s.Pays.Get()
	switch {
	case !ok && b.currenciesDiffer():
		return msg("No payback is calculated: the systems list and the price list have different currencies.")
	case !ok && !s.PerYear.IsKnown():
		return msg("When it pays for itself is open: how much is cut a year is not known.")
	case !ok:
		return msg("When it pays for itself is open: the list gives no price for it.")
	}
	paid, worth := payback(p), message.Text(b.perYear(p.Worth).Text)
	years, interest := message.Figure(short(p.Years)), message.Figure(short(p.Interest))
	// With how long it is used, what that is worth; and without.
	texts := [2]message.ID{"Pays for itself {1}; worth {2} today over {3} years at {4} %.", "Pays for itself {1}."}
	switch {
	case !p.Likely.IsKnown() && p.Years > 0:
		return msg("Does not pay for itself by cheaper cutting; worth {1} today over {2} years at {3} %.", worth, years, interest)
	case !p.Likely.IsKnown():
		return msg("Does not pay for itself by cheaper cutting.")
	case s.Verdict == cost.NoClear:
		texts = [2]message.ID{"May pay for itself {1}; worth {2} today over {3} years at {4} %.", "May pay for itself {1}."}
	}
	if p.Years > 0 {
		return msg(texts[0], paid, worth, years, interest)
	}
	return msg(texts[1], paid)
}

// movers names the two inputs that move the saving most, and says what the
// prices rest on.
func (b *builder) movers(a *cost.Account, s cost.Saving) message.Message {
	movers := s.Movers[:min(2, len(s.Movers))]
	var names []message.Message
	practice := 0 // figures of the trade, not of this shop
	for _, m := range movers {
		names = append(names, m.Name)
		if m.Basis == string(cite.Practice) {
			practice++
		}
	}
	id := message.ID("It depends most on {1}, one of them common practice, no source.")
	switch practice {
	case 0:
		id = "It depends most on {1}."
	case 2:
		id = "It depends most on {1}, both common practice, no source."
	case len(movers):
		id = "It depends most on {1}, common practice, no source."
	}
	return message.Join(" ", when(len(names) > 0, id, message.And(names...)), b.priceBasis(a))
}

// priceBasis says so where a result rests on prices nobody stands behind, and
// otherwise when and where the prices are from.
func (b *builder) priceBasis(a *cost.Account) message.Message {
	dated := when(b.prices().Date != "", "Prices of {1}.", b.priceOrigin())
	return b.priceDoubt(a).Or(dated).Or(msg("The price list gives no date."))
}

// priceDoubt says so where a result rests on prices nobody stands behind.
func (b *builder) priceDoubt(a *cost.Account) message.Message {
	from := b.priceOrigin()
	pick := func(known, unknown message.ID) message.Message {
		return when(!from.IsEmpty(), known, from).Or(unknown.Message())
	}
	switch {
	case b.prices().Invented && !b.prices().Owned():
		return pick("Prices are assumed: those you did not give are from an invented list of {1}.", "Prices are assumed: those you did not give are from an invented list.")
	case a.Assumed && b.prices().Invented:
		return pick("Some prices are assumed: invented, or common practice, no source. List of {1}.", "Some prices are assumed: invented, or common practice, no source. List.")
	case a.Assumed:
		return pick("Some prices are assumed: common practice, no source. List of {1}.", "Some prices are assumed: common practice, no source. List.")
	}
	return message.Message{}
}

// priceOrigin is when and where the price list is from.
func (b *builder) priceOrigin() message.Message {
	return message.Join(", ", outside(b.prices().Date), b.listed(b.prices().Place))
}

// listed is a text of the price list: ours where the list is the built-in one.
func (b *builder) listed(s string) message.Message {
	if b.prices().Name == cost.DemoPricesName {
		return worded(s)
	}
	return outside(s)
}

// cutOf words a metal and thickness: "10 mm mild steel".
func (b *builder) cutOf(w *cost.Method) message.Message { return b.pieceOf(w.Metal, w.T) }
