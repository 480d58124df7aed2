package report

import (
	"fmt"
	"strings"
	"time"

	"cutbrief/assess"
	"cutbrief/rules"
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

	Words *message.Catalog `json:"-"` // the book the texts are worded by; nil for our own words
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
	a := b.account(b.standing())
	s := CostSheet{Title: "What cutting costs", Demo: b.demo(), Date: b.date(), Currency: clean(b.prices.Currency), Prices: b.priceLines(&a), Notes: b.costNotes(&a)}
	s.Cut = b.costCut(&a)
	for i := range a.Ways {
		s.Today = append(s.Today, b.costWay(&a.Ways[i]))
	}
	for i := range a.Offers {
		if a.Why.IsEmpty() { // else it is said once
			s.Systems = append(s.Systems, b.costOffer(&a, &a.Offers[i]))
		}
	}
	s.Crossing = b.costChart()
	s.Inputs = b.costInputs(&a)
	s.Words = o.Words
	return said(s, o.Words)
}

// standing are the systems that do not fall short, best first.
func (b *builder) standing() []*system.System {
	var list []*system.System
	for i := range b.result.Candidates {
		if c := &b.result.Candidates[i]; c.Status != rules.FallsShort {
			list = append(list, c.System)
		}
	}
	return list
}

// account makes the account for some systems. Where the range and the price
// list have different currencies, no price of a system is taken.
func (b *builder) account(systems []*system.System) cost.Account {
	if b.clash() {
		for i, s := range systems {
			bare := *s
			bare.Price = unit.Maybe[unit.Money]{}
			systems[i] = &bare
		}
	}
	return cost.Reckon(b.job, b.prices, systems)
}

// clash reports whether range and price list have different currencies.
func (b *builder) clash() bool {
	return b.offered.Currency != "" && b.prices.Currency != "" && b.offered.Currency != b.prices.Currency
}

// cutOf words a metal and thickness: "10 mm mild steel".
func (b *builder) cutOf(w *cost.Way) string {
	return b.told(millimetres(w.T)) + " " + metalName(w.Metal)
}

func (b *builder) costWay(w *cost.Way) CostWay {
	out := CostWay{Name: string(w.Process.Name()), Cut: b.cutOf(w), Each: b.each(), Why: clean(w.Why.String())}
	if !w.Why.IsEmpty() {
		return out
	}
	metre := b.perMetre(w.PerMetre)
	out.PerMetre = &metre
	if year, ok := w.PerYear.Get(); ok {
		all := b.perYear(year)
		out.PerYear = &all
	}
	for _, l := range w.Lines {
		out.Lines = append(out.Lines, CostLine{l.Part.ID(), string(l.Part.Name()), b.perMetre(l.Cost)})
	}
	return out
}

func (b *builder) costOffer(a *cost.Account, o *cost.Offer) CostOffer {
	out := CostOffer{CostWay: b.costWay(&o.Way)}
	out.Name = plain(o.System.Name)
	s, ok := o.Saving.Get()
	if !ok {
		return out
	}
	out.Against, out.Verdict = string(a.Ways[a.Against].Process.Name()), string(s.Verdict)
	metre := b.perMetre(s.PerMetre)
	out.Saving = &metre
	if year, ok := s.PerYear.Get(); ok {
		all := b.perYear(year)
		out.SavingAll = &all
	}
	for _, m := range s.Movers[:min(2, len(s.Movers))] {
		out.Movers = append(out.Movers, clean(m.Name.String())+", "+b.taken(m.Input))
	}
	if p, ok := s.Pays.Get(); ok {
		b.costPayback(&out, p)
	}
	return out
}

func (b *builder) costPayback(out *CostOffer, p cost.Payback) {
	out.Payback = payback(p)
	if p.Years > 0 {
		worth := b.perYear(p.Worth)
		out.Worth, out.Over = &worth, fmt.Sprintf("%s years at %s %%", short(p.Years), short(p.Interest))
	}
}

// costInputs lists every uncertain figure once, today's way first.
func (b *builder) costInputs(a *cost.Account) []CostInput {
	var list []CostInput
	seen := map[string]bool{}
	add := func(inputs []cost.Input) {
		for _, in := range inputs {
			if !seen[in.Name.String()] {
				seen[in.Name.String()] = true
				in = b.inUnits(in)
				s := in.Estimate
				list = append(list, CostInput{clean(in.Name.String()), b.unitOf(in), tidied(s.Low), tidied(s.Likely), tidied(s.High), in.Basis, b.listed(in.Note)})
			}
		}
	}
	if a.Against >= 0 {
		add(a.Ways[a.Against].Inputs)
	}
	if len(a.Offers) > 0 {
		add(a.Offers[0].Way.Inputs)
	}
	return list
}

