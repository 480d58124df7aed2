package review

import (
	"errors"
	"hash/maphash"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/sanitize"
	"cutbrief/rules"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/message"
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

	seeds [2]maphash.Seed
	names func() map[rules.Asked]string // of all steps

	mu    sync.Mutex
	known map[basis]*judgement
}

// basis stands for all that the rules look at of a visit: two sums of it, which
// together are never alike by chance.
type basis [2]uint64

// mostKnown bounds what is kept of visits that were judged; some 1 KB each.
const mostKnown = 1000

// NewCriteria returns the criteria of a range and a day.
func NewCriteria(offered system.Range, today time.Time) *Criteria {
	return &Criteria{Offered: offered, Today: today, print: system.Fingerprint(offered), known: map[basis]*judgement{},
		seeds: [2]maphash.Seed{maphash.MakeSeed(), maphash.MakeSeed()}, names: sync.OnceValue(stepNames)}
}

// judgement is what the rules conclude for all visits that have the same basis. It
// holds no text of any of them.
type judgement struct {
	row    Row // what does not depend on the records of demonstrations and of what was recommended
	now    assess.Recommendation
	short  []shortfall
	proofs atomic.Pointer[proofs]
}

// shortfall is a system that falls short, and what the check that says so holds
// against what.
type shortfall struct {
	system     *system.System
	rule       rules.RuleID
	need, have unit.Quantity
}

// proofs are the cuts of the plan that prove what decides.
type proofs struct {
	cuts []string        // identifiers
	name message.Message // of the first
}

// room is what judging one visit takes, and the next takes again.
type room struct {
	basis  []byte
	job    rules.Job
	result rules.Summary
}

// Judge is the row of a visit with the rules run on it.
func (c *Criteria) Judge(path string, v *assess.Visit) Row { return c.judge(path, v, &room{}) }

// judge is Judge for a visit whose texts may change afterwards.
func (c *Criteria) judge(path string, v *assess.Visit, room *room) Row {
	j := c.judgement(v, room)
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
	for i := range j.short {
		if j.short[i].system.ID == id {
			row.Verdict = FallsShort
			row.raise(Smaller, j.short[i].reason(v.Style()))
		}
	}
	if reason := differs(v.Recommended, &j.now, v.Style()); !reason.IsEmpty() {
		row.raise(Differs, reason)
	}
	if reason := c.unproven(v, j, room); !reason.IsEmpty() {
		row.raise(Unproven, reason)
	}
	return row
}

// judgement runs the rules, once for all visits with the same basis.
func (c *Criteria) judgement(v *assess.Visit, room *room) *judgement {
	room.basis = v.AppendBasis(room.basis[:0])
	of := basis{maphash.Bytes(c.seeds[0], room.basis), maphash.Bytes(c.seeds[1], room.basis)}
	c.mu.Lock()
	j := c.known[of]
	c.mu.Unlock()
	if j != nil {
		return j
	}
	j = c.conclude(v, room)
	c.mu.Lock()
	defer c.mu.Unlock()
	if len(c.known) >= mostKnown {
		clear(c.known)
	}
	c.known[of] = j
	return j
}

// conclude runs the rules on a visit.
func (c *Criteria) conclude(v *assess.Visit, room *room) *judgement {
	job, r := &room.job, &room.result
	problems := v.JobInto(job)
	if job.Overrule != nil { // its words are kept
		job.Overrule = &rules.Overrule{Requirement: rules.Requirement(strings.Clone(string(job.Overrule.Requirement)))}
	}
	r.Of(job, c.Offered)
	j := &judgement{now: *assess.Conclude(r.Result, c.print)}
	j.row = Row{Metals: metalList(job.Pieces), Thickest: v.Thickest().Or(0), Critical: r.Critical.Requirement, System: j.now.System,
		Verdict: verdict(r), Unanswered: c.namesOf(v.Unanswered(), "; "), Stage: Judged}
	first := slices.IndexFunc(r.Candidates, func(k rules.Candidate) bool { return k.Status == rules.FallsShort }) // those come last
	if first >= 0 {
		j.short = make([]shortfall, 0, len(r.Candidates)-first)
		for _, k := range r.Candidates[first:] {
			check := &k.Checks[0]
			j.short = append(j.short, shortfall{k.System, check.Rule, check.Need, check.Have})
		}
	}
	c.flag(&j.row, v, r, problems)
	if s := v.Latest(); s != nil && len(s.Cuts) > 0 {
		j.proofs.Store(prove(job, &r.Result))
	}
	return j
}

