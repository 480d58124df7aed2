package rules

import (
	"fmt"

	"cutbrief/rules/message"
	"cutbrief/rules/size"
	"cutbrief/rules/system"
)

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
