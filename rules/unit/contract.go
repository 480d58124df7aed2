package unit

import "errors"

// Reading is what a text was understood to mean.
type Reading struct {
	Quantity Quantity
	Bare     bool   // the text had no unit; the default was taken
	Unit     string // the unit read or taken, such as "mm", "in", "ga"
}

// Sheet says which gauge table a metal's sheet is sold by.
type Sheet string

// The gauge tables. NoGauge metals are not sold by gauge.
const (
	NoGauge       Sheet = ""
	SteelGauge    Sheet = "steel"      // manufacturers' standard gauge: 41.82 lb/ft² per inch
	GalvanGauge   Sheet = "galvanised" // the same with 2.5 oz/ft² of zinc
	StainGauge    Sheet = "stainless"  // 15 USC 206
	AluminumGauge Sheet = "aluminium"  // ASTM B258 (also brass and copper sheet)
)

var errTODO = errors.New("not written yet")

// Read understands text as a quantity of kind k. A number without a unit takes
// style's unit for k. Sheet is used for thicknesses given as gauge.
func Read(text string, k Kind, style Style, sheet Sheet) (Reading, error) {
	return Reading{}, errTODO
}

// Show writes q for a reader in style, rounded once in direction r, with its
// unit: "9.5 mm", "3/8 in", "20 in/min", "45 A", "35 %".
func Show(q Quantity, style Style, r Round) string { return "" }
