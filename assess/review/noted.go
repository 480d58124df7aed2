package review

import (
	"math"
	"slices"

	"cutbrief/assess"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/unit"
)

// Noted is what a visit adds to the patterns and no flag shows. It is small, as
// very many are held.
type Noted struct {
	Minutes         uint16 // that the interview took; 0 if it is not known
	Against         uint8  // what weighed most against a no: its place in assess.AllAgainst from 1; 0 if it is not noted
	Poor            bool   // a cut of the latest demonstration went poorly
	Slow, Fit, Fast uint8  // timed cuts of all demonstrations, held against their predictions as at the bench
}

// noted looks at the records of a visit.
func noted(v *assess.Visit) Noted {
	n := Noted{Minutes: minutes(v.Spent)}
	for i := range v.Showings {
		for _, c := range v.Showings[i].Cuts {
			n.time(c)
		}
	}
	s := v.Latest()
	if s == nil {
		return n
	}
	n.Poor = slices.ContainsFunc(s.Cuts, func(c assess.Shown) bool { return c.Result == assess.Poor })
	if s.Outcome == assess.No {
		n.Against = uint8(1 + slices.Index(assess.AllAgainst(), s.Against))
	}
	return n
}

// minutes is the time an interview took, to the nearest minute and at least one.
// Less than a second is no time at a keyboard: it was fed by a pipe.
func minutes(s *assess.Spent) uint16 {
	if s == nil {
		return 0
	}
	seconds, known := s.Seconds.Get()
	if !known || seconds < 1 {
		return 0
	}
	return uint16(min(max(1, math.Round(float64(seconds)/60)), math.MaxUint16))
}

// time counts a timed cut that was predicted.
func (n *Noted) time(c assess.Shown) {
	predicted, known := c.Predicted.Get()
	pace, ok := demonstration.Compare(c.Took.Or(unit.Second(0)), predicted)
	if !known || !ok {
		return
	}
	of := map[demonstration.Pace]*uint8{demonstration.Slow: &n.Slow, demonstration.OnTheMark: &n.Fit, demonstration.Fast: &n.Fast}[pace]
	if of != nil && *of < math.MaxUint8 {
		*of++
	}
}

// Because is what weighed most against a no; "" if it is not noted.
func (n Noted) Because() assess.Against {
	if all := assess.AllAgainst(); n.Against > 0 && int(n.Against) <= len(all) {
		return all[n.Against-1]
	}
	return ""
}

// packed is all of it as one number, for the index.
func (n Noted) packed() uint64 {
	poor := uint64(0)
	if n.Poor {
		poor = 1
	}
	return uint64(n.Minutes)<<40 | poor<<32 | uint64(n.Against)<<24 | uint64(n.Slow)<<16 | uint64(n.Fit)<<8 | uint64(n.Fast)
}

func unpacked(p uint64) Noted {
	return Noted{Minutes: uint16(p >> 40), Poor: p>>32&1 == 1, Against: uint8(p >> 24), Slow: uint8(p >> 16), Fit: uint8(p >> 8), Fast: uint8(p)}
}
