package rehearse

import (
	"slices"
	"testing"
	"time"

	"cutbrief/assess/casebook"
	"cutbrief/assess/screen/screentest"
	"cutbrief/report"
	"cutbrief/rules/system"
)

// drawn is a state of the rehearsal as a view.
func (d *driver) drawn(name string, focus bool) screentest.View {
	return screentest.View{Name: name, Focus: focus, Draw: func(width, height int) string {
		d.Resize(width, height)
		return d.View()
	}}
}

// TestEveryStateIsWhole looks at every state of the screen in every window.
func TestEveryStateIsWhole(t *testing.T) {
	for _, name := range casebook.DemoVisits() {
		v, _ := casebook.DemoVisit(name)
		b := report.AtBench(v, system.Demo(), report.Options{})
		if len(b.Steps) == 0 {
			continue
		}
		for _, test := range []struct {
			name  string
			keys  []string
			focus bool
		}{
			{"opening", nil, false},
			{"checklist", []string{"c"}, true},
			{"end of the checklist", []string{"c", "<end>"}, true},
			{"other checklist", []string{"c", "<tab>"}, true},
			{"why", []string{"<enter>", "3", "their paint was far thicker than anybody in the workshop had thought, and burnt for long"}, true},
			{"what can go wrong", []string{"<enter>", "?"}, false},
			{"nothing noted", []string{"<enter>", "q"}, false},
			{"all noted", append(slices.Repeat([]string{"<enter>", "1"}, len(b.Steps)), "q"), false},
		} {
			t.Run(name+" "+test.name, func(t *testing.T) {
				d := drive(t, b)
				d.keys(test.keys...)
				d.drawn(test.name, test.focus).Whole(t)
			})
		}
	}
}

// Every step of every invented visit: before it is cut, while its time runs, and
// once it is compared and noted.
func TestEveryStepIsWhole(t *testing.T) {
	for _, name := range casebook.DemoVisits() {
		v, _ := casebook.DemoVisit(name)
		b := report.AtBench(v, system.Demo(), report.Options{})
		d := drive(t, b)
		for i := range b.Steps {
			d.keys("<enter>")
			d.drawn(b.Steps[i].Cut, false).Whole(t)
			if d.m.isTimed() {
				d.keys("<space>").passes(time.Minute).drawn("timing", false).Whole(t)
				d.keys("<space>").drawn("too slow", false).Whole(t)
				d.keys("<space>").passes(time.Second).keys("<space>").drawn("too fast", false).Whole(t)
			}
			d.keys("2", "slow hand", "<enter>").drawn("noted", false).Whole(t)
		}
	}
}
