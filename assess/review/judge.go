package review

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/sanitize"
	"cutbrief/rules"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// Criteria are what visits are judged by: today's rules, range and day. Many may
// use them at once.
type Criteria struct {
	Offered system.Range
	Today   time.Time
	print   string // fingerprint of the range

	mu    sync.Mutex
	known map[string]*judgement // by the basis of visits
}

// mostKnown bounds what is kept of visits that were judged; some 3 KB each.
const mostKnown = 1000

// NewCriteria returns the criteria of a range and a day.
func NewCriteria(offered system.Range, today time.Time) *Criteria {
	return &Criteria{Offered: offered, Today: today, print: system.Fingerprint(offered), known: map[string]*judgement{}}
}

// judgement is what the rules conclude for all visits that have the same basis.
type judgement struct {
	row    Row // what does not depend on the records of demonstrations and of what was recommended
	now    *assess.Recommendation
	short  map[string]string // systems that fall short, with the first reason
	proofs atomic.Pointer[proofs]
}

// proofs are the cuts of the plan that prove what decides.
type proofs struct {
	cuts []string // identifiers
	name string   // of the first
}

// Judge is the row of a visit with the rules run on it.
func (c *Criteria) Judge(path string, v *assess.Visit) Row {
	return c.judge(path, v, new([]byte), func() *assess.Visit { return v })
}

// judge is Judge for a visit whose texts will change, with room for its basis; whole
// returns the same visit to keep.
func (c *Criteria) judge(path string, v *assess.Visit, room *[]byte, whole func() *assess.Visit) Row {
	j := c.judgement(v, room, whole)
	row := j.row
	row.Path, row.Date = path, strings.Clone(day(v.Said(assess.FactDate)))
	row.Company, row.Rep = strings.Clone(v.Said(assess.FactCompany)), strings.Clone(v.Said(assess.FactRep))
	row.Noted = noted(v)
	if s := v.Latest(); s != nil {
		row.Outcome, row.Due = strings.Clone(string(s.Outcome)), strings.Clone(day(s.Next.Date))
	}
	id := recorded(v)
	if id != "" {
		row.System = strings.Clone(sanitize.Line(id))
	}
	if reason, short := j.short[id]; short {
		row.Verdict = FallsShort
		row.raise(Smaller, reason)
	}
	if reason := differs(v.Recommended, j.now, v.Style()); reason != "" {
		row.raise(Differs, reason)
	}
	if reason := c.unproven(v, j); reason != "" {
		row.raise(Unproven, reason)
	}
	return row
}

// judgement runs the rules, once for all visits with the same basis.
func (c *Criteria) judgement(v *assess.Visit, room *[]byte, whole func() *assess.Visit) *judgement {
	*room = v.AppendBasis((*room)[:0])
	c.mu.Lock()
	j := c.known[string(*room)]
	c.mu.Unlock()
	if j != nil {
		return j
	}
	j = c.conclude(whole())
	c.mu.Lock()
	defer c.mu.Unlock()
	if len(c.known) >= mostKnown {
		clear(c.known)
	}
	c.known[string(*room)] = j
	return j
}

// conclude runs the rules on a visit.
func (c *Criteria) conclude(v *assess.Visit) *judgement {
	job, problems := v.Job()
	r := c.evaluate(job)
	j := &judgement{now: assess.Conclude(r, c.print), short: map[string]string{}}
	j.row = Row{Metals: metalList(v.Metals()), Thickest: v.Thickest().Or(0), Critical: r.Critical.Requirement, System: j.now.System,
		Verdict: verdicts[r.Outcome], Unanswered: unanswered(v), Stage: Judged}
	if r.Firm {
		j.row.Verdict = Firm
	}
	for i := range r.Candidates {
		if k := &r.Candidates[i]; k.Status == rules.FallsShort {
			j.short[k.System.ID] = shortReason(k, v.Style())
		}
	}
	flagged(&j.row, v, &r, problems)
	if s := v.Latest(); s != nil && len(s.Cuts) > 0 {
		j.proofs.Store(prove(job, r))
	}
	return j
}

// verdicts are those of outcomes where nothing is known to be firm.
var verdicts = map[rules.Outcome]Verdict{rules.Recommended: Open, rules.NoneFits: NoneFits, rules.NotYet: NotYet}

