package interview

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"cutbrief/assess"
	"cutbrief/assess/screen/screentest"
	"cutbrief/rules"
	"cutbrief/rules/metal"
)

// drawn is a state of the interview as a view. Where it is scrolled to an end,
// it is again in every window.
func (d *driver) drawn(name string, focus bool, again ...string) screentest.View {
	hint := ""
	if d.m.field.IsList() {
		hint = d.m.Print(d.m.howTo())
	}
	return screentest.View{Name: name, Focus: focus, Also: "answered · customer said", Spare: hint, Draw: func(width, height int) string {
		d.Resize(width, height)
		d.keys(again...)
		return d.View()
	}}
}

// TestEveryStateIsWhole looks at every state of the screen in every window.
func TestEveryStateIsWhole(t *testing.T) {
	done := drive(t, newVisit()).throughTo("").disk.last
	for _, test := range []struct {
		name  string
		keys  []string
		focus bool
	}{
		{"question", nil, true},
		{"typed", []string{"a long answer that does not fit in the line of a small window, and goes on for a while"}, true},
		{"long word", []string{strings.Repeat("Donaudampf", 15)}, true},
		{"wide", []string{"日本プラズマ切断機株式会社東京本社第二工場 🔥🔧 "}, true},
		{"right to left", []string{"שלום עולם מפעל הפלדה"}, true},
		{"note", []string{"<ctrl+o>", "ask the owner"}, true},
		{"explanation", []string{"<f1>"}, false},
		{"list", []string{"<ctrl+l>"}, true},
		{"end of the list", []string{"<ctrl+l>", "<end>"}, true},
		{"skipped", []string{"<ctrl+g>"}, true},
		{"all keys", []string{"<f1>"}, false},
		{"why", []string{"<f1>", "w"}, false},
		{"result", []string{"<ctrl+l>", "r"}, false},
		{"end of the result", []string{"<ctrl+l>", "r", "<end>"}, false},
		{"page made", []string{"<ctrl+l>", "r", "p"}, false},
		{"overrule", []string{"<ctrl+l>", "r", "y"}, true},
		{"reason", []string{"<ctrl+l>", "r", "y", "3", "<enter>"}, true},
		{"sentence", []string{"<f2>", told}, true},
		{"nothing in the sentence", []string{"<f2>", "perhaps", "<enter>"}, true},
		{"found in the sentence", []string{"<f2>", "230 single phase, 30 amp breaker, little compressor, " + told, "<enter>"}, true},
		{"no reason", []string{"<ctrl+l>", "r", "y", "3", "<enter>", "<enter>"}, true},
	} {
		t.Run(test.name, func(t *testing.T) {
			d := inOrder(t, done.Clone()) // a finished visit has no next question else
			d.m.show(d.m.steps[0])
			d.keys(test.keys...)
			again := []string{}
			if slices.Contains(test.keys, "<end>") {
				again = []string{"<end>"}
			}
			d.drawn(test.name, test.focus, again...).Whole(t)
		})
	}
}

// Questions of every form, open, answered, and answered wrong.
func TestEveryFormIsWhole(t *testing.T) {
	d := drive(t, everything())
	for _, s := range d.m.steps {
		if s.Metal != "" && s.Metal != metal.Galvanised {
			continue
		}
		t.Run(s.Name().String(), func(t *testing.T) {
			d.T = t
			d.m.show(s)
			d.drawn(s.Name().String(), true).Whole(t)
			if s.Question.Form == assess.FormQuantity {
				d.keys("<ctrl+u>", "half a thumb", "<enter>")
				d.drawn("wrong", true).Whole(t)
				d.keys("<ctrl+u>")
			}
		})
	}
}

// What cannot be saved is said whole: while asking, and while leaving.
func TestTroubleIsWhole(t *testing.T) {
	d, disk := full(t)
	disk.fail = errors.New("write /srv/shares/runa/data/cutbrief/visits/x/2026-11-25-alder.json: no space left on device")
	d.keys("Marta", "<enter>")
	d.drawn("not saved", true).Whole(t)
	d.elsewhere()
	d.drawn("another place", true).Whole(t)
	d.keys("<esc>", "<ctrl+c>")
	d.drawn("leaving", false).Whole(t)
}

// The question of the company is the first; its panel has little to say yet. At
// the end it has most.
func TestThePanelIsWhole(t *testing.T) {
	d := drive(t, newVisit()).throughTo(rules.FactMetals)
	d.drawn("little known", true).Whole(t)
	d.throughTo(rules.FactStart)
	d.drawn("more known", true).Whole(t)
}
