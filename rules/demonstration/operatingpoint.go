package demonstration

import (
	"cutbrief/rules/cite"
	"cutbrief/rules/size"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// How the torch is set and held. All of it is common practice, no source, and
// the manual decides.
const (
	contactMost unit.Ampere = 40 // an open tip rests on the work up to here
	mediumMost  unit.Ampere = 80 // stand-off grows with the system from here on
)

var (
	leadAngle     = [2]unit.Degree{5, 10}
	trailingArc   = [2]unit.Degree{5, 10}
	standOffSmall = [2]unit.Millimetre{3, 6}  // up to mediumMost
	standOffLarge = [2]unit.Millimetre{5, 10} // above
)

// settingFor sets the torch for one piece: thin sheet turned down so that the
// tip rests on the work, everything else at full output.
func settingFor(s *system.System, p piece) OperatingPoint {
	set := OperatingPoint{Output: s.OutputMax, Lead: leadAngle, Trailing: trailingArc, Pressure: s.AirPressure, Through: p.thickness,
		Source: cite.Ref{Source: "practice-setting"}}
	if p.thickness <= thinMost {
		set.Output = max(s.OutputMin, min(contactMost, s.OutputMax))
	}
	set.OnWork = set.Output <= contactMost || s.ContactTip
	set.Shielded = set.OnWork && set.Output > contactMost
	if !set.OnWork {
		set.StandOff = standOffSmall
		if set.Output > mediumMost {
			set.StandOff = standOffLarge
		}
	}
	return set
}

// setting is how the torch is set for a row and its piece.
func (s *situation) setting(row *cutRow, p piece) OperatingPoint {
	set := settingFor(s.system, p)
	if row.tilted {
		set.Through = through(p.thickness, s.angle())
	}
	set.Length = row.length
	if !row.noSpeed {
		set = s.paced(set, piece{p.metal, set.Through})
	}
	return set
}

// paced adds the travel speed to aim for, where the speed model gives one: for
// the metal along the cut, along an edge or template, at the setting's output;
// and the time for the length at that speed, in seconds.
// Source: size.Speed, from the system's own row.
// Check: 300 mm at 1000 mm/min take 18 s.
func (s *situation) paced(set OperatingPoint, p piece) OperatingPoint {
	steel, ok := s.asSteel(p)
	if !ok {
		return set
	}
	v, err := size.Speed(s.system, set.Output, steel, size.AlongEdge)
	if err != nil {
		return set
	}
	set.Speed = unit.Known(v)
	if set.Length > 0 {
		set.Seconds = unit.Known(unit.Second(float64(set.Length) / float64(v) * 60))
	}
	return set
}