// unitOf is the unit of an input: "EUR per h", or a plain one.
func (b *builder) unitOf(in cost.Input) string {
	if in.Money {
		return strings.TrimSpace(clean(b.prices.Currency) + " per " + string(in.Unit))
	}
	return string(in.Unit)
}

// tidied drops the digits that only arithmetic has.
func tidied(v float64) float64 {
	var out float64
	fmt.Sscanf(strings.ReplaceAll(short(v), "−", "-"), "%g", &out)
	return out
}

// costCut says for which cut and how many metres the account is made.
func (b *builder) costCut(a *cost.Account) string {
	t, ok := a.T.Get()
	if !ok {
		return clean(a.Why.String())
	}
	text := "For " + b.told(millimetres(t)) + " " + metalName(a.Metal)
	switch m, told := a.Metres.Get(); {
	case !told:
		text += ". How much is cut a year is not known, so nothing is said of a year."
	case m.High == 0:
		text += ", nothing cut in a year: nothing is saved, and nothing pays back."
	default:
		show := func(v float64, r unit.Round) string {
			return b.show(unit.Quantity{Value: v, Kind: unit.Length}, r)
		}
		text += fmt.Sprintf(", %s a year (%s to %s: the weeks worked, and how well the length is known).", show(m.Likely, unit.Nearest), show(m.Low, unit.Down), show(m.High, unit.Up))
	}
	return text
}

// priceLines say which prices the account is made with.
func (b *builder) priceLines(a *cost.Account) []Line {
	l := &b.prices
	list := []Line{{Label: "Price list", Value: b.listed(l.Name)}}
	for _, row := range []Line{{Label: "Currency", Value: clean(l.Currency)}, {Label: "Date", Value: plain(l.Date)}, {Label: "Place", Value: b.listed(l.Place)}} {
		if row.Value == "" {
			row.Value = "not said"
		}
		list = append(list, row)
	}
	if text := b.resting(a); text != "" {
		list = append(list, Line{Label: "Mark", Value: text})
	}
	return list
}

// resting says so where a result rests on prices nobody stands behind.
func (b *builder) resting(a *cost.Account) string {
	switch {
	case b.prices.Invented && !b.prices.Owned():
		return "Prices are assumed: what you did not tell is from an invented list" + b.of() + "."
	case a.Assumed:
		if b.prices.Invented {
			return "Some prices are assumed: invented, or common practice, no source. List" + b.of() + "."
		}
		return "Some prices are assumed: common practice, no source. List" + b.of() + "."
	}
	return ""
}

// listed is a text of the price list: ours where the list is the built-in one.
func (b *builder) listed(s string) string {
	if b.prices.Name == cost.DemoPricesName {
		return clean(s)
	}
	return plain(s)
}

// of is when and where a list is from, behind its name.
func (b *builder) of() string {
	text := ""
	if b.prices.Date != "" {
		text += " of " + plain(b.prices.Date)
	}
	if b.prices.Place != "" {
		text += ", " + b.listed(b.prices.Place)
	}
	return text
}

// costNotes say how ranges are meant, and what is left out.
func (b *builder) costNotes(a *cost.Account) []string {
	list := []string{
		"Each range is what is to be expected when every uncertain figure moves on its own between its low and high: the effects are added as the root of the sum of squares. That all goes wrong at once lies outside it.",
		"A saving whose range includes zero is called no clear saving. Speeds and habits are common practice or from memory: a trial cut on the customer's own piece is surer.",
		"Left out: the price of a compressor, what is left of a system after the years, tips of the gas torch, waiting for work that is sent out.",
	}
	if b.clash() {
		list = append(list, "The range is priced in "+clean(b.offered.Currency)+" and the price list in "+clean(b.prices.Currency)+": no payback is worked out.")
	}
	if flame := b.usesFlame(a); flame && !b.job.Prices.Fuel.IsKnown() {
		list = append(list, "The fuel gas is not told: acetylene is taken.")
	}
	return list
}

func (b *builder) usesFlame(a *cost.Account) bool {
	for _, w := range a.Ways {
		if w.Process == cost.OxyAcetylene && w.Why.IsEmpty() {
			return true
		}
	}
	return false
}

// crossing compares the first choice with oxy-fuel, nil where that means
// nothing.
func (b *builder) crossing() *cost.Crossing {
	if b.result.First == nil || !cost.Comparable(&b.job, b.result.First.System) {
		return nil
	}
	c := cost.Cross(b.job, b.prices, b.result.First.System)
	if !c.Why.IsEmpty() {
		return nil
	}
	return &c
}

