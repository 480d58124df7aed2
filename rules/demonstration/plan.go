package demonstration

import (
	"fmt"
	"slices"

	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// Times of a demonstration. Common practice, no source: half an hour holds a
// customer's attention, a sixth of the time goes to questions, and changing the
// plate or the setting takes two minutes.
const (
	questions              = 1.0 / 6
	usualTime  unit.Second = 30 * 60
	SetUpTakes unit.Second = 2 * 60 // changing the plate or the setting
)

// What makes a cut worth its place beside the critical requirement. Common
// practice, no source; see the package comment.
const (
	worthTie    = 50 // once for each requirement as strong as the critical one
	worthLast   = 30 // the customer's own piece
	worthWanted = 20 // the customer does this kind of cut
	worthAlways = 30 // the everyday cut
	worthAgain  = 8  // a further proof of the critical requirement
)

// Choose plans the demonstration, and says what is left out and why. Without a
// recommended system nothing is chosen and nothing left out.
func Choose(job rules.Job, result rules.Result) Programme {
	s := newSituation(&job, &result)
	given, told := job.Showing.Get()
	if !told {
		given = usualTime
	}
	p := Programme{Given: given, Told: told}
	if s.system == nil {
		return p
	}
	able, left := candidates(&s)
	best := within(able, given)
	p.Takes = best.takes
	for i, c := range best.order {
		cut := c.cut(&s, i == 0, i == len(best.order)-1)
		cut.SetUp = i > 0 && c.setUp != best.order[i-1].setUp
		p.Cuts = append(p.Cuts, cut)
	}
	p.LeftOut = leftOut(&s, able, left, best)
	return p
}

// Proofs lists the cuts of the plan that prove what decides: their identifiers, and
// the name of the first; for readers who ask no more of it.
func Proofs(job *rules.Job, result *rules.Result) (ids []string, first message.Message) {
	s := newSituation(job, result)
	if s.system == nil {
		return nil, message.Message{}
	}
	able, _ := candidates(&s)
	if !slices.ContainsFunc(able, func(c candidate) bool { return c.shows }) {
		return nil, message.Message{}
	}
	for _, c := range within(able, job.Showing.Or(usualTime)).order {
		if !c.shows {
			continue
		}
		if ids = append(ids, c.row.ID); len(ids) == 1 {
			first = c.row.nameFor(&s)
		}
	}
	return ids, first
}

// within searches with room for questions. Where what decides would not be
// shown then, the questions wait.
func within(able []candidate, given unit.Second) set {
	best := search(able, given*(1-questions))
	if best.order != nil && best.proofs > 0 {
		return best
	}
	if full := search(able, given); full.proofs > 0 || best.order == nil {
		return full
	}
	return best
}

// candidate is a row of the catalogue with its piece and its worth here.
type candidate struct {
	row   *CatalogueCut
	piece piece
	setUp setUp
	shows bool                // it proves the critical requirement
	ties  []rules.Requirement // as strong as that, which it proves
	worth int                 // beside both
}

// setUp is the plate on the bench and the torch as set: cuts that share it
// follow one another without a pause.
type setUp struct {
	piece            piece
	output           unit.Ampere
	onWork, shielded bool
	gouging          bool
}

// candidates lists the rows whose preconditions hold and that are worth
// showing here, and those that are left out, each with its reason.
func candidates(s *situation) (able []candidate, left []refusal) {
	able = make([]candidate, 0, len(catalogue))
	for i := range catalogue {
		row := &catalogue[i]
		p, lacks, ok := row.lacks(s)
		if !ok {
			left = append(left, refusal{row, lacks})
			continue
		}
		c := row.candidate(s, p)
		if !c.shows && len(c.ties) == 0 && c.worth == 0 {
			left = append(left, refusal{row, pointless})
			continue
		}
		able = append(able, c)
	}
	return able, left
}

// refusal is a row that is not shown: it lacks its piece, what it needs, or a use.
type refusal struct {
	row   *CatalogueCut
	lacks message.ID // what it needs; "" if it is the piece
}

// pointless stands for the lack of a use.
const pointless message.ID = "It is not part of the work described, and does not show what decides."

// reason says why the row is not shown.
func (r refusal) reason() message.Message {
	switch r.lacks {
	case "":
		return message.New("There is no {1}.", r.row.nothing)
	case pointless:
		return pointless.Message()
	}
	return message.New("It needs {1}.", r.lacks)
}

// lacks returns the piece of a row, or the first of what it needs that is not there.
func (row *CatalogueCut) lacks(s *situation) (p piece, lacks message.ID, ok bool) {
	if p, ok = row.piece(s); !ok || !(p.thickness > 0) {
		return p, "", false
	}
	for i := range row.needs {
		if n := &row.needs[i]; !n.holds(s, p) {
			return p, n.words, false
		}
	}
	return p, "", true
}

func (row *CatalogueCut) candidate(s *situation, p piece) candidate {
	c, set := candidate{row: row, piece: p}, settingFor(s.system, p)
	c.setUp = setUp{p, set.Output, set.OnWork, set.Shielded, row.ID == "gouge"}
	c.shows = s.critical != "" && slices.Contains(row.Proves, s.critical)
	for _, r := range s.ties {
		if slices.Contains(row.Proves, r) {
			c.ties = append(c.ties, r)
		}
	}
	switch {
	case row.last:
		c.worth = worthLast
	case row.always:
		c.worth = worthAlways
	}
	if row.wanted != nil && row.wanted(s) {
		c.worth += worthWanted
	}
	return c
}

// takes is the time of the cut itself.
func (c *candidate) takes() unit.Second { return unit.Second(c.row.Minutes * 60) }

// name is the row's name for this customer.
func (row *CatalogueCut) nameFor(s *situation) message.Message {
	if row.naming != nil {
		return row.naming(s)
	}
	return row.Name.Message()
}

func (c *candidate) cut(s *situation, first, last bool) Cut {
	return Cut{
		ID: c.row.ID, Name: c.row.nameFor(s), Proves: c.proves(s), Chosen: c.chosen(s, first, last),
		Metal: c.piece.metal, Thickness: c.piece.thickness, Setting: s.setting(c.row, c.piece), Takes: c.takes(), Timed: c.row.timed,
		Props: c.bring(s), See: c.row.See, Why: c.row.Why, Fails: c.row.Fails, Avoid: c.row.Avoid, Source: c.row.Source,
	}
}

// proves names what the cut proves here, "" if it is neither the critical
// requirement nor one as strong.
func (c *candidate) proves(s *situation) rules.Requirement {
	switch {
	case c.shows:
		return s.critical
	case len(c.ties) > 0:
		return c.ties[0]
	}
	return ""
}

// bring adds what the fume of the metal asks for, unless it is on hand.
func (c *candidate) bring(s *situation) []message.ID {
	if smokes(c.piece.metal) && !takesFume(s) {
		return append(slices.Clone(c.row.props), fumeExtraction)
	}
	return c.row.props
}

// fumeExtraction is brought where the fume asks for it.
const fumeExtraction message.ID = "extraction for the fume"

// chosen says why the cut is in the plan.
func (c *candidate) chosen(s *situation, first, last bool) message.ID {
	switch {
	case c.shows && first:
		return "It shows what decides, so it comes first."
	case c.shows && last:
		return "It shows what decides once more, so it comes last."
	case c.shows:
		return "It shows what decides."
	case len(c.ties) > 0:
		return "It shows what is as important to them."
	case c.row.last:
		return "Their own part is the cut they will remember."
	case c.row.always:
		return "It is the cut made most days."
	}
	return "It is part of the work."
}

// leftOut says of every row that is not in the plan why.
func leftOut(s *situation, able []candidate, left []refusal, best set) []LeftOut {
	reasons := map[*CatalogueCut]message.Message{}
	for _, r := range left {
		reasons[r.row] = r.reason()
	}
	for i := range able {
		if c := &able[i]; !slices.Contains(best.order, c) {
			reasons[c.row] = message.New("It takes {1} min, and the others make better use of the time.", message.Figure(fmt.Sprintf("%.0f", c.row.Minutes)))
		}
	}
	var list []LeftOut
	for i := range catalogue {
		if reason, ok := reasons[&catalogue[i]]; ok {
			list = append(list, LeftOut{catalogue[i].ID, catalogue[i].nameFor(s), reason})
		}
	}
	return list
}
