package catalog

import (
	"testing"

	"cutbrief/rules/message"
)

// sentences are the first hundred of the German book without holes: about what a
// screen shows at once.
func sentences() (list []string) {
	for _, s := range For("de").IDs() {
		if len(message.Holes(s)) == 0 && len(list) < 100 {
			list = append(list, s)
		}
	}
	return list
}

// A frame is drawn at every key: its texts are remembered.
func BenchmarkAFrame(b *testing.B) {
	book, list := For("de"), sentences()
	for b.Loop() {
		for _, s := range list {
			book.Print(message.New(message.ID(s)))
		}
	}
}
