package cost

import (
	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// Process is a method of cutting an account can be made for.
type Process string

// The processes. Unknown is a method nobody named.
const (
	OxyAcetylene Process = "oxy-acetylene"
	OxyPropane   Process = "oxy-propane"
	Disc         Process = "abrasive-disc"
	BandSaw      Process = "band-saw"
	Shear        Process = "shear"
	Nibbler      Process = "nibbler"
	SentOut      Process = "sent-out"
	OtherPlasma  Process = "other-plasma"
	Unknown      Process = "other"
	Plasma       Process = "plasma" // a system of the range
)

// processNames are what the processes are called.
var processNames = map[Process]message.ID{
	OxyAcetylene: "oxy-acetylene", OxyPropane: "oxy-propane", Disc: "abrasive disc", BandSaw: "band saw", Shear: "shear",
	Nibbler: "nibbler", SentOut: "sent out", OtherPlasma: "another plasma system", Unknown: "another way", Plasma: "plasma",
}

// Name is what a process is called.
func (p Process) Name() message.ID { return processNames[p] }

// flame reports whether the process burns gas.
func (p Process) flame() bool { return p == OxyAcetylene || p == OxyPropane }

// bladed reports whether the process wears discs, blades or knives.
func (p Process) bladed() bool { return p == Disc || p == BandSaw || p == Shear || p == Nibbler }

// method is one method of cutting, with where its own inputs stand.
type method struct {
	process Process
	base    at
	t       unit.Millimetre // of the metal itself
	billed  bool            // the customer's yearly bill stands for gas or for work sent out
	yearly  bool            // metres a year are known
}

// metre works out what a metre costs.
func (w *method) metre(x *values) tally {
	var t tally
	own := func(l local) float64 { return x[w.base+at(l)] }
	if w.process == SentOut {
		w.bought(&t, x)
		return t
	}
	length := unit.Metre(x[cutLength])
	burning := t.hour(CutHours(unit.MillimetrePerMinute(own(speed)), 1))
	cutting := t.hour(CutHours(unit.MillimetrePerMinute(own(speed)), x[operating]))
	preparing := t.hour(StartHours(unit.Second(own(setup)), length))
	heating := t.hour(StartHours(unit.Second(own(starting)), length))
	w.labour(&t, x, cutting*Hour(own(tended)), preparing, heating)
	switch {
	case w.process.flame():
		w.gas(&t, x, burning, heating)
	case w.process.bladed():
		w.blades(&t, x)
		w.electricity(&t, x, burning, 0)
	default:
		w.electricity(&t, x, burning+heating, cutting+preparing-burning)
		w.air(&t, x, burning+heating+t.hour(StartHours(unit.Second(own(airAfter)), length)))
		w.consumables(&t, x, burning, 1/float64(length))
	}
	return t
}

func (w *method) labour(t *tally, x *values, cutting, preparing, heating Hour) {
	for _, work := range []struct {
		part Part
		time Hour
	}{
		{Cutting, cutting}, {Setup, preparing}, {Starting, heating},
		{Grinding, Hour(x[w.base+at(grinding)] / 60)}, {Straightening, Hour(x[w.base+at(straighten)] / 60)},
	} {
		cost, err := Labour(work.time, unit.Money(x[wage]))
		t.add(work.part, cost, err)
	}
}

// gas keeps cutting oxygen and the flame apart: the flame burns while it
// preheats too. A bill stands for both, and for the cylinders.
func (w *method) gas(t *tally, x *values, burning, heating Hour) {
	if w.billed {
		cost, err := Shared(unit.Money(x[gasBill]), unit.Metre(x[metresAYear]))
		t.add(Gas, cost, err)
		return
	}
	own := func(l local) unit.LitrePerMinute { return unit.LitrePerMinute(x[w.base+at(l)]) }
	oxygen, err := GasUsed(own(oxygenFlow), burning)
	t.add(Oxygen, unit.Money(float64(oxygen)*x[oxygenPrice]), err)
	fuel, err := GasUsed(own(fuelFlow), burning+heating)
	t.add(Flame, unit.Money(float64(fuel)*(x[fuelPrice]+x[w.base+at(flameRatio)]*x[oxygenPrice])), err)
	if w.yearly && x[rental] > 0 {
		cost, err := Shared(unit.Money(x[rental]), unit.Metre(x[metresAYear]))
		t.add(Rental, cost, err)
	}
}

func (w *method) electricity(t *tally, x *values, burning, between Hour) {
	price := unit.Money(x[electricity])
	cost, err := Energy(unit.Kilowatt(x[w.base+at(power)]), burning, price)
	t.add(Power, cost, err)
	cost, err = Energy(unit.Kilowatt(x[w.base+at(idle)]), max(between, 0), price)
	t.add(Power, cost, err)
}

func (w *method) air(t *tally, x *values, flowing Hour) {
	kw, err := AirPower(unit.LitrePerMinute(x[w.base+at(airFlow)]), x[airPower])
	t.add(Air, 0, err)
	cost, err := Energy(kw, flowing, unit.Money(x[electricity]))
	t.add(Air, cost, err)
}

func (w *method) consumables(t *tally, x *values, burning Hour, starts float64) {
	worn, err := Worn(starts, x[setStarts], burning, Hour(x[setHours]))
	t.add(Consumables, unit.Money(worn*x[setPrice]), err)
}

// blades wear by the area cut, knives by the length.
func (w *method) blades(t *tally, x *values) {
	if w.process == Shear || w.process == Nibbler {
		cost, err := Shared(unit.Money(x[bladePrice]), unit.Metre(x[bladeLife]))
		t.add(Blades, cost, err)
		return
	}
	cost, err := Bladed(w.t, x[bladeLife], unit.Money(x[bladePrice]))
	t.add(Blades, cost, err)
}

func (w *method) bought(t *tally, x *values) {
	if w.billed {
		cost, err := Shared(unit.Money(x[sentBill]), unit.Metre(x[metresAYear]))
		t.add(Bought, cost, err)
		return
	}
	t.add(Bought, unit.Money(x[sentPrice]), nil)
	cost, err := Shared(unit.Money(x[tripPrice]), unit.Metre(x[tripLoad]))
	t.add(Trips, cost, err)
}
