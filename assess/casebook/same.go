package casebook

import (
	"math"
	"slices"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/unit"
)

// nominal is how far two figures may lie apart and still be the same: one
// nominal step, so that 12 mm and 1/2 in are one size. Common practice, no
// source.
const nominal = 0.06

// same reports whether a note says what is true. Free text is taken as it is.
func (c *Customer) same(s assess.Step, note assess.Answer) bool {
	truth, known := c.truth(s.Asked())
	if note.State == assess.Unknown || !known {
		return note.State == assess.Unknown && !known
	}
	return alike(c.Facts, s, note, truth)
}

// alike reports whether two answers to a step mean the same beside the other
// answers of a visit.
func alike(v *assess.Visit, s assess.Step, a, b assess.Answer) bool {
	switch s.Question.Form {
	case assess.FormOne, assess.FormSeveral:
		return sameSet(a.Chosen, b.Chosen)
	case assess.FormQuantity:
		x, ok1 := figure(v, a)
		y, ok2 := figure(v, b)
		return ok1 && ok2 && math.Abs(x-y) <= nominal*math.Max(math.Abs(x), math.Abs(y))
	}
	return true
}

func sameSet(a, b []string) bool {
	x, y := slices.Clone(a), slices.Clone(b)
	slices.Sort(x)
	slices.Sort(y)
	return slices.Equal(x, y)
}

// figure is the number an answer comes to in a visit, in the unit of its kind.
func figure(v *assess.Visit, a assess.Answer) (float64, bool) {
	with := clone(v)
	with.Set(a)
	j, problems := with.Job()
	for _, p := range problems {
		if p.Asked == a.Asked() {
			return 0, false
		}
	}
	if get, ok := figures[a.Question]; ok {
		return get(&j)
	}
	get, ok := thicknesses[a.Question]
	for i := range j.Pieces {
		if ok && j.Pieces[i].Metal == a.Metal {
			t, known := get(&j.Pieces[i]).Get()
			return float64(t), known
		}
	}
	return 0, false
}

// thicknesses says where each figure asked per metal lands.
var thicknesses = map[rules.Fact]func(*rules.Piece) unit.Maybe[unit.Millimetre]{
	rules.FactEveryday: func(p *rules.Piece) unit.Maybe[unit.Millimetre] { return p.Everyday },
	rules.FactThickest: func(p *rules.Piece) unit.Maybe[unit.Millimetre] { return p.Thickest },
	rules.FactRarest:   func(p *rules.Piece) unit.Maybe[unit.Millimetre] { return p.Rarest },
	rules.FactPierced:  func(p *rules.Piece) unit.Maybe[unit.Millimetre] { return p.Pierced },
	rules.FactBevelled: func(p *rules.Piece) unit.Maybe[unit.Millimetre] { return p.Bevelled },
}

// figures says where the others land.
var figures = map[rules.Fact]func(*rules.Job) (float64, bool){
	rules.FactCutLength:   number(func(j *rules.Job) unit.Maybe[unit.Metre] { return j.CutPerWeek }),
	rules.FactDays:        number(func(j *rules.Job) unit.Maybe[float64] { return j.DaysAWeek }),
	rules.FactBusyCuts:    number(func(j *rules.Job) unit.Maybe[float64] { return j.BusyCuts }),
	rules.FactBusyLength:  number(func(j *rules.Job) unit.Maybe[unit.Metre] { return j.BusyLength }),
	rules.FactBevelAngle:  number(func(j *rules.Job) unit.Maybe[unit.Degree] { return j.BevelAngle }),
	rules.FactVolts:       number(func(j *rules.Job) unit.Maybe[unit.Volt] { return j.Power.Volts }),
	rules.FactBreaker:     number(func(j *rules.Job) unit.Maybe[unit.Ampere] { return j.Power.Breaker }),
	rules.FactCord:        number(func(j *rules.Job) unit.Maybe[unit.Metre] { return j.Power.Cord }),
	rules.FactCordSection: number(func(j *rules.Job) unit.Maybe[unit.SquareMillimetre] { return j.Power.CordSection }),
	rules.FactGenerator:   number(func(j *rules.Job) unit.Maybe[unit.KilovoltAmpere] { return j.Power.Generator }),
	rules.FactAirDelivery: number(func(j *rules.Job) unit.Maybe[unit.LitrePerMinute] { return j.Air.Delivery }),
	rules.FactAirPressure: number(func(j *rules.Job) unit.Maybe[unit.Bar] { return j.Air.Pressure }),
	rules.FactReceiver:    number(func(j *rules.Job) unit.Maybe[unit.Litre] { return j.Air.Receiver }),
	rules.FactHoseBore:    number(func(j *rules.Job) unit.Maybe[unit.Millimetre] { return j.Air.HoseBore }),
	rules.FactHoseLength:  number(func(j *rules.Job) unit.Maybe[unit.Metre] { return j.Air.HoseLength }),
	rules.FactAltitude:    number(func(j *rules.Job) unit.Maybe[unit.Metre] { return j.Altitude }),
	rules.FactBudget:      number(func(j *rules.Job) unit.Maybe[unit.Money] { return j.Budget }),
	rules.FactShowing:     number(func(j *rules.Job) unit.Maybe[unit.Second] { return j.Showing }),
}

func number[T ~float64](get func(*rules.Job) unit.Maybe[T]) func(*rules.Job) (float64, bool) {
	return func(j *rules.Job) (float64, bool) {
		v, known := get(j).Get()
		return float64(v), known
	}
}
