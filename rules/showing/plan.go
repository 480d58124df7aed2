package showing

import (
	"slices"
	"sort"

	"cutbrief/rules"
)

// planMost is how many cuts a short demonstration holds. Common practice, no
// source.
const planMost = 5

// provingMost leaves room for the customer's own work beside the cuts that
// prove the critical requirement. Common practice, no source.
const provingMost = 3

// What makes a cut worth its place, strongest first. Common practice, no
// source: the requirement that decides comes before everything else.
const (
	worthCritical = 100
	worthTie      = 50
	worthLast     = 30 // the customer's own piece closes the demonstration
	worthWanted   = 20 // the customer does this kind of cut
	worthAlways   = 10
)

// Plan chooses the cuts for the recommended system, the critical requirement
// first. It returns nothing if there is no recommended system.
func Plan(job rules.Job, result rules.Result) []Cut {
	s := newScene(&job, &result)
	if s.system == nil {
		return nil
	}
	chosen := pick(candidates(&s))
	sort.SliceStable(chosen, func(a, b int) bool { return chosen[a].before(chosen[b]) })
	var plan []Cut
	for _, c := range chosen {
		plan = append(plan, c.cut(&s))
	}
	return plan
}

// pick takes the worthiest cuts there is room for.
func pick(list []candidate) []candidate {
	sort.SliceStable(list, func(a, b int) bool { return list[a].worth > list[b].worth })
	var chosen []candidate
	proving := 0
	for _, c := range list {
		if c.worth >= worthCritical {
			proving++
		}
		if len(chosen) == planMost || (c.worth >= worthCritical && proving > provingMost) {
			continue
		}
		chosen = append(chosen, c)
	}
	return chosen
}

// candidate is a row of the catalogue with its piece and its worth here.
type candidate struct {
	row    *showpiece
	piece  piece
	place  int // in the catalogue
	worth  int
	proves rules.Requirement
}

// before orders the chosen cuts: what decides first, the customer's own piece
// last, and otherwise as the catalogue lists them.
func (c candidate) before(d candidate) bool {
	if x, y := c.worth >= worthCritical, d.worth >= worthCritical; x != y {
		return x
	}
	if x, y := c.row.last, d.row.last; x != y && c.worth < worthCritical {
		return y
	}
	return c.place < d.place
}

// candidates lists the rows that the system does well and this customer wants.
func candidates(s *scene) []candidate {
	var list []candidate
	for i := range catalogue {
		row := &catalogue[i]
		p, ok := row.piece(s)
		if !ok || !row.does(s, p) {
			continue
		}
		if worth, proves := row.worth(s); worth > 0 {
			list = append(list, candidate{row, p, i, worth, proves})
		}
	}
	return list
}

// worth adds up why the row belongs in the plan, and names what it proves here.
func (row *showpiece) worth(s *scene) (int, rules.Requirement) {
	total, proves := 0, rules.Requirement("")
	switch {
	case row.last:
		total = worthLast
	case row.always:
		total = worthAlways
	}
	if row.wanted != nil && row.wanted(s) {
		total += worthWanted
	}
	for _, r := range row.proves {
		if slices.Contains(s.ties, r) {
			total += worthTie
			proves = r
			break
		}
	}
	if s.critical != "" && slices.Contains(row.proves, s.critical) {
		total += worthCritical
		proves = s.critical
	}
	return total, proves
}

func (c candidate) cut(s *scene) Cut {
	name := c.row.name
	if c.row.naming != nil {
		name = c.row.naming(s)
	}
	cut := c.piece
	if c.row.tilted {
		cut.thickness = through(cut.thickness, s.angle())
	}
	return Cut{
		ID: c.row.id, Name: name, Proves: c.proves, Metal: c.piece.metal, Thickness: c.piece.thickness,
		Setting: s.paced(settingFor(s.system, c.piece), cut), Props: c.row.props, See: c.row.see, Why: c.row.why, Source: c.row.source,
	}
}
