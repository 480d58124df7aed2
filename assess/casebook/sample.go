package casebook

import (
	"embed"

	"cutbrief/assess"
)

// The demo visits are of the made-up Velmoor district. Every firm, person, place
// and figure in them is invented for the demo, and each visit says so. They show
// the program without set-up, and try it in tests.
//
//go:embed visit/*.json
var files embed.FS

// demoNames in the order they are offered: first the one that shows most in a
// minute.
var demoNames = []string{"farm-repair", "kitchen-fitter", "trailer-builder", "shipyard-crew", "art-metal", "scrap-yard"}

// DemoVisits returns the names of the demo visits.
func DemoVisits() []string { return append([]string(nil), demoNames...) }

// DemoVisit returns a demo visit, new each time, so that a caller may change it,
// and whether there is one of that name.
func DemoVisit(name string) (*assess.Visit, bool) {
	data, err := files.ReadFile("visit/" + name + ".json")
	if err != nil {
		return nil, false
	}
	v, _, err := assess.Decode(data)
	return v, err == nil
}
