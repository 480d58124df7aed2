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

// About keeps one topic of a derivation, nil if it has none of that name, and
// lists those that it has.
func About(reasons []Reason, topic string) (one []Reason, topics []string) {
	for i, r := range reasons {
		if r.Topic == topic {
			one = reasons[i : i+1]
		}
		topics = append(topics, r.Topic)
	}
	return one, topics
}
