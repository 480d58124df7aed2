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
	s.in[operating] = figure(message.New("share of the cutting time that really cuts"), "of the time", operatingFactor, cite.Practice, "")
	s.in[cutLength] = figure(message.New("length of a cut"), "m", usualCut, cite.Practice, rules.FactBusyLength)
	if length, told := j.BusyLength.Get(); told && length > 0 {
		s.in[cutLength] = figure(message.New("length of a cut"), "m", roughly.Times(float64(length)), cite.Given, rules.FactBusyLength)
	}
	s.told(wage, j.Prices.Labour, ItemLabour, rules.FactLabour)
	s.optional(electricity, ItemElectricity)
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

// told takes the customer's own figure before the list's.
func (s *scenario) told(i at, own unit.Maybe[unit.Money], id ItemID, f rules.Fact) {
	s.in[i], _ = priced(s.prices, id)
	s.in[i].Fact = f
	if money, ok := own.Get(); ok && money > 0 {
		s.in[i].Estimate, s.in[i].Basis, s.in[i].Note, s.in[i].known = closely.Times(float64(money)), string(BasisCustomer), "", true
	}
}

func (s *scenario) optional(i at, id ItemID) { s.in[i], _ = priced(s.prices, id) }

// need takes a price out of the list and remembers one that is missing.
func (s *scenario) need(i at, id ItemID) {
	if !s.in[i].known {
		s.in[i], _ = priced(s.prices, id)
	}
	if !s.in[i].known {
		item, _ := FindItem(id)
		s.lacks = append(s.lacks, item.Name.Message())
	}
}

// lacking says what keeps a cost from being worked out, "" if nothing does.
func (s *scenario) lacking() message.Message {
	if len(s.lacks) == 0 {
		return message.Message{}
	}
	return message.New("The price list has no price for {1}.", message.Join(", ", s.lacks...))
}

// set puts an input of one method in.
func (s *scenario) set(base at, l local, of any, v Estimate, trust cite.Trust) {
	s.in[base+at(l)] = own(l, of, v, trust)
}

// person fills in what every method asks of the operator.
func (s *scenario) person(base at, p Process, of any, t unit.Millimetre) {
	h := habitsOf[p]
	s.need(wage, ItemLabour)
	s.set(base, setup, of, h.setup, cite.Practice)
	s.set(base, starting, of, h.starting, cite.Practice)
	s.set(base, tended, of, h.tended, cite.Practice)
	s.set(base, straighten, of, straightening(p, t), cite.Practice)
	cleaning := h.cleaning
	if edges, told := s.job.EdgeNext.Get(); told && len(edges) == 1 && edges[0] == rules.Scrap {
		cleaning = Exact(0) // nobody cleans the edge of scrap
	}
	s.set(base, grinding, of, cleaning, cite.Practice)
	if h.power.High > 0 {
		s.need(electricity, ItemElectricity)
		s.set(base, power, of, h.power, cite.Practice)
	}
}

// method fills in one of today's ways; what it returns is worth nothing if
// something is lacking.
func (s *scenario) method(p Process, c cut) *method {
	w := &method{process: p, base: today, t: c.t, yearly: s.in[metresAYear].known}
	name := p.Name()
	if p == SentOut {
		s.sentOut(w)
		return w
	}
	s.person(today, p, name, c.t)
	switch {
	case p.flame():
		s.flame(w, c)
	case p == Disc:
		v, _ := DiscSpeed(c.t, c.metal) // cannot has asked already
		s.set(today, speed, name, v, cite.Practice)
		s.need(bladePrice, ItemDisc)
		s.need(bladeLife, ItemDiscLife)
	case p == BandSaw:
		v, _ := SawSpeed(c.t, c.metal)
		s.set(today, speed, name, v, cite.Practice)
		s.need(bladePrice, ItemBlade)
		s.need(bladeLife, ItemBladeLife)
	case p == Shear || p == Nibbler:
		v := shearSpeed
		if p == Nibbler {
			v = nibblerSpeed
		}
		s.set(today, speed, name, v, cite.Practice)
		s.need(bladePrice, ItemKnives)
		s.need(bladeLife, ItemKnivesLife)
	case p == OtherPlasma:
		s.otherPlasma(c)
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

// billed is a yearly sum the customer told.
func billed(name message.ID, sum unit.Money, f rules.Fact) Input {
	return Input{Name: name.Message(), Unit: "year", Money: true, Estimate: closely.Times(float64(sum)), Basis: string(BasisCustomer), Fact: f, known: true}
}

func (s *scenario) flame(w *method, c cut) {
	fuel, gas, id := rules.Acetylene, message.ID("acetylene"), ItemAcetylene
	if w.process == OxyPropane {
		fuel, gas, id = rules.Propane, "propane", ItemPropane
	}
	f, _ := OxyFuelAt(c.t, fuel) // cannot has asked already
	name := w.process.Name()
	s.set(today, speed, name, f.Speed, cite.Memory)
	s.set(today, starting, name, f.Preheat, cite.Practice)
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
	s.optional(rental, ItemCylinders)
	for _, i := range []at{oxygenPrice, fuelPrice, rental} {
		s.in[i].Fact = rules.FactGasYear
	}
}

// plasma fills in what every plasma system takes.
func (s *scenario) plasma(base at, of any, v Estimate, i unit.Ampere, flow Estimate) {
	s.set(base, speed, of, v, cite.Practice)
	u, err := size.LoadVoltage(i)
	kw := func(eta float64) float64 {
		p, e := SupplyPower(u, i, eta)
		if e != nil || err != nil {
			return 0
		}
		return float64(p)
	}
	s.set(base, power, of, Estimate{Low: kw(efficiency.High), Likely: kw(efficiency.Likely), High: kw(efficiency.Low)}, cite.Practice)
	s.set(base, idle, of, idlePower, cite.Practice)
	s.set(base, airFlow, of, flow, cite.Practice)
	s.set(base, airAfter, of, airAfterCut, cite.Practice)
	s.need(electricity, ItemElectricity)
	s.need(airPower, ItemAirPower)
	s.need(setPrice, ItemSet)
	s.need(setStarts, ItemSetStarts)
	s.need(setHours, ItemSetHours)
}

func (s *scenario) otherPlasma(c cut) {
	i := min(max(unit.Ampere(float64(c.t)/perAmpere), otherCurrent[0]), otherCurrent[1])
	s.plasma(today, OtherPlasma.Name(), otherSpeed, i, otherFlow)
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
		return nil, message.New("It does not cut {1} of this metal.", message.Figure(unit.Show(unit.Quantity{Value: float64(c.t), Kind: unit.Thickness}, unit.Metric, unit.Nearest)))
	}
	of := message.Name(sys.Name)
	s.person(offered, Plasma, of, c.t)
	hand := handSpeed.Times(float64(v))
	hand.High = max(min(hand.High, float64(led)), hand.Likely)
	s.plasma(offered, of, hand, sys.OutputMax, Exact(float64(sys.AirFlow)))
	return &method{process: Plasma, base: offered, t: c.t, yearly: s.in[metresAYear].known}, s.lacking()
}
