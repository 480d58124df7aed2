package report

import (
	"slices"

	"cutbrief/rules"
)

// Topics are the names a derivation may be asked by.
func Topics() []string {
	return append([]string{"recommendation", "need", "metals", "critical", "margins", "excluded", "open"},
		mapped(rules.Table(), func(r *rules.Rule) string { return string(r.ID) })...)
}

// IsTopic reports whether there are visits in which a name is a topic.
func IsTopic(name string) bool {
	return slices.Contains(Topics(), name)
}
