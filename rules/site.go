package rules

import (
	"math"

	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

func pierceOf(s *system.System) unit.Millimetre { return s.Pierce.Or(s.CleanMax / 2) }

func through(t float64, angle unit.Degree) float64 { return t / math.Cos(float64(angle)*math.Pi/180) }
