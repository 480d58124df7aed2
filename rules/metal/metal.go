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
