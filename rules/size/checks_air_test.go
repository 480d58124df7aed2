package size

import (
	"fmt"
	"strings"
	"testing"

	"cutbrief/rules/unit"
)

const (
	poundForce = 6.894757293168361 // kPa per psi, NIST SP 811
	cubicFoot  = 28.316846592      // l per ft³, exact
)

// dewChecks: ISO 8573-1, saturation pressure by IF97 and WMO, dew points.
func dewChecks(t *testing.T) []check {
	var list []check
	file := open(t, "air.csv")
	for i, row := range file.Where(t, "topic", "iso8573_water")[:6] {
		dew, _ := number(t, row["value"])
		class, err := WaterClass(unit.Celsius(dew))
		list = append(list, against(t, row, fmt.Sprintf("water class at %g °C pressure dew point", dew), fmt.Sprint(i+1), float64(class), err, ""))
	}
	for _, row := range file.Where(t, "topic", "vapour_check") {
		words := numbers(row["item"])
		if len(words) != 1 || words[0] < 0 || words[0] > 60 {
			continue
		}
		got, err := Saturation(unit.Celsius(words[0]))
		name := fmt.Sprintf("saturation pressure at %g °C", words[0])
		c := against(t, row, name, row["value"], float64(got), err, "kPa")
		if strings.HasPrefix(row["item"], "saturation") {
			c = c.loosely(0.004, "the Magnus form is within 0.4 % of the steam tables")
		}
		list = append(list, c)
	}
	for _, row := range file.Where(t, "topic", "dew_point") {
		words := numbers(row["item"])
		if !strings.Contains(row["item"], "dew point before") {
			continue
		}
		line := unit.Bar(8 - 1.01325)
		got, err := PressureDewPoint(unit.Celsius(words[0]), unit.Percent(words[1]), line, SeaLevel, 60)
		if words[0] == 30 { // 63.6 °C lies above the range: all the line can hold stays, the rest condenses
			c := against(t, row, "dew point of 30 °C, 70 % air pressed to 8 bar, line at 60 °C", "60", float64(got), err, "°C")
			c.source = "capped by the line's temperature: the row gives 63.56 °C before condensation"
			list = append(list, c)
			continue
		}
		c := against(t, row, "dew point of 20 °C, 65 % air pressed to 8 bar", row["value"], float64(got), err, "°C")
		list = append(list, c.loosely(0.001, "the row uses another vapour-pressure formula, 49.43 against 49.44"))
	}
	return list
}

// flowChecks: the several standard cubic feet at the reference of ISO 8778 and
// at the normal state.
func flowChecks(t *testing.T) []check {
	var list []check
	foot := unit.LitrePerMinute(cubicFoot)
	for _, row := range open(t, "air.csv").Where(t, "topic", "scfm_conversion").Where(t, "item", "SCFM") {
		words := numbers(row["item"])
		from := Reference{Kilopascal(words[0] * poundForce), unit.Celsius((words[1] - 32) / 1.8)}
		if strings.Contains(row["item"], "bar") {
			from = Reference{Kilopascal(words[0] * 100), unit.Celsius(words[1])}
		}
		if strings.Contains(row["item"], "14.696") {
			from.Pressure = SeaLevel // 14.696 psi is the atmosphere, 101.325 kPa, rounded
		}
		to := ANR()
		if strings.Contains(row["item"], "Nl/min") {
			to = NormalState()
		}
		got, err := Restate(foot, from, to)
		c := against(t, row, row["item"], row["value"], float64(got), err, "l/min")
		list = append(list, c)
	}
	got, err := Restate(1, ANR(), NormalState())
	row := open(t, "air.csv").Where(t, "item", "l/min ANR -> Nl/min")[0]
	list = append(list, against(t, row, row["item"], row["value"], float64(got), err, ""))
	var low, high float64
	for i, from := range StandardCubicFoot() {
		q, err := Restate(foot, from, ANR())
		if err != nil {
			t.Error(err)
		}
		if i == 0 || float64(q) < low {
			low = float64(q)
		}
		high = max(high, float64(q))
	}
	spread := open(t, "air.csv").Where(t, "item", "spread between SCFM")[0]
	c := against(t, spread, "spread between the standard cubic feet", spread["value"], (high/low-1)*100, nil, "%")
	return append(list, c)
}

