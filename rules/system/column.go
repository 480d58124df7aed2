package system

import "cutbrief/rules/unit"

// column is one column of the file: how its cells are read and written, and
// what the template says about it. A unit in the name is the unit of a number
// that stands without one.
type column struct {
	name     string
	required bool   // every row must fill it
	accepted string // for findings
	means    []string
	read     func(*cell)
	write    func(*System) string
}

// The names that checks refer to.
const (
	colID        = "id"
	colName      = "name"
	colRated     = "rated_mm"
	colCleanMax  = "clean_max_mm"
	colSeverance = "severance_mm"
	colPierce    = "pierce_mm"
	colMetals    = "rated_other_metals"
	colOutMin    = "output_min_a"
	colOutMax    = "output_max_a"
	colDuty      = "duty"
	colSupplies  = "supplies"
	colFlow      = "air_flow_l_min"
	colPressure  = "air_pressure_bar"
	colWeight    = "weight_kg"
	colPrice     = "price" // in a file usually with a currency: price_eur
	colInvented  = "invented"
)

const (
	thickness = "a thickness such as 12, 12 mm or 1/2 in"
	current   = "a current such as 45 or 45 A"
	yesOrNo   = "yes, no or blank"
)

// columns returns the columns in the order they are written.
func columns() []column {
	all := append(identity(), cutting()...)
	all = append(all, plate()...)
	return append(all, extras()...)
}

func identity() []column {
	return []column{
		{colID, true, "lower-case letters, digits and hyphens, at most 40, such as shop-45",
			[]string{"short name that saved visits refer to; once used, never change it"},
			readID, func(s *System) string { return s.ID }},
		{colName, true, "a name of at most 60 characters that starts with a letter or digit",
			[]string{"the name printed on the page"},
			readName, func(s *System) string { return s.Name }},
	}
}

func cutting() []column {
	return []column{
		number(colRated, unit.Thickness, thickness, func(s *System) *unit.Millimetre { return &s.Rated },
			"thickest mild steel cut clean by hand at about 500 mm/min (20 in/min)"),
		number(colCleanMax, unit.Thickness, thickness, func(s *System) *unit.Millimetre { return &s.CleanMax },
			"thickest mild steel cut clean by hand at about 250 mm/min (10 in/min)"),
		number(colSeverance, unit.Thickness, thickness, func(s *System) *unit.Millimetre { return &s.Severance },
			"thickest mild steel that comes apart, at about 125 mm/min (5 in/min)"),
		{colPierce, false, thickness + ", or blank if it is not known",
			[]string{"thickest mild steel it starts in away from an edge;", "blank if not known: half the clean maximum is then taken"},
			readPierce, writePierce},
		{colMetals, false, "pairs such as stainless 10 mm; aluminium 9 mm, or blank",
			[]string{"rated thickness in other metals where the data sheet gives it,", "such as: stainless 10 mm; aluminium 9 mm"},
			readMetals, writeMetals},
	}
}

func plate() []column {
	return []column{
		number(colOutMin, unit.Current, current, func(s *System) *unit.Ampere { return &s.OutputMin }, "smallest output current"),
		number(colOutMax, unit.Current, current, func(s *System) *unit.Ampere { return &s.OutputMax }, "largest output current"),
		{colDuty, true, "pairs such as 45 A at 50 %; 32 A at 100 %",
			[]string{"output current and duty cycle from the rating plate (ten minutes, 40 C),", "such as: 45 A at 50 %; 32 A at 100 %"},
			readDuty, writeDuty},
		{colSupplies, true, "supplies such as 1 phase 200-240 V max 33 A eff 24 A",
			[]string{"every supply it can be connected to, with the largest supply current (I1max,", "full output at the lowest voltage) and the effective one (I1eff),",
				"such as: 1 phase 200-240 V max 33 A eff 24 A; 3 phase 380-415 V max 16 A eff 11 A"},
			readSupplies, writeSupplies},
	}
}

func extras() []column {
	return []column{
		number(colFlow, unit.Flow, "an air flow such as 150 or 150 l/min", func(s *System) *unit.LitrePerMinute { return &s.AirFlow },
			"free air it needs at full output"),
		number(colPressure, unit.Pressure, "a gauge pressure such as 5 or 5 bar", func(s *System) *unit.Bar { return &s.AirPressure },
			"gauge pressure it needs at its inlet while the air flows"),
		number(colWeight, unit.Weight, "a weight such as 14 or 14 kg", func(s *System) *unit.Kilogram { return &s.Weight },
			"weight without leads"),
		{colPrice, false, "a price above zero such as 1950, or blank if it is not known",
			[]string{"list price in the currency the column is named after: price_eur, price_usd;", "blank if not known"},
			readPrice, writePrice},
		flag("holds_gaps", func(s *System) *bool { return &s.HoldsGaps }, "holds or relights its arc across gaps: expanded metal, grating"),
		flag("gouges", func(s *System) *bool { return &s.Gouges }, "its manual has a gouging process"),
		flag("contact_tip", func(s *System) *bool { return &s.ContactTip }, "has a shielded tip made to rest on the work at full output"),
		flag("mechanised", func(s *System) *bool { return &s.Mechanised }, "has a torch for guided or mechanised travel"),
		{colInvented, false, yesOrNo,
			[]string{"yes marks an example row: as long as one row says yes, every page is marked", "as made from an invented range; no or blank on your own rows"},
			readInvented, nil},
	}
}

// number is a column of one quantity that every system has.
func number[Q ~float64](name string, kind unit.Kind, accepted string, field func(*System) *Q, means string) column {
	return column{name, true, accepted, []string{means},
		func(c *cell) {
			if v, ok := c.quantity(c.text, kind, unit.NoGauge); ok {
				*field(c.system) = Q(v)
			}
		},
		func(s *System) string { return plain(*field(s)) }}
}

// flag is a column of yes, no or blank.
func flag(name string, field func(*System) *bool, means string) column {
	return column{name, false, yesOrNo, []string{means},
		func(c *cell) { *field(c.system) = c.yes() },
		func(s *System) string { return yesNo(*field(s)) }}
}

func yesNo(yes bool) string {
	if yes {
		return "yes"
	}
	return "no"
}
