package main

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/cost"
	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/tabular"
	"cutbrief/rules/unit"
)

// opinion is what testdata/secondopinion says of one visit.
type opinion struct {
	Decides string
	Systems map[string]struct {
		Status string
		Checks map[string][3]any // verdict, need, have
	}
	Cost struct {
		Ways   []*[3]float64
		Offers map[string]struct {
			Metre       [3]float64
			Saves, Year *[3]float64
		}
	}
}

// TestSecondOpinion holds what the rules make of random visits to a program in
// another language, written from the printed rules alone: every verdict and every
// number. CUTBRIEF_VISITS=100000 asks it about more.
func TestSecondOpinion(t *testing.T) {
	python, err := exec.LookPath("python3")
	if err != nil {
		t.Skip("needs python3: ", err)
	}
	visits := 1000
	if n, err := strconv.Atoi(os.Getenv("CUTBRIEF_VISITS")); err == nil {
		visits = n
	}
	root := filepath.Join("..", "..")
	priced := filepath.Join(root, "rules", "cost", "demo.csv")
	for i, list := range []string{filepath.Join(root, "rules", "system", "demo.csv"), filepath.Join(root, "testdata", "case", "range.csv")} {
		offered := readRange(t, list)
		g := &guesser{Rand: rand.New(rand.NewPCG(2026, uint64(i))), offered: offered}
		told := make([][]byte, visits/2)
		var in bytes.Buffer
		for n := range told {
			told[n] = g.visit()
			in.Write(append(told[n], '\n'))
		}
		cmd := exec.Command(python, filepath.Join(root, "testdata", "secondopinion", "opinion.py"), list, priced)
		cmd.Stdin, cmd.Stderr = &in, os.Stderr
		out, err := cmd.StdoutPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		compareOpinions(t, out, told, offered)
		if err := cmd.Wait(); err != nil {
			t.Fatal(err)
		}
	}
}

func readRange(t *testing.T, path string) system.Range {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	offered, findings := system.Read(bytes.NewReader(data), filepath.Base(path))
	if tabular.Count(findings, system.Error) > 0 {
		t.Fatal(findings)
	}
	return offered
}

func compareOpinions(t *testing.T, out interface{ Read([]byte) (int, error) }, told [][]byte, offered system.Range) {
	t.Helper()
	lines := bufio.NewScanner(out)
	lines.Buffer(nil, 1<<20)
	figures, wrong := 0, 0
	for n := range told {
		if !lines.Scan() {
			t.Fatalf("%d opinions on %d visits: %v", n, len(told), lines.Err())
		}
		var other opinion
		if err := json.Unmarshal(lines.Bytes(), &other); err != nil {
			t.Fatal(err)
		}
		v, _, err := assess.Decode(told[n])
		if err != nil {
			t.Fatalf("%s\n%v", told[n], err)
		}
		job, _ := v.Job()
		d := &differences{}
		d.sizes(job, offered, &other)
		d.costs(job, offered, &other)
		figures += d.compared
		if len(d.list) > 0 {
			if wrong++; wrong <= 5 {
				t.Errorf("%s\n%s", strings.Join(d.list, "\n"), told[n])
			}
		}
	}
	t.Logf("%s: %d visits, %d verdicts and figures, %d visits differ", offered.Name, len(told), figures, wrong)
}

// differences gathers where two opinions part.
type differences struct {
	compared int
	list     []string
}

func (d *differences) same(what string, ours, theirs any) {
	d.compared++
	if ours != theirs {
		d.list = append(d.list, fmt.Sprintf("%s: %v here, %v there", what, ours, theirs))
	}
}

// number compares to one in ten million: one of the two searches where the other
// has a formula.
func (d *differences) number(what string, ours, theirs float64) {
	d.compared++
	if !(math.Abs(ours-theirs) <= 1e-7*max(1, math.Abs(ours), math.Abs(theirs))) {
		d.list = append(d.list, fmt.Sprintf("%s: %v here, %v there", what, ours, theirs))
	}
}

func (d *differences) spread(what string, ours cost.Estimate, theirs [3]float64) {
	d.number(what+", low", ours.Low, theirs[0])
	d.number(what+", likely", ours.Likely, theirs[1])
	d.number(what+", high", ours.High, theirs[2])
}

// saidOnly are the rules that say a range in words; they are held to their table
// elsewhere.
var saidOnly = []rules.RuleID{rules.RuleEdge, rules.RuleHeat}

func (d *differences) sizes(job rules.Job, offered system.Range, other *opinion) {
	result := rules.Evaluate(job, offered)
	d.same("what decides", string(result.Critical.Requirement), other.Decides)
	for _, c := range result.Candidates {
		theirs := other.Systems[c.System.ID]
		d.same(c.System.ID+" status", string(c.Status), theirs.Status)
		var seen []string
		for _, check := range c.Checks {
			if slices.Contains(saidOnly, check.Rule) {
				continue
			}
			what := c.System.ID + " " + string(check.Rule)
			seen = append(seen, string(check.Rule))
			there, ok := theirs.Checks[string(check.Rule)]
			if !ok {
				d.same(what, check.Verdict, "no such check")
				continue
			}
			d.same(what, string(check.Verdict), there[0])
			d.number(what+", need", check.Need.Value, there[1].(float64))
			d.number(what+", have", check.Have.Value, there[2].(float64))
		}
		for rule := range theirs.Checks {
			if !slices.Contains(seen, rule) {
				d.same(c.System.ID+" "+rule, "no such check", theirs.Checks[rule][0])
			}
		}
	}
}

