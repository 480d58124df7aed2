package report

import (
	"math"
	"strings"

	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// CurveTick is a place on an axis, as a share of it.
type CurveTick struct {
	At    float64 `json:"at"` // 0..1
	Label string  `json:"label"`
}

// share is a thickness as a share of the axis that ends at end.
func share(t, end unit.Millimetre) float64 { return float64(t / end) }

// byStyle is the first where lengths are metric, the second where they are in
// inches.
func byStyle[T any](b *builder, metric, inch T) T {
	if b.style == unit.Inch {
		return inch
	}
	return metric
}

// thicknessAxis is what an axis of thicknesses counts.
func (b *builder) thicknessAxis() string {
	return b.print(byStyle(b, message.ID("mm thick"), "in thick").Message())
}

// thicknessTicks are the even steps of an axis of thicknesses, from nothing.
func (b *builder) thicknessTicks(end unit.Millimetre) []CurveTick {
	return append([]CurveTick{{0, "0"}}, mapped(b.thicknessSteps(end), func(t *unit.Millimetre) CurveTick {
		label := strings.TrimSuffix(strings.TrimSuffix(b.figure(millimetres(*t), unit.Nearest), " mm"), " in")
		return CurveTick{share(*t, end), b.print(message.Number(label))}
	})...)
}

// thicknessSteps are every 2, 5 or 10 mm, or every eighth, quarter or half inch.
func (b *builder) thicknessSteps(end unit.Millimetre) []unit.Millimetre {
	small, step, thin, most := unit.Millimetre(2), unit.Millimetre(5), unit.Millimetre(12), unit.Millimetre(35)
	if b.style == unit.Inch {
		small, step, thin, most = 3.175, 6.35, 13, 40 // ⅛ and ¼ in, exact (nist-sp-811)
	}
	switch {
	case end < thin:
		step = small
	case end > most:
		step *= 2
	}
	var list []unit.Millimetre
	for t := step; t <= end; t += step {
		list = append(list, t)
	}
	return list
}

// upTicks are even ticks from nothing to the first that is no less than most.
func (b *builder) upTicks(most float64) (ticks []CurveTick, top float64) {
	step := evenStep(most)
	top = max(math.Ceil(most/step-1e-9), 1) * step
	for i := 0.0; i*step <= top*1.001; i++ {
		ticks = append(ticks, CurveTick{i * step / top, b.print(message.Number(short(i * step)))})
	}
	return ticks, top
}

// evenStep is 1, 2 or 5 of some power of ten, so that an axis has three to six
// ticks.
func evenStep(most float64) float64 {
	if !(most > 0) {
		return 1
	}
	ten := math.Pow(10, math.Floor(math.Log10(most/2)))
	switch {
	case 5*ten <= most/2:
		return 5 * ten
	case 2*ten <= most/2:
		return 2 * ten
	}
	return ten
}
