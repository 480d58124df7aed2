package report

import (
	"slices"

	"cutbrief/rules"
)

// critical names the requirement that decides, and the evidence for it.
func (b *builder) critical() (string, []Line) {
	c := &b.result.Critical
	if c.Requirement == "" {
		return "Not clear yet", []Line{{Label: "to ask", Value: "Nothing said so far points to one requirement. Ask what annoys them most about today's way."}}
	}
	text := capital(RequirementName(c.Requirement))
	if len(c.Tie) > 0 {
		var names []string
		for _, r := range c.Tie {
			names = append(names, RequirementName(r))
		}
		text += ", and as strongly " + series(names)
	}
	if !c.Overruled {
		return text, b.evidence(c.Requirement, c.Tie)
	}
	list := []Line{{Label: "the rep's choice", Value: stop("Chosen by the rep: " + plain(c.Reason))}}
	if c.Instead != "" && c.Instead != c.Requirement {
		list = append(list, Line{Label: "the answers", Value: "The answers alone point to " + RequirementName(c.Instead) + "."})
	}
	return text, append(list, b.evidence(c.Requirement, nil)...)
}

// evidence lists the sentences that speak for the requirements that stand.
func (b *builder) evidence(first rules.Requirement, ties []rules.Requirement) []Line {
	var list []Line
	for _, e := range b.result.Critical.Evidence {
		if e.Requirement != first && !slices.Contains(ties, e.Requirement) {
			continue
		}
		l := Line{Label: "inferred", Value: string(e.Sentence), Why: "speaks for " + RequirementName(e.Requirement), Source: cited(e.Source), Trust: trusted(e.Source)}
		if e.Said {
			l.Label = "said"
		}
		list = append(list, l)
	}
	return list
}
