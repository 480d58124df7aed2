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
	return unit.Millimetre(most), known, sure
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
	_, _, busy := busiest(d.job)
	t, thick, sure := everyday(d, s)
	switch {
	case !busy || !thick:
		return mark{verdict: NotKnown, have: float64(full)}
	case beyond(t, s.Severance):
		return mark{} // the clean cut already says so
	}
	w, err := busiestAt(d, s, t)
	if err != nil {
		return mark{verdict: NotKnown}
	}
	m := against(w.Demand, w.Allowed)
	if !sure && m.verdict != Short {
		m.verdict = NotKnown // a metal that is not told may be the heavier one
	}
	return m
}

// busiestAt is how the busiest ten minutes are run: at the largest output at which
// they fit the plate, else at full output.
func busiestAt(d *demand, s *system.System, t unit.Millimetre) (w size.Working, err error) {
	cuts, each, _ := busiest(d.job)
	if w, err = size.Fit(s, t, LedAt(d.job), cuts, each); err == nil {
		return w, nil
	}
	return size.WorkingAt(s, s.OutputMax, t, LedAt(d.job), cuts, each)
}

// dutyInputs names the busiest ten minutes, and the output and speed at which
// they fit.
func dutyInputs(d *demand, s *system.System) []Input {
	_, _, busy := busiest(d.job)
	t, thick, _ := everyday(d, s)
	if !busy || !thick {
		return nil
	}
	list := d.job.told(FactBusyCuts, FactBusyLength)
	if w, err := busiestAt(d, s, t); err == nil {
		list = append(list,
			figureInput("speed in the everyday thickness", w.Speed, unit.Speed),
			figureInput("output", w.Output, unit.Current))
	}
	return list
}
