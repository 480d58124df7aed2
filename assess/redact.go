package assess

import (
	"slices"

	"cutbrief/rules/metal"
)

// Redacted stands where words were that a visit cannot be without.
const Redacted = "(removed)"

// Redact returns a copy without anybody's name or words, to share as a case: it
// is sized like the visit itself. What stays is marked in the rows of the format, so
// that a field nobody thought of goes: figures and choices that are understood, with how they are
// known; dates; identifiers of systems and cuts; results and outcomes. The copy
// is another visit, with the identifier given.
//
// Company, representative, who decides and when, and the reason of an overrule
// become "(removed)". Contact, place, operator, the customer's words, all notes,
// all of what was said about demonstrations, who does the next step, answers to
// unknown questions and unknown fields are left out.
func Redact(v *Visit, id string) *Visit {
	c := &Visit{}
	visitObject().share(c, v)
	c.ID, c.Revision = id, 1
	c.Created, c.Updated = v.Created.UTC(), v.Updated.UTC()
	if c.Overrule != nil {
		c.Overrule.Reason = Redacted
	}
	for _, a := range v.Answers {
		if kept, ok := v.redacted(a); ok {
			c.Answers = append(c.Answers, kept)
		}
	}
	return c
}

// redacted is an answer without words, and whether anything of it stays.
func (v *Visit) redacted(a Answer) (kept Answer, ok bool) {
	q, known := Find(a.Question)
	if _, is := metal.Find(a.Metal); !known || a.Metal != "" && !is {
		return Answer{}, false
	}
	kept = Answer{Question: a.Question, Metal: a.Metal, State: a.State}
	switch {
	case a.State == Unknown:
		return kept, true
	case q.Form == FormText || q.Form == FormLong:
		kept.Said = Redacted
		return kept, !q.Optional
	case q.Form == FormOne || q.Form == FormSeveral:
		kept.Chosen = slices.Clone(a.Chosen)
	default:
		kept.Said, kept.Unit = a.Said, a.Unit
	}
	_, err := meaningOf(Step{q, a.Metal}, &kept, v.Style())
	return kept, err == nil
}
