package showing

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
func settingFor(s *system.System, p piece) Setting {
	set := Setting{Output: s.OutputMax, Lead: leadAngle, Trailing: trailingArc, Source: cite.Ref{Source: "practice-setting"}}
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

// paced adds the travel speed to aim for, where the speed model gives one: for
// the metal along the cut, along an edge or template, at the setting's output.
// Source: size.Speed, from the system's own row.
func (s *scene) paced(set Setting, p piece) Setting {
	steel, ok := s.asSteel(p)
	if !ok {
		return set
	}
	if v, err := size.Speed(s.system, set.Output, steel, size.AlongEdge); err == nil {
		set.Speed = unit.Known(v)
	}
	return set
}

// turnsDown reports whether the system's output goes low enough for an open
// tip on the work.
func turnsDown(s *system.System) bool { return s.OutputMin <= contactMost }
