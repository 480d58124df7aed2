package assess

import (
	"sync"

	"cutbrief/rules"
	"cutbrief/rules/unit"
)

// put enters what was understood into the job or one of its pieces.
type put func(*rules.Job, *rules.Piece, *meaning)

// fields says where the answer to each question lands, by its place in the
// catalogue; nil where it is worked out from several answers or sizes nothing.
// It is only ever read.
var fields = sync.OnceValue(func() []put {
	list := make([]put, len(catalogue))
	for fact, put := range map[rules.Fact]put{
		rules.FactUse:         one(func(j *rules.Job) *unit.Maybe[rules.Use] { return &j.Use }),
		rules.FactEveryday:    thickness(func(p *rules.Piece) *unit.Maybe[unit.Millimetre] { return &p.Everyday }),
		rules.FactThickest:    thickness(func(p *rules.Piece) *unit.Maybe[unit.Millimetre] { return &p.Thickest }),
		rules.FactRarest:      thickness(func(p *rules.Piece) *unit.Maybe[unit.Millimetre] { return &p.Rarest }),
		rules.FactPierced:     thickness(func(p *rules.Piece) *unit.Maybe[unit.Millimetre] { return &p.Pierced }),
		rules.FactBevelled:    thickness(func(p *rules.Piece) *unit.Maybe[unit.Millimetre] { return &p.Bevelled }),
		rules.FactDays:        number(func(j *rules.Job) *unit.Maybe[float64] { return &j.DaysAWeek }),
		rules.FactBusyCuts:    number(func(j *rules.Job) *unit.Maybe[float64] { return &j.BusyCuts }),
		rules.FactBusyLength:  number(func(j *rules.Job) *unit.Maybe[unit.Metre] { return &j.BusyLength }),
		rules.FactStart:       one(func(j *rules.Job) *unit.Maybe[rules.Start] { return &j.Start }),
		rules.FactFeatures:    several(func(j *rules.Job) *unit.Maybe[[]rules.Feature] { return &j.Features }),
		rules.FactBevelAngle:  number(func(j *rules.Job) *unit.Maybe[unit.Degree] { return &j.BevelAngle }),
		rules.FactEdgeNext:    several(func(j *rules.Job) *unit.Maybe[[]rules.EdgeUse] { return &j.EdgeNext }),
		rules.FactGuidance:    one(func(j *rules.Job) *unit.Maybe[rules.Guidance] { return &j.Guidance }),
		rules.FactPlaces:      several(func(j *rules.Job) *unit.Maybe[[]rules.Place] { return &j.Places }),
		rules.FactSource:      one(func(j *rules.Job) *unit.Maybe[rules.PowerSource] { return &j.Power.Source }),
		rules.FactPhases:      one(func(j *rules.Job) *unit.Maybe[rules.Phases] { return &j.Power.Phases }),
		rules.FactVolts:       number(func(j *rules.Job) *unit.Maybe[unit.Volt] { return &j.Power.Volts }),
		rules.FactBreaker:     number(func(j *rules.Job) *unit.Maybe[unit.Ampere] { return &j.Power.Breaker }),
		rules.FactCord:        number(func(j *rules.Job) *unit.Maybe[unit.Metre] { return &j.Power.Cord }),
		rules.FactCordSection: number(func(j *rules.Job) *unit.Maybe[unit.SquareMillimetre] { return &j.Power.CordSection }),
		rules.FactGenerator:   number(func(j *rules.Job) *unit.Maybe[unit.KilovoltAmpere] { return &j.Power.Generator }),
		rules.FactDrier:       one(func(j *rules.Job) *unit.Maybe[rules.Drier] { return &j.Air.Drier }),
		rules.FactAirDelivery: number(func(j *rules.Job) *unit.Maybe[unit.LitrePerMinute] { return &j.Air.Delivery }),
		rules.FactAirPressure: number(func(j *rules.Job) *unit.Maybe[unit.Bar] { return &j.Air.Pressure }),
		rules.FactReceiver:    number(func(j *rules.Job) *unit.Maybe[unit.Litre] { return &j.Air.Receiver }),
		rules.FactHoseBore:    number(func(j *rules.Job) *unit.Maybe[unit.Millimetre] { return &j.Air.HoseBore }),
		rules.FactHoseLength:  number(func(j *rules.Job) *unit.Maybe[unit.Metre] { return &j.Air.HoseLength }),
		rules.FactAltitude:    number(func(j *rules.Job) *unit.Maybe[unit.Metre] { return &j.Altitude }),
		rules.FactHotWork:     one(func(j *rules.Job) *unit.Maybe[rules.HotWork] { return &j.HotWork }),
		rules.FactToday:       several(func(j *rules.Job) *unit.Maybe[[]rules.Process] { return &j.Today }),
		rules.FactLabour:      number(func(j *rules.Job) *unit.Maybe[unit.Money] { return &j.Prices.Labour }),
		rules.FactGasYear:     number(func(j *rules.Job) *unit.Maybe[unit.Money] { return &j.Prices.GasYear }),
		rules.FactFuel:        one(func(j *rules.Job) *unit.Maybe[rules.Fuel] { return &j.Prices.Fuel }),
		rules.FactSentYear:    number(func(j *rules.Job) *unit.Maybe[unit.Money] { return &j.Prices.SentOutYear }),
		rules.FactBudget:      budget,
		rules.FactShowing:     number(func(j *rules.Job) *unit.Maybe[unit.Second] { return &j.Showing }),
		rules.FactExperience:  one(func(j *rules.Job) *unit.Maybe[rules.Experience] { return &j.Experience }),
		rules.FactEyes:        one(func(j *rules.Job) *unit.Maybe[rules.Eyes] { return &j.Eyes }),
		rules.FactVentilation: one(func(j *rules.Job) *unit.Maybe[rules.Ventilation] { return &j.Ventilation }),
	} {
		list[placeOf(fact)] = put
	}
	return list
})

func number[T ~float64](field func(*rules.Job) *unit.Maybe[T]) put {
	return func(j *rules.Job, _ *rules.Piece, m *meaning) { *field(j) = unit.Known(T(m.reading.Quantity.Value)) }
}

// budget keeps the currency it was told in, so that it is never held against
// prices in another.
func budget(j *rules.Job, _ *rules.Piece, m *meaning) {
	j.Budget, j.BudgetIn = unit.Known(unit.Money(m.reading.Quantity.Value)), m.reading.Unit
}

func thickness(field func(*rules.Piece) *unit.Maybe[unit.Millimetre]) put {
	return func(_ *rules.Job, p *rules.Piece, m *meaning) {
		*field(p) = unit.Known(unit.Millimetre(m.reading.Quantity.Value))
	}
}

func one[T ~string](field func(*rules.Job) *unit.Maybe[T]) put {
	return func(j *rules.Job, _ *rules.Piece, m *meaning) { *field(j) = unit.Known(T(m.chosen[0])) }
}

func several[T ~string](field func(*rules.Job) *unit.Maybe[[]T]) put {
	return func(j *rules.Job, _ *rules.Piece, m *meaning) {
		list := make([]T, len(m.chosen))
		for i, id := range m.chosen {
			list[i] = T(id)
		}
		*field(j) = unit.Known(list)
	}
}
