package size

import (
	"errors"
	"fmt"
	"testing"

	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// multiplierChecks: NEC Table 630.11(A), column for sources without a motor.
func multiplierChecks(t *testing.T) []check {
	var list []check
	for _, row := range open(t, "electrical.csv").Where(t, "topic", "NEC 630.11(A) supply conductor multiplier, nonmotor") {
		duty := numbers(row["condition"])[0]
		m, err := DutyMultiplier(unit.Percent(duty))
		list = append(list, against(t, row, fmt.Sprintf("supply conductor multiplier at %g %%", duty), row["value"], m, err, ""))
	}
	return list
}

// breakerChecks: NEC 240.6(A) and 630.12(A); each rating must be the answer
// for a current just below it.
func breakerChecks(t *testing.T) []check {
	var list []check
	file := open(t, "electrical.csv")
	for _, row := range file.Where(t, "topic", "standard overcurrent rating") {
		size, _ := number(t, row["value"])
		got, err := StandardBreaker(unit.Ampere(size - 0.5))
		list = append(list, against(t, row, fmt.Sprintf("standard breaker from %g A up", size-0.5), row["value"], float64(got), err, "A"))
	}
	row := file.Where(t, "topic", "NEC 630.12(A)").Where(t, "condition", "rating plate gives I1max")[0]
	got, err := BreakerLimit(25)
	list = append(list, against(t, row, "overcurrent limit, share of 25 A I1max", row["value"], float64(got)/25*100, err, "%"))
	for _, row := range file.Where(t, "topic", "duty cycle period") {
		list = append(list, against(t, row, "duty cycle period", row["value"], float64(Period)/60, nil, "min"))
	}
	return list
}

// cordChecks: NEC Chapter 9 Table 8, IEC 60228 and IEC 60287.
func cordChecks(t *testing.T) []check {
	var list []check
	file := open(t, "electrical.csv")
	for _, row := range file.Where(t, "topic", "conductor DC resistance, stranded") {
		gauge := row["condition"][len("AWG "):]
		r, err := AmericanResistance(gauge, 75)
		got, unit := float64(r), "Ω/km"
		if row["unit"] == "ohm/kft" {
			got, unit = got*0.3048, "Ω/kft"
		}
		c := against(t, row, "stranded copper, gauge "+gauge+", 75 °C", row["value"], got, err, unit)
		if unit == "Ω/km" {
			c = c.loosely(0.005, "the table rounds Ω/kft and Ω/km each to three digits")
		}
		list = append(list, c)
	}
	for _, row := range file.Where(t, "topic", "conductor maximum DC resistance") {
		section := numbers(row["condition"])[0]
		r, err := CordResistance(unit.SquareMillimetre(section), 20)
		list = append(list, against(t, row, fmt.Sprintf("flexible cord, %g mm², 20 °C", section), row["value"], float64(r), err, "Ω/km"))
	}
	cold, _ := CordResistance(4, 20)
	for _, row := range file.Where(t, "topic", "copper resistance, 20 to ") {
		at := numbers(row["topic"])[1]
		hot, err := CordResistance(4, unit.Celsius(at))
		list = append(list, against(t, row, fmt.Sprintf("copper resistance, %g °C over 20 °C", at), row["value"], float64(hot/cold), err, ""))
	}
	return list
}

// coefficientChecks: how fast copper's resistance rises, by both standards.
func coefficientChecks(t *testing.T) []check {
	file := open(t, "electrical.csv")
	row := file.Where(t, "topic", "copper resistance, temperature correction from 20 C")[0]
	cold, err1 := CordResistance(4, 20)
	warm, err2 := CordResistance(4, 21)
	list := []check{against(t, row, "copper resistance, share per °C from 20 °C", "0.00393", float64(warm/cold)-1, errors.Join(err1, err2), "")}
	row = file.Where(t, "topic", "copper resistance, temperature correction from 75 C")[0]
	cold, err1 = AmericanResistance("10", 75)
	warm, err2 = AmericanResistance("10", 76)
	list = append(list, against(t, row, "copper resistance, share per °C from 75 °C", "0.00323", float64(warm/cold)-1, errors.Join(err1, err2), ""))
	row = file.Where(t, "topic", "nominal supply voltage, tolerance")[0]
	return append(list, against(t, row, "supply voltage tolerance", row["value"], 100*VoltTolerance, nil, "%"))
}

// dropChecks: recommended voltage drop, 208 V against 240 V, thin air.
func dropChecks(t *testing.T) []check {
	file := open(t, "electrical.csv")
	guide := file.Where(t, "topic", "voltage drop guidance")
	list := []check{
		against(t, guide[0], "recommended voltage drop, branch circuit", guide[0]["value"], float64(dropBranch), nil, "%"),
		against(t, guide[1], "recommended voltage drop, feeder and branch", guide[1]["value"], float64(DropWhole), nil, "%"),
	}
	s := &system.System{OutputMin: 20, OutputMax: 40}
	from := system.Supply{Phases: 1, VoltMin: 208, VoltMax: 240, Input: 30}
	low, err := InputCurrent(s, from, 40, 208)
	if err != nil {
		t.Error(err)
	}
	high, err := InputCurrent(s, from, 40, 240)
	trap := file.Where(t, "topic", "nominal voltage trap")[0]
	list = append(list, against(t, trap, "current at 240 V over current at 208 V", "0.867", float64(high/low), err, ""))
	for _, row := range file.Where(t, "topic", "air density ratio") {
		at := numbers(row["condition"])[0]
		got, err := DensityRatio(unit.Metre(at))
		c := against(t, row, fmt.Sprintf("air density ratio at %g m", at), row["value"], got, err, "")
		list = append(list, c.loosely(0.0003, "the row takes geopotential for geometric altitude"))
	}
	return list
}

// practiceChecks are the trade's own check values, worked by hand; they have no
// document, and the tables say so.
func practiceChecks(t *testing.T) []check {
	row := map[string]string{"source": "common practice, worked by hand", "how_known": "common practice, no source"}
	s := demo()
	least, comfort, err := ForProduction().Need(6.35)
	list := []check{
		against(t, row, "production, 6.35 mm: rated thickness at least", "12.7", float64(least), err, "mm"),
		against(t, row, "production, 6.35 mm: rated thickness comfortably", "19.05", float64(comfort), err, "mm"),
	}
	least, comfort, err = ForSpeed().Need(10)
	list = append(list, against(t, row, "speed decides, 10 mm: at least", "15", float64(least), err, "mm"),
		against(t, row, "speed decides, 10 mm: comfortably", "16", float64(comfort), err, "mm"))
	least, _, err = ForMaintenance().Need(12.7)
	list = append(list, against(t, row, "maintenance, 12.7 mm", "12.7", float64(least), err, "mm"))
	pierced, err := Pierce(&system.System{CleanMax: 20, Severance: 25})
	list = append(list, against(t, row, "pierce at half of 20 mm clean maximum", "10", float64(pierced), err, "mm"))
	through, err := TrueThickness(6, 45)
	bevel := map[string]string{"source": "school geometry: 6/cos 45°", "how_known": "looked up"}
	list = append(list, against(t, bevel, "6 mm through a 45° bevel", "8.5", float64(through), err, "mm"))
	for _, point := range []struct {
		t     unit.Millimetre
		speed string
	}{{12, "500"}, {16, "250"}, {20, "125"}, {6, "1000"}} {
		v, err := Speed(s, 40, point.t, FreeHand)
		list = append(list, against(t, row, fmt.Sprintf("speed, rated 12 mm, clean 16 mm, severed 20 mm, at %g mm", float64(point.t)), point.speed, float64(v), err, "mm/min"))
	}
	return list
}
