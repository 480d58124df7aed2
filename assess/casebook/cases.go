package casebook

import (
	"bytes"
	_ "embed"
)

// The built-in cases, all in the made-up Velmoor district: every firm, person
// and figure is invented for the demo.
//
//go:embed cases.txt
var casesText []byte

// Cases returns the built-in cases, the easiest first, new each time.
func Cases() []Customer {
	list, _ := Read(bytes.NewReader(casesText)) // a test holds it to no finding
	return list
}

// Template is a file of one case to start from, with its format explained.
func Template() string { return string(templateText) }

//go:embed template.txt
var templateText []byte
