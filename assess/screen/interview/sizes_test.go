package interview

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"cutbrief/assess"
	"cutbrief/assess/screen/screentest"
	"cutbrief/rules/metal"

	"pgregory.net/rapid"
)

// sizes are the windows every view must be whole in.
var sizes = [][2]int{{80, 24}, {60, 20}, {120, 40}}

// everything is a visit in which every question matters.
func everything() *assess.Visit {
	v := newVisit()
	for _, q := range assess.Catalogue() {
		if q.Form != assess.FormSeveral {
			continue
		}
		var all []string
		for _, o := range q.Options {
			all = append(all, o.ID)
		}
		v.Set(assess.Answer{Question: q.ID, Chosen: all, State: assess.Told})
	}
	v.Set(assess.Answer{Question: "start", Chosen: []string{"both"}, State: assess.Told})
	v.Set(assess.Answer{Question: "power-source", Chosen: []string{"both"}, State: assess.Told})
	v.Set(assess.Answer{Question: "annoys-most", Chosen: []string{"warps"}, State: assess.Told})
	return v
}

// framed fails unless the view fills the window and stays inside it.
func framed(t screentest.Failing, m *Model) {
	t.Helper()
	screentest.Framed(t, m.View(), m.Size.Width, m.Size.Height)
}

func TestEveryQuestionIsWholeAtEverySize(t *testing.T) {
	for _, size := range sizes {
		d := drive(t, everything())
		d.Resize(size[0], size[1])
		asked := 0
		for _, s := range d.m.steps {
			if s.Metal != "" && s.Metal != metal.Galvanised { // the longest name
				continue
			}
			d.m.show(s)
			asked++
			t.Run(fmt.Sprintf("%dx%d %s", size[0], size[1], s.Name()), func(t *testing.T) {
				d.T = t
				wholeQuestion(d, s)
			})
		}
		if asked < 45 {
			t.Errorf("only %d questions looked at", asked)
		}
	}
}

// wholeQuestion fails unless the question, its reason, every option, its state
// and the way out are on the screen, and the focus is marked.
func wholeQuestion(d *driver, s assess.Step) {
	d.T.Helper()
	framed(d.T, d.m)
	d.Sees(s.Text().String(), string(s.Question.Why), "›", "leave", "Enter accept")
	for _, o := range d.m.Visit.Options(s) {
		d.Sees(string(o.Text))
	}
	state, _ := d.m.stateOf(s)
	d.Sees(strings.TrimSpace(state))
	if body := unwrapped(d.View()); strings.Contains(body, "…") {
		d.T.Errorf("something is cut:\n%s", d.View())
	}
	d.keys("<f1>")
	if seen := strings.ReplaceAll(unwrapped(d.View()), "- ", "-"); !strings.Contains(seen, string(s.Question.Help)) {
		d.T.Errorf("the explanation is cut:\n%s", d.View())
	}
	d.keys("<esc>")
}

func TestAWrongAnswerFitsAtEverySize(t *testing.T) {
	for _, size := range sizes {
		d := drive(t, everything())
		d.Resize(size[0], size[1])
		for _, s := range d.m.steps {
			if s.Question.Form != assess.FormQuantity || s.Metal != "" && s.Metal != metal.Galvanised {
				continue
			}
			d.m.show(s)
			d.keys("<ctrl+u>", strings.Repeat("thick ", 3), "<enter>")
			framed(t, d.m)
			d.Sees("! ", d.m.Print(d.m.wrong[0]), d.m.Print(d.m.wrong[1]), "not answered")
		}
	}
}

func TestEveryOtherViewIsWhole(t *testing.T) {
	done := drive(t, newVisit()).throughTo("").disk.last
	open := map[string][]string{
		"list": {"<ctrl+l>"}, "note": {"<ctrl+o>"}, "explanation": {"<f1>"},
		"result": {"<ctrl+l>", "r"}, "overrule": {"<ctrl+l>", "r", "y"}, "reason": {"<ctrl+l>", "r", "y", "3", "<enter>"},
	}
	for _, size := range sizes {
		for name, keys := range open {
			d := drive(t, done.Clone())
			d.Resize(size[0], size[1])
			d.m.show(d.m.steps[10])
			d.keys(keys...)
			framed(t, d.m)
			if !strings.Contains(unwrapped(d.View()), "leave") {
				t.Errorf("%s at %v shows no way out:\n%s", name, size, d.View())
			}
		}
	}
}

// Whatever is pressed in a window of whatever size: the view stays inside it,
// and Ctrl+C leaves with everything saved.
func TestNoKeyBreaksTheScreen(t *testing.T) {
	names := []string{"a", "1", "3", "9", "x", "n", "r", "y", "l", "p", "日本語", "-", "8 mm", strings.Repeat("long", 40)}
	for _, name := range screentest.Names() {
		if name != "<ctrl+c>" {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	rapid.Check(t, func(r *rapid.T) {
		disk := &memory{}
		d := driverOf(t, newModel(Options{Visit: newVisit(), Saver: disk, Pager: disk}), disk)
		for _, k := range rapid.SliceOfN(rapid.SampledFrom(names), 0, 40).Draw(r, "keys") {
			if rapid.IntRange(0, 9).Draw(r, "resize") == 0 {
				d.Resize(rapid.IntRange(1, 130).Draw(r, "width"), rapid.IntRange(1, 50).Draw(r, "height"))
			}
			d.keys(k)
			if d.Quit {
				return
			}
			framed(r, d.m)
		}
		d.keys("<ctrl+c>")
		if !d.Quit || d.m.saved != d.m.change {
			r.Fatalf("left %v, saved %d of %d", d.Quit, d.m.saved, d.m.change)
		}
	})
}