// verdict is how a recommendation stands by itself.
func verdict(r *rules.Summary) Verdict {
	switch {
	case r.Outcome == rules.NoneFits:
		return NoneFits
	case r.Outcome == rules.NotYet:
		return NotYet
	case r.Firm:
		return Firm
	}
	return Open
}

// flag raises the flags that hang on the answers alone.
func (c *Criteria) flag(row *Row, v *assess.Visit, r *rules.Summary, problems []assess.Problem) {
	if open := openReason(r); !open.IsEmpty() {
		row.raise(StillOpen, open)
	}
	for _, f := range r.Flags {
		if contradictions[f.ID] {
			row.raise(Contradicted, f.Sentence.Message())
		}
	}
	if o := v.Overrule; o != nil && strings.TrimSpace(o.Reason) == "" {
		row.raise(Unreasoned, message.New("the rep chose {1} and gave no reason", words(o.Requirement)))
	}
	switch n := len(problems); n {
	case 0:
	case 1:
		row.raise(Unclear, problems[0].Text)
	default:
		row.raise(Unclear, message.New("{1} (and {2} more)", problems[0].Text, message.Count(n-1)))
	}
	if reason := skippedSafety(v); !reason.IsEmpty() {
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
	r.raise(flag, message.Of(err))
	return r
}

// day keeps what is a date.
func day(said string) string {
	if _, err := time.Parse(time.DateOnly, said); err != nil {
		return ""
	}
	return said
}

func metalList(pieces []rules.Piece) string {
	var names []string
	for i := range pieces {
		names = append(names, string(pieces[i].Metal))
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

// stepNames are what all steps there can be are called, by what they ask for.
func stepNames() map[rules.Asked]string {
	names := map[rules.Asked]string{}
	for _, q := range assess.Catalogue() {
		name := func(m metal.ID) {
			s := assess.Step{Question: q, Metal: m}
			names[s.Asked()] = s.Name().String()
		}
		name("")
		for _, m := range metal.List() {
			name(m.ID)
		}
	}
	return names
}

// name is what a step is called.
func (c *Criteria) name(a rules.Asked) string {
	if name, known := c.names()[a]; known {
		return name
	}
	return string(a.Fact)
}

// namesOf lists what steps are called.
func (c *Criteria) namesOf(steps []assess.Step, between string) string {
	if len(steps) == 0 {
		return ""
	}
	names := make([]string, len(steps))
	for i, s := range steps {
		names[i] = c.name(s.Asked())
	}
	return strings.Join(names, between)
}

// called is what a step is called, in every language.
func called(a rules.Asked) message.Message {
	q, known := assess.Find(a.Fact)
	if !known {
		return message.Text(string(a.Fact))
	}
	return assess.Step{Question: q, Metal: a.Metal}.Name()
}

// words makes an identifier fit for a sentence.
func words[S ~string](id S) message.ID {
	return message.ID(strings.ReplaceAll(string(id), "-", " "))
}

// reason names the rule by which the system falls short.
func (s *shortfall) reason(style unit.Style) message.Message {
	rule, _ := s.rule.Find()
	name := message.Name(sanitize.Line(s.system.Name))
	if s.need.Kind == unit.None {
		return message.New("{1}: {2} cannot do it", rule.Title, name)
	}
	return message.New("{1}: needs {2}, {3} gives {4}", rule.Title, message.Figure(unit.Show(s.need, style, unit.Up)), name, message.Figure(unit.Show(s.have, style, unit.Down)))
}

// openReason names the open questions that could change the system, or without
// which there is none.
func openReason(r *rules.Summary) message.Message {
	names := message.Each(append(r.Missing, r.Decisive()...), called)
	const most = 3
	if n := len(names); n > most {
		names = append(names[:most], message.New("and {1} more", message.Count(n-most)))
	}
	return message.Join("; ", names...)
}

// unproven says that the latest demonstration showed no cut that proves what
// decides, where the plan has one.
func (c *Criteria) unproven(v *assess.Visit, j *judgement, room *room) (none message.Message) {
	s := v.Latest()
	if s == nil || len(s.Cuts) == 0 || j.row.Critical == "" {
		return none
	}
	p := j.proofs.Load()
	if p == nil {
		v.JobInto(&room.job)
		room.result.Of(&room.job, c.Offered)
		p = prove(&room.job, &room.result.Result)
		j.proofs.Store(p)
	}
	shown := func(id string) bool { _, is := s.Find(id); return is }
	if len(p.cuts) == 0 || slices.ContainsFunc(p.cuts, shown) {
		return none
	}
	return message.New("no cut shown on {1} proves {2}; one that could: {3}", message.Name(s.Date), words(j.row.Critical), p.name)
}

// prove plans the demonstration.
func prove(job *rules.Job, r *rules.Result) *proofs {
	cuts, first := demonstration.Proofs(job, r)
	return &proofs{cuts, message.Unpack(first.Pack())} // apart from the texts of the visit, whose room is used again
}

// skippedSafety names the safety questions that nobody asked.
func skippedSafety(v *assess.Visit) message.Message {
	var names []message.Message
	for _, f := range []rules.Fact{rules.FactEyes, rules.FactVentilation, rules.FactHotWork} {
		if _, asked := v.Answer(rules.Asked{Fact: f}); !asked {
			names = append(names, called(rules.Asked{Fact: f}))
		}
	}
	if len(names) == 0 {
		return message.Message{}
	}
	return message.New("not asked: {1}", message.Join(", ", names...))
}

// differs says field by field what would be concluded otherwise today, and why
// that may be; "" if nothing, or if nothing was recorded.
func differs(was, now *assess.Recommendation, style unit.Style) (none message.Message) {
	if was == nil {
		return none
	}
	var list []message.Message
	field := func(name message.ID, before, after message.Message) {
		if before.String() != after.String() {
			none := message.ID("none").Message()
			list = append(list, message.New("{1} {2}, today {3}", name, before.Or(none), after.Or(none)))
		}
	}
	field("outcome", words(was.Outcome).Message(), words(now.Outcome).Message())
	field("system", message.Text(was.System), message.Text(now.System))
	if was.Outcome == rules.Recommended && now.Outcome == rules.Recommended {
		field("verdict", firmness(was.Firm), firmness(now.Firm))
	}
	field("what decides", words(was.Critical).Message(), words(now.Critical).Message())
	if was.Rated.IsKnown() && now.Rated.IsKnown() && was.Rated != now.Rated {
		field("rated thickness needed", rated(was, style), rated(now, style))
	}
	if len(list) == 0 {
		return none
	}
	return message.New("{1} ({2})", message.Join("; ", list...), because(was, now))
}

func firmness(firm bool) message.Message {
	if firm {
		return words(Firm).Message()
	}
	return words(Open).Message()
}

func rated(c *assess.Recommendation, style unit.Style) message.Message {
	return message.Number(unit.Show(unit.Quantity{Value: float64(c.Rated.Or(0)), Kind: unit.Thickness}, style, unit.Up))
}

// because says what changed between two conclusions beside the answers.
func because(was, now *assess.Recommendation) message.Message {
	var list []message.Message
	switch {
	case was.Rules != now.Rules && was.Rules > 0:
		list = append(list, message.New("rules of edition {1}, today {2}", message.Count(was.Rules), message.Count(now.Rules)))
	case was.Rules != now.Rules:
		list = append(list, message.New("other rules"))
	}
	if was.Range != now.Range {
		list = append(list, message.New("another range"))
	}
	if len(list) == 0 {
		list = append(list, message.New("the answers were changed since"))
	}
	return message.Join(", ", list...)
}
