package rules

import (
	"cmp"
	"slices"

	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// Evaluate judges every system of the range for the job as Judge does, and adds
// the inputs of every check, how far the answers may move, and what is still
// open and whether that could change the recommendation.
func Evaluate(job Job, offered system.Range) Result {
	inCurrency(&job, offered.Currency)
	d := newDemand(&job)
	r := Result{}
	r.judge(&d, offered.Systems, explained)
	if r.Outcome == Recommended {
		r.Margins = margins(&d, offered.Systems)
	}
	s := &study{job: &job, systems: offered.Systems}
	s.now = s.conclude(&job)
	r.Open, r.Firm = s.open(), s.firm(r.Outcome)
	return r
}

// Judge judges every system of the range for the job, ranks them, and says
// which one to recommend, or that none can be. It reads job and offered and
// changes neither; Result points into offered.Systems. It leaves Inputs,
// Margins, Open and Firm alone, for readers of many visits who do not ask.
func Judge(job Job, offered system.Range) Result {
	inCurrency(&job, offered.Currency)
	d, r := newDemand(&job), Result{}
	r.judge(&d, offered.Systems, plainly)
	return r
}

// inCurrency drops a budget told in another currency than the prices: nothing
// here converts money.
func inCurrency(j *Job, currency string) {
	if j.BudgetIn != "" && j.BudgetIn != currency {
		j.Budget = unit.Maybe[unit.Money]{}
	}
}

// Summary is a result for readers of many visits: of the checks it holds only the
// one that excludes a system, and no evidence, margins or open questions.
type Summary struct {
	Result
	job   Job
	study study
}

// Summarise judges as Judge does, and says whether the recommendation is firm.
func Summarise(job Job, offered system.Range) *Summary {
	r := &Summary{}
	r.Of(&job, offered)
	return r
}

// Of is Summarise for readers of very many visits: it takes the room of the summary
// there was, which is gone with all that it held.
func (r *Summary) Of(job *Job, offered system.Range) {
	r.job = *job
	inCurrency(&r.job, offered.Currency)
	d := &r.study.demand
	d.of(&r.job)
	r.Result.judge(d, offered.Systems, summary)
	r.study.job, r.study.systems, r.study.now = &r.job, offered.Systems, conclusion{first: -1, status: short, decide: d.requirement}
	for i := range offered.Systems {
		if r.First != nil && r.First.System == &offered.Systems[i] {
			r.study.now.first, r.study.now.status = i, rank(slices.Index(standing[:], r.First.Status))
		}
	}
	r.Firm = r.study.firm(r.Outcome)
}

// Decisive lists the open questions whose answer could change the system, in the
// order of Evaluate; none where no system is recommended, or that is firm.
func (r *Summary) Decisive() []Asked {
	if r.Outcome != Recommended || r.Firm {
		return nil
	}
	var asked []Asked
	for _, q := range r.study.open() {
		if q.Strength >= couldSystem {
			asked = append(asked, q.Asked)
		}
	}
	return asked
}

// detail is how much a check says.
type detail int

const (
	summary   detail = iota // only what excludes a system
	plainly                 // verdict, numbers, source
	explained               // and what it was worked out from
)

// judge fills a result, in the room of what it held before.
func (r *Result) judge(d *demand, systems []system.System, how detail) {
	r.Flags, r.Missing = flags(r.Flags[:0], d.job), missing(d.job)
	r.Critical = critical(d.job, how)
	r.Need = needOf(d, how)
	r.Candidates = slices.Grow(r.Candidates[:0], len(systems))[:len(systems)]
	for i := range systems {
		r.Candidates[i].explain(d, &systems[i], how)
	}
	slices.SortStableFunc(r.Candidates, func(a, b Candidate) int {
		return cmp.Or(slices.Index(standing[:], a.Status)-slices.Index(standing[:], b.Status), inOrder(a.System, b.System))
	})
	r.Outcome, r.First, r.Second = outcome(r.Missing, r.Candidates), nil, nil
	if r.Outcome == Recommended {
		r.First = &r.Candidates[0]
		r.Second = secondOf(r.Candidates)
	}
}

// missing lists what has to be told before anything can be recommended: a
// metal, how it is used, and a thickness of at least one metal we hold figures
// for.
func missing(j *Job) []Asked {
	var list []Asked
	if len(j.Pieces) == 0 {
		list = append(list, Asked{Fact: FactMetals}, Asked{Fact: FactThickest})
	} else if !anyPiece(j, sizeable) {
		list = append(list, thicknessMissing(j)...)
	}
	if !j.Use.IsKnown() {
		list = append(list, Asked{Fact: FactUse})
	}
	return list
}

// thicknessMissing lists the metals whose thickness would do, or the question
// about metals where no figures are held for any of them.
func thicknessMissing(j *Job) []Asked {
	var list []Asked
	for i := range j.Pieces {
		if p := &j.Pieces[i]; !withoutFigures(p) {
			list = append(list, Asked{FactThickest, p.Metal})
		}
	}
	if len(list) == 0 {
		return []Asked{{Fact: FactMetals}}
	}
	return list
}

// withoutFigures reports a metal no factor is held for.
func withoutFigures(p *Piece) bool {
	_, cuttable := equivalence(&system.System{}, p.Metal)
	return !cuttable
}

// sizeable reports whether a piece alone is enough to size a system.
func sizeable(p *Piece) bool {
	_, told, _ := p.regular()
	return told && !withoutFigures(p)
}

func outcome(missing []Asked, candidates []Candidate) Outcome {
	switch {
	case len(missing) > 0:
		return NotYet
	case len(candidates) == 0 || candidates[0].Status == FallsShort:
		return NoneFits
	}
	return Recommended
}

// secondOf is the next best system that does not fall short.
func secondOf(c []Candidate) *Candidate {
	if len(c) > 1 && c[1].Status != FallsShort {
		return &c[1]
	}
	return nil
}

// rank is a status as a number, best first, for comparing.
type rank int

// The ranks, in the order of standing.
const (
	fits rank = iota
	afterSite
	nearly
	short
)

// standing names the ranks.
var standing = [...]Status{fits: Fits, afterSite: FitsAfterSite, nearly: FitsNearly, short: FallsShort}

// statusOf is the worst that any rule makes of a system. What is not known
// does not lower it; it is an open question.
func statusOf(d *demand, s *system.System) rank { return statusUpTo(d, s, short) }

// statusUpTo is statusOf for a caller who does not care how much worse than
// limit a system is: it stops at the first rule that makes it worse.
func statusUpTo(d *demand, s *system.System, limit rank) rank {
	status := fits
	for i := range rows {
		if r := &rows[i]; r.Hard || r.Site {
			if status = max(status, effect(r, r.judge(d, s).verdict)); status > limit || status == short {
				break
			}
		}
	}
	return status
}

// effect is what one verdict makes of a system.
func effect(r *row, v Verdict) rank {
	switch {
	case r.Site && v == Short:
		return afterSite
	case r.Hard && v == Short:
		return short
	case r.Hard && v == Borderline:
		return nearly
	}
	return fits
}

// inOrder compares two systems of the same status, by the smaller rated thickness
// first, so that what fits with the least excess leads. The order does not depend
// on the job, so it cannot change while answers come in.
func inOrder(a, b *system.System) int {
	return cmp.Or(cmp.Compare(a.Rated, b.Rated), cmp.Compare(a.Weight, b.Weight), cmp.Compare(a.ID, b.ID))
}

// before reports whether a system comes before another of the same status.
func before(a, b *system.System) bool { return inOrder(a, b) < 0 }

// explain judges one system by every rule that applies.
func (c *Candidate) explain(d *demand, s *system.System, how detail) {
	*c = Candidate{System: s, Checks: c.Checks[:0]}
	if how != summary {
		c.Checks = slices.Grow(c.Checks, len(rows))
	}
	status := fits
	for i := range rows {
		r := &rows[i]
		if how == summary && !r.Hard && !r.Site {
			continue
		}
		m := r.judge(d, s)
		if m.verdict == "" {
			continue
		}
		status = max(status, effect(r, m.verdict))
		c.Open = c.Open || m.verdict == NotKnown && (r.Hard || r.Site)
		if how == summary && status != short {
			continue
		}
		check := Check{Rule: r.ID, Verdict: m.verdict, Source: r.Source, Need: unit.Quantity{Value: m.need, Kind: r.kind}, Have: unit.Quantity{Value: m.have, Kind: r.kind}}
		if how == explained && r.inputs != nil {
			check.Inputs = r.inputs(d, s)
		}
		check.Almost = m.almost
		if m.need != 0 && m.have != 0 {
			check.Margin = unit.Known(m.have/m.need - 1)
		}
		if m.verdict == NotKnown {
			check.Missing = r.missing(d.job)
		}
		if c.Checks = append(c.Checks, check); how == summary {
			break
		}
	}
	c.Status = standing[status]
	if _, most, known, _ := heaviest(d, s, (*Piece).regular); known {
		c.Excess = float64(s.Rated) / (most * d.multiple.Floor)
	}
}
