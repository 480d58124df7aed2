package rules

import (
	"cutbrief/rules/unit"
)

// Limits of the gentle warnings. Common practice, no source: they start a
// conversation and decide nothing.
const (
	littleForProduction unit.Metre = 20  // cut metres a week below which "production" is worth a second question
	muchForMaintenance  unit.Metre = 100 // above which "maintenance" is
)

// flagRows are the contradictions worth saying aloud.
var flagRows = []Flag{
	{"little-production", "You said production, but less than 20 m a week sounds like repair work. Which is nearer?",
		asked(FactUse, FactCutLength), practice, func(j *Job) bool {
			m, ok := j.CutPerWeek.Get()
			return ok && j.Use.Or("") == Production && beyond(littleForProduction, m)
		}},
	{"much-maintenance", "You said repair work, but more than 100 m a week sounds like production. Which is nearer?",
		asked(FactUse, FactCutLength), practice, func(j *Job) bool {
			return j.Use.Or("") == Maintenance && moreThan(j.CutPerWeek, muchForMaintenance)
		}},
	{"busy-over-week", "The busiest ten minutes hold more cutting than the whole week. One of the two needs another look.",
		asked(FactBusyCuts, FactBusyLength, FactCutLength), practice, func(j *Job) bool {
			week, told := j.CutPerWeek.Get()
			return told && beyond(busyMetres(j), week)
		}},
	{"everyday-over-thickest", "The everyday thickness is more than the thickest clean cut. The thicker one is used until it is cleared up.",
		asked(FactEveryday, FactThickest), practice, func(j *Job) bool {
			return anyPiece(j, func(p *Piece) bool { return over(p.Everyday, p.Thickest) })
		}},
	{"thickest-over-rare", "The thickest regular cut is more than the rare thickest. The thicker one is used until it is cleared up.",
		asked(FactThickest, FactRarest), practice, func(j *Job) bool {
			return anyPiece(j, func(p *Piece) bool { return over(p.Thickest, p.Rarest) })
		}},
	{"pierced-over-cut", "The thickest pierced or bevelled is more than anything that is cut. One of the two needs another look.",
		asked(FactPierced, FactBevelled, FactThickest), practice, func(j *Job) bool {
			return anyPiece(j, func(p *Piece) bool {
				most, told, _ := p.regular()
				most = max(most, p.Rarest.Or(0))
				return told && (beyond(p.Pierced.Or(0), most) || beyond(p.Bevelled.Or(0), most))
			})
		}},
	{"metal-without-figures", "There are no figures for one of the metals, so nothing here covers it. Cut a piece of it before anything is ordered.",
		asked(FactMetals), practice, func(j *Job) bool { return anyPiece(j, withoutFigures) }},
	{"gas-on-other-metals", "Oxy-fuel does not cut stainless, aluminium, copper, brass or cast iron. How do you cut those today?",
		asked(FactToday, FactMetals), practice, func(j *Job) bool {
			today, ok := j.Today.Get()
			return ok && len(today) == 1 && today[0] == OxyFuel && anyPiece(j, notForGas)
		}},
	{"eyes", "Nobody cuts or watches without a filter lens of the right shade. Bring enough for every onlooker.",
		asked(FactEyes), practice, func(j *Job) bool { e, ok := j.Eyes.Get(); return ok && e != EyesAll }},
	{"no-ventilation", "There is no ventilation for cutting fume. Sort this out before the demonstration.",
		asked(FactVentilation), practice, func(j *Job) bool { return j.Ventilation.Or("") == VentNone }},
}

// asked are facts that are not told per metal.
func asked(facts ...Fact) (list []Asked) {
	for _, f := range facts {
		list = append(list, Asked{Fact: f})
	}
	return list
}

// flags adds the warnings that apply to a list.
func flags(list []Flag, j *Job) []Flag {
	for i := range flagRows {
		if f := &flagRows[i]; f.applies(j) {
			list = append(list, *f)
			list[len(list)-1].applies = nil
		}
	}
	return list
}

// busyMetres is the length cut in the busiest ten minutes, as far as it is told.
func busyMetres(j *Job) unit.Metre {
	cuts, each, _ := busiest(j)
	return unit.Metre(cuts) * each
}

func anyPiece(j *Job, is func(*Piece) bool) bool {
	for i := range j.Pieces {
		if is(&j.Pieces[i]) {
			return true
		}
	}
	return false
}

// over reports whether both are known, and a is more than a b that is not none.
func over(a, b unit.Maybe[unit.Millimetre]) bool {
	x, _ := a.Get()
	y, _ := b.Get()
	return y != 0 && beyond(x, y)
}

// notForGas reports a piece that oxy-fuel does not cut.
func notForGas(p *Piece) bool { return !GasCuts(p.Metal) }
