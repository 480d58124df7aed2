package report

import (
	"math"
	"slices"
	"strconv"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/cost"
	"cutbrief/rules/message"
	"cutbrief/rules/size"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// Comparison puts systems side by side with the way of today: a row for each
// thing compared, a cell for each column.
type Comparison struct {
	Title   string          `json:"title"`
	Demo    string          `json:"demo,omitempty"`
	Columns []string        `json:"columns"`
	Rows    []ComparisonRow `json:"rows"`
	Notes   []string        `json:"notes"`

	Words *message.Catalog `json:"-"` // the texts are worded by; nil for our own words
}

// ComparisonRow is one thing compared.
type ComparisonRow struct {
	Label string   `json:"label"`
	Cells []string `json:"cells"` // one a column; "–" where it does not apply
}

// none stands in a cell where nothing applies.
const none message.ID = "–"

// UnknownSystemError names systems that the range does not have.
type UnknownSystemError struct{ IDs []string }

// Error lists them.
func (e *UnknownSystemError) Error() string { return e.Message().String() }

// Message lists them.
func (e *UnknownSystemError) Message() message.Message {
	return msg("the range has no system {1}", message.Join(", ", mapped(e.IDs, func(id *string) message.Message { return outside(*id) })...))
}

// Compare puts the chosen system beside others and the way of today. Without
// names it takes those that do not fall short, at most the best four; where
// none is left, the four that come nearest.
func Compare(v *assess.Visit, offered system.Range, o Options, ids []string) (Comparison, error) {
	b := newBuilder(v, &offered, o)
	list, err := b.compared(ids)
	if err != nil {
		return Comparison{}, err
	}
	systems := mapped(list, func(c **rules.Candidate) *system.System { return (*c).System })
	out := Comparison{Title: b.print(msg("Systems side by side")), Demo: b.demo(), Words: o.Words}
	for _, s := range systems {
		out.Columns = append(out.Columns, b.print(outside(s.Name)))
	}
	a := b.account(systems...)
	if a.Against >= 0 {
		out.Columns = append(out.Columns, b.print(msg("today: {1}", worded(a.Methods[a.Against].Process.Name()))))
	}
	for _, row := range b.comparisonRows() {
		r := ComparisonRow{Label: b.print(row.label)}
		for i, c := range list {
			r.Cells = append(r.Cells, b.print(row.of(&compared{c.System, c, &a, &a.Offers[i].Method, &a.Offers[i]})))
		}
		if a.Against >= 0 {
			today := none.Message()
			if row.today {
				today = row.of(&compared{account: &a, way: &a.Methods[a.Against]})
			}
			r.Cells = append(r.Cells, b.print(today))
		}
		out.Rows = append(out.Rows, r)
	}
	out.Notes = b.comparisonNotes(&a)
	return out, nil
}

// compared picks the systems, the best first.
func (b *builder) compared(ids []string) ([]*rules.Candidate, error) {
	const most = 4
	var list []*rules.Candidate
	lost := unique(ids)
	for i := range b.result.Candidates {
		c := &b.result.Candidates[i]
		at := slices.Index(lost, c.System.ID)
		if at >= 0 {
			lost = slices.Delete(lost, at, at+1)
		}
		if at >= 0 || len(ids) == 0 && c.Status != rules.FallsShort && len(list) < most {
			list = append(list, c)
		}
	}
	if len(lost) > 0 {
		return nil, &UnknownSystemError{lost}
	}
	for _, c := range b.nearestFirst() {
		if len(list) == 0 || len(ids) == 0 && c.Status == rules.FallsShort && len(list) < most && list[0].Status == rules.FallsShort {
			list = append(list, c)
		}
	}
	return list, nil
}

// compared is what a cell is made from: a system with its candidate and offer, or
// the way of today, which has none of them.
type compared struct {
	*system.System
	candidate *rules.Candidate
	account   *cost.Account
	way       *cost.Method
	offer     *cost.Offer
}

// comparisonRow is one row while it is made. today says that the way of today
// has a cell too.
type comparisonRow struct {
	label message.Message
	of    func(*compared) message.Message
	today bool
}

func (b *builder) comparisonRows() []comparisonRow {
	figure := func(r unit.Round, of func(*compared) unit.Quantity) func(*compared) message.Message {
		return func(c *compared) message.Message { return b.show(of(c), r) }
	}
	fed := func(phases int) func(*compared) message.Message {
		return func(c *compared) message.Message { return b.supplyOf(c.System, phases) }
	}
	metre := func(w *cost.Method) *Amount {
		if w.Why.IsEmpty() {
			return new(b.perMetre(w.PerMetre))
		}
		return nil
	}
	year := func(w *cost.Method) *Amount { return b.perYearOf(w.PerYear) }
	listed := func(c *compared) message.Message {
		p, ok := c.Price.Get()
		return when(ok, "{1}", b.told(quantity(p, unit.Price))).Or(msg("not listed"))
	}
	return []comparisonRow{
		{label: msg("for this work"), of: func(c *compared) message.Message { return worded(c.candidate.Status) }},
		{label: msg("rated"), of: figure(unit.Down, func(c *compared) unit.Quantity { return millimetres(c.Rated) })},
		{label: msg("clean to"), of: figure(unit.Down, func(c *compared) unit.Quantity { return millimetres(c.CleanMax) })},
		{label: msg("severs"), of: figure(unit.Down, func(c *compared) unit.Quantity { return millimetres(c.Severance) })},
		{label: msg("spare capacity"), of: spareCapacity},
		{label: msg("everyday speed"), of: b.everydaySpeed},
		{label: msg("duty cycle"), of: b.dutyOf},
		{label: msg("one phase"), of: fed(1)},
		{label: msg("three phases"), of: fed(3)},
		{label: msg("air flow"), of: figure(unit.Up, func(c *compared) unit.Quantity { return quantity(c.AirFlow, unit.Flow) })},
		{label: msg("air pressure"), of: figure(unit.Up, func(c *compared) unit.Quantity { return quantity(c.AirPressure, unit.Pressure) })},
		{label: msg("weight"), of: figure(unit.Up, func(c *compared) unit.Quantity { return quantity(c.Weight, unit.Weight) })},
		{label: msg("price"), of: listed},
		{label: msg("cost {1}", b.each()), of: costCell(metre, b.likely, "not calculated"), today: true},
		{label: msg("low to high"), of: costCell(metre, span, none), today: true},
		{label: msg("cost a year"), of: costCell(year, b.likely, "not known"), today: true},
		{label: msg("low to high"), of: costCell(year, span, none), today: true},
		{label: msg("against today"), of: ofSaving(func(s cost.Saving) message.Message { return worded(s.Verdict) })},
		{label: msg("pays after"), of: ofSaving(paysOf)},
	}
}

// span is the range of an amount.
func span(a *Amount) message.Message {
	return msg("{1} to {2}", message.Name(a.Shown[0]), message.Name(a.Shown[2]))
}

// spareCapacity is how much more a system is rated for than the work needs.
func spareCapacity(c *compared) message.Message {
	percent := (c.candidate.Excess - 1) * 100
	switch {
	case c.candidate.Excess == 0:
		return msg("not known")
	case percent < 0:
		return msg("{1} % too little", message.Figure(strconv.Itoa(int(math.Ceil(-percent)))))
	}
	return message.Number(strconv.Itoa(int(math.Floor(percent+1e-9))) + " %")
}

// everydaySpeed is the speed on the everyday cut, at full output.
func (b *builder) everydaySpeed(c *compared) message.Message {
	t, told := c.account.T.Get()
	factor, _ := size.Equivalence(c.System, c.account.Metal)
	k, held := factor.Get()
	if !told || !held {
		return msg("not known")
	}
	v, err := size.Speed(c.System, c.OutputMax, t*unit.Millimetre(k), rules.LedAt(&b.job))
	if err != nil {
		return msg("does not cut it")
	}
	return b.given(speed(v))
}

// dutyOf is the duty cycle at full output.
func (b *builder) dutyOf(c *compared) message.Message {
	x, err := size.AllowedDuty(c.System, c.OutputMax)
	if err != nil {
		return msg("not known")
	}
	return msg("{1} at {2}", b.given(quantity(x, unit.Share)), b.told(amperes(c.OutputMax)))
}

// supplyOf is what a system takes on one or three phases.
func (b *builder) supplyOf(s *system.System, phases int) message.Message {
	var list []message.Message
	for _, p := range s.Supplies {
		if p.Phases != phases {
			continue
		}
		volts := b.figure(quantity(p.VoltMax, unit.Voltage), unit.Nearest)
		if p.VoltMin != p.VoltMax {
			volts = strconv.FormatFloat(float64(p.VoltMin), 'f', 0, 64) + "–" + volts
		}
		list = append(list, message.Join(", ", message.Number(volts), b.needed(amperes(p.Input))))
	}
	return message.Join("; ", list...).Or(msg("no"))
}

// costCell is one figure of what a way costs. unknown stands where a system has
// none.
func costCell(per func(*cost.Method) *Amount, of func(*Amount) message.Message, unknown message.ID) func(*compared) message.Message {
	return func(c *compared) message.Message {
		if a := per(c.way); a != nil {
			return of(a)
		}
		return when(c.candidate == nil, none).Or(unknown.Message())
	}
}

// ofSaving is something of what a system saves; it is left out for one that does
// not do the work.
func ofSaving(of func(cost.Saving) message.Message) func(*compared) message.Message {
	return func(c *compared) message.Message {
		if s, ok := c.offer.Saving.Get(); ok && c.candidate.Status != rules.FallsShort {
			return of(s)
		}
		return none.Message()
	}
}

func paysOf(s cost.Saving) message.Message {
	p, worked := s.Pays.Get()
	switch {
	case !worked:
		return msg("not known")
	case p.Likely.IsKnown() && s.Verdict == cost.NoClear:
		return msg("not clear")
	}
	return waitFor(p.Likely).message()
}

// comparisonNotes say what the figures rest on, and why today is missing.
func (b *builder) comparisonNotes(a *cost.Account) []string {
	list := []message.Message{b.costCut(a)}
	if a.Against < 0 {
		list = append(list, mapped(a.Methods, func(w *cost.Method) message.Message { return msg("Today, {1}: {2}", worded(w.Process.Name()), w.Why) })...)
	}
	return b.prints(append(list, b.priceBasis(a), message.Join(" ",
		msg("Thicknesses are mild steel, cut by hand; supply and air are those of the plate."), msg("A licensed electrician confirms the supply.")))...)
}
