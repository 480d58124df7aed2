package cost

import (
	"errors"
	"math"

	"cutbrief/rules/unit"
)

// Hour is a time in hours, mostly that of one metre of cut.
type Hour float64

// CubicMetre is a volume of gas in m³ at the state it is sold by.
type CubicMetre float64

// ErrRange means that a formula was asked outside where it holds.
var ErrRange = errors.New("a figure is zero or less, where only more makes sense")

// positive refuses what is not above zero; NaN is not.
func positive(figures ...float64) error {
	for _, f := range figures {
		if !(f > 0) {
			return ErrRange
		}
	}
	return nil
}

// CutHours returns the working time in h that a metre of cut takes, pauses
// within the cut included: h = 1000/(60·v·f), v the speed in mm/min, f the
// operating factor, the share of that time in which it really cuts.
//
// Valid for v > 0, 0 < f ≤ 1. Source: physics.
// Check: 500 mm/min at factor 0.5 → 1000/(60·500·0.5) = 0.06667 h.
func CutHours(v unit.MillimetrePerMinute, operating float64) (Hour, error) {
	if err := positive(float64(v), operating); err != nil || operating > 1 {
		return 0, ErrRange
	}
	return Hour(1000 / (60 * float64(v) * operating)), nil
}

// StartHours returns the time in h a metre takes for what is done once a cut,
// such as set-up, preheating or piercing: h = s/(3600·L), s the seconds a cut, L
// its length in m.
//
// Valid for s ≥ 0, L > 0. Source: physics.
// Check: 10 s for every 0.5 m → 10/(3600·0.5) = 0.005556 h.
func StartHours(s unit.Second, length unit.Metre) (Hour, error) {
	if err := positive(float64(length)); err != nil || !(s >= 0) {
		return 0, ErrRange
	}
	return Hour(float64(s) / 3600 / float64(length)), nil
}

// Labour returns what working time costs: hours times the cost of an hour.
//
// Valid for h, wage ≥ 0. Source: physics. Check: 0.06667 h at 60 → 4.00.
func Labour(h Hour, wage unit.Money) (unit.Money, error) {
	if !(h >= 0 && wage >= 0) {
		return 0, ErrRange
	}
	return unit.Money(h) * wage, nil
}

// GasUsed returns the gas in m³ that flows in a time: V = q·60·h/1000, q in
// l/min.
//
// Valid for q, h ≥ 0. Source: physics.
// Check: 45 l/min for 0.0333 h → 45·2/1000 = 0.09 m³.
func GasUsed(q unit.LitrePerMinute, h Hour) (CubicMetre, error) {
	if !(q >= 0 && h >= 0) {
		return 0, ErrRange
	}
	return CubicMetre(float64(q) * 60 * float64(h) / 1000), nil
}

// SupplyPower returns the power in kW a plasma source takes while it cuts:
// P = U·I/(1000·η), U and I of the arc in V and A, η the efficiency.
//
// Valid for U, I > 0, 0 < η ≤ 1. Source: physics.
// Check: 120 V, 40 A, 0.85 → 5.647 kW.
func SupplyPower(u unit.Volt, i unit.Ampere, efficiency float64) (unit.Kilowatt, error) {
	if err := positive(float64(u), float64(i), efficiency); err != nil || efficiency > 1 {
		return 0, ErrRange
	}
	return unit.Kilowatt(float64(u) * float64(i) / 1000 / efficiency), nil
}

// AirPower returns the power in kW a compressor takes for a flow of free air:
// P = q/1000·p, q in l/min, p the specific power in kW per m³/min.
//
// Valid for q, p ≥ 0. Source: doe-air for usual figures, 6.4 to 8.5, from memory;
// physics for the product. Check: 200 l/min at 7 kW per m³/min → 1.4 kW.
func AirPower(q unit.LitrePerMinute, specific float64) (unit.Kilowatt, error) {
	if !(q >= 0 && specific >= 0) {
		return 0, ErrRange
	}
	return unit.Kilowatt(float64(q) / 1000 * specific), nil
}

// Energy returns what a power costs over a time, price per kWh.
//
// Valid for P, h, price ≥ 0. Source: physics.
// Check: 1.4 kW for 1 h at 0.128 → 0.1792.
func Energy(p unit.Kilowatt, h Hour, price unit.Money) (unit.Money, error) {
	if !(p >= 0 && h >= 0 && price >= 0) {
		return 0, ErrRange
	}
	return unit.Money(float64(p)*float64(h)) * price, nil
}

// Worn returns the share of a set of consumables that starting and burning
// wear away: starts/N + h/H, N and H the starts and the arc hours a set lasts.
// The two kinds of wear are taken to add up.
//
// Valid for N, H > 0, starts and h ≥ 0. Source: practice.
// Check: 60 starts of 300 and 1 h of 2 h → 0.2 + 0.5 = 0.7.
func Worn(starts, startsLast float64, h, hoursLast Hour) (float64, error) {
	if err := positive(startsLast, float64(hoursLast)); err != nil || !(starts >= 0 && h >= 0) {
		return 0, ErrRange
	}
	return starts/startsLast + float64(h/hoursLast), nil
}

// Bladed returns what discs or blades cost a metre of cut: the area cut, which
// is 10·t cm² for t in mm, over the area in cm² that one cuts, times its price.
//
// Valid for t, area > 0, price ≥ 0. Source: geometry.
// Check: 6 mm, 50 cm² a disc, 2.00 a disc → 60/50·2 = 2.40.
func Bladed(t unit.Millimetre, area float64, price unit.Money) (unit.Money, error) {
	if err := positive(float64(t), area); err != nil || !(price >= 0) {
		return 0, ErrRange
	}
	return unit.Money(10*float64(t)/area) * price, nil
}

// Shared returns what a metre bears of a cost that many metres share: a set of
// knives over its life, a trip over its load, a year's rental over the year.
//
// Valid for metres > 0, price ≥ 0. Source: physics.
// Check: 50 a trip with 30 m → 1.667.
func Shared(price unit.Money, metres unit.Metre) (unit.Money, error) {
	if err := positive(float64(metres)); err != nil || !(price >= 0) {
		return 0, ErrRange
	}
	return price / unit.Money(metres), nil
}

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
