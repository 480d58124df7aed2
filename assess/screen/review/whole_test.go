package review

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"cutbrief/assess/casebook"
	"cutbrief/assess/review"
	"cutbrief/assess/screen/screentest"
	"cutbrief/rules/message"
	"cutbrief/rules/message/catalog"
)

// drawn is a state of the review as a view. Where it is scrolled to an end, it is
// again in every window. The counts for tests name the width they are worded for.
func (d *driver) drawn(name string, focus bool, again ...string) screentest.View {
	return screentest.View{Name: name, Focus: focus, Also: "78 58 118 38", Draw: func(width, height int) string {
		d.Resize(width, height)
		d.keys(again...)
		return d.View()
	}}
}

// TestEveryStateIsWhole looks at every state of the screen in every window.
func TestEveryStateIsWhole(t *testing.T) {
	farm := []string{"/", "farm", "<enter>", "<enter>"}
	for _, test := range []struct {
		name  string
		keys  []string
		focus bool
	}{
		{"list", nil, true},
		{"end of the list", []string{"<end>"}, true},
		{"groups", []string{"b"}, true},
		{"filter", []string{"/", "verdict = firm"}, false},
		{"long filter", []string{"/", "verdict = firm and not (outcome = order or outcome = no) and due < today"}, false},
		{"filtered", []string{"/", "verdict = firm", "<enter>"}, true},
		{"nothing fits", []string{"/", "zzz", "<enter>"}, false},
		{"flags", []string{"<end>", "<enter>"}, false},
		{"brief", farm, false},
		{"end of the brief", append(farm, "<end>"), false},
		{"why", append(farm, "<tab>"), false},
		{"file", append(farm, "<tab>", "<tab>"), false},
		{"page made", append(farm, "p"), false},
		{"timed cuts", []string{"m"}, false},
		{"tally", []string{"t"}, false},
		{"end of the tally", []string{"t", "b", "<end>"}, false},
	} {
		t.Run(test.name, func(t *testing.T) {
			d := open(t, 80, 24)
			d.m.Measured = func(context.Context, string) (string, error) { return timedCuts(), nil }
			d.m.Teller = counts{}
			d.keys(test.keys...)
			var again []string
			if slices.Contains(test.keys, "<end>") {
				again = []string{"<end>"}
			}
			d.drawn(test.name, test.focus, again...).Whole(t)
		})
	}
}

// With German words every column, value and flag has some, and the filter takes
// them as it takes ours.
func TestGermanReview(t *testing.T) {
	german := catalog.For("de")
	for _, c := range columns {
		for _, value := range c.field().Vocabulary() {
			if id := message.ID(string(c.id) + ": " + value); !german.Has(id) {
				t.Errorf("no German words: %s", id)
			}
		}
	}
	for _, k := range review.FlagKinds() {
		if !german.Has(message.ID(k.Name)) || !german.Has(message.ID(k.Rule)) {
			t.Errorf("no German words: %s: %s", k.Name, k.Rule)
		}
	}
	d := open(t, 120, 40)
	d.m.Words, d.m.window.Words = german, german
	d.Resize(120, 40)
	d.Sees("7 gezeigt, nach Datum", "DATUM", "STAND", "beschädigt: torn.json", "Enter Besuch öffnen", "q verlassen")
	d.keys("/", "Stand = sicher", "<enter>").Sees("4 gezeigt")
	d.keys("/", "<ctrl+u>", "stenby", "<enter>", "<enter>").Sees("Durchsicht · Stenby", "Tab Hinweise, Seite, Herleitung, Datei", "EMPFOHLENE ANLAGE")
	d.keys("<esc>", "/", "<ctrl+u>", "Dicke > 10 mm and Stand = reicht nicht", "<enter>").Sees("Keine Zeile passt zum Filter.")
}

// timedCuts are more words about timed cuts than a small window has lines.
func timedCuts() string {
	var b strings.Builder
	for i := range 30 {
		fmt.Fprintf(&b, "system: Demo %d\n  the row     cuts ran 22 %% slower than the row says, median of 7 cuts in 4 visits\n", i)
	}
	return b.String()
}

// While files are read, when that fails, and in a folder of very many.
func TestReadingIsWhole(t *testing.T) {
	d := start(t, folder{names: casebook.DemoVisits()}.read, 80, 24)
	d.drawn("nothing yet", false).Whole(t)
	d = start(t, folder{fail: errors.New("read visits/2026: the share went away")}.read, 80, 24)
	d.Run(d.m.read(looking))
	d.drain()
	d.keys("<esc>")
	d.drawn("failed", false).Whole(t)
	d = start(t, folder{}.read, 80, 24)
	rows := make([]*review.Row, 3000)
	for i := range rows {
		rows[i] = &review.Row{Path: fmt.Sprintf("%04d.json", i), Company: fmt.Sprintf("Company %d", i), Date: "2026-11-25"}
	}
	d.Send(d.m.gotRows(looking, rows...))
	d.drawn("many", true).Whole(t)
}
