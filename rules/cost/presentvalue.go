package cost

import (
	"math"

	"cutbrief/rules/unit"
)

// SinglePresent returns what 1 paid or saved after n years is worth today, at
// a rate d a year (0.03 is 3 %): SPV = 1/(1+d)^n.
//
// Valid for d > −1, n ≥ 0. Source: nist-135. Check: 3 %, 5 years → 0.8626.
func SinglePresent(d, n float64) (float64, error) {
	if !(d > -1 && n >= 0) {
		return 0, ErrRange
	}
	return math.Pow(1+d, -n), nil
}

// UniformPresent returns what 1 saved at the end of every year for n years is
// worth today: UPV = (1 − (1+d)^−n)/d, and n at a rate of zero.
//
// Valid for d ≥ 0, n ≥ 0. Source: nist-135. Check: 3 %, 5 years → 4.580.
func UniformPresent(d, n float64) (float64, error) {
	switch {
	case !(d >= 0 && n >= 0):
		return 0, ErrRange
	case d < 1e-9:
		return n, nil
	}
	return (1 - math.Pow(1+d, -n)) / d, nil
}

// NetPresent returns what an investment is worth today: −C + S·UPV + R·SPV,
// with C paid now, S saved at the end of every year, R what is left after n
// years.
//
// Valid as for UniformPresent. Source: nist-135.
// Check: 2500, 900 a year, 200 left, 3 %, 5 years → 1794.26.
func NetPresent(cost, saving, left unit.Money, d, n float64) (unit.Money, error) {
	u, err := UniformPresent(d, n)
	if err != nil {
		return 0, err
	}
	s, err := SinglePresent(d, n)
	return -cost + saving*unit.Money(u) + left*unit.Money(s), err
}

// Pays returns the years after which an investment has paid for itself: cost
// over yearly saving. Not known means never: where nothing is saved, nothing
// pays back.
//
// Valid for cost ≥ 0. Source: nist-135, simple payback.
// Check: 2500 at 900 a year → 2.778 years; at 0 a year → never.
func Pays(cost, saving unit.Money) unit.Maybe[float64] {
	if !(saving > 0 && cost >= 0) || math.IsInf(float64(cost/saving), 0) {
		return unit.Maybe[float64]{}
	}
	return unit.Known(float64(cost / saving))
}
