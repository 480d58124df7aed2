package unit

// naming is what a kind is called and what people can type for it.
type naming struct {
	name    string // with its article
	example string // texts Read accepts, for a hint
	zero    bool   // zero is an honest answer: sea level, no cuts, free
}

var namings = map[Kind]naming{
	None:          {"a number", "give a number, such as 3 or 0.5", true},
	Thickness:     {"a thickness", "give a number and a unit, such as 12 mm, 3/8 in or 14 ga", false},
	Length:        {"a length", "give a number and a unit, such as 15 m or 50 ft", true},
	Speed:         {"a speed", "give a number and a unit, such as 500 mm/min or 20 in/min", false},
	Section:       {"a conductor size", "give a number and a unit, such as 4 mm² or AWG 10", false},
	Current:       {"a current", "give a number of amperes, such as 32 A", false},
	Voltage:       {"a voltage", "give a number of volts, such as 230 V", false},
	Power:         {"a power", "give a number and a unit, such as 7.5 kW or 10 hp", false},
	ApparentPower: {"an apparent power", "give a number of kilovolt-amperes, such as 15 kVA", false},
	Flow:          {"an air flow", "give a number and a unit, such as 190 l/min or 6.7 cfm", false},
	Pressure:      {"a pressure", "give the gauge reading and its unit, such as 6 bar or 90 psi", false},
	Volume:        {"a volume", "give a number and a unit, such as 200 l or 60 gal", false},
	Weight:        {"a weight", "give a number and a unit, such as 15 kg or 33 lb", false},
	Share:         {"a share", "give a number from 0 to 100, such as 35 %", true},
	Angle:         {"an angle", "give a number of degrees, such as 45°", true},
	Temperature:   {"a temperature", "give a number of degrees, such as 20 °C", true},
	Time:          {"a time", "give a number and a unit, such as 30 s or 5 min", false},
	Price:         {"a price", "give a number, such as 2500, 2,500.00 or 2500 EUR", true},
	Count:         {"a count", "give a whole number, such as 12", true},
}

// article is the kind with its article: "a thickness".
func (k Kind) article() string {
	if n, ok := namings[k]; ok {
		return n.name
	}
	return "a known kind of quantity"
}

func (k Kind) advice() string { return namings[k].example }
