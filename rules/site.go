package rules

import (
	"errors"

	"cutbrief/rules/size"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// workingOutput is the output the heaviest work told needs: capacity goes with
// current, so the share of each capability that is used. Common practice, no
// source.
func workingOutput(d *demand, s *system.System) unit.Ampere {
	share := 0.0
	use := func(need, have float64) {
		if have > 0 {
			share = max(share, need/have)
		}
	}
	if _, most, known, _ := heaviest(d, s, (*Piece).regular); known {
		use(most*d.multiple.Floor, float64(s.Rated))
	}
	use(float64(largest(d, s, func(p *Piece) unit.Maybe[unit.Millimetre] { return p.Rarest }).Or(0)), float64(s.Severance))
	if t, err := size.Pierce(s); err == nil && d.job.Start.Or(AtEdge) != AtEdge {
		use(float64(largest(d, s, func(p *Piece) unit.Maybe[unit.Millimetre] { return p.Pierced }).Or(0)), float64(t))
	}
	return max(s.OutputMin, min(s.OutputMax, s.OutputMax*unit.Ampere(share)))
}

// draw is what a system takes from the site's supply at the working output.
type draw struct {
	feed
	output    unit.Ampere
	load      unit.Ampere // while cutting
	effective unit.Ampere // what heats the conductors over ten minutes
}

// drawn works out the draw. known is false while the supply is not told;
// suits is false where the supply rule already says that none suits.
func drawn(d *demand, s *system.System) (w draw, known, suits bool) {
	d.turnTo(s)
	if f := &d.perSystem; !f.asked {
		f.asked = true
		f.draw, f.known, f.suits = drawnNow(d, s)
	}
	return d.perSystem.draw, d.perSystem.known, d.perSystem.suits
}

// drawnNow is drawn, worked out.
func drawnNow(d *demand, s *system.System) (w draw, known, suits bool) {
	from, v := match(&d.job.Power, s)
	if v == NotKnown {
		return draw{}, false, true
	}
	if from.Supply == nil {
		return draw{}, true, false
	}
	w = draw{feed: from, output: workingOutput(d, s)}
	load, err1 := size.InputCurrent(s, *from.Supply, w.output, from.volts)
	duty, err2 := size.AllowedDuty(s, w.output)
	effective, err3 := size.EffectiveCurrent(load, 0, duty)
	if err1 != nil || err2 != nil || err3 != nil {
		return draw{}, false, true
	}
	w.load, w.effective = load, effective
	return w, true, true
}

// onMains reports whether a breaker feeds the system.
func onMains(j *Job) bool { return j.Power.Source.Or(Mains) != GenSet }

// onGenerator reports whether a generator feeds the system, at least at times.
func onGenerator(j *Job) bool { return j.Power.Source.Or(Mains) != Mains }

// judgeBreaker: the breaker carries the effective current. One that carries
// that but not the current while cutting may trip; one below the plate's own
// effective current, which the conductors are laid for (NEC 630.11), holds the
// system only turned down; and one above 200 % does not protect: all three are
// borderline.
func judgeBreaker(d *demand, s *system.System) mark {
	w, known, suits := drawn(d, s)
	if !onMains(d.job) || !suits {
		return mark{}
	}
	breaker, told := d.job.Power.Breaker.Get()
	if !known || !told {
		return mark{verdict: NotKnown, need: float64(w.effective)}
	}
	m := mark{verdict: Met, need: float64(w.effective), have: float64(breaker)}
	switch stands, err := size.JudgeBreaker(breaker, w.load, w.effective, w.Input); {
	case err != nil:
		m.verdict = NotKnown
	case stands == size.BreakerTooSmall:
		m.verdict = Short
	case stands == size.BreakerTooLarge:
		m.verdict, m.almost = Borderline, "it is too large to protect the system"
	case breaker < w.Effective:
		m.verdict, m.almost = Borderline, "it holds the system only turned down"
	case stands == size.BreakerMayTrip:
		m.verdict, m.almost = Borderline, "it may trip in a long cut"
	}
	return m
}

// judgeCord: the extension cord loses no more than 5 % of the voltage.
func judgeCord(d *demand, s *system.System) mark {
	w, known, suits := drawn(d, s)
	length, told := d.job.Power.Cord.Get()
	if !suits || (told && length == 0) {
		return mark{}
	}
	section, printed := d.job.Power.CordSection.Get()
	if !known || !told || !printed {
		return mark{verdict: NotKnown, have: float64(size.DropWhole)}
	}
	ohm, err1 := size.CordResistance(section, size.CordTemperature)
	drop, err2 := size.VoltageDrop(w.Phases, w.load, ohm, length)
	if err1 != nil || err2 != nil {
		return mark{verdict: NotKnown, have: float64(size.DropWhole)}
	}
	share, err := size.DropShare(drop, w.volts)
	if err != nil { // more than there is
		return mark{verdict: Short, need: 100, have: float64(size.DropWhole)}
	}
	verdict := Met
	if share > size.DropWhole {
		verdict = Short
	}
	return mark{verdict: verdict, need: float64(share), have: float64(size.DropWhole)}
}

// judgeCordLoad: the cord's conductors carry the effective current without
// passing 60 °C. Up to 75 °C is borderline; beyond, the cord burns before the
// breaker trips. Where cord or section is not told, the rule about the voltage
// lost already asks for them.
func judgeCordLoad(d *demand, s *system.System) mark {
	w, known, suits := drawn(d, s)
	length, told := d.job.Power.Cord.Get()
	section, printed := d.job.Power.CordSection.Get()
	if !known || !suits || !told || !printed || length == 0 {
		return mark{}
	}
	cautious, most, err := size.CordAmpacity(section)
	if err != nil { // thinner than any cord for a machine
		return mark{verdict: Short}
	}
	m := mark{verdict: Met, need: float64(w.effective), have: float64(cautious)}
	switch {
	case w.effective > most:
		m.verdict = Short
	case w.effective > cautious:
		m.verdict = Borderline
	}
	return m
}

// judgeGenerator: the continuous rating, at this altitude, carries the draw
// with its margin.
func judgeGenerator(d *demand, s *system.System) mark {
	w, known, suits := drawn(d, s)
	if !onGenerator(d.job) || !suits {
		return mark{}
	}
	rating, told := d.job.Power.Generator.Get()
	if !known {
		return mark{verdict: NotKnown}
	}
	apparent, err1 := size.ApparentPower(w.Phases, w.volts, w.load)
	need, _, err2 := size.GeneratorNeed(apparent)
	if err1 != nil || err2 != nil || !told {
		return mark{verdict: NotKnown, need: float64(need)}
	}
	return atAltitude(d.job, need, func(altitude unit.Metre) (unit.KilovoltAmpere, error) { return size.GeneratorAt(rating, altitude) })
}

// highestSite is how high a site may plausibly lie where nobody said. Common
// practice, no source.
const highestSite unit.Metre = 1500

// atAltitude judges what is left at the altitude told. Where it is not told, the
// verdict stands only if it is the same at the sea and at the highest plausible
// site.
func atAltitude[Q ~float64](j *Job, need Q, left func(unit.Metre) (Q, error)) mark {
	judge := func(altitude unit.Metre) mark {
		have, err := left(altitude)
		if err != nil {
			return mark{verdict: NotKnown, need: float64(need)}
		}
		return against(need, have)
	}
	if altitude, told := j.Altitude.Get(); told {
		return judge(altitude)
	}
	return alike(judge(0), judge(highestSite))
}

// alike is the easier verdict if the harder is the same, else not known: what
// was not told is never taken for zero.
func alike(easy, hard mark) mark {
	if easy.verdict != hard.verdict {
		easy.verdict = NotKnown
	}
	return easy
}

// judgeAirFlow: the compressor, at this altitude, delivers what the torch takes
// at full output; how the flow falls with the output no row says. A
// receiver only bridges, so it does not count.
func judgeAirFlow(d *demand, s *system.System) mark {
	need := s.AirFlow
	if d.job.Air.Drier.Or("") == NoAir {
		return mark{verdict: Short, need: float64(need), have: 0}
	}
	delivery, told := d.job.Air.Delivery.Get()
	if !told {
		return mark{verdict: NotKnown, need: float64(need)}
	}
	return atAltitude(d.job, need, func(altitude unit.Metre) (unit.LitrePerMinute, error) { return size.DeliveredAt(delivery, altitude) })
}

// runTime is how long the receiver makes up for a short delivery, where all of
// it is told and the delivery is short.
func runTime(d *demand, s *system.System) (t unit.Second, short bool) {
	receiver, ok1 := d.job.Air.Receiver.Get()
	line, ok2 := d.job.Air.Pressure.Get()
	delivery, ok3 := d.job.Air.Delivery.Get()
	local, err := size.Atmosphere(d.job.Altitude.Or(0))
	if !ok1 || !ok2 || !ok3 || err != nil || line < s.AirPressure {
		return t, false
	}
	t, err = size.RunTime(receiver, line, s.AirPressure, s.AirFlow, delivery, local)
	return t, err == nil && t > 0
}

// bridging is the receiver that would make up for a short delivery during one
// cut of the busiest ten minutes.
func bridging(d *demand, s *system.System) (volume unit.Litre, short bool) {
	line, ok1 := d.job.Air.Pressure.Get()
	delivery, ok2 := d.job.Air.Delivery.Get()
	_, each, ok3 := busiest(d.job)
	t, ok4, _ := everyday(d, s)
	local, err1 := size.Atmosphere(d.job.Altitude.Or(0))
	v, err2 := size.Speed(s, s.OutputMax, t, LedAt(d.job))
	if !ok1 || !ok2 || !ok3 || !ok4 || err1 != nil || err2 != nil {
		return volume, false
	}
	cut := unit.Second(float64(each) * 1000 / float64(v) * 60)
	volume, err := size.ReceiverNeed(cut, line, s.AirPressure, s.AirFlow, delivery, local)
	return volume, err == nil
}

// judgeAirPressure: the pressure while air flows covers the inlet pressure and
// what the hose loses on the way.
func judgeAirPressure(d *demand, s *system.System) mark {
	if d.job.Air.Drier.Or("") == NoAir {
		return mark{}
	}
	have, told := d.job.Air.Pressure.Get()
	if !told {
		return mark{verdict: NotKnown, need: float64(s.AirPressure)}
	}
	air := &d.job.Air
	through := pressureThrough(d, s, have, air.HoseBore.Or(narrowHose), air.HoseLength.Or(longHose))
	if air.HoseBore.IsKnown() && air.HoseLength.IsKnown() {
		return through
	}
	return alike(against(s.AirPressure, have), through)
}

// The narrowest and longest hose that is plausible where nobody said. Common
// practice, no source.
const (
	narrowHose unit.Millimetre = 6
	longHose   unit.Metre      = 30
)

// pressureThrough judges the pressure left behind a hose.
func pressureThrough(d *demand, s *system.System, have unit.Bar, bore unit.Millimetre, length unit.Metre) mark {
	loss, fits := hoseLoss(d, s, have, bore, length)
	if !fits {
		return mark{verdict: Short, need: float64(s.AirPressure), have: float64(have) / 2}
	}
	return against(s.AirPressure+loss, have)
}

// hoseLoss is what a hose and its couplings lose; fits is false where they
// would lose half of the pressure or more.
func hoseLoss(d *demand, s *system.System, inlet unit.Bar, bore unit.Millimetre, length unit.Metre) (loss unit.Bar, fits bool) {
	local, err := size.Atmosphere(d.job.Altitude.Or(0)) // at height a hose loses little more
	if err != nil {
		return 0, true
	}
	loss, err = size.HoseLoss(s.AirFlow, bore, length, inlet, local)
	if err != nil { // too slow in a wide bore to matter, or too much for a narrow one
		return 0, !errors.Is(err, size.ErrChokes)
	}
	return loss * size.WithCouplings, true
}

// judgeAirDry: a drier keeps water out of the torch. A separator takes out
// drops only, which is borderline. Common practice, no source.
func judgeAirDry(d *demand, _ *system.System) mark {
	drier, told := d.job.Air.Drier.Get()
	switch {
	case !told:
		return mark{verdict: NotKnown}
	case drier == NoDrier:
		return mark{verdict: Short}
	case drier == Separator:
		return mark{verdict: Borderline}
	case drier == NoAir:
		return mark{}
	}
	return mark{verdict: Met}
}

// judgeBudget: the price is within the budget, where both are told.
func judgeBudget(d *demand, s *system.System) mark {
	price, priced := s.Price.Get()
	budget, told := d.job.Budget.Get()
	if !priced || !told {
		return mark{}
	}
	verdict := Met
	if price > budget {
		verdict = Short
	}
	return mark{verdict: verdict, need: float64(price), have: float64(budget)}
}
