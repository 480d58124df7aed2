package assess

import "cutbrief/rules/metal"

// vocabulary holds the words of the format: names of fields, questions, options,
// states, metals and the commonest units. Most texts of a saved visit are among
// them, and need not be copied out of the file one by one. It is only ever read.
var vocabulary = func() map[string]string {
	words := map[string]string{}
	add := func(list ...string) {
		for _, w := range list {
			words[w] = w
		}
	}
	add("format", "version", "id", "created", "updated", "revision", "demo", "skipped", "overrule", "recommended", "answers")
	add("outcome", "system", "firm", "critical", "rated_mm", "rules", "range")
	add(outcomes...)
	add("question", "metal", "said", "unit", "chosen", "state", "note", "requirement", "reason")
	add("mm", "in", "m", "ft", "none", "0", formatName)
	add(states...)
	add(requirements...)
	for _, q := range catalogue {
		add(string(q.ID))
		add(optionNames(q.Options)...)
	}
	for _, m := range metal.List() {
		add(string(m.ID))
	}
	return words
}()
