package casebook

// Act is one thing a trainee can do with the customer.
type Act string

// The acts.
const (
	Ask     Act = "ask"     // ask the question of the catalogue
	Again   Act = "again"   // ask for a figure, or for a better answer
	Explain Act = "explain" // say in plain words what the question means
	Repeat  Act = "repeat"  // repeat back what is noted
	Measure Act = "measure" // hold a caliper to the piece
	Plate   Act = "plate"   // look at the compressor's plate
	Breaker Act = "breaker" // ask to see the breaker and the panel's label
)

// acts lists what each costs in minutes. Common practice, no source: a question
// takes a minute, an explanation two, a walk to a plate three.
var acts = []struct {
	id      Act
	minutes int
}{
	{Ask, 1}, {Again, 1}, {Repeat, 1}, {Explain, 2}, {Measure, 3}, {Plate, 3}, {Breaker, 3},
}

// Acts returns every act, the cheapest first.
func Acts() []Act {
	var list []Act
	for _, a := range acts {
		list = append(list, a.id)
	}
	return list
}

// Minutes is what an act costs of the customer's patience.
func (a Act) Minutes() int {
	for _, row := range acts {
		if row.id == a {
			return row.minutes
		}
	}
	return 0
}
