// Package price is the list of prices a cost is worked out with: the
// customer's or the rep's own, read from a CSV file and checked line by line,
// or the built-in one, which is invented and says so. Every price has a low, a
// likely and a high figure. What is not in a list is not known, never zero.
package price

import "slices"

// Spread is what a number may be: at least, most likely, at most.
type Spread struct{ Low, Likely, High float64 }

// Sure is a spread of one value.
func Sure(v float64) Spread { return Spread{v, v, v} }

// Times multiplies all three by a factor above zero.
func (s Spread) Times(f float64) Spread { return Spread{s.Low * f, s.Likely * f, s.High * f} }

// Basis says where a price comes from, worded as in a file.
type Basis string

// The bases of a price. Practice and Invented are assumptions.
const (
	Customer Basis = "customer" // the customer's own figure
	Own      Basis = "own"      // the rep's own figure
	Public   Basis = "public"   // public statistics; the note says which and of when
	Practice Basis = "practice" // common practice, no source
	Invented Basis = "invented" // for the demo
)

// bases in the order they are offered.
var bases = []Basis{Customer, Own, Public, Practice, Invented}

// Assumed reports whether nobody stands behind the figure.
func (b Basis) Assumed() bool { return b == Practice || b == Invented }

// Price is one line of a list, in the unit of its item.
type Price struct {
	Spread
	Basis Basis
	Note  string
}

// List is a price list and where it came from.
type List struct {
	Name     string // "built-in price list", or the file's base name
	Currency string // such as "EUR"; "" if none is given
	Date     string // as 2026-01-31; "" if none is given
	Place    string
	Invented bool // some price in it is invented

	prices map[ID]Price
}

// Get returns a price, and whether the list has it.
func (l List) Get(id ID) (Price, bool) {
	p, ok := l.prices[id]
	return p, ok
}

// Owned reports whether some price in the list is the customer's or the rep's
// own.
func (l List) Owned() bool {
	for _, p := range l.prices {
		if p.Basis == Customer || p.Basis == Own {
			return true
		}
	}
	return false
}

// With returns the list with one price changed, such as one the customer told.
func (l List) With(id ID, p Price) List {
	changed := make(map[ID]Price, len(l.prices)+1)
	for k, v := range l.prices {
		changed[k] = v
	}
	changed[id] = p
	l.prices = changed
	return l
}

// IDs returns the items the list has, in the order of Items.
func (l List) IDs() []ID {
	var ids []ID
	for _, i := range Items() {
		if _, ok := l.prices[i.ID]; ok {
			ids = append(ids, i.ID)
		}
	}
	return ids
}

// isBasis reports whether a text names a basis.
func isBasis(s string) bool { return slices.Contains(bases, Basis(s)) }
