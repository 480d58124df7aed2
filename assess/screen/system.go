package screen

import (
	"strings"

	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
	"cutbrief/rules/tabular"
)

// AskSystem asks for one system field by field. Done is false where the input ends,
// or whoever answers has had enough; possible is false for one that cannot be as it
// was written down.
func (l *Lines) AskSystem(entry *system.Entry) (added system.System, done, possible bool) {
	for _, field := range entry.Fields() {
		l.Put("{1}: {2}", message.Name(field.Name), field.Means)
		if !l.askField(entry, field) {
			return added, false, false
		}
	}
	offered, _ := entry.Range("")
	added = offered.Systems[len(offered.Systems)-1]
	for _, f := range rules.Implausible(offered) {
		if f.Row != added.ID {
			continue
		}
		if l.Say(f.Said()); f.Severity == system.Error {
			return added, true, false
		}
	}
	return added, true, true
}

// askField asks for one field until what is said can be used.
func (l *Lines) askField(entry *system.Entry, field system.Field) bool {
	for {
		said, more := l.Ask()
		if !more || strings.EqualFold(strings.TrimSpace(said), "quit") {
			return false
		}
		found := entry.Set(field.Name, said)
		for _, f := range found {
			l.Say(f.Said())
		}
		if tabular.Count(found, tabular.Error) == 0 {
			return true
		}
	}
}