func (d *differences) costs(job rules.Job, offered system.Range, other *opinion) {
	systems := make([]*system.System, len(offered.Systems))
	for i := range offered.Systems {
		systems[i] = &offered.Systems[i]
	}
	account := cost.Reckon(job, cost.DemoPrices(), systems)
	d.same("ways", len(account.Methods), len(other.Cost.Ways))
	for i, w := range account.Methods[:min(len(account.Methods), len(other.Cost.Ways))] {
		theirs := other.Cost.Ways[i]
		if d.same(string(w.Process)+" worked out", w.Why.IsEmpty(), theirs != nil); w.Why.IsEmpty() && theirs != nil {
			d.spread(string(w.Process)+" a metre", w.PerMetre, *theirs)
		}
	}
	for _, o := range account.Offers {
		theirs, made := other.Cost.Offers[o.System.ID]
		if d.same(o.System.ID+" costed", o.Method.Why.IsEmpty(), made); !o.Method.Why.IsEmpty() || !made {
			continue
		}
		d.spread(o.System.ID+" a metre", o.Method.PerMetre, theirs.Metre)
		saving, held := o.Saving.Get()
		if d.same(o.System.ID+" saving", held, theirs.Saves != nil); !held || theirs.Saves == nil {
			continue
		}
		d.spread(o.System.ID+" saves a metre", saving.PerMetre, *theirs.Saves)
		year, known := saving.PerYear.Get()
		if known && theirs.Year != nil {
			d.spread(o.System.ID+" saves a year", year, *theirs.Year)
		} else {
			d.same(o.System.ID+" saves a year", known && year != cost.Estimate{}, theirs.Year != nil)
		}
	}
}

// guesser makes up visits whose figures lie at the limits of a range of systems
// as often as anywhere else.
type guesser struct {
	*rand.Rand
	offered system.Range
}

func (g *guesser) visit() []byte {
	type answer map[string]any
	var list []answer
	var metals []string
	annoys := ""
	add := func(q *assess.Question, of string) {
		a := answer{"question": q.ID, "state": "told"}
		if of != "" {
			a["metal"] = of
		}
		switch how := g.IntN(20); {
		case how == 0:
			return
		case how == 1 && q.ID != rules.FactMetals:
			a["state"] = "not-known"
			list = append(list, a)
			return
		}
		switch q.Form {
		case assess.FormOne, assess.FormSeveral:
			most := 1
			if q.Form == assess.FormSeveral {
				most = 1 + g.IntN(3)
			}
			chosen := g.some(options(q, annoys), most)
			a["chosen"] = chosen
			switch q.ID {
			case rules.FactMetals:
				metals = chosen
			case rules.FactAnnoysMost:
				annoys = chosen[0]
			}
		case assess.FormQuantity:
			a["said"] = g.said(q, of)
		default:
			return
		}
		list = append(list, a)
	}
	for _, q := range assess.Catalogue() {
		if !q.PerMetal {
			add(q, "")
		}
	}
	for _, q := range assess.Catalogue() {
		for _, of := range metals {
			if q.PerMetal {
				add(q, of)
			}
		}
	}
	record := map[string]any{"format": "cutbrief-visit", "version": 2, "id": "made-up", "answers": list}
	if g.IntN(15) == 0 {
		record["overrule"] = map[string]any{"requirement": rules.Requirements()[g.IntN(len(rules.Requirements()))]}
	}
	data, err := json.Marshal(record)
	if err != nil {
		panic(err)
	}
	return data
}

// options are those of a question; what annoys next is another of what annoys most.
func options(q *assess.Question, annoys string) []string {
	if q.ID == rules.FactAnnoysNext {
		q, _ = assess.Find(rules.FactAnnoysMost)
	} else {
		annoys = ""
	}
	var list []string
	for _, o := range q.Options {
		if o.ID != annoys {
			list = append(list, o.ID)
		}
	}
	return list
}

func (g *guesser) some(options []string, most int) []string {
	var list []string
	for _, i := range g.Perm(len(options))[:min(most, len(options))] {
		list = append(list, options[i])
	}
	return list
}

