package report

import (
	"strings"

	"cutbrief/rules/demonstration"
	"cutbrief/rules/unit"
)

// leaving words the checks before leaving, with the plates to cut.
func (b *builder) leaving() []Line {
	return b.items(demonstration.BeforeLeaving(b.job, b.result, b.showing))
}

// onSite words the checks at the site, with the pressure the system asks for.
func (b *builder) onSite() []Line { return b.items(demonstration.AtSite(b.job, b.result, b.showing)) }

func (b *builder) items(items []demonstration.Item) []Line {
	var list []Line
	for _, i := range items {
		list = append(list, Line{Label: plain(strings.ReplaceAll(i.ID, "-", " ")), Value: joinText(string(i.Text), b.detail(i.ID)), Source: cited(i.Source), Trust: trusted(i.Source)})
	}
	return list
}

// detail adds to a line what is this visit's own.
func (b *builder) detail(id string) string {
	switch id {
	case "plates":
		return b.plates()
	case "air":
		if b.recommended() && b.result.First.System.AirPressure > 0 {
			return "The system asks for " + b.needed(unit.Quantity{Value: float64(b.result.First.System.AirPressure), Kind: unit.Pressure}) + " at its inlet."
		}
	}
	return ""
}

// plates lists what to cut to size, each once.
func (b *builder) plates() string {
	var list []string
	for _, c := range b.plan {
		if c.ID != "own-piece" {
			list = append(list, b.pieceOf(c.Metal, c.Thickness))
		}
	}
	if len(list) == 0 {
		return ""
	}
	return "Here: " + strings.Join(unique(list), ", ") + "."
}

func joinText(text, more string) string {
	if more == "" {
		return text
	}
	return text + " " + more
}
