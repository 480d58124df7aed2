package demonstration

import (
	"slices"

	"cutbrief/rules"
	"cutbrief/rules/cite"
	"cutbrief/rules/message"
)

// Warning is a caution with when it is given, as it stands in the table.
type Warning struct {
	Caution
	When message.ID // such as "copper or brass is cut"; "" for always
}

// Warnings returns every caution in the order they are printed, the lens first,
// which is worded here for hand-held systems.
func Warnings() []Warning {
	list := []Warning{{Caution: lens(nil)}}
	for _, w := range warnings {
		list = append(list, Warning{w.caution(), w.when})
	}
	return list
}

// Listed is a cut of the catalogue as it stands there, whoever the customer is.
type Listed struct {
	ID      string
	Name    message.ID // "" where it depends on the customer
	Proves  []rules.Requirement
	Minutes float64
	See     message.ID
	Fails   message.ID
	Avoid   message.ID
	Source  cite.Ref
}

// Cuts returns the catalogue, from thin to heavy.
func Cuts() []Listed {
	var list []Listed
	for i := range catalogue {
		p := &catalogue[i]
		list = append(list, Listed{p.id, p.name, slices.Clone(p.proves), p.minutes, p.see, p.fails, p.avoid, p.source})
	}
	return list
}
