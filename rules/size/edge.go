package size

import (
	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// squareness holds base and slope of each range of u, in mm over thickness in mm.
// Source: iso-9013.
var squareness = [...][2]float64{{0.05, 0.003}, {0.15, 0.007}, {0.4, 0.01}, {0.8, 0.02}, {1.2, 0.035}}

// The thickness in mm that plasma cutting is classed for. Source: iso-9013.
const thinnestClassed, thickestClassed = 0.5, 150

// Squareness returns the largest perpendicularity or angularity tolerance u in
// mm of range 1 to 5 at a plate thickness in mm: base + slope·t.
//
// Valid for ranges 1 to 5 and 0.5 to 150 mm. Source: iso-9013.
// Check: range 5 at 12 mm → 1.2 + 0.035·12 = 1.62 mm.
func Squareness(class int, t unit.Millimetre) (unit.Millimetre, error) {
	u, err := classed(squareness[:], class, t)
	return unit.Millimetre(u), err
}

func classed(rows [][2]float64, class int, t unit.Millimetre) (float64, error) {
	if err := within("range", float64(class), 1, float64(len(rows)), ""); err != nil {
		return 0, err
	}
	if err := within("thickness", float64(t), thinnestClassed, thickestClassed, "mm"); err != nil {
		return 0, err
	}
	return rows[class-1][0] + rows[class-1][1]*float64(t), nil
}

// EdgeWork is what happens to the edge next. Its text is its identifier in saved
// files.
type EdgeWork string

// The next operations, least demanding first.
const (
	ToScrap   EdgeWork = "scrap"
	ToWeld    EdgeWork = "welded"
	ToMachine EdgeWork = "machined"
	ToShow    EdgeWork = "painted-seen"
)

// EdgeNeed is what the next operation asks of a cut edge.
type EdgeNeed struct {
	Squareness int             // ISO 9013 range of u it needs at most; 0 if it asks none
	Roughness  int             // ISO 9013 range of Rz5; 0 if it asks none
	Allowance  unit.Millimetre // metal to leave on for machining
	Words      message.ID      // what it means, for a reader
}

// EdgeNeeded returns what the next operation asks of an edge on a plate t mm
// thick.
//
// Valid for 0.5 to 150 mm. Source: range 4 for both characteristics for welded
// steelwork is en-1090-2 (EXC2, EXC3), from memory; the machining allowance is
// iso-9013, 2 mm up to 20 mm and 7 mm above 80 mm, and from memory 3 mm to 50
// and 5 mm to 80; the rest is practice.
// Check: machined, 12 mm → 2 mm left on; welded → ranges 4 and 4.
func EdgeNeeded(next EdgeWork, t unit.Millimetre) (EdgeNeed, error) {
	if err := within("thickness", float64(t), thinnestClassed, thickestClassed, "mm"); err != nil {
		return EdgeNeed{}, err
	}
	switch next {
	case ToScrap:
		return EdgeNeed{Words: "the piece only has to come apart"}, nil
	case ToWeld:
		return EdgeNeed{4, 4, 0, "welding needs a clean edge with an even gap; slag removed, and ground where the drawing says so"}, nil
	case ToMachine:
		return EdgeNeed{0, 0, allowance(t), "leave metal on: the machine takes the hardened edge off"}, nil
	case ToShow:
		return EdgeNeed{3, 3, 0, "an edge that is seen wants guiding, fresh consumables, and dressing after the cut"}, nil
	}
	return EdgeNeed{}, ErrRange
}

// allowance in mm by plate thickness. Source: iso-9013; the two middle steps
// are from memory, iso-9013-unread.
func allowance(t unit.Millimetre) unit.Millimetre {
	switch {
	case t <= 20:
		return 2
	case t <= 50:
		return 3
	case t <= 80:
		return 5
	}
	return 7
}

// Lead is how the torch is guided. Its text is its identifier in saved files.
type Lead string

// The ways to lead a torch.
const (
	LedByHand     Lead = "by-hand"
	LedAlongEdge  Lead = "guided"     // straight edge, template, radius guide
	LedByCarriage Lead = "mechanised" // carriage or table
)

// Fastest is the fastest the torch is led so, whatever the arc could do, in
// mm/min.
func (l Lead) Fastest() unit.MillimetrePerMinute {
	switch l {
	case LedAlongEdge:
		return AlongEdge
	case LedByCarriage:
		return OnCarriage
	}
	return FreeHand
}

// promise is the range of u and of Rz5 that a way to lead the torch can be relied on for.
// Source: practice. By hand stand-off and tilt set the lean, and each degree of
// tilt adds 0.21 mm over 12 mm, so nothing better than range 5 is promised.
func promise(lead Lead) (squareness, roughness int) {
	switch lead {
	case LedAlongEdge:
		return 4, 3
	case LedByCarriage:
		return 3, 2
	}
	return 5, 4
}

// CanPromise says whether a torch led this way gives the edge the next operation
// needs on a plate t mm thick; if not, it takes grinding or dressing after the cut.
//
// Valid for 0.5 to 150 mm. Source: practice; ranges by iso-9013.
// Check: welded, by hand → only dressed (range 5, needs 4); welded, along an
// edge → promised; scrap, by hand → promised.
func CanPromise(next EdgeWork, lead Lead, t unit.Millimetre) (bool, error) {
	need, err := EdgeNeeded(next, t)
	u, rz := promise(lead)
	return err == nil && (need.Squareness == 0 || u <= need.Squareness) && (need.Roughness == 0 || rz <= need.Roughness), err
}
