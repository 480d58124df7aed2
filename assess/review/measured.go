package review

import (
	"cmp"
	"iter"
	"maps"
	"slices"
	"strings"
	"sync"

	"cutbrief/assess"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// Timings collects the timed cuts of the demonstrations in a folder while it is
// read. The zero value is ready; many may add to it at once.
type Timings struct {
	mu      sync.Mutex
	entries entries // by the path of the visit, as its row has it
	places  places  // of these paths
}

// timing is one timed cut and the system it was shown with.
type timing struct {
	system string
	cut    demonstration.Timed
}

// Measured is what the timed cuts with one system say.
type Measured struct {
	System      string // identifier; "" if it was not noted
	Track       demonstration.Accuracy
	Unpredicted int // more timed cuts, without a prediction to compare with
}

// timings are the timed cuts of a visit.
func timings(path string, v *assess.Visit) []timing {
	var list []timing
	for i := range v.Demonstrations {
		for _, c := range v.Demonstrations[i].Cuts {
			if took, timed := c.Took.Get(); timed {
				list = append(list, timing{v.Demonstrations[i].System, demonstration.Timed{
					Visit: path, Metal: c.Metal, Thickness: c.Thickness, Output: c.Output, Length: c.Length,
					Took: took, Predicted: c.Predicted.Or(unit.Second(0)),
				}})
			}
		}
	}
	return list
}

// add keeps the timed cuts of a visit.
func (t *Timings) add(list []timing) {
	if len(list) == 0 {
		return
	}
	t.mu.Lock()
	defer t.mu.Unlock()
	t.entries.put(&entry{path: list[0].cut.Visit, cuts: list})
}

// at returns the cuts at a place.
func (t *Timings) at(i int) []timing {
	var e entry
	t.entries.get(i, &e)
	return e.cuts
}

// Measured holds the cuts of the visits in rows against the predictions, system
// by system, the one with the most cuts first, and against the rows of a range.
func (t *Timings) Measured(rows iter.Seq[*Row], offered system.Range) []Measured {
	cuts := map[string][]demonstration.Timed{}
	taken := make([]bool, len(t.entries.refs))
	t.places.add(&t.entries)
	for r := range rows {
		i, timed := t.places.find(&t.entries, r.Path)
		if !timed || taken[i] {
			continue
		}
		taken[i] = true
		for _, c := range t.at(i) {
			cuts[c.system] = append(cuts[c.system], c.cut)
		}
	}
	var list []Measured
	for _, id := range slices.Sorted(maps.Keys(cuts)) {
		list = append(list, measured(id, cuts[id], offered))
	}
	slices.SortStableFunc(list, func(a, b Measured) int {
		return cmp.Or(cmp.Compare(b.Track.All.Cuts, a.Track.All.Cuts), strings.Compare(a.System, b.System))
	})
	return list
}

// measured sums up the cuts with one system.
func measured(id string, cuts []demonstration.Timed, offered system.Range) Measured {
	var row *system.System
	if s, known := offered.Find(id); known {
		row = &s
	}
	m := Measured{System: id, Track: demonstration.AccuracyOf(cuts, row)}
	m.Unpredicted = len(cuts) - m.Track.All.Cuts
	return m
}
