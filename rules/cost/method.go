package cost

import (
	"cutbrief/rules"
	"cutbrief/rules/cite"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/size"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// method is one method of cutting, with where its own inputs stand.
type method struct {
	process Process
	base    at
	t       unit.Millimetre // of the metal itself
	billed  bool            // the customer's yearly bill stands for gas or for work sent out
	yearly  bool            // metres a year are known
}

// tally adds up the parts of one metre; it keeps its first error.
type tally struct {
	cost [parts]float64
	err  error
}

// entry is where in a tally a cost goes.
type entry struct {
	tally *tally
	part  Part
}

func (t *tally) to(p Part) entry { return entry{t, p} }

func (e entry) add(m unit.Money, err error) {
	e.tally.fails(err)
	e.tally.cost[e.part] += float64(m)
}

func (t *tally) fails(err error) {
	if t.err == nil {
		t.err = err
	}
}

// hour keeps the error of a formula and passes its time on.
func (t *tally) hour(h Hour, err error) Hour {
	t.fails(err)
	return h
}

func (t *tally) sum() float64 {
	total := 0.0
	for _, c := range t.cost {
		total += c
	}
	return total
}

// moving is what every further metre costs: all but the rental, which a year
// bears whatever is cut.
func (t *tally) moving() float64 { return t.sum() - t.cost[Rental] }

// own is the value of an input of the method itself.
func (w *method) own(x *values, l local) float64 { return x[w.base+at(l)] }

// metre works out what a metre costs.
func (w *method) metre(x *values) tally {
	var t tally
	if w.process == SentOut {
		w.bought(&t, x)
		return t
	}
	v, length := unit.MillimetrePerMinute(w.own(x, speed)), unit.Metre(x[cutLength])
	burning, cutting := t.hour(CutHours(v, 1)), t.hour(CutHours(v, x[operating]))
	preparing := t.hour(StartHours(unit.Second(w.own(x, setup)), length))
	heating := t.hour(StartHours(unit.Second(w.own(x, starting)), length))
	hour := unit.Money(x[wage])
	t.to(Cutting).add(Labour(cutting*Hour(w.own(x, tended)), hour))
	t.to(Setup).add(Labour(preparing, hour))
	t.to(Starting).add(Labour(heating, hour))
	t.to(Grinding).add(Labour(Hour(w.own(x, grinding)/60), hour))
	t.to(Straightening).add(Labour(Hour(w.own(x, straighten)/60), hour))
	switch {
	case w.process.flame():
		w.gas(&t, x, burning, heating)
	case tools[w.process].price != "":
		w.blades(&t, x)
		w.electricity(&t, x, burning, 0)
	default:
		w.electricity(&t, x, burning+heating, cutting+preparing-burning)
		w.arc(&t, x, burning, burning+heating+t.hour(StartHours(unit.Second(w.own(x, airAfter)), length)))
	}
	return t
}

// gas keeps cutting oxygen and the flame apart: the flame burns while it
// preheats too. A bill stands for both, and for the cylinders.
func (w *method) gas(t *tally, x *values, burning, heating Hour) {
	if w.billed {
		t.to(Gas).add(Shared(unit.Money(x[gasBill]), unit.Metre(x[metresAYear])))
		return
	}
	oxygen, err := GasUsed(unit.LitrePerMinute(w.own(x, oxygenFlow)), burning)
	t.to(Oxygen).add(unit.Money(float64(oxygen)*x[oxygenPrice]), err)
	fuel, err := GasUsed(unit.LitrePerMinute(w.own(x, fuelFlow)), burning+heating)
	t.to(Flame).add(unit.Money(float64(fuel)*(x[fuelPrice]+w.own(x, flameRatio)*x[oxygenPrice])), err)
	if w.yearly {
		t.to(Rental).add(Shared(unit.Money(x[rental]), unit.Metre(x[metresAYear])))
	}
}

func (w *method) electricity(t *tally, x *values, burning, between Hour) {
	price := unit.Money(x[electricity])
	t.to(Power).add(Energy(unit.Kilowatt(w.own(x, power)), burning, price))
	t.to(Power).add(Energy(unit.Kilowatt(w.own(x, idle)), max(between, 0), price))
}

// arc is what a plasma system takes besides electricity: air and consumables.
func (w *method) arc(t *tally, x *values, burning, flowing Hour) {
	kw, err := AirPower(unit.LitrePerMinute(w.own(x, airFlow)), x[airPower])
	t.fails(err)
	t.to(Air).add(Energy(kw, flowing, unit.Money(x[electricity])))
	worn, err := Worn(1/x[cutLength], x[setStarts], burning, Hour(x[setHours]))
	t.to(Consumables).add(unit.Money(worn*x[setPrice]), err)
}

// blades wear by the area cut, knives by the length.
func (w *method) blades(t *tally, x *values) {
	if w.process == Shear || w.process == Nibbler {
		t.to(Blades).add(Shared(unit.Money(x[bladePrice]), unit.Metre(x[bladeLife])))
	} else {
		t.to(Blades).add(Bladed(w.t, x[bladeLife], unit.Money(x[bladePrice])))
	}
}

func (w *method) bought(t *tally, x *values) {
	if w.billed {
		t.to(Bought).add(Shared(unit.Money(x[sentBill]), unit.Metre(x[metresAYear])))
		return
	}
	t.to(Bought).add(unit.Money(x[sentPrice]), nil)
	t.to(Trips).add(Shared(unit.Money(x[tripPrice]), unit.Metre(x[tripLoad])))
}

// cut is the cut an account is made for.
type cut struct {
	metal metal.ID
	t     unit.Millimetre
}

// scenario fills a model with what is known of a job and its prices.
type scenario struct {
	model
	job    *rules.Job
	prices *PriceList
	lacks  []message.Message // what the list has no price for
}

func newScenario(j *rules.Job, prices *PriceList) *scenario {
	s := &scenario{job: j, prices: prices}
	s.in[operating] = figure(message.New("share of the cutting time that really cuts"), "of the time", operatingFactor.Estimate, cite.Practice, "")
	s.in[cutLength] = figure(message.New("length of a cut"), "m", usualCut.Estimate, cite.Practice, rules.FactBusyLength)
	if length, told := j.BusyLength.Get(); told && length > 0 {
		s.in[cutLength] = figure(message.New("length of a cut"), "m", roughly.Times(float64(length)), cite.Given, rules.FactBusyLength)
	}
	s.in[wage] = priced(prices, ItemLabour)
	s.in[wage].Fact = rules.FactLabour
	if money, told := j.Prices.Labour.Get(); told && money > 0 { // the customer's own figure before the list's
		in := &s.in[wage]
		in.Estimate, in.Basis, in.Note, in.known = closely.Times(float64(money)), string(BasisCustomer), "", true
	}
	s.in[electricity] = priced(prices, ItemElectricity)
	if week, told := j.CutPerWeek.Get(); told && week > 0 {
		m := float64(week)
		s.in[metresAYear] = figure(message.New("length cut a year"), "m", Estimate{
			Low: m * weeks.Low * roughly.Low, Likely: m * weeks.Likely, High: m * weeks.High * roughly.High}, cite.Given, rules.FactCutLength)
	}
	return s
}

// clone leaves this scenario as it is.
func (s *scenario) clone() *scenario {
	c := *s
	c.lacks = nil
	return &c
}

// need takes a price out of the list and remembers one that is missing.
func (s *scenario) need(i at, id ItemID) {
	if !s.in[i].known {
		s.in[i] = priced(s.prices, id)
	}
	if !s.in[i].known {
		s.lacks = append(s.lacks, s.in[i].Name)
	}
}

// lacking says what keeps a cost from being worked out, "" if nothing does.
func (s *scenario) lacking() message.Message {
	if len(s.lacks) == 0 {
		return message.Message{}
	}
	return message.New("The price list has no price for {1}.", message.Join(", ", s.lacks...))
}

// set puts an input of one method in, called after it: "speed (abrasive disc)".
func (s *scenario) set(base at, l local, of any, v Estimate, trust cite.Trust) {
	s.in[base+at(l)] = figure(message.New("{1} ({2})", localNames[l].name, of), localNames[l].unit, v, trust, "")
}

// person fills in what every method asks of the operator.
func (s *scenario) person(base at, p Process, of any, t unit.Millimetre) {
	h := habitsOf[p]
	h[straighten] = straightening(p, t)
	if edges, told := s.job.EdgeNext.Get(); told && len(edges) == 1 && edges[0] == rules.Scrap {
		h[grinding] = Exact(0) // nobody cleans the edge of scrap
	}
	s.need(wage, ItemLabour)
	for _, l := range []local{setup, starting, tended, straighten, grinding} {
		s.set(base, l, of, h[l], cite.Practice)
	}
	if h[power].High > 0 {
		s.need(electricity, ItemElectricity)
		s.set(base, power, of, h[power], cite.Practice)
	}
}

// method fills in one of today's ways; what it returns is worth nothing if
// something is lacking.
func (s *scenario) method(p Process, c cut) *method {
	w := &method{process: p, base: today, t: c.t, yearly: s.in[metresAYear].known}
	if p == SentOut {
		s.sentOut(w)
		return w
	}
	s.person(today, p, p.Name(), c.t)
	switch tool := tools[p]; {
	case p.flame():
		s.flame(w, c)
	case p == OtherPlasma:
		i := min(max(unit.Ampere(float64(c.t)/perAmpere), otherCurrent[0]), otherCurrent[1])
		s.plasma(today, p.Name(), otherSpeed.Estimate, i, otherFlow.Estimate)
	case tool.price != "":
		v, _ := tool.speed(c.t, c.metal) // cannot has asked already
		s.set(today, speed, p.Name(), v, cite.Practice)
		s.need(bladePrice, tool.price)
		s.need(bladeLife, tool.life)
	}
	return w
}

func (s *scenario) sentOut(w *method) {
	if bill, told := s.job.Prices.SentOutYear.Get(); told && w.yearly {
		w.billed = true
		s.in[sentBill] = billed("cutting sent out", bill, rules.FactSentYear)
		return
	}
	s.need(sentPrice, ItemSentOut)
	s.need(tripPrice, ItemTransport)
	s.need(tripLoad, ItemTransportLoad)
	s.in[sentPrice].Fact = rules.FactSentYear
}

func (s *scenario) flame(w *method, c cut) {
	fuel, gas, id := rules.Acetylene, message.ID("acetylene"), ItemAcetylene
	if w.process == OxyPropane {
		fuel, gas, id = rules.Propane, "propane", ItemPropane
	}
	f, _ := OxyFuelAt(c.t, fuel) // cannot has asked already
	name := w.process.Name()
	s.set(today, speed, name, f.Speed, cite.Memory)
	if bill, told := s.job.Prices.GasYear.Get(); told && w.yearly {
		w.billed = true
		s.in[gasBill] = billed("gas and cylinders", bill, rules.FactGasYear)
		return
	}
	s.set(today, oxygenFlow, name, f.Cutting, cite.Memory)
	s.set(today, fuelFlow, gas, f.Fuel, cite.Memory)
	s.set(today, flameRatio, gas, f.Flame, cite.Memory)
	s.need(oxygenPrice, ItemOxygen)
	s.need(fuelPrice, id)
	s.in[rental] = priced(s.prices, ItemCylinders)
	for _, i := range []at{oxygenPrice, fuelPrice, rental} {
		s.in[i].Fact = rules.FactGasYear
	}
}

// plasma fills in what every plasma system takes.
func (s *scenario) plasma(base at, of any, v Estimate, i unit.Ampere, flow Estimate) {
	u, _ := size.LoadVoltage(i)
	kw := func(eta float64) float64 {
		p, _ := SupplyPower(u, i, eta) // no current has no power
		return float64(p)
	}
	s.set(base, speed, of, v, cite.Practice)
	s.set(base, power, of, Estimate{Low: kw(efficiency.High), Likely: kw(efficiency.Likely), High: kw(efficiency.Low)}, cite.Practice)
	s.set(base, idle, of, idlePower.Estimate, cite.Practice)
	s.set(base, airFlow, of, flow, cite.Practice)
	s.set(base, airAfter, of, airAfterCut.Estimate, cite.Practice)
	s.need(electricity, ItemElectricity)
	s.need(airPower, ItemAirPower)
	s.need(setPrice, ItemSet)
	s.need(setStarts, ItemSetStarts)
	s.need(setHours, ItemSetHours)
}

// system fills in a system of the range; the sentence says why it cannot be
// done, "" where it can.
func (s *scenario) system(sys *system.System, c cut) (*method, message.Message) {
	factor, _ := size.Equivalence(sys, c.metal)
	k, held := factor.Get()
	if !held {
		return nil, message.New("How it cuts this metal is not known.")
	}
	led := rules.LedAt(s.job)
	v, err := size.Speed(sys, sys.OutputMax, c.t*unit.Millimetre(k), led)
	if err != nil {
		return nil, message.New("It does not cut {1} of this metal.", shown(c.t))
	}
	of := message.Name(sys.Name)
	s.person(offered, Plasma, of, c.t)
	hand := handSpeed.Times(float64(v))
	hand.High = max(min(hand.High, float64(led)), hand.Likely)
	s.plasma(offered, of, hand, sys.OutputMax, Exact(float64(sys.AirFlow)))
	return &method{process: Plasma, base: offered, t: c.t, yearly: s.in[metresAYear].known}, s.lacking()
}

// shown is a thickness as a sentence names it.
func shown(t unit.Millimetre) message.Figure {
	return message.Figure(unit.Show(unit.Quantity{Value: float64(t), Kind: unit.Thickness}, unit.Metric, unit.Nearest))
}
