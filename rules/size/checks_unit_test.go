package size

import (
	"strconv"
	"strings"
	"testing"

	"cutbrief/rules/unit"
)

// conversionChecks: one of each foreign unit as the interview reads it.
func conversionChecks(t *testing.T) []check {
	var list []check
	file := open(t, "units.csv")
	for _, c := range []struct {
		from, to, text string
		kind           unit.Kind
		each           float64 // how many of to's unit go into the unit held
	}{
		{"in", "mm", "1 in", unit.Thickness, 1},
		{"ft", "m", "1 ft", unit.Length, 1},
		{"US gal", "l", "1 gal", unit.Volume, 1},
		{"cfm (ft3/min)", "l/min", "1 cfm", unit.Flow, 1},
		{"in/min (ipm)", "mm/min", "1 in/min", unit.Speed, 1},
		{"lb", "kg", "1 lb", unit.Weight, 1},
		{"psi", "bar", "1 psi", unit.Pressure, 1},
		{"psi", "kPa", "1 psi", unit.Pressure, 100},
	} {
		row := file.Where(t, "from", c.from).Where(t, "to", c.to)[0]
		r, err := unit.Read(c.text, c.kind, unit.Metric, unit.NoGauge)
		list = append(list, against(t, row, c.text+" in "+c.to, row["factor"], r.Quantity.Value*c.each, err, c.to))
	}
	return list
}

// gaugeChecks: every second gauge of each table, in inches as printed.
func gaugeChecks(t *testing.T) []check {
	sheets := []struct {
		system, name string
		sheet        unit.Sheet
	}{
		{"MSG", "carbon steel", unit.SteelGauge},
		{"galvanised", "galvanised", unit.GalvanGauge},
		{"US Standard Gauge", "stainless", unit.StainGauge},
		{"AWG", "aluminium", unit.AluminumGauge},
	}
	var list []check
	file := open(t, "sheet_gauge.csv")
	for _, s := range sheets {
		for _, row := range file.Where(t, "system", s.system) {
			n, err := strconv.Atoi(row["gauge"])
			if err != nil || n%2 == 1 || strings.Contains(row["note"], "not a listed size") {
				continue
			}
			got, err := unit.Gauge(n, s.sheet)
			c := against(t, row, row["gauge"]+" ga "+s.name, row["thickness_in"], float64(got)/25.4, err, "in")
			if c.tolerance < 0.6e-4 {
				c.tolerance, c.why = 0.6e-4, "copies of the table round a printed 5 either way"
			}
			list = append(list, c)
		}
	}
	return list
}