func (b *builder) costChart() *CostChart {
	c := b.crossing()
	if c == nil {
		return nil
	}
	chart := CostChart{Title: plain(c.System.Name) + " and " + string(c.Fuel.Name()) + ", " + b.each() + " of mild steel", Says: b.crossingSays(c)}
	longest := 0.0
	for _, p := range c.Points {
		longest = max(longest, p.Plasma.Likely, p.Flame.Likely)
	}
	for _, p := range c.Points {
		chart.Rows = append(chart.Rows, CostPoint{
			Thickness: b.told(millimetres(p.T)), Plasma: b.perMetre(p.Plasma), Flame: b.perMetre(p.Flame),
			PlasmaShare: p.Plasma.Likely / longest, FlameShare: p.Flame.Likely / longest,
		})
	}
	return &chart
}

// crossingSays words where oxy-fuel becomes cheaper.
func (b *builder) crossingSays(c *cost.Crossing) string {
	from, ok := c.From.Get()
	if !ok {
		return "On mild steel it stays cheaper than " + string(c.Fuel.Name()) + " up to all it severs."
	}
	text := "On mild steel " + string(c.Fuel.Name()) + " may be cheaper from about " + b.told(whole(from))
	if likely, ok := c.Likely.Get(); ok {
		text = "On mild steel " + string(c.Fuel.Name()) + " is likely cheaper above about " + b.told(whole(likely)) + " (it may be from " + b.told(whole(from))
		if surely, ok := c.Surely.Get(); ok {
			text += ", it is from " + b.told(whole(surely))
		}
		text += ")"
	}
	return text + "; common practice says about " + b.told(millimetres(16)) + " for a small system."
}

// crossingToday is the crossing for the page, nil unless they cut with a flame
// today.
func (b *builder) crossingToday(today *cost.Way) *cost.Crossing {
	if today.Process != cost.OxyAcetylene && today.Process != cost.OxyPropane {
		return nil
	}
	return b.crossing()
}

// crossingShort words it for the page, "" if there is none.
func (b *builder) crossingShort(c *cost.Crossing) string {
	if c == nil {
		return ""
	}
	likely, ok := c.Likely.Get()
	if !ok {
		return ""
	}
	return capital(string(c.Fuel.Name())) + " is likely cheaper above about " + b.told(whole(likely)) + " of mild steel."
}

// joinedBy joins sentences that are there.
func joinedBy(sentences ...string) string {
	var list []string
	for _, s := range sentences {
		if s != "" {
			list = append(list, s)
		}
	}
	return strings.Join(list, " ")
}

// whole is a thickness to a whole millimetre: the crossing is no sharper.
func whole(t unit.Millimetre) unit.Quantity {
	return millimetres(unit.Millimetre(float64(int(t + 0.5))))
}

// cost is the part of the page about cost; nil while nothing is recommended,
// or nothing is told of how they cut today.
func (b *builder) cost() *Cost {
	if !b.recommended() || !b.job.Today.IsKnown() {
		return nil
	}
	a := b.account([]*system.System{b.result.First.System})
	if len(a.Ways) == 0 || len(a.Offers) == 0 {
		return nil
	}
	o := &a.Offers[0]
	s, ok := o.Saving.Get()
	if !ok {
		return &Cost{Lines: unique(b.unworked(&a)), Assumed: a.Assumed}
	}
	if b.nobodysPrices() {
		return &Cost{Lines: []string{"What it would save was not worked out: no price of yours was told, and the price of an hour of work in the list is invented."}, Assumed: true}
	}
	today := &a.Ways[a.Against]
	crossing := b.crossingToday(today)
	out := Cost{Verdict: string(s.Verdict), Assumed: a.Assumed, Bars: b.costBars(today, o), Curves: b.curves(today, crossing)}
	out.Lines = []string{b.savingLine(today, s), joinedBy(b.paybackLine(s), b.crossingShort(crossing)), b.movedLine(&a, s)}
	return &out
}

// nobodysPrices reports that a real customer would be shown sums that rest on
// invented prices: nobody stands behind the hour of work, which is most of what
// a cut costs, and no bill was told. The account (cost, why) still shows them,
// marked.
func (b *builder) nobodysPrices() bool {
	p := &b.job.Prices
	told := p.Labour.IsKnown() || p.GasYear.IsKnown() || p.SentOutYear.IsKnown()
	hour, listed := b.prices.Get(cost.ItemLabour)
	return listed && hour.Basis == cost.BasisInvented && !b.visit.Demo && !told
}

