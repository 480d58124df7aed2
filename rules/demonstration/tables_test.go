package demonstration

import (
	"strings"
	"testing"

	"cutbrief/rules"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// TestWarningsSayWhen: a caution that is not for everybody says for whom, and
// one about metals names exactly those it is given for.
func TestWarningsSayWhen(t *testing.T) {
	for _, w := range warnings {
		if (w.When == "") != (w.applies == nil) {
			t.Errorf("%s: when is %q", w.ID, w.When)
		}
		if w.applies == nil || !strings.Contains(string(w.When), "no figures") {
			continue
		}
		for _, m := range metal.List() {
			if m.ID == metal.Other {
				continue
			}
			job := rules.Job{Pieces: []rules.Piece{{Metal: m.ID, Everyday: unit.Known(unit.Millimetre(3))}}}
			s := newSituation(&job, &rules.Result{})
			given, named := w.applies(&s), strings.Contains(string(w.When), strings.TrimSuffix(string(m.Name), " or brass"))
			if given != named {
				t.Errorf("%s for %s: given %t, named %t", w.ID, m.Name, given, named)
			}
		}
	}
}
