package rules

import (
	"fmt"

	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/size"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// Where hand-held and bench tools end, in mm of each metal; a metal not named
// has no figure. The shear is the throatless bench shear (faa-8083-31, from
// memory: 10 gauge mild steel, 12 gauge stainless), the nibbler the largest
// hand-held one; on aluminium a shear is taken to end where it does on mild
// steel, a nibbler to reach 1.5 times as far (common practice, no source).
var toolLimits = map[Process]map[metal.ID]unit.Millimetre{
	Shear:   {metal.MildSteel: 3.4, metal.Galvanised: 3.4, metal.Stainless: 2.8, metal.Aluminium: 3.4},
	Nibbler: {metal.MildSteel: 3.2, metal.Galvanised: 3.2, metal.Stainless: 2.1, metal.Aluminium: 4.8},
}

// ToolLimit returns the thickest metal in mm that a hand-held or bench tool cuts,
// and whether a figure is held: for shears and nibblers in sheet metals.
//
// Source: faa-8083-31, from memory, and practice. Check: a shear in mild steel
// 3.4 mm (10 gauge), in stainless 2.8 mm (12 gauge); a band saw has none.
func ToolLimit(way Process, id metal.ID) (unit.Millimetre, bool) {
	t, held := toolLimits[way][id]
	return t, held
}

// GasCuts reports whether oxy-fuel cuts a metal. It does not cut one whose oxide
// melts at a higher temperature than the metal, or that does not burn. Common
// practice, no source. Check: mild steel yes; stainless, aluminium, copper and
// cast iron no.
func GasCuts(id metal.ID) bool {
	return id != metal.Stainless && id != metal.Aluminium && id != metal.Copper && id != metal.CastIron
}

// Implausible holds every system of a range against the power of its arc and
// returns what is suspicious as a warning and what is impossible as an error.
// Source: size.Plausible, from memory of the documents it names, so an error
// here asks for a second look at the data sheet and says so.
func Implausible(offered system.Range) []system.Finding {
	var list []system.Finding
	for i := range offered.Systems {
		s := &offered.Systems[i]
		band, words, err := size.Plausible(s)
		if err != nil || band == size.Normal {
			continue
		}
		share, _ := size.MeltShare(s.OutputMax, s.Rated, size.RatedSpeed)
		f := system.Finding{Row: s.ID, Column: "rated_mm", Severity: system.Warning,
			Problem:  message.New("melting the kerf at the rated point would take {1} of the arc's power: {2}", message.Figure(fmt.Sprintf("%.0f %%", float64(share))), words),
			Accepted: message.New("usually 15 to 60 % (energy balance, from memory)")}
		if band == size.Impossible {
			f.Severity = system.Error
		}
		list = append(list, f)
	}
	return list
}