// unworked says why no cost can be worked out.
func (b *builder) unworked(a *cost.Account) []string {
	var list []string
	for _, w := range a.Ways {
		list = append(list, clean(w.Why.String()))
	}
	if why := a.Offers[0].Way.Why; !why.IsEmpty() && a.Against >= 0 {
		list = []string{clean(why.String())}
	}
	return list[:min(3, len(list))]
}

func (b *builder) costBars(today *cost.Way, o *cost.Offer) []CostBar {
	longest := max(today.PerMetre.Likely, o.Way.PerMetre.Likely)
	most := max(today.PerMetre.High, o.Way.PerMetre.High)
	if longest <= 0 {
		return nil
	}
	bar := func(label string, s cost.Estimate) CostBar {
		a := b.perMetre(s)
		likely, _ := ranged(a, b)
		return CostBar{label, a.Text + " " + b.each(), likely + " " + b.each(), s.Likely / longest, s.Low / most, s.Likely / most, s.High / most}
	}
	return []CostBar{bar("Today", today.PerMetre), bar(plain(o.System.Name), o.Way.PerMetre)}
}

// savingLine is the verdict in words.
func (b *builder) savingLine(today *cost.Way, s cost.Saving) string {
	against := " against " + string(today.Process.Name()) + " in " + b.cutOf(today)
	flip := func(x cost.Estimate) cost.Estimate {
		return cost.Estimate{Low: -x.High, Likely: -x.Likely, High: -x.Low}
	}
	sums := func(sign func(cost.Estimate) cost.Estimate) string {
		text := b.perMetre(sign(s.PerMetre)).Text + " " + b.each()
		if year, ok := s.PerYear.Get(); ok {
			text += ", " + b.perYear(sign(year)).Text + " a year"
		}
		return text
	}
	same := func(x cost.Estimate) cost.Estimate { return x }
	switch s.Verdict {
	case cost.Saves:
		return "Likely saves " + sums(same) + "," + against + "."
	case cost.CostsMore:
		return "Costs more: " + sums(flip) + "," + against + "."
	}
	return "No clear saving" + against + ": " + sums(same) + ". The range includes zero."
}

// paybackLine says when it has paid for itself, and what that is worth.
func (b *builder) paybackLine(s cost.Saving) string {
	p, ok := s.Pays.Get()
	switch {
	case !ok && b.clash():
		return "No payback is worked out: the range and the price list have different currencies."
	case !ok && !s.PerYear.IsKnown():
		return "When it pays for itself is open: how much is cut a year is not known."
	case !ok:
		return "When it pays for itself is open: the list gives no price for it."
	}
	text := "Pays for itself " + payback(p)
	switch {
	case !p.Likely.IsKnown():
		text = "Does not pay for itself by cheaper cutting"
	case s.Verdict == cost.NoClear:
		text = "May pay for itself " + payback(p)
	}
	if p.Years > 0 {
		text += fmt.Sprintf("; worth %s today over %s years at %s %%", b.perYear(p.Worth).Text, short(p.Years), short(p.Interest))
	}
	return text + "."
}

// movedLine names the two inputs that move the saving most, and says what the
// prices rest on.
func (b *builder) movedLine(a *cost.Account, s cost.Saving) string {
	var names []string
	for _, m := range s.Movers[:min(2, len(s.Movers))] {
		names = append(names, clean(m.Name.String()))
	}
	text := b.resting(a)
	if text == "" {
		text = b.dated()
	}
	if len(names) == 0 {
		return text
	}
	return "Moved most by " + series(names) + habits(s.Movers[:len(names)]) + ". " + text
}

// habits says so where what moves the saving most rests on common practice
// alone: figures of the trade, not of this shop.
func habits(movers []cost.Mover) string {
	n := 0
	for _, m := range movers {
		if m.Basis == string(cite.Practice) {
			n++
		}
	}
	switch {
	case n == 0:
		return ""
	case n == len(movers) && n > 1:
		return ", both " + string(cite.Practice)
	case n == len(movers):
		return ", " + string(cite.Practice)
	}
	return ", one of them " + string(cite.Practice)
}

// dated says of when and where the prices are.
func (b *builder) dated() string {
	switch when, where := plain(b.prices.Date), b.listed(b.prices.Place); {
	case when != "" && where != "":
		return "Prices of " + when + ", " + where + "."
	case when != "":
		return "Prices of " + when + "."
	}
	return "The price list says no date."
}
