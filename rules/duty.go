package rules

import (
	"cutbrief/rules/size"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// LedAt is the fastest the torch is led at this job in mm/min: free hand until
// the customer says otherwise, which is the safe side.
func LedAt(j *Job) unit.MillimetrePerMinute { return j.Guidance.Or(FreeHand).Fastest() }

// everyday is the heaviest everyday cut told, in mild steel on this system;
// sure is false while that of some metal is not told.
func everyday(d *demand, s *system.System) (t unit.Millimetre, known, sure bool) {
	_, most, known, sure := heaviest(d, s, func(p *Piece) (unit.Millimetre, bool, bool) { return told(p.Everyday) })
	return unit.Millimetre(most), known && most > 0, sure
}

// busiest returns the cuts of the busiest ten minutes, if both are told.
func busiest(j *Job) (cuts float64, each unit.Metre, known bool) {
	cuts, ok1 := j.BusyCuts.Get()
	each, ok2 := j.BusyLength.Get()
	return cuts, each, ok1 && ok2
}

// judgeDuty: the arc-on share of the busiest ten minutes is no more than the
// plate allows, at full output or at the output where both meet.
func judgeDuty(d *demand, s *system.System) mark {
	full, err := size.AllowedDuty(s, s.OutputMax)
	if err != nil {
		return mark{verdict: NotKnown}
	}
	if n, told := d.job.BusyCuts.Get(); told && n == 0 {
		return mark{} // no cuts in a row
	}
	cuts, each, busy := busiest(d.job)
	t, thick, sure := everyday(d, s)
	if !busy || !thick {
		return mark{verdict: NotKnown, have: float64(full)}
	}
	m := dutyOf(d, s, t, cuts, each)
	if !sure && m.verdict != "" && m.verdict != Short {
		m.verdict = NotKnown // a metal that is not told may be the heavier one
	}
	return m
}

// dutyOf judges the busiest ten minutes in one thickness.
func dutyOf(d *demand, s *system.System, t unit.Millimetre, cuts float64, each unit.Metre) mark {
	if beyond(t, s.Severance) {
		return mark{} // the clean cut already says so
	}
	w, err := size.Fit(s, t, LedAt(d.job), cuts, each)
	if err == nil {
		return mark{verdict: Met, need: float64(w.Demand), have: float64(w.Allowed)}
	}
	w, err = size.WorkingAt(s, s.OutputMax, t, LedAt(d.job), cuts, each)
	if err != nil {
		return mark{verdict: NotKnown}
	}
	return mark{verdict: compare(float64(w.Demand), float64(w.Allowed)), need: float64(w.Demand), have: float64(w.Allowed)}
}

// dutyInputs names the busiest ten minutes, and the output and speed at which
// they fit.
func dutyInputs(d *demand, s *system.System) []Input {
	cuts, each, busy := busiest(d.job)
	t, thick, _ := everyday(d, s)
	if !busy || !thick {
		return nil
	}
	list := d.job.told(FactBusyCuts, FactBusyLength)
	w, err := size.Fit(s, t, LedAt(d.job), cuts, each)
	if err != nil {
		w, err = size.WorkingAt(s, s.OutputMax, t, LedAt(d.job), cuts, each)
	}
	if err == nil {
		list = append(list,
			figureInput("speed in the everyday thickness", w.Speed, unit.Speed),
			figureInput("output", w.Output, unit.Current))
	}
	return list
}
