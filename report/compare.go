package report

import (
	"fmt"
	"math"
	"strings"

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

	Words *message.Catalog `json:"-"` // the book the texts are worded by; nil for our own words
}

// ComparisonRow is one thing compared.
type ComparisonRow struct {
	Label string   `json:"label"`
	Cells []string `json:"cells"` // one a column; "–" where it does not apply
}

// none stands in a cell where nothing applies.
const none = "–"

// UnknownSystemError names systems that the range does not have.
type UnknownSystemError struct{ IDs []string }

// Error lists them.
func (e *UnknownSystemError) Error() string {
	return "the range has no system " + strings.Join(e.IDs, ", ")
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
	var systems []*system.System
	for _, c := range list {
		systems = append(systems, c.System)
	}
	a := b.account(systems)
	out := Comparison{Title: "Systems side by side", Demo: b.demo()}
	for _, c := range list {
		out.Columns = append(out.Columns, plain(c.System.Name))
	}
	now := b.now(&a)
	if now != nil {
		out.Columns = append(out.Columns, "today: "+string(now.Process.Name()))
	}
	for _, row := range b.comparisonRows(&a, now) {
		r := ComparisonRow{Label: row.label}
		for i, c := range list {
			r.Cells = append(r.Cells, row.of(c, &a.Offers[i]))
		}
		if now != nil {
			r.Cells = append(r.Cells, row.today)
		}
		out.Rows = append(out.Rows, r)
	}
	out.Notes, out.Words = b.comparisonNotes(&a), o.Words
	return said(out, o.Words), nil
}

