package assess

import (
	"slices"

	"cutbrief/rules"
)

// These decide whether a question can matter. A question whose condition is
// itself not answered is asked if any answer to the condition could make it
// matter and nothing would be learned by waiting.

func busy(v *Visit) bool {
	a, ok := v.Answer(rules.Asked{Fact: rules.FactBusyCuts})
	return !ok || (a.State != Unknown && !isNone(a.Said))
}

func pierces(v *Visit) bool {
	return v.chose(rules.FactStart, string(rules.InPlate)) || v.chose(rules.FactStart, string(rules.Anywhere))
}

func bevels(v *Visit) bool { return v.chose(rules.FactFeatures, string(rules.Bevels)) }

func mains(v *Visit) bool { return !v.chose(rules.FactSource, string(rules.GenSet)) }

func generator(v *Visit) bool {
	return v.chose(rules.FactSource, string(rules.GenSet)) || v.chose(rules.FactSource, string(rules.MainsGen))
}

func cord(v *Visit) bool {
	a, ok := v.Answer(rules.Asked{Fact: rules.FactCord})
	return !ok || !isNone(a.Said)
}

func air(v *Visit) bool { return !v.chose(rules.FactDrier, string(rules.NoAir)) }

func annoyed(v *Visit) bool {
	a, ok := v.Answer(rules.Asked{Fact: rules.FactAnnoysMost})
	return ok && len(a.Chosen) > 0 && a.Chosen[0] != string(rules.Nothing)
}

// chose reports whether an option of a question was chosen.
func (v *Visit) chose(f rules.Fact, option string) bool {
	a, ok := v.Answer(rules.Asked{Fact: f})
	return ok && a.State != Unknown && slices.Contains(a.Chosen, option)
}
