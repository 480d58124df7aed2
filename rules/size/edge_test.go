package size

import (
	"errors"
	"testing"

	"cutbrief/rules/unit"
)

func TestEdge(t *testing.T) {
	for _, c := range []struct {
		next EdgeWork
		lead Lead
		want bool // promised, not only after dressing
	}{
		{ToScrap, LedByHand, true}, {ToWeld, LedByHand, false}, {ToWeld, LedAlongEdge, true},
		{ToMachine, LedByHand, true}, {ToShow, LedAlongEdge, false}, {ToShow, LedByCarriage, true},
	} {
		if got, err := CanPromise(c.next, c.lead, 12); err != nil || got != c.want {
			t.Errorf("%+v: %v, %v", c, got, err)
		}
	}
	for _, c := range []struct {
		t, want unit.Millimetre
	}{{20, 2}, {21, 3}, {50, 3}, {51, 5}, {80, 5}, {81, 7}} {
		if need, err := EdgeNeeded(ToMachine, c.t); err != nil || need.Allowance != c.want {
			t.Errorf("%v mm: %+v, %v", c.t, need, err)
		}
	}
	for _, c := range []struct {
		u    unit.Millimetre
		want int
	}{{0.08, 1}, {0.086, 1}, {0.09, 2}, {0.5, 3}, {0.53, 4}, {1.62, 5}} { // at 12 mm: 0.086, 0.234, 0.52, 1.04, 1.62
		if got, err := SquarenessClass(c.u, 12); err != nil || got != c.want {
			t.Errorf("%v mm: %v, %v", c.u, got, err)
		}
	}
}

func TestEdgeRefuses(t *testing.T) {
	for _, bad := range []func() error{
		func() error { _, err := Squareness(0, 12); return err },
		func() error { _, err := Squareness(6, 12); return err },
		func() error { _, err := Roughness(5, 12); return err },
		func() error { _, err := Roughness(3, 0.4); return err },
		func() error { _, err := Roughness(3, 151); return err },
		func() error { _, err := SquarenessClass(1.7, 12); return err },
		func() error { _, err := SquarenessClass(-1, 12); return err },
		func() error { _, err := EdgeNeeded(EdgeWork(""), 12); return err },
		func() error { _, err := CanPromise(ToWeld, LedByHand, 200); return err },
		func() error { _, err := TrueThickness(6, 61); return err },
		func() error { _, err := TrueThickness(0, 45); return err },
		func() error { _, err := Run(6, -1); return err },
		func() error { _, err := Run(-6, 1); return err },
		func() error { _, _, err := ForMixed().Need(0); return err },
		func() error { _, err := ArcOn(-1, 1, 500); return err },
		func() error { _, err := ArcOn(1, 1, 0); return err },
		func() error { _, err := BreakerLimit(0); return err },
		func() error { _, _, err := GeneratorNeed(0); return err },
	} {
		if err := bad(); !errors.Is(err, ErrRange) || err.Error() == "" {
			t.Errorf("%v", err)
		}
	}
}
