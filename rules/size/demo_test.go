package size

import (
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// demo is a row invented for the tests.
func demo() *system.System {
	return &system.System{
		ID: "test-40", Rated: 12, CleanMax: 16, Severance: 20, OutputMin: 20, OutputMax: 40,
		Duty:     []system.DutyPoint{{Output: 40, Duty: 35}},
		Supplies: []system.Supply{{Phases: 1, VoltMin: 230, VoltMax: 230, Input: 20, Effective: 12}},
		AirFlow:  120, AirPressure: 5,
		Pierce: unit.Maybe[unit.Millimetre]{},
	}
}
