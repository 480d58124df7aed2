package cost

import (
	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// habits are what a method of cutting asks of the operator besides the cut itself.
// All are common practice, no source: set-up and starting in seconds a cut,
// cleaning in minutes a metre, tended as a share, power in kW.
type habits struct {
	setup, starting, cleaning, tended, power Estimate
}

var plasmaHabits = habits{
	setup: Estimate{Low: 2, Likely: 5, High: 15}, starting: Estimate{Low: 0.3, Likely: 0.7, High: 2},
	cleaning: Estimate{Low: 0.3, Likely: 1, High: 2}, tended: Exact(1),
}

// habitsOf holds them by process. Flames preheat by the table of OxyFuelAt.
var habitsOf = map[Process]habits{
	OxyAcetylene: {setup: Estimate{Low: 5, Likely: 15, High: 40}, cleaning: Estimate{Low: 1, Likely: 2, High: 4}, tended: Exact(1)},
	OxyPropane:   {setup: Estimate{Low: 5, Likely: 15, High: 40}, cleaning: Estimate{Low: 1, Likely: 2, High: 4}, tended: Exact(1)},
	Disc: {setup: Estimate{Low: 3, Likely: 10, High: 30}, cleaning: Estimate{Low: 0.2, Likely: 0.7, High: 2}, tended: Exact(1),
		power: Estimate{Low: 0.7, Likely: 1.1, High: 2.2}},
	BandSaw: {setup: Estimate{Low: 30, Likely: 90, High: 240}, cleaning: Estimate{Low: 0.1, Likely: 0.4, High: 1}, tended: Estimate{Low: 0.2, Likely: 0.5, High: 1},
		power: Estimate{Low: 0.7, Likely: 1.5, High: 3}},
	Shear: {setup: Estimate{Low: 3, Likely: 8, High: 20}, cleaning: Estimate{Low: 0.05, Likely: 0.2, High: 0.5}, tended: Exact(1),
		power: Estimate{Low: 0.3, Likely: 0.5, High: 0.8}},
	Nibbler: {setup: Estimate{Low: 3, Likely: 8, High: 20}, cleaning: Estimate{Low: 0.1, Likely: 0.4, High: 1}, tended: Exact(1),
		power: Estimate{Low: 0.4, Likely: 0.7, High: 1.2}},
	OtherPlasma: plasmaHabits,
	Plasma:      plasmaHabits,
}

// Straightening in min a metre, by process and thickness: sheet warps, plate
// hardly does, and cold ways leave no heat. Common practice, no source.
func straightening(p Process, t unit.Millimetre) Estimate {
	switch {
	case p.flame() && t < 6:
		return Estimate{Low: 0.5, Likely: 2, High: 5}
	case p.flame():
		return Estimate{Low: 0, Likely: 0.3, High: 1}
	case (p == Plasma || p == OtherPlasma) && t < 3:
		return Estimate{Low: 0, Likely: 0.4, High: 1.5}
	case p == Plasma || p == OtherPlasma:
		return Estimate{Low: 0, Likely: 0.1, High: 0.4}
	}
	return Exact(0)
}

// Figures both ways share. Common practice, no source.
var (
	// pauses within a cut only: set-up, starting and cleaning are counted apart.
	operatingFactor = Estimate{Low: 0.5, Likely: 0.7, High: 0.9}
	usualCut        = Estimate{Low: 0.3, Likely: 0.5, High: 1.5} // m
	weeks           = Estimate{Low: 44, Likely: 46, High: 48}    // worked in a year
	roughly         = Estimate{Low: 0.8, Likely: 1, High: 1.2}   // how well a length is told
	closely         = Estimate{Low: 0.9, Likely: 1, High: 1.1}   // how well a sum is told
	handSpeed       = Estimate{Low: 0.75, Likely: 1, High: 1.15} // of a hand against the row of a system
	airAfterCut     = Estimate{Low: 5, Likely: 12, High: 25}     // s
	idlePower       = Estimate{Low: 0.03, Likely: 0.1, High: 0.3}
	efficiency      = Estimate{Low: 0.75, Likely: 0.85, High: 0.9}
)

// The other plasma system: nobody knows its plate, so it is taken to work
// between its rated and its clean maximum thickness, whose speeds are 500 and
// 250 mm/min, at about 0.25 mm for an ampere. Common practice, no source.
var (
	otherSpeed   = Estimate{Low: 250, Likely: 350, High: 500}
	otherFlow    = Estimate{Low: 100, Likely: 150, High: 220}
	perAmpere    = 0.25
	otherCurrent = [2]unit.Ampere{20, 125}
)

// cannot says in a plain sentence why an account cannot be made for a process
// in a metal and thickness, "" where it can.
func cannot(p Process, id metal.ID, t unit.Millimetre) message.Message {
	var name any = message.Name(id)
	if m, ok := metal.Find(id); ok {
		name = m.Name
	}
	switch {
	case p == Unknown:
		return message.New("What this method costs is not known, so it is not calculated.")
	case p.flame() && (id == metal.Stainless || id == metal.Aluminium || id == metal.Copper):
		return message.New("Oxy-fuel does not cut {1}, so it is not an option there.", name)
	case p.flame() && id != metal.MildSteel && id != metal.Galvanised:
		return message.New("There are no figures for oxy-fuel in {1}.", name)
	case p.flame():
		if _, err := OxyFuelAt(t, rules.Acetylene); err != nil {
			return message.New("There are oxy-fuel figures for 3 to 100 mm only.")
		}
	case p == Shear:
		return ends("There are no figures for hand-held and bench shears in {1}.", "Hand-held and bench shears cut up to about {1} in {2}, so they are not an option for this cut.", rules.Shear, id, name, t)
	case p == Nibbler:
		return ends("There are no figures for hand-held nibblers in {1}.", "Hand-held nibblers cut up to about {1} in {2}, so they are not an option for this cut.", rules.Nibbler, id, name, t)
	case p == Disc:
		if _, held := discFactor[id]; !held {
			return message.New("There are no figures for abrasive discs in {1}.", name)
		}
		if _, err := DiscSpeed(t, id); err != nil {
			return message.New("Abrasive discs do not cut plate above 12 mm day after day, so it is not calculated.")
		}
	case p == BandSaw:
		if _, err := SawSpeed(t, id); err != nil {
			return message.New("There are no figures for band saws in {1}.", name)
		}
	}
	return message.Message{}
}

// ends says why a tool is no alternative in a metal: in the words of unheld
// where no figure is held, in those of beyond where the cut is too thick for it.
func ends(unheld, beyond message.ID, method rules.Process, id metal.ID, name any, t unit.Millimetre) message.Message {
	limit, held := rules.ToolLimit(method, id)
	switch {
	case !held:
		return message.New(unheld, name)
	case t > limit*(1+nominal):
		return message.New(beyond, message.Figure(unit.Show(unit.Quantity{Value: float64(limit), Kind: unit.Thickness}, unit.Metric, unit.Nearest)), name)
	}
	return message.Message{}
}
