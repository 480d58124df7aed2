package practice

import (
	"slices"
	"testing"

	"cutbrief/assess/screen/screentest"

	tea "github.com/charmbracelet/bubbletea"
)

// drawn is a state of the practice as a view. Where it is scrolled to an end, it
// is again in every window.
func (d *driver) drawn(name string, focus bool, again ...string) screentest.View {
	return screentest.View{Name: name, Focus: focus, Draw: func(width, height int) string {
		d.Resize(width, height)
		d.Keys(again...)
		return d.View()
	}}
}

// TestEveryStateIsWhole looks at every state of the screen in every window.
func TestEveryStateIsWhole(t *testing.T) {
	done := []string{"<f9>"}
	offering := append(done, "5", "<enter>")
	showing := append(offering, "3", "<enter>")
	marked := append(showing, "8, 11", "<enter>")
	for _, test := range []struct {
		name  string
		keys  []string
		focus bool
	}{
		{"question", nil, true},
		{"asked and noted", []string{"<enter>", "1", "<enter>"}, true},
		{"typed", []string{"the customer says that most of it is mild steel, some of it painted, and now and then stainless"}, true},
		{"wide", []string{"日本プラズマ切断機株式会社東京本社第二工場 🔥🔧"}, true},
		{"not understood", []string{"half a thumb", "<enter>"}, true},
		{"nothing more to ask", []string{"<enter>", "<enter>"}, true},
		{"gone", slices.Repeat([]string{"plate", "<enter>"}, 20), true},
		{"list", []string{"<ctrl+l>"}, true},
		{"end of the list", []string{"<ctrl+l>", "<end>"}, true},
		{"what decides", done, true},
		{"not one of the numbers", append(done, "99", "<enter>"), true},
		{"which system", offering, true},
		{"which cuts", showing, true},
		{"the mark", marked, false},
		{"end of the mark", append(marked, "<end>"), false},
		{"why", append(marked, "w"), false},
	} {
		t.Run(test.name, func(t *testing.T) {
			d := drive(t, "bench-top")
			d.Keys(test.keys...)
			var again []string
			if slices.Contains(test.keys, "<end>") {
				again = []string{"<end>"}
			}
			d.drawn(test.name, test.focus, again...).Whole(t)
		})
	}
}

// Every question of the longest case has its words and choices whole.
func TestEveryQuestionIsWhole(t *testing.T) {
	d := drive(t, "the-wrong-socket")
	d.types("1")
	for range d.m.talk.session.Steps() {
		name := d.m.talk.step.Name().String()
		d.drawn(name, true).Whole(t)
		if d.press(tea.KeyTab); d.m.talk.stage != talking {
			t.Fatal("no longer talking")
		}
	}
}
