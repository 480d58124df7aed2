package rules

import (
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/size"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// Rules that set the factor on the thickest regular cut.
const (
	RuleMaintenance RuleID = "use-maintenance"
	RuleMixed       RuleID = "use-mixed"
	RuleProduction  RuleID = "use-production"
	RuleSpeed       RuleID = "speed-decides"
)

// factorRow is a rule that sets the factor on thickness: how many times the
// thickest regular cut the rated thickness has to be.
type factorRow struct {
	Rule
	size.Multiple
	use  Use        // "" where cutting speed sets it, whatever the use
	name message.ID // as an input
}

var factorRows = [...]factorRow{
	{Rule{ID: RuleMaintenance, Title: "maintenance", Words: "maintenance may run close to capacity: factor 1", Source: practice},
		size.ForMaintenance(), Maintenance, "factor for repair work"},
	{Rule{ID: RuleMixed, Title: "mixed or light production", Words: "mixed or light production: factor 1.5, comfortable at 2", Source: practice},
		size.ForMixed(), Mixed, "factor for light production"},
	{Rule{ID: RuleProduction, Title: "production", Words: "production: factor 2, comfortable at 3", Source: practice},
		size.ForProduction(), Production, "factor for production"},
	{Rule{ID: RuleSpeed, Title: "speed decides", Words: "where cutting speed decides: factor 1.5, comfortable at 1.6", Source: practice},
		size.ForSpeed(), "", "factor where cutting speed decides"},
}

// factorOf is the row of a use; that of maintenance, the least, for a use not told.
func factorOf(u Use) (row *factorRow, told bool) {
	for i := range factorRows {
		if row = &factorRows[i]; row.use == u && u != "" {
			return row, true
		}
	}
	return &factorRows[0], false
}

// demand is what a job asks of any system, worked out once and then put to
// each system of the range.
type demand struct {
	job         *Job
	requirement Requirement
	multiple    *factorRow // as far as it is known
	atMost      float64    // the largest floor factor that may still come out
	perSystem   perSystem
}

// perSystem is what is worked out once for the system a demand was last put to:
// the rules ask for it one after the other.
type perSystem struct {
	system  *system.System
	factors [8]unit.Maybe[float64] // of the first pieces; the list of metals holds fewer
	asked   bool                   // whether a rule has asked for the draw yet
	draw    draw                   // with known and suits as drawn returns them
	known   bool
	suits   bool
}

// turnTo turns to a system.
func (d *demand) turnTo(s *system.System) {
	if d.perSystem.system == s {
		return
	}
	d.perSystem.system, d.perSystem.asked = s, false
	for i := range d.job.Pieces[:min(len(d.job.Pieces), len(d.perSystem.factors))] {
		d.perSystem.factors[i], _ = size.Equivalence(s, d.job.Pieces[i].Metal)
	}
}

// factor is how much mild steel a millimetre of a piece counts for on a system.
func (d *demand) factor(s *system.System, piece int) (float64, bool) {
	d.turnTo(s)
	if piece < len(d.perSystem.factors) {
		return d.perSystem.factors[piece].Get()
	}
	return equivalence(s, d.job.Pieces[piece].Metal)
}

func newDemand(j *Job) (d demand) {
	d.of(j)
	return d
}

// of works out the factor on thickness, in place of what was worked out before;
// without a known use it spans from maintenance to production.
func (d *demand) of(j *Job) {
	d.job, d.requirement, d.atMost, d.perSystem.system = j, decidingOrOverruled(j), size.ForProduction().Floor, nil
	row, told := factorOf(j.Use.Or(""))
	if d.multiple = row; told {
		d.atMost = row.Floor
	}
	if speed := &factorRows[len(factorRows)-1]; speedSizes(j, d.requirement) && speed.Floor > row.Floor {
		d.multiple, d.atMost = speed, max(d.atMost, speed.Floor)
	}
}

// speedWorth is the inferred weight from which speed sizes a system though
// nobody has said that it matters. Common practice, no source: one hint alone
// sells nobody a larger system.
const speedWorth = 2

// speedSizes reports whether speed sizes a system: where it decides and is sure
// enough, as it was said, chosen by the rep, or inferred from more than one hint.
// A heavy section that alone outweighs it takes nothing away: thicker never needs
// less.
func speedSizes(j *Job, decides Requirement) bool {
	if decides != Speed && decides != Reach {
		return false
	}
	of := scores(j)
	if decides == Reach && !settled(j) {
		of[place(Reach)] = score{}
		if i := strongest(&of); i >= 0 {
			decides = requirements[i]
		}
	}
	s := of[place(Speed)]
	overruled := j.Overrule != nil && j.Overrule.Requirement == Speed
	return decides == Speed && (overruled || s.said != 0 || s.inferred >= speedWorth)
}

// equivalence is how much mild steel a millimetre of the metal counts for on
// this system.
func equivalence(s *system.System, id metal.ID) (float64, bool) {
	factor, _ := size.Equivalence(s, id)
	return factor.Get()
}

// regular is the thickest cut made regularly, as far as it is told: the
// thicker of everyday and thickest clean. sure is false while the thickest
// clean cut itself is not known.
func (p *Piece) regular() (t unit.Millimetre, known, sure bool) {
	everyday, ok1 := p.Everyday.Get()
	thickest, ok2 := p.Thickest.Get()
	return max(everyday, thickest), ok1 || ok2, ok2
}

// heaviest is the largest mild-steel equivalent over the pieces of what pick
// returns, which is never firm about what is not told. sure is false if a piece that
// matters did not say, or its metal has no equivalence here; known is false if no
// piece said.
func heaviest(d *demand, s *system.System, pick func(*Piece) (t unit.Millimetre, known, sure bool)) (piece *Piece, most float64, known, sure bool) {
	sure = true
	for i := range d.job.Pieces {
		p := &d.job.Pieces[i]
		t, told, firm := pick(p)
		factor, cuttable := d.factor(s, i)
		if !firm || !cuttable {
			sure = false
		}
		if told && cuttable && (!known || float64(t)*factor > most) {
			piece, most, known = p, float64(t)*factor, true
		}
	}
	return piece, most, known, sure
}

// never reports, of what some piece was told, that every piece was and none is cut
// this way: a known "none" is kept as a thickness of zero.
func never(most float64, sure bool) bool { return sure && most == 0 }

// told wraps an optional thickness for heaviest.
func told(m unit.Maybe[unit.Millimetre]) (unit.Millimetre, bool, bool) {
	t, ok := m.Get()
	return t, ok, ok
}
