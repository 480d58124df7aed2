// Package metal is the list of metals a customer may cut, as data: name, gauge
// table, and how hard it is to cut against mild steel, each with its basis. It
// computes nothing beyond looking a metal up. The rules and the record of a
// visit import it.
package metal

import (
	"cutbrief/rules/cite"
	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// ID is the stable identifier of a metal, as saved in files.
type ID string

// The metals. Other is a metal we hold no figures for: unknown, never mild steel.
const (
	MildSteel  ID = "mild-steel"
	Galvanised ID = "galvanised-steel" // coated, painted or galvanised steel
	Stainless  ID = "stainless"
	Aluminium  ID = "aluminium"
	Copper     ID = "copper-brass"
	CastIron   ID = "cast-iron"
	Other      ID = "other"
)

// Metal is one row of the list.
type Metal struct {
	ID    ID
	Name  message.ID // for a reader, lower case: "mild steel"
	Sheet unit.Sheet // gauge table its sheet is sold by
	// Equivalence: a thickness t of this metal asks of a system what
	// Equivalence·t of mild steel asks. Not known for Other.
	Equivalence unit.Maybe[float64]
	Practice    unit.Maybe[float64] // what the trade counts it for, before the energy balance
	Basis       cite.Ref            // what Equivalence rests on
	Note        message.ID          // how Equivalence was chosen, one sentence
}

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

// Name is what a metal is called; one that is not listed, by its identifier.
func (id ID) Name() message.Message {
	if m, ok := Find(id); ok {
		return m.Name.Message()
	}
	return message.Text(string(id))
}