// said is a figure as a customer may tell it: at a limit, the last one to either
// side of it, none, or any.
func (g *guesser) said(q *assess.Question, of string) string {
	s := &g.offered.Systems[g.IntN(len(g.offered.Systems))]
	limits := g.limits(q, s, metal.ID(of))
	value := limits[g.IntN(len(limits))]
	digits := 3
	switch g.IntN(8) {
	case 0, 1:
		value = value * (0.3 + 1.5*g.Float64())
	case 2:
		value, digits = value+1e-6, 6
	case 3:
		value, digits = value-1e-6, 6
	case 4:
		value = math.Round(value)
	}
	plain := func(v float64) string {
		return strings.TrimSuffix(strings.TrimRight(strconv.FormatFloat(max(v, 0), 'f', digits, 64), "0"), ".")
	}
	if q.Kind == unit.Price {
		digits = 2 // three would be read as thousands by half the world
	}
	inches := g.IntN(6) == 0
	switch {
	case q.ID == rules.FactCutLength:
		return plain(value) + " m a " + []string{"day", "week"}[g.IntN(2)]
	case q.Kind == unit.Thickness && inches:
		return []string{"1/8 in", "1/4 in", "3/8 in", "1/2 in", "5/8 in", "1 in", "1 1/2 in", "0.047 in"}[g.IntN(8)]
	case q.Kind == unit.Pressure && inches:
		return plain(value*14.5) + " psi"
	case q.Kind == unit.Flow && inches:
		return plain(value/28.3) + " cfm"
	case q.Kind == unit.Length && inches:
		return plain(value/0.3048) + " ft"
	}
	if g.IntN(25) == 0 {
		return "none"
	}
	units := map[unit.Kind]string{unit.Thickness: " mm", unit.Length: " m", unit.Current: " A", unit.Voltage: " V", unit.ApparentPower: " kVA",
		unit.Section: " mm2", unit.Flow: " l/min", unit.Pressure: " bar", unit.Volume: " l", unit.Angle: " degrees", unit.Time: " min"}
	return plain(value) + units[q.Kind]
}

// limits are where a verdict about a system may turn with one answer.
func (g *guesser) limits(q *assess.Question, s *system.System, of metal.ID) []float64 {
	plate := s.Supplies[g.IntN(len(s.Supplies))]
	low, high := float64(plate.VoltMin), float64(plate.VoltMax)
	step := []float64{1, 1 / 0.94}[g.IntN(2)]
	thick := func(have unit.Millimetre, factors ...float64) (list []float64) {
		counts := 1.0
		if m, ok := metal.Find(of); ok {
			counts = m.Equivalence.Or(1)
		}
		if own, ok := s.PerMetal[of]; ok {
			counts = float64(s.Rated / own)
		}
		for _, f := range append(factors, 1) {
			list = append(list, float64(have)/f/counts*step)
		}
		return list
	}
	switch q.ID {
	case rules.FactEveryday:
		return append(thick(s.Rated, 1.5, 2), 3, 6, 0.3, 300, 1, 12, 12.72)
	case rules.FactThickest:
		return append(thick(s.Rated, 1.5, 2), 25)
	case rules.FactRarest:
		return append(thick(s.Severance), 25, 0)
	case rules.FactPierced:
		return append(thick(s.Pierce.Or(s.CleanMax/2)), 0)
	case rules.FactBevelled:
		return append(thick(s.CleanMax, 1/math.Cos(math.Pi/6)), 0)
	case rules.FactBevelAngle:
		return []float64{1, 30, 45, 60, 70}
	case rules.FactVolts:
		root := math.Sqrt(3)
		return []float64{low, high, low * 0.9, high * 1.1, low * 0.995, high * 1.005, low * root, high / root, 120, 208, 230, 400, 480}
	case rules.FactBreaker:
		return []float64{float64(plate.Effective), float64(plate.Input), 2 * float64(plate.Input), 16, 20, 30, 32, 60}
	case rules.FactCord:
		return []float64{0, 0.5, 10, 25, 50, 120}
	case rules.FactCordSection:
		return []float64{0.5, 0.75, 1.5, 2.081, 2.5, 4, 6, 16, 33.63, 50}
	case rules.FactGenerator:
		return []float64{1.25 * float64(plate.VoltMin*unit.Volt(plate.Input)) / 1000, 5, 7.25, 15, 30}
	case rules.FactAirDelivery:
		return []float64{float64(s.AirFlow) * step, float64(s.AirFlow) / 0.8456, 5, 200}
	case rules.FactAirPressure:
		return []float64{float64(s.AirPressure) * step, 6, 7, 0.5, 50}
	case rules.FactHoseBore:
		return []float64{2, 6, 6.35, 8, 10, 13, 19, 50}
	case rules.FactHoseLength:
		return []float64{0.3, 5, 10, 30, 100}
	case rules.FactAltitude:
		return []float64{0, 250, 1000, 1500, 5000}
	case rules.FactBusyCuts:
		return []float64{0, 1, 8, 20, 60}
	case rules.FactBusyLength:
		return []float64{0.005, 0.25, 0.6, 2}
	case rules.FactCutLength:
		return []float64{100, 20, 0.01, 300}
	case rules.FactDays:
		return []float64{5, 1, 7, 0.1}
	case rules.FactBudget:
		return []float64{float64(s.Price.Or(2000)), 1}
	}
	return []float64{45, 2400, 6000}
}
