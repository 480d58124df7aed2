package message

import "testing"

// sentences are the first hundred of the German book without holes: about what a
// screen shows at once.
func sentences() (list []string) {
	for _, s := range German().rows {
		if len(holesOf(s)) == 0 && len(list) < 100 {
			list = append(list, s)
		}
	}
	return list
}

// A frame is drawn at every key: its texts are remembered.
func BenchmarkAFrame(b *testing.B) {
	book, list := German(), sentences()
	for b.Loop() {
		for _, s := range list {
			book.Say(s)
		}
	}
}

// The same never said before.
func BenchmarkAFirstFrame(b *testing.B) {
	book, list := German(), sentences()
	for b.Loop() {
		clear(book.known)
		for _, s := range list {
			book.Say(s)
		}
	}
}

// A long text that the book has no words for costs the most.
func BenchmarkAStranger(b *testing.B) {
	book := German()
	const text = "nobody said this, or that, and a thing of it (not even here), to be sure; it needs what it needs: more, and more, by far, at most of the time, in all, or none of it."
	for b.Loop() {
		clear(book.known)
		book.Say(text)
	}
}
