package store

import (
	"io"

	"cutbrief/rules"
	"cutbrief/rules/cost"
	"cutbrief/rules/message"
	"cutbrief/rules/message/catalog"
	"cutbrief/rules/system"
	"cutbrief/rules/tabular"
)

// Systems are the lists of systems to offer. Every row is judged by itself and by
// whether an arc of its output can melt what its figures promise.
var Systems = List[system.Range]{
	Name: "systems", Command: "systems", BuiltIn: system.Demo,
	Read: func(r io.Reader, name string) (system.Range, []tabular.Finding) {
		offered, findings := system.Read(r, name)
		return offered, offered.Merge(findings, rules.Implausible(offered))
	},
	Usable: func(r system.Range) message.Message {
		return message.Counted(len(r.Systems), "{1} system", "{1} systems")
	},
}

// Prices are the lists of prices, nil for the built-in one, which is read where a
// price is asked for.
var Prices = List[*cost.PriceList]{
	Name: "prices", Command: "prices", BuiltIn: func() *cost.PriceList { return nil },
	Read: func(r io.Reader, name string) (*cost.PriceList, []tabular.Finding) {
		own, findings := cost.ReadPrices(r, name)
		return &own, findings
	},
	Usable: func(l *cost.PriceList) message.Message {
		return message.Counted(len(l.OrDemo().IDs()), "{1} item", "{1} items")
	},
}

// Words are the lists of texts in another language or wording.
var Words = List[*message.Catalog]{
	Name: "words", Command: "words", BuiltIn: func() *message.Catalog { return nil }, Read: catalog.Read, Usable: UsableWords,
	Sum: func(b *message.Catalog, path message.Name, wrong int) (lines []message.Message) {
		lacking := catalog.Lacks(b)
		for _, s := range lacking {
			if len(b.IDs()) > 0 || wrong == 0 { // of a file that is no catalog, the reason is enough
				lines = append(lines, message.New("no words for: {1}", message.Name(s)))
			}
		}
		unknown := catalog.Unknown(b)
		for _, row := range unknown {
			lines = append(lines, message.New("the program does not say: {1}", message.Name(row[0])))
			if row[1] != "" {
				lines = append(lines, message.New("it says: {1}", message.Name(row[1])))
			}
		}
		if len(unknown) > 0 {
			lines = append(lines, message.New("to keep such rows as comments: cutbrief words convert {1}", path))
		}
		without := message.Counted(len(lacking), "{1} text without words", "{1} texts without words")
		return append(lines, message.New("{1}: {2} can be used, {3}", path, UsableWords(b), without))
	},
}

// UsableWords says how much of a catalog can be used.
func UsableWords(b *message.Catalog) message.Message {
	return message.Counted(len(b.IDs()), "{1} entry", "{1} entries")
}
