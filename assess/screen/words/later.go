package words

import (
	"fmt"
	"slices"

	"cutbrief/assess"
	"cutbrief/rules"
)

// PutOff says which questions of a group are put off, and what asks them now:
// "Esc asks".
func PutOff(g assess.Group, off []assess.Step, asks string) string {
	title := "“" + GroupTitle(g) + "”"
	switch len(off) {
	case 0:
		return title + ": every question is answered"
	case 1:
		return title + ", put off: " + off[0].Name().String() + ". It stays open and comes back last; " + asks + " it now"
	}
	return fmt.Sprintf("%s, put off: %d questions, from %s to %s. They stay open and come back last; %s them now%s",
		title, len(off), off[0].Name().String(), off[len(off)-1].Name().String(), asks, whoKnows(off))
}

// whoKnows says whom to ask where the power is among what is put off.
func whoKnows(off []assess.Step) string {
	if slices.ContainsFunc(off, func(s assess.Step) bool { return s.Question.ID == rules.FactBreaker }) {
		return ". The electrician can tell of the power"
	}
	return ""
}

// LeftOut says which questions of a group are left out, and how to get at them.
func LeftOut(g assess.Group, out []assess.Step) string {
	switch len(out) {
	case 0:
		return "“" + GroupTitle(g) + "” is left out: no question of it was open"
	case 1:
		return "“" + GroupTitle(g) + "” is left out: 1 question, " + out[0].Name().String()
	}
	return fmt.Sprintf("“%s” is left out: %d questions, from %s to %s", GroupTitle(g), len(out), out[0].Name().String(), out[len(out)-1].Name().String())
}

// Settled says that the interview may end.
const Settled = "no likely answer to what is left could change the recommendation"
