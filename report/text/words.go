package text

import (
	"slices"
	"strings"

	"cutbrief/rules"
)

// joined puts the parts that are there behind one another.
func joined(parts ...string) string {
	var list []string
	for _, p := range parts {
		if p != "" {
			list = append(list, p)
		}
	}
	return strings.Join(list, " ")
}

// labelled writes "label: value", or the one that is there.
func labelled(label, value string) string {
	if label == "" || value == "" {
		return label + value
	}
	return label + ": " + value
}

func bracket(s string) string {
	if s == "" {
		return ""
	}
	return "(" + s + ")"
}

// confirmTitle does not speak of an order where there is nothing to order.
func confirmTitle(outcome string) string {
	if rules.Outcome(outcome) == rules.Recommended {
		return "To confirm before ordering"
	}
	return "Still open"
}

// marked is how a piece of evidence is known and what it speaks for.
func marked(label, why string) string {
	if label == "" || why == "" {
		return bracket(label + why)
	}
	return bracket(label + ", " + why)
}

func dash(s string) string {
	if s == "" {
		return ""
	}
	return "– " + s
}

// sourced writes what a fact rests on. Where the source itself says how far it
// is trusted, it is not said twice.
func sourced(source, trust string) string {
	trust = unsaid(source, trust)
	switch {
	case source == "" && trust == "":
		return ""
	case source == "" || trust == "" || strings.Contains(source, trust):
		return "[" + joined(source, onlyWithout(source, trust)) + "]"
	}
	return "[" + source + "; " + trust + "]"
}

// unsaid is the trust without the kinds that are among several sources already.
func unsaid(source, trust string) string {
	if source == trust || !strings.Contains(trust, "; ") {
		return trust
	}
	said := strings.Split(source, "; ")
	kinds := slices.DeleteFunc(strings.Split(trust, "; "), func(kind string) bool { return slices.Contains(said, kind) })
	return strings.Join(kinds, "; ")
}

// onlyWithout is the trust where there is no source to show it.
func onlyWithout(source, trust string) string {
	if source == "" {
		return trust
	}
	return ""
}
