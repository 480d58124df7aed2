package assess

import (
	"slices"

	"cutbrief/rules"
)

// circumstances are the answers on which it hangs whether a question can matter,
// found in one pass; nil where there is none.
type circumstances struct {
	busyCuts, start, features, source, cord, drier, today, metals, length, gas, annoys *Answer
}

// circumstances looks for them.
func (v *Visit) circumstances() *circumstances {
	c := &circumstances{}
	for i := range v.Answers {
		if a := &v.Answers[i]; a.Metal == "" {
			if at := c.place(a.Question); at != nil && *at == nil {
				*at = a
			}
		}
	}
	return c
}

// place is where an answer is kept, nil if nothing hangs on it.
func (c *circumstances) place(f rules.Fact) **Answer {
	switch f {
	case rules.FactBusyCuts:
		return &c.busyCuts
	case rules.FactStart:
		return &c.start
	case rules.FactFeatures:
		return &c.features
	case rules.FactSource:
		return &c.source
	case rules.FactCord:
		return &c.cord
	case rules.FactDrier:
		return &c.drier
	case rules.FactToday:
		return &c.today
	case rules.FactMetals:
		return &c.metals
	case rules.FactCutLength:
		return &c.length
	case rules.FactGasYear:
		return &c.gas
	case rules.FactAnnoysMost:
		return &c.annoys
	}
	return nil
}

// isTold reports whether something known was answered.
func (a *Answer) isTold() bool { return a != nil && a.State != Unknown }

// chose reports whether an option was chosen.
func (a *Answer) chose(option string) bool { return a.isTold() && slices.Contains(a.Chosen, option) }

// chose reports whether an option of a question was chosen.
func (v *Visit) chose(f rules.Fact, option string) bool {
	i := v.index(rules.Asked{Fact: f})
	return i >= 0 && v.Answers[i].chose(option)
}

// These decide whether a question can matter. A question whose condition is
// itself not answered is asked if any answer to the condition could make it
// matter and nothing would be learned by waiting.

func busy(c *circumstances) bool {
	return c.busyCuts == nil || c.busyCuts.isTold() && !isNone(c.busyCuts.Said)
}

func pierces(c *circumstances) bool {
	return c.start.chose(string(rules.InPlate)) || c.start.chose(string(rules.Anywhere))
}

func bevels(c *circumstances) bool { return c.features.chose(string(rules.Bevels)) }

func mains(c *circumstances) bool { return !c.source.chose(string(rules.GenSet)) }

func generator(c *circumstances) bool {
	return c.source.chose(string(rules.GenSet)) || c.source.chose(string(rules.MainsGen))
}

func cord(c *circumstances) bool { return c.cord == nil || !isNone(c.cord.Said) }

func air(c *circumstances) bool { return !c.drier.chose(string(rules.NoAir)) }

func annoyed(c *circumstances) bool {
	return c.annoys != nil && len(c.annoys.Chosen) > 0 && c.annoys.Chosen[0] != string(rules.Nothing)
}
