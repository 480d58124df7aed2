// Package unsaid is for tests only: it finds the texts that a book of phrases
// has no words for, by listening to what the program asks the book to say.
package unsaid

import (
	"sort"
	"strings"
	"sync"

	"cutbrief/rules/message"
	"cutbrief/rules/message/catalog"
)

// Ear hears what a book is asked to say.
type Ear struct {
	mu      sync.Mutex
	said    map[string]bool
	missing map[string]string // what had no words, and the text it stands in
}

// German is a German book of its own, and the ear that listens to it.
func German() (*message.Catalog, *Ear) {
	b, _ := catalog.Read(strings.NewReader(catalog.Template("de")), "german")
	e := &Ear{said: map[string]bool{}, missing: map[string]string{}}
	b.Listen(e.hear)
	return b, e
}

func (e *Ear) hear(english, words string, missing []string) {
	e.mu.Lock()
	defer e.mu.Unlock()
	if words != english {
		e.said[words] = true
	}
	for _, m := range missing {
		e.missing[m] = english
	}
}

// Unsaid lists what had no words, each with the text it stood in. A text that
// comes from the book and is said once more by a renderer does not count.
func (e *Ear) Unsaid() []string {
	e.mu.Lock()
	defer e.mu.Unlock()
	var list []string
	for m, in := range e.missing {
		if !e.said[in] && !e.said[m] {
			list = append(list, m+"\t<<\t"+in)
		}
	}
	sort.Strings(list)
	return list
}