// evaluate says what rules.Evaluate says, but of the open questions only those
// that a flag names: most visits have none, and listing them takes longest.
func (c *Criteria) evaluate(job rules.Job) rules.Result {
	r := rules.Summarise(job, c.Offered)
	if r.Outcome == rules.Recommended && !r.Firm {
		r.Open = rules.Open(job, c.Offered, r.Outcome)
	}
	return r
}

// flagged raises the flags that hang on the answers alone.
func flagged(row *Row, v *assess.Visit, r *rules.Result, problems []assess.Problem) {
	if reason := openReason(r); reason != "" {
		row.raise(StillOpen, reason)
	}
	for _, f := range r.Flags {
		if contradictions[f.ID] {
			row.raise(Contradicted, string(f.Sentence))
		}
	}
	if o := v.Overrule; o != nil && strings.TrimSpace(o.Reason) == "" {
		row.raise(Unreasoned, "the rep chose "+words(string(o.Requirement))+" and gave no reason")
	}
	switch n := len(problems); n {
	case 0:
	case 1:
		row.raise(Unclear, problems[0].Text)
	default:
		row.raise(Unclear, fmt.Sprintf("%s (and %d more)", problems[0].Text, n-1))
	}
	if reason := skippedSafety(v); reason != "" {
		row.raise(Unsafe, reason)
	}
}

// contradictions are the warnings of the rules about the use that was claimed.
var contradictions = map[string]bool{"little-production": true, "much-maintenance": true, "busy-over-week": true}

// unread is the row of a file that could not be read as a visit.
func unread(path string, err error) Row {
	r, flag := Row{Path: path, Stage: Unread}, Damaged
	switch {
	case errors.Is(err, assess.ErrForeign):
		flag = Foreign
	case errors.Is(err, assess.ErrNewerFormat):
		flag = Newer
	case errors.Is(err, errUnreadable):
		flag = Unreadable
	}
	r.raise(flag, sanitize.Line(err.Error()))
	return r
}

// day keeps what is a date.
func day(said string) string {
	if _, err := time.Parse(time.DateOnly, said); err != nil {
		return ""
	}
	return said
}

func metalList(metals []metal.ID) string {
	var names []string
	for _, m := range metals {
		names = append(names, string(m))
	}
	return strings.Join(names, ", ")
}

// recorded is the system that was ordered, or else recommended; "" if neither
// was saved.
func recorded(v *assess.Visit) string {
	if s := v.Latest(); s != nil && s.Outcome == assess.Ordered && s.System != "" {
		return s.System
	}
	if v.Recommended != nil {
		return v.Recommended.System
	}
	return ""
}

// unanswered lists the questions that matter here and have no answer.
func unanswered(v *assess.Visit) string {
	var names []string
	for _, s := range v.Steps() {
		if _, answered := v.Answer(s.Asked()); !answered && !s.Question.Optional {
			names = append(names, s.Name().String())
		}
	}
	return strings.Join(names, "; ")
}

// words makes an identifier fit for a sentence.
func words(id string) string { return strings.ReplaceAll(id, "-", " ") }

// shortReason names the first rule by which a system falls short.
func shortReason(c *rules.Candidate, style unit.Style) string {
	for i := range c.Checks {
		check := &c.Checks[i]
		rule, known := check.Rule.Find()
		if check.Verdict != rules.Short || !known || !rule.Hard {
			continue
		}
		if check.Need.Kind == unit.None {
			return fmt.Sprintf("%s: %s cannot do it", rule.Title, sanitize.Line(c.System.Name))
		}
		return fmt.Sprintf("%s: needs %s, %s gives %s", rule.Title, unit.Show(check.Need, style, unit.Up), sanitize.Line(c.System.Name), unit.Show(check.Have, style, unit.Down))
	}
	return sanitize.Line(c.System.Name) + " falls short"
}

// openReason names the open questions that could change the system, or without
// which there is none.
func openReason(r *rules.Result) string {
	const system = 3 // rules.OpenQuestion.Strength
	var names []string
	for _, a := range r.Missing {
		names = append(names, stepName(a))
	}
	for _, q := range r.Open {
		if q.Strength >= system {
			names = append(names, stepName(q.Asked))
		}
	}
	const most = 3
	if n := len(names); n > most {
		names = append(names[:most], fmt.Sprintf("and %d more", n-most))
	}
	return strings.Join(names, "; ")
}

