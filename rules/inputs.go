package rules

import (
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/size"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

func mm(t unit.Millimetre) unit.Quantity {
	return unit.Quantity{Value: float64(t), Kind: unit.Thickness}
}

// cleanInputs names the piece that decides, the factor for use and the factor
// for the metal.
func cleanInputs(d *demand, s *system.System) []Input {
	p, _, known, _ := heaviest(d, s, (*Piece).regular)
	if !known {
		return nil
	}
	t, _, sure := p.regular()
	fact, name := FactThickest, message.ID("thickest regular clean cut, {1}")
	if thickest, ok := p.Thickest.Get(); !sure || (ok && thickest < t) {
		fact, name = FactEveryday, "everyday thickness, {1}"
	}
	factor, _ := equivalence(s, p.Metal)
	list := []Input{
		{Name: message.New(name, nameOf(p.Metal)), Value: mm(t), From: Asked{fact, p.Metal}},
		useInput(d),
	}
	return append(list, metalInput(p.Metal, factor)...)
}

// useInput names the factor by the rule that sets it: repair work where cutting
// speed decides has not the factor of repair work.
func useInput(d *demand) Input {
	in := Input{Value: unit.Quantity{Value: d.multiple.Floor}, From: Asked{Fact: FactUse}, Op: "×"}
	switch d.multiple.rule {
	case RuleMaintenance:
		in.Name = message.New("factor for repair work")
	case RuleMixed:
		in.Name = message.New("factor for light production")
	case RuleProduction:
		in.Name = message.New("factor for production")
	case RuleSpeed:
		in.Name, in.From = message.New("factor where cutting speed decides"), Asked{}
	default:
		in.Name = message.New("factor for use")
	}
	return in
}

// metalInput names the factor for a metal, unless it is mild steel itself.
func metalInput(id metal.ID, factor float64) []Input {
	if factor == 1 {
		return nil
	}
	return []Input{{Name: message.New("factor for {1}", nameOf(id)), Value: unit.Quantity{Value: factor}, Op: "×"}}
}

// cleanMissing lists the metals whose regular thickness is not told, and the
// use if that is what is missing.
func cleanMissing(d *demand) []Asked {
	var list []Asked
	if len(d.job.Pieces) == 0 {
		list = append(list, Asked{Fact: FactMetals})
	}
	for i := range d.job.Pieces {
		if _, _, sure := d.job.Pieces[i].regular(); !sure {
			list = append(list, Asked{FactThickest, d.job.Pieces[i].Metal})
		}
	}
	if !d.job.Use.IsKnown() {
		list = append(list, Asked{Fact: FactUse})
	}
	return list
}

// thicknessOf picks one of a piece's thicknesses by the fact that holds it.
func thicknessOf(p *Piece, f Fact) *unit.Maybe[unit.Millimetre] {
	switch f {
	case FactEveryday:
		return &p.Everyday
	case FactRarest:
		return &p.Rarest
	case FactPierced:
		return &p.Pierced
	case FactBevelled:
		return &p.Bevelled
	}
	return &p.Thickest
}

// pieceInputs names the piece that decides a rule about one thickness.
func pieceInputs(f Fact, name message.ID) func(*demand, *system.System) []Input {
	return func(d *demand, s *system.System) []Input {
		p, _, known, _ := heaviest(d, s, func(p *Piece) (unit.Millimetre, bool, bool) { return told(*thicknessOf(p, f)) })
		if !known {
			return nil
		}
		t, _ := thicknessOf(p, f).Get()
		factor, _ := equivalence(s, p.Metal)
		return append([]Input{{Name: message.New(name, nameOf(p.Metal)), Value: mm(t), From: Asked{f, p.Metal}}}, metalInput(p.Metal, factor)...)
	}
}

// perMetal lists the metals for which a thickness is not told.
func perMetal(f Fact) func(*demand) []Asked {
	return func(d *demand) []Asked {
		var list []Asked
		for i := range d.job.Pieces {
			if p := &d.job.Pieces[i]; !thicknessOf(p, f).IsKnown() {
				list = append(list, Asked{f, p.Metal})
			}
		}
		return list
	}
}

func pierceMissing(d *demand) []Asked {
	if !d.job.Start.IsKnown() {
		return []Asked{{Fact: FactStart}}
	}
	return perMetal(FactPierced)(d)
}

func bevelInputs(d *demand, s *system.System) []Input {
	list := pieceInputs(FactBevelled, "thickest bevelled, {1}")(d, s)
	if angle, ok := d.job.BevelAngle.Get(); ok && len(list) > 0 {
		list = append(list, Input{Name: message.New("angle from square"), Value: unit.Quantity{Value: float64(angle), Kind: unit.Angle}, From: Asked{Fact: FactBevelAngle}, Op: "÷ cos"})
	}
	return list
}

func bevelMissing(d *demand) []Asked {
	if !d.job.Features.IsKnown() {
		return []Asked{{Fact: FactFeatures}}
	}
	list := perMetal(FactBevelled)(d)
	if !d.job.BevelAngle.IsKnown() {
		list = append(list, Asked{Fact: FactBevelAngle})
	}
	return list
}

// featureInput names a feature the customer cuts.
func featureInput(word message.ID) func(*demand, *system.System) []Input {
	return func(*demand, *system.System) []Input {
		return []Input{{Name: message.New("kinds of cut"), Word: word, From: Asked{Fact: FactFeatures}}}
	}
}

// drawInputs names the supply and the draw.
func drawInputs(d *demand, s *system.System) []Input {
	list := supplyInputs(d, s)
	w, known, suits := drawn(d, s)
	if !known || !suits {
		return list
	}
	return append(list,
		Input{Name: message.New("working output"), Value: unit.Quantity{Value: float64(w.output), Kind: unit.Current}},
		Input{Name: message.New("drawn while cutting"), Value: unit.Quantity{Value: float64(w.load), Kind: unit.Current}},
		Input{Name: message.New("effective over ten minutes"), Value: unit.Quantity{Value: float64(w.effective), Kind: unit.Current}})
}

// breakerInputs adds what the rule book says of conductors and breaker.
func breakerInputs(d *demand, s *system.System) []Input {
	list := drawInputs(d, s)
	w, known, suits := drawn(d, s)
	if !known || !suits {
		return list
	}
	duty, err1 := size.AllowedDuty(s, s.OutputMax)
	carry, err2 := size.Ampacity(*w.Supply, duty)
	most, err3 := size.BreakerLimit(w.Input)
	if err1 != nil || err2 != nil || err3 != nil {
		return list
	}
	return append(list,
		Input{Name: message.New("conductors carry at least (NEC 630.11)"), Value: unit.Quantity{Value: float64(carry), Kind: unit.Current}},
		Input{Name: message.New("breaker at most, by the plate (NEC 630.12)"), Value: unit.Quantity{Value: float64(most), Kind: unit.Current}})
}

// cordInputs adds the cord to the draw.
func cordInputs(d *demand, s *system.System) []Input {
	list := drawInputs(d, s)
	if length, ok := d.job.Power.Cord.Get(); ok {
		list = append(list, Input{Name: message.New("cord, one way"), Value: unit.Quantity{Value: float64(length), Kind: unit.Length}, From: Asked{Fact: FactCord}})
	}
	if section, ok := d.job.Power.CordSection.Get(); ok {
		list = append(list, Input{Name: message.New("conductor size"), Value: unit.Quantity{Value: float64(section), Kind: unit.Section}, From: Asked{Fact: FactCordSection}})
	}
	return list
}

// airInputs names what is told of the compressor.
func airInputs(d *demand, s *system.System) []Input {
	var list []Input
	if q, ok := d.job.Air.Delivery.Get(); ok {
		list = append(list, Input{Name: message.New("air delivery"), Value: unit.Quantity{Value: float64(q), Kind: unit.Flow}, From: Asked{Fact: FactAirDelivery}})
	}
	if h, ok := d.job.Altitude.Get(); ok {
		list = append(list, Input{Name: message.New("altitude"), Value: unit.Quantity{Value: float64(h), Kind: unit.Length}, From: Asked{Fact: FactAltitude}})
	}
	if t, ok := runTime(d, s); ok {
		list = append(list, Input{Name: message.New("receiver bridges"), Value: unit.Quantity{Value: float64(t), Kind: unit.Time}, From: Asked{Fact: FactReceiver}})
	}
	if v, ok := bridging(d, s); ok {
		list = append(list, Input{Name: message.New("receiver that would bridge one busy cut"), Value: unit.Quantity{Value: float64(v), Kind: unit.Volume}})
	}
	return list
}

// hoseInputs names the pressures and the loss between them.
func hoseInputs(d *demand, s *system.System) []Input {
	list := []Input{{Name: message.New("inlet pressure of the system"), Value: unit.Quantity{Value: float64(s.AirPressure), Kind: unit.Pressure}}}
	have, ok1 := d.job.Air.Pressure.Get()
	bore, ok2 := d.job.Air.HoseBore.Get()
	length, ok3 := d.job.Air.HoseLength.Get()
	if !ok1 || !ok2 || !ok3 {
		return list
	}
	if loss, fits := hoseLoss(d, s, have, bore, length); fits && loss > 0 {
		list = append(list, Input{Name: message.New("lost in hose and couplings"), Value: unit.Quantity{Value: float64(loss), Kind: unit.Pressure}, Op: "+"})
	}
	return list
}

// drierInputs names how the air is dried and the dew point at line pressure
// that usually goes with it.
func drierInputs(d *demand, _ *system.System) []Input {
	drier := d.job.Air.Drier.Or("")
	list := []Input{{Name: message.New("how the air is dried"), Word: message.ID(drier), From: Asked{Fact: FactDrier}}}
	dew, known := dewPoint(d.job, drier)
	if !known {
		return list
	}
	list = append(list, Input{Name: message.New("usual dew point at line pressure"), Value: unit.Quantity{Value: float64(dew), Kind: unit.Temperature}})
	if class, err := size.WaterClass(dew); err == nil {
		list = append(list, Input{Name: message.New("water class of ISO 8573-1"), Value: unit.Quantity{Value: float64(class), Kind: unit.Count}})
	}
	return list
}

// roomAir is the air a compressor is taken to draw in and cool the line to:
// 20 °C and 65 %, the reference of ISO 8778.
const (
	roomAir      unit.Celsius = 20
	roomHumidity unit.Percent = 65
)

// dewPoint is the dew point at line pressure that usually goes with a drier.
func dewPoint(j *Job, drier Drier) (unit.Celsius, bool) {
	switch drier {
	case Refrigerant:
		return size.RefrigerantDew, true
	case Desiccant:
		return size.DesiccantDew, true
	}
	line, told := j.Air.Pressure.Get()
	local, err1 := size.Atmosphere(j.Altitude.Or(0))
	if !told || err1 != nil || drier == NoAir {
		return 0, false
	}
	dew, err2 := size.PressureDewPoint(roomAir, roomHumidity, line, local, roomAir)
	return dew, err2 == nil
}

// supplyAnd lists the supply and further facts where they are not told.
func supplyAnd(facts ...Fact) func(*demand) []Asked {
	return func(d *demand) []Asked {
		return append(supplyMissing(d), untold(facts...)(d)...)
	}
}

// untold lists the facts about the site a rule rests on that are not told.
func untold(facts ...Fact) func(*demand) []Asked {
	return func(d *demand) []Asked {
		var list []Asked
		for _, f := range facts {
			if !siteTold(d.job, f) {
				list = append(list, Asked{Fact: f})
			}
		}
		return list
	}
}

// siteTold reports whether a fact about power or air is told.
func siteTold(j *Job, f Fact) bool {
	switch f {
	case FactBreaker:
		return j.Power.Breaker.IsKnown()
	case FactCord:
		return j.Power.Cord.IsKnown()
	case FactCordSection:
		return j.Power.CordSection.IsKnown()
	case FactGenerator:
		return j.Power.Generator.IsKnown()
	case FactAirDelivery:
		return j.Air.Delivery.IsKnown()
	case FactAirPressure:
		return j.Air.Pressure.IsKnown()
	case FactHoseBore:
		return j.Air.HoseBore.IsKnown()
	case FactHoseLength:
		return j.Air.HoseLength.IsKnown()
	case FactAltitude:
		return j.Altitude.IsKnown()
	}
	return true
}

// ask lists the facts a rule is decided by alone.
func ask(facts ...Fact) func(*demand) []Asked {
	return func(*demand) []Asked {
		var list []Asked
		for _, f := range facts {
			list = append(list, Asked{Fact: f})
		}
		return list
	}
}

func nameOf(id metal.ID) any {
	m, ok := metal.Find(id)
	if !ok {
		return message.Name(id)
	}
	return m.Name
}
