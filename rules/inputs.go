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

// figureInput names a figure that was worked out, or that a row or a rule gives.
func figureInput[Q ~float64 | ~int](name message.ID, v Q, kind unit.Kind) Input {
	return Input{Name: name.Message(), Value: unit.Quantity{Value: float64(v), Kind: kind}}
}

// cleanInputs names the piece that decides, the factor for use and the factor
// for the metal.
func cleanInputs(d *demand, s *system.System) []Input {
	p, _, known, _ := heaviest(d, s, (*Piece).regular)
	if !known {
		return nil
	}
	t, _, sure := p.regular()
	fact := FactThickest
	if thickest, ok := p.Thickest.Get(); !sure || (ok && thickest < t) {
		fact = FactEveryday
	}
	factor, _ := equivalence(s, p.Metal)
	return append([]Input{p.input(fact), useInput(d)}, metalInput(p.Metal, factor)...)
}

// useInput names the factor by the rule that sets it: repair work where cutting
// speed decides has not the factor of repair work.
func useInput(d *demand) Input {
	in := Input{Name: d.multiple.name.Message(), Value: unit.Quantity{Value: d.multiple.Floor}, Op: "×"}
	if d.multiple.use != "" {
		in.From.Fact = FactUse
	}
	return in
}

// metalInput names the factor for a metal, unless it is mild steel itself.
func metalInput(id metal.ID, factor float64) []Input {
	if factor == 1 {
		return nil
	}
	return []Input{{Name: message.New("factor for {1}", id.Name()), Value: unit.Quantity{Value: factor}, Op: "×"}}
}

// input names one thickness of a piece.
func (p *Piece) input(f Fact) Input {
	t, _ := thicknessOf(p, f).Get()
	return Input{Name: message.New(answerOf(f).name, p.Metal.Name()), Value: mm(t), From: Asked{f, p.Metal}}
}

// pieceInputs names the piece that decides a rule about one thickness.
func pieceInputs(f Fact) func(*demand, *system.System) []Input {
	return func(d *demand, s *system.System) []Input {
		p, _, known, _ := heaviest(d, s, func(p *Piece) (unit.Millimetre, bool, bool) { return told(*thicknessOf(p, f)) })
		if !known {
			return nil
		}
		factor, _ := equivalence(s, p.Metal)
		return append([]Input{p.input(f)}, metalInput(p.Metal, factor)...)
	}
}

func bevelInputs(d *demand, s *system.System) []Input {
	list := pieceInputs(FactBevelled)(d, s)
	if angle := d.job.told(FactBevelAngle); len(list) > 0 && len(angle) > 0 {
		angle[0].Op = "÷ cos"
		list = append(list, angle...)
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
		figureInput("working output", w.output, unit.Current),
		figureInput("drawn while cutting", w.load, unit.Current),
		figureInput("effective over ten minutes", w.effective, unit.Current))
}

// breakerInputs adds what the rule book says of conductors and breaker.
func breakerInputs(d *demand, s *system.System) []Input {
	list := drawInputs(d, s)
	w, known, suits := drawn(d, s)
	if !known || !suits {
		return list
	}
	duty, _ := size.AllowedDuty(s, s.OutputMax) // of a plate that a draw was worked out from
	carry, _ := size.Ampacity(*w.Supply, duty)
	most, _ := size.BreakerLimit(w.Input)
	return append(list,
		figureInput("conductors carry at least (NEC 630.11)", carry, unit.Current),
		figureInput("breaker at most, by the plate (NEC 630.12)", most, unit.Current))
}

// cordInputs adds the cord to the draw.
func cordInputs(d *demand, s *system.System) []Input {
	return append(drawInputs(d, s), d.job.told(FactCord, FactCordSection)...)
}

// airInputs names what is told of the compressor.
func airInputs(d *demand, s *system.System) []Input {
	list := d.job.told(FactAirDelivery, FactAltitude)
	if t, ok := runTime(d, s); ok {
		list = append(list, Input{Name: message.New("receiver bridges"), Value: unit.Quantity{Value: float64(t), Kind: unit.Time}, From: Asked{Fact: FactReceiver}})
	}
	if v, ok := bridging(d, s); ok {
		list = append(list, figureInput("receiver that would bridge one busy cut", v, unit.Volume))
	}
	return list
}

// hoseInputs names the pressures and the loss between them.
func hoseInputs(d *demand, s *system.System) []Input {
	list := []Input{{Name: message.New("inlet pressure of the system"), Value: unit.Quantity{Value: float64(s.AirPressure), Kind: unit.Pressure}}}
	have, _ := d.job.Air.Pressure.Get()
	bore, _ := d.job.Air.HoseBore.Get()
	length, _ := d.job.Air.HoseLength.Get()
	if loss, _ := hoseLoss(d, s, have, bore, length); loss != 0 { // of a hose that is not told it is none
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
	list = append(list, figureInput("usual dew point at line pressure", dew, unit.Temperature))
	if class, err := size.WaterClass(dew); err == nil {
		list = append(list, figureInput("water class of ISO 8573-1", class, unit.Count))
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
func dewPoint(j *Job, drier Drier) (dew unit.Celsius, known bool) {
	switch drier {
	case Refrigerant:
		return size.RefrigerantDew, true
	case Desiccant:
		return size.DesiccantDew, true
	}
	line, told := j.Air.Pressure.Get()
	local, err1 := size.Atmosphere(j.Altitude.Or(0))
	if !told || err1 != nil {
		return dew, false
	}
	dew, err2 := size.PressureDewPoint(roomAir, roomHumidity, line, local, roomAir)
	return dew, err2 == nil
}