func stepName(a rules.Asked) string {
	q, known := assess.Find(a.Fact)
	if !known {
		return string(a.Fact)
	}
	return assess.Step{Question: q, Metal: a.Metal}.Name().String()
}

// unproven says that the latest demonstration showed no cut that proves what
// decides, where the plan has one.
func (c *Criteria) unproven(v *assess.Visit, j *judgement) string {
	s := v.Latest()
	if s == nil || len(s.Cuts) == 0 || j.row.Critical == "" {
		return ""
	}
	p := j.proofs.Load()
	if p == nil {
		job, _ := v.Job()
		p = prove(job, rules.Judge(job, c.Offered))
		j.proofs.Store(p)
	}
	shown := func(id string) bool { _, is := s.Find(id); return is }
	if len(p.cuts) == 0 || slices.ContainsFunc(p.cuts, shown) {
		return ""
	}
	return fmt.Sprintf("no cut shown on %s proves %s; one that could: %s", s.Date, words(string(j.row.Critical)), p.name)
}

// prove plans the demonstration.
func prove(job rules.Job, r rules.Result) *proofs {
	p := &proofs{}
	for _, cut := range demonstration.Plan(job, r) {
		if cut.Proves != r.Critical.Requirement {
			continue
		}
		if p.cuts = append(p.cuts, cut.ID); p.name == "" {
			p.name = cut.Name.String()
		}
	}
	return p
}

// skippedSafety names the safety questions that nobody asked.
func skippedSafety(v *assess.Visit) string {
	var names []string
	for _, f := range []rules.Fact{rules.FactEyes, rules.FactVentilation, rules.FactHotWork} {
		if _, asked := v.Answer(rules.Asked{Fact: f}); !asked {
			names = append(names, stepName(rules.Asked{Fact: f}))
		}
	}
	if len(names) == 0 {
		return ""
	}
	return "not asked: " + strings.Join(names, ", ")
}

// differs says field by field what would be concluded otherwise today, and why
// that may be; "" if nothing, or if nothing was recorded.
func differs(was, now *assess.Recommendation, style unit.Style) string {
	if was == nil {
		return ""
	}
	var list []string
	field := func(name, before, after string) {
		if before != after {
			list = append(list, fmt.Sprintf("%s %s, today %s", name, orNone(before), orNone(after)))
		}
	}
	field("outcome", words(string(was.Outcome)), words(string(now.Outcome)))
	field("system", was.System, now.System)
	if was.Outcome == rules.Recommended && now.Outcome == rules.Recommended {
		field("verdict", firmness(was.Firm), firmness(now.Firm))
	}
	field("what decides", words(string(was.Critical)), words(string(now.Critical)))
	if was.Rated.IsKnown() && now.Rated.IsKnown() && was.Rated != now.Rated {
		field("rated thickness needed", rated(was, style), rated(now, style))
	}
	if len(list) == 0 {
		return ""
	}
	return strings.Join(list, "; ") + because(was, now)
}

func orNone(s string) string {
	if s == "" {
		return "none"
	}
	return s
}

func firmness(firm bool) string {
	if firm {
		return string(Firm)
	}
	return string(Open)
}

func rated(c *assess.Recommendation, style unit.Style) string {
	return unit.Show(unit.Quantity{Value: float64(c.Rated.Or(0)), Kind: unit.Thickness}, style, unit.Up)
}

// because says what changed between two conclusions beside the answers.
func because(was, now *assess.Recommendation) string {
	var list []string
	switch {
	case was.Rules != now.Rules && was.Rules > 0:
		list = append(list, fmt.Sprintf("rules of edition %d, today %d", was.Rules, now.Rules))
	case was.Rules != now.Rules:
		list = append(list, "other rules")
	}
	if was.Range != now.Range {
		list = append(list, "another range")
	}
	if len(list) == 0 {
		list = append(list, "the answers were changed since")
	}
	return " (" + strings.Join(list, ", ") + ")"
}
