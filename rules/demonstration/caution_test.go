package demonstration

import (
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"cutbrief/rules"
	"cutbrief/rules/cite/reference"
	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// figures ties every number in a caution to a row of the reference table.
var figures = map[string][][2]string{
	"closed-space": {
		{"confined space, hazardous atmosphere", "oxygen below"},
		{"confined space, hazardous atmosphere", "oxygen above (enrichment)"},
		{"confined space, hazardous atmosphere", "flammable gas or vapour above"},
	},
	"hot-work": {
		{"hot work distance", "move combustibles away at least"},
		{"hot work distance", "metric figure printed by OSHA"}, // 10.7 m, printed as 11 m: the safe side
	},
	"fire-watch": {
		{"fire watch duration", "OSHA general industry, after the last cut, at least"},
		{"fire watch duration", "NFPA 51B 2019 edition and later, at least"},
	},
	"noise":    {{"noise, EU upper action value", "daily: protection worn"}},
	"chromium": {{"chromium VI", "OSHA PEL, 8 h TWA"}},
	"coatings": {
		{"zinc oxide fume (galvanised)", "OSHA PEL TWA"},
		{"lead coating", "OSHA PEL, 8 h TWA"},
		{"cadmium coating", "OSHA PEL, 8 h TWA"},
	},
}

// table holds the rows of the reference table by topic and condition.
func table(t *testing.T) map[[2]string]map[string]string {
	t.Helper()
	byKey := map[[2]string]map[string]string{}
	for _, row := range reference.Read(t, os.DirFS("../../testdata/reference"), "safety.csv") {
		byKey[[2]string{row["topic"], row["condition"]}] = row
	}
	return byKey
}

var number = regexp.MustCompile(`\d+(\.\d+)?`)

// Every number printed in a caution is in the reference table, rounded up to
// whole metres at most. "8 h" is the length of the day the limits hold for.
func TestEveryFigureIsInTheTable(t *testing.T) {
	rows := table(t)
	for _, w := range warnings {
		want, seen := map[string]bool{}, map[string]bool{}
		for _, key := range figures[w.ID] {
			row, ok := rows[key]
			if !ok {
				t.Fatalf("%s: no row %v", w.ID, key)
			}
			text, v := row["value"], reference.Number(t, row["value"])
			if row["unit"] == "m" {
				text = strconv.FormatFloat(math.Ceil(v), 'f', 0, 64)
			}
			want[text] = true
		}
		printed := number.FindAllString(strings.ReplaceAll(string(w.Text), "over 8 h", ""), -1)
		for _, n := range printed {
			if !want[n] {
				t.Errorf("%s prints %s, which no row gives", w.ID, n)
			}
			seen[n] = true
		}
		for n := range want {
			if !seen[n] {
				t.Errorf("%s does not print %s", w.ID, n)
			}
		}
	}
}

// The unit beside the number is the table's too.
func TestUnitsAreTheTables(t *testing.T) {
	rows := table(t)
	units := map[string]string{"ug/m3": "µg/m³", "mg/m3": "mg/m³", "ft": "ft", "m": "m", "min": "min", "dB(A)": "dB(A)", "% vol": "%", "% of LFL": "%"}
	for _, w := range warnings {
		for _, key := range figures[w.ID] {
			if u := units[rows[key]["unit"]]; u == "" || !strings.Contains(string(w.Text), u) {
				t.Errorf("%s: unit %q of %v is not in %q", w.ID, u, key, w.Text)
			}
		}
	}
}

// Shades: 29 CFR 1910.133(a)(5), table: 8 below 300 A, 9 from 300 to 400 A,
// 10 from 400 to 800 A.
func TestShadeByCurrent(t *testing.T) {
	rows := table(t)
	const topic = "filter shade, OSHA legal minimum, plasma arc cutting"
	for amps, condition := range map[unit.Ampere]string{
		45: "light: below 300 A, arc clearly seen", 299: "light: below 300 A, arc clearly seen",
		300: "medium: 300-400 A, arc clearly seen", 399: "medium: 300-400 A, arc clearly seen",
		400: "heavy: 400-800 A, arc clearly seen",
	} {
		want := "shade " + rows[[2]string{topic, condition}]["value"] + " or darker"
		if got := lens(&system.System{OutputMax: amps}).Text; !strings.Contains(string(got), want) {
			t.Errorf("%v A: %q, want %q", amps, got, want)
		}
	}
	if got := lens(&system.System{OutputMax: 800}).Text; strings.Contains(string(got), "shade 1") {
		t.Errorf("800 A is beyond the table: %q", got)
	}
}

// The general cautions stand also when nothing is known.
func TestGeneralCautionsAlways(t *testing.T) {
	list := Cautions(rules.Job{}, rules.Result{})
	for _, id := range []string{"lens", "hot-work", "fire-watch", "containers", "fume", "noise", "shock", "manual"} {
		if !warns(list, id) {
			t.Errorf("%s is missing", id)
		}
	}
	if warns(list, "chromium") || warns(list, "up-high") {
		t.Error("a special caution stands among the general ones")
	}
	all := Warnings()
	if !strings.Contains(string(all[0].Text), "shade 8 or darker") {
		t.Errorf("hand-held systems ask for %q", all[0].Text)
	}
	for _, w := range all {
		if w.Raised() != (w.When != "") {
			t.Errorf("%s: raised %t, when %q", w.ID, w.Raised(), w.When)
		}
	}
}

func TestCautionsByMetalAndPlace(t *testing.T) {
	job := rules.Job{
		Pieces:  []rules.Piece{{Metal: metal.Stainless}, {Metal: metal.Aluminium}},
		Places:  unit.Known([]rules.Place{rules.UpHigh}),
		HotWork: unit.Known(rules.HotWorkClosed),
	}
	list := Cautions(job, rules.Result{})
	for _, id := range []string{"chromium", "aluminium-water", "up-high", "closed-space", "closed-space-air"} {
		if !warns(list, id) {
			t.Errorf("%s is missing", id)
		}
	}
	if warns(list, "coatings") || warns(list, "field") {
		t.Error("a caution for another job")
	}
	unknown := Cautions(rules.Job{Pieces: []rules.Piece{{Metal: metal.Other}}}, rules.Result{})
	if !warns(unknown, "chromium") || !warns(unknown, "coatings") {
		t.Error("an unknown metal may be any of them")
	}
}

// Work in place has a far side that nobody sees, and gouging throws its metal.
func TestCautionsForHiddenSidesAndGouging(t *testing.T) {
	job := rules.Job{Places: unit.Known([]rules.Place{rules.InPlace}), Features: unit.Known([]rules.Feature{rules.Gouging})}
	list := Cautions(job, rules.Result{})
	if !warns(list, "in-place") || !warns(list, "gouging") {
		t.Error("the far side of work in place, or gouging, is not warned of")
	}
}

// A number known from memory alone carries no caution: such sources may only
// stand beside words.
func TestNumbersRestOnPublishedSources(t *testing.T) {
	for _, w := range warnings {
		s, ok := w.Source.Find()
		if !ok {
			t.Errorf("%s: source %q is not registered", w.ID, w.Source.Source)
		}
		if len(figures[w.ID]) > 0 && s.Trust != "published source" {
			t.Errorf("%s: figures rest on %q", w.ID, s.Trust)
		}
	}
}

func warns(list []Caution, id string) bool {
	for _, c := range list {
		if c.ID == id {
			return true
		}
	}
	return false
}
