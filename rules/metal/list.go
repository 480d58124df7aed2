package metal

import (
	"cutbrief/rules/cite"
	"cutbrief/rules/unit"
)

// list is in the order metals are offered. Practice is common practice, no
// source. Equivalence blends it with the energy balance of rules/size, never
// below practice, rounded up to two places; a test there holds the two together.
var list = []Metal{
	{ID: MildSteel, Name: "mild steel", Sheet: unit.SteelGauge, Practice: unit.Known(1.0), Equivalence: unit.Known(1.0), Basis: cite.Ref{Source: "practice"}, Note: "the metal ratings are given in"},
	{ID: Galvanised, Name: "coated or galvanised steel", Sheet: unit.GalvanGauge, Practice: unit.Known(1.0), Equivalence: unit.Known(1.0), Basis: cite.Ref{Source: "practice"}, Note: "the coating costs no capacity worth counting; it costs fume and contact"},
	{ID: Stainless, Name: "stainless", Sheet: unit.StainGauge, Practice: unit.Known(1.15), Equivalence: unit.Known(1.15), Basis: cite.Ref{Source: "practice"}, Note: "about as much heat as mild steel, and no help from oxidation"},
	{ID: Aluminium, Name: "aluminium", Sheet: unit.AluminumGauge, Practice: unit.Known(1.25), Equivalence: unit.Known(1.25), Basis: cite.Ref{Source: "practice"}, Note: "melts easily but carries heat away"},
	{ID: Copper, Name: "copper or brass", Sheet: unit.AluminumGauge, Practice: unit.Known(2.0), Equivalence: unit.Known(2.27), Basis: cite.Ref{Source: "practice"}, Note: "copper carries heat away faster than anything else in the shop; brass cuts far more like mild steel, so for brass this is much on the safe side"},
	{ID: CastIron, Name: "cast iron", Sheet: unit.NoGauge, Practice: unit.Known(1.25), Equivalence: unit.Known(1.25), Basis: cite.Ref{Source: "practice"}, Note: "cuts rough and slower than steel; may crack"},
	{ID: Other, Name: "other metal", Sheet: unit.NoGauge, Note: "no figures: ask, or try the customer's own piece"},
}

// List returns all metals in the order they are offered.
func List() []Metal { return append([]Metal(nil), list...) }

// Find returns the metal with this identifier.
func Find(id ID) (Metal, bool) {
	for i := range list { // by index: a row is large, and this is asked at every key
		if list[i].ID == id {
			return list[i], true
		}
	}
	return Metal{}, false
}