// hoseChecks: hose loss worked out separately, and the rule of the texts.
func hoseChecks(t *testing.T) []check {
	var list []check
	file := open(t, "air.csv")
	for _, row := range file.Where(t, "topic", "hose_calc") {
		n := numbers(row["item"]) // bore in, length ft, pressure psi, flow cfm
		got, err := HoseLoss(unit.LitrePerMinute(n[3]*cubicFoot), unit.Millimetre(n[0]*25.4), unit.Metre(n[1]*0.3048),
			unit.Bar(n[2]*poundForce/100), SeaLevel)
		c := against(t, row, "hose loss "+row["item"], row["value"], float64(got)/poundForce*100, err, "psi")
		list = append(list, c)
	}
	for _, row := range file.Where(t, "topic", "pipe_example").Where(t, "item", "450 form") {
		n := numbers(strings.ReplaceAll(strings.TrimPrefix(row["item"], "450 form: "), "l/s", ""))
		got, err := HoseLossSimple(unit.LitrePerMinute(n[0]*60), unit.Millimetre(n[2]), unit.Metre(n[1]), unit.Bar(n[3]-1.01325), SeaLevel)
		c := against(t, row, "pipe loss "+row["item"], row["value"], float64(got), err, "bar")
		list = append(list, c)
	}
	simple, err := HoseLossSimple(200, 16.1, 20, 8-1.01325, SeaLevel)
	if err != nil {
		t.Error(err)
	}
	darcy, err := HoseLoss(200, 16.1, 20, 8-1.01325, SeaLevel)
	if err != nil {
		t.Error(err)
	}
	row := file.Where(t, "item", "dp = 450")[0]
	c := against(t, row, "smooth hose by Darcy over the rule of the texts, 200 l/min, 20 m, 16.1 mm", "1", float64(darcy/simple), nil, "")
	return append(list, c.loosely(0.35, "the rule is for steel pipe; Darcy with its roughness gives 0.83 of it"))
}

// altitudeChecks: the standard atmosphere, and the compressor rule.
func altitudeChecks(t *testing.T) []check {
	var list []check
	file := open(t, "air.csv")
	for _, row := range file.Where(t, "item", "ISA pressure at ") {
		h := numbers(row["item"])[0]
		got, err := Atmosphere(unit.Metre(h))
		list = append(list, against(t, row, fmt.Sprintf("standard atmosphere at %g m", h), row["value"], float64(got), err, "kPa"))
	}
	row := file.Where(t, "topic", "altitude").Where(t, "item", "200 l/min")[0]
	p, err := Atmosphere(1500)
	if err != nil {
		t.Error(err)
	}
	got, err := Restate(200, ANR(), Reference{p, 30})
	return append(list, against(t, row, "inlet flow for 200 l/min at 1500 m and 30 °C", row["value"], float64(got), err, "l/min"))
}

// receiverChecks: the published example, and two more.
func receiverChecks(t *testing.T) []check {
	file := open(t, "air.csv").Where(t, "topic", "receiver")
	psi := func(p float64) unit.Bar { return unit.Bar(p * poundForce / 100) }
	cfm := func(q float64) unit.LitrePerMinute { return unit.LitrePerMinute(q * cubicFoot) }
	var list []check
	v, err := ReceiverNeed(300, psi(100), psi(60), cfm(350), cfm(250), Kilopascal(14.7*poundForce))
	for _, row := range file.Where(t, "item", "published example") {
		list = append(list, against(t, row, "receiver for 100 ft³/min short, 5 min, 100 to 60 psi", row["value"], float64(v)/cubicFoot, err, "ft³"))
	}
	for _, row := range file.Where(t, "item", "same, US gallons") {
		c := against(t, row, "the same in US gallons", row["value"], float64(v)/3.785411784, err, "gal")
		list = append(list, c)
	}
	for _, row := range file.Where(t, "item", "example: 270 l") {
		s, err := RunTime(270, 10, 6.5, 320, 120, SeaLevel)
		list = append(list, against(t, row, "receiver of 270 l, 200 l/min short, 10 to 6.5 bar", row["value"], float64(s)/60, err, "min"))
	}
	for _, row := range file.Where(t, "item", "example: 80 US gal") {
		s, err := RunTime(80*3.785411784, psi(135), psi(90), cfm(18), cfm(10), Kilopascal(14.7*poundForce))
		list = append(list, against(t, row, "receiver of 80 US gal, 8 ft³/min short, 135 to 90 psi", row["value"], float64(s)/60, err, "min"))
	}
	return list
}
