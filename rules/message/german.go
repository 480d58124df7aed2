package message

import (
	_ "embed" // the book lies beside the code
	"strings"
	"sync"
)

//go:embed german.csv
var german string

// German is the built-in book: the interview, the page and the cautions in
// German. It is read when it is first asked for; a test holds it free of
// findings.
var German = sync.OnceValue(func() *Catalog {
	b, _ := Read(strings.NewReader(german), "german")
	return b
})