// compared picks the systems, the best first.
func (b *builder) compared(ids []string) ([]*rules.Candidate, error) {
	const most = 4
	var list []*rules.Candidate
	wanted := map[string]bool{}
	for _, id := range ids {
		wanted[id] = true
	}
	for i := range b.result.Candidates {
		c := &b.result.Candidates[i]
		if wanted[c.System.ID] || len(ids) == 0 && c.Status != rules.FallsShort && len(list) < most {
			list = append(list, c)
			delete(wanted, c.System.ID)
		}
	}
	var lost []string
	for _, id := range ids {
		if wanted[id] {
			lost = append(lost, id)
			delete(wanted, id)
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

// now is the way of today the systems are held against, nil if there is none.
func (b *builder) now(a *cost.Account) *cost.Way {
	if a.Against < 0 {
		return nil
	}
	return &a.Ways[a.Against]
}

// comparedRow is one row while it is made.
type comparedRow struct {
	label string
	of    func(*rules.Candidate, *cost.Offer) string
	today string
}

func (b *builder) comparisonRows(a *cost.Account, now *cost.Way) []comparedRow {
	metre, metres, year, years := none, none, none, none
	if now != nil {
		metre, metres = ranged(b.perMetre(now.PerMetre), b)
		if all, ok := now.PerYear.Get(); ok {
			year, years = ranged(b.perYear(all), b)
		}
	}
	plate := func(f func(*system.System) string) func(*rules.Candidate, *cost.Offer) string {
		return func(c *rules.Candidate, _ *cost.Offer) string { return f(c.System) }
	}
	thick := func(f func(*system.System) unit.Millimetre) func(*rules.Candidate, *cost.Offer) string {
		return plate(func(s *system.System) string { return b.given(millimetres(f(s))) })
	}
	fed := func(phases int) func(*rules.Candidate, *cost.Offer) string {
		return plate(func(s *system.System) string { return b.supplyOf(s, phases) })
	}
	costs := func(of func(*cost.Offer) (string, string), second bool) func(*rules.Candidate, *cost.Offer) string {
		return func(_ *rules.Candidate, o *cost.Offer) string {
			likely, span := of(o)
			if second {
				return span
			}
			return likely
		}
	}
	return []comparedRow{
		{"for this work", func(c *rules.Candidate, _ *cost.Offer) string { return string(c.Status) }, none},
		{"rated", thick(func(s *system.System) unit.Millimetre { return s.Rated }), none},
		{"clean to", thick(func(s *system.System) unit.Millimetre { return s.CleanMax }), none},
		{"severs", thick(func(s *system.System) unit.Millimetre { return s.Severance }), none},
		{"spare capacity", func(c *rules.Candidate, _ *cost.Offer) string { return spare(c) }, none},
		{"everyday speed", func(c *rules.Candidate, _ *cost.Offer) string { return b.paceOf(c.System, a) }, none},
		{"duty cycle", plate(b.dutyOf), none},
		{"one phase", fed(1), none},
		{"three phases", fed(3), none},
		{"air flow", plate(func(s *system.System) string {
			return b.needed(unit.Quantity{Value: float64(s.AirFlow), Kind: unit.Flow})
		}), none},
		{"air pressure", plate(func(s *system.System) string {
			return b.needed(unit.Quantity{Value: float64(s.AirPressure), Kind: unit.Pressure})
		}), none},
		{"weight", plate(func(s *system.System) string {
			return b.needed(unit.Quantity{Value: float64(s.Weight), Kind: unit.Weight})
		}), none},
		{"price", plate(b.priceOf), none},
		{"cost " + b.each(), costs(b.metreOf, false), metre},
		{"low to high", costs(b.metreOf, true), metres},
		{"cost a year", costs(b.yearOf, false), year},
		{"low to high", costs(b.yearOf, true), years},
		{"against today", able(verdictOf), none},
		{"pays after", able(paysOf), none},
	}
}

// ranged words an amount in two cells: the likely figure, and its range.
func ranged(a Amount, b *builder) (likely, span string) {
	return strings.TrimSpace(clean(b.prices.Currency) + " " + a.Shown[1]), a.Shown[0] + " to " + a.Shown[2]
}

// spare is how much more a system is rated for than the work needs.
func spare(c *rules.Candidate) string {
	if c.Excess == 0 {
		return "not known"
	}
	percent := (c.Excess - 1) * 100
	if percent < 0 {
		return fmt.Sprintf("%.0f %% too little", math.Ceil(-percent))
	}
	return fmt.Sprintf("%.0f %%", math.Floor(percent+1e-9))
}

// paceOf is the speed on the everyday cut, at full output.
func (b *builder) paceOf(s *system.System, a *cost.Account) string {
	t, told := a.T.Get()
	factor, _ := size.Equivalence(s, a.Metal)
	k, held := factor.Get()
	if !told || !held {
		return "not known"
	}
	v, err := size.Speed(s, s.OutputMax, t*unit.Millimetre(k), rules.LedAt(&b.job))
	if err != nil {
		return "does not cut it"
	}
	return b.given(unit.Quantity{Value: float64(v), Kind: unit.Speed})
}

// dutyOf is the duty cycle at full output.
func (b *builder) dutyOf(s *system.System) string {
	x, err := size.AllowedDuty(s, s.OutputMax)
	if err != nil {
		return "not known"
	}
	return b.given(unit.Quantity{Value: float64(x), Kind: unit.Share}) + " at " + b.told(amperes(s.OutputMax))
}

// supplyOf is what a system takes on one or three phases.
func (b *builder) supplyOf(s *system.System, phases int) string {
	var list []string
	for _, p := range s.Supplies {
		if p.Phases != phases {
			continue
		}
		volts := b.told(unit.Quantity{Value: float64(p.VoltMax), Kind: unit.Voltage})
		if p.VoltMin != p.VoltMax {
			volts = fmt.Sprintf("%.0f–%s", float64(p.VoltMin), volts)
		}
		list = append(list, volts+", "+b.needed(amperes(p.Input)))
	}
	if len(list) == 0 {
		return "no"
	}
	return strings.Join(list, "; ")
}

func (b *builder) priceOf(s *system.System) string {
	p, ok := s.Price.Get()
	if !ok {
		return "not listed"
	}
	return b.told(unit.Quantity{Value: float64(p), Kind: unit.Price})
}

func (b *builder) metreOf(o *cost.Offer) (likely, span string) {
	if !o.Way.Why.IsEmpty() {
		return "not worked out", none
	}
	return ranged(b.perMetre(o.Way.PerMetre), b)
}

func (b *builder) yearOf(o *cost.Offer) (likely, span string) {
	if year, ok := o.Way.PerYear.Get(); ok {
		return ranged(b.perYear(year), b)
	}
	return "not known", none
}

// able leaves out what a system that does not do the work would save.
func able(f func(*cost.Offer) string) func(*rules.Candidate, *cost.Offer) string {
	return func(c *rules.Candidate, o *cost.Offer) string {
		if c.Status == rules.FallsShort {
			return none
		}
		return f(o)
	}
}

func verdictOf(o *cost.Offer) string {
	if s, ok := o.Saving.Get(); ok {
		return string(s.Verdict)
	}
	return none
}

func paysOf(o *cost.Offer) string {
	s, ok := o.Saving.Get()
	p, worked := s.Pays.Get()
	switch {
	case !ok:
		return none
	case !worked:
		return "not known"
	case !p.Likely.IsKnown():
		return "never"
	case s.Verdict == cost.NoClear:
		return "not clear"
	}
	return after(p.Likely)
}

// comparisonNotes say what the figures rest on, and why today is missing.
func (b *builder) comparisonNotes(a *cost.Account) []string {
	var list []string
	if text := b.costCut(a); text != "" {
		list = append(list, text)
	}
	for i := range a.Ways {
		if a.Against < 0 {
			list = append(list, "Today, "+string(a.Ways[i].Process.Name())+": "+clean(a.Ways[i].Why.String()))
		}
	}
	if text := b.resting(a); text != "" {
		list = append(list, text)
	} else {
		list = append(list, b.dated())
	}
	return append(list, "Thicknesses are mild steel, cut by hand; supply and air are those of the plate. A licensed electrician confirms the supply.")
}
