package review

import (
	"errors"
	"fmt"
	"strings"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/sanitize"
	"cutbrief/assess/store/scan"
	"cutbrief/rules"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// Bench is what visits are judged on: today's range and day.
type Bench struct {
	Offered system.Range
	Today   time.Time
	print   string // fingerprint of the range
}

// NewBench returns a bench for a range and a day.
func NewBench(offered system.Range, today time.Time) *Bench {
	return &Bench{Offered: offered, Today: today, print: system.Fingerprint(offered)}
}

// unread is the row of a file that could not be read as a visit.
func unread(path string, err error) Row {
	r := Row{Path: path, Stage: Unread}
	r.raise(flagOf(err), sanitize.Line(err.Error()))
	return r
}

// shownPath makes a path fit to be shown. Nearly every one is as it stands.
func shownPath(path string) string {
	for i := range len(path) {
		if path[i] <= ' ' || path[i] > '~' {
			return sanitize.Line(path)
		}
	}
	return path
}

// flagOf tells the reasons apart why a file is not read.
func flagOf(err error) Flag {
	switch {
	case errors.Is(err, assess.ErrForeign):
		return Foreign
	case errors.Is(err, assess.ErrNewerFormat):
		return Newer
	case errors.Is(err, scan.ErrUnreadable):
		return Unreadable
	}
	return Damaged
}

// recorded is the row of what a file says, before any rule has run. What an
// earlier program concluded is shown as it was.
func recorded(path string, v *assess.Visit) Row {
	r := Row{Path: path, Date: day(v.Said(assess.FactDate)), Company: v.Said(assess.FactCompany), Rep: v.Said(assess.FactRep),
		Metals: metalList(v.Metals()), Thickest: v.Thickest().Or(0), Stage: Recorded}
	if c := v.Recommended; c != nil {
		r.Critical, r.System, r.Verdict = c.Critical, c.System, verdicts[c.Outcome]
		if c.Firm && r.Verdict == Open {
			r.Verdict = Firm
		}
	}
	if s := v.Latest(); s != nil {
		r.Outcome, r.Due = string(s.Outcome), day(s.Next.Date)
	}
	return r
}

// verdicts are those of outcomes where nothing is known to be firm.
var verdicts = map[rules.Outcome]Verdict{rules.Recommended: Open, rules.NoneFits: NoneFits, rules.NotYet: NotYet}

// day keeps what is a date.
func day(said string) string {
	if _, err := time.Parse(time.DateOnly, said); err != nil {
		return ""
	}
	return said
}

func metalList(metals []metal.ID) string {
	if len(metals) == 1 {
		return string(metals[0])
	}
	var names []string
	for _, m := range metals {
		names = append(names, string(m))
	}
	return strings.Join(names, ", ")
}

// Judge is the row of a visit with the rules run on it.
func (b *Bench) Judge(path string, v *assess.Visit) Row {
	row := recorded(path, v)
	row.Stage = Judged
	job, problems := v.Job()
	result := b.evaluate(job)
	row.Unanswered, row.Noted = unanswered(v), noted(v)
	b.stand(&row, v, &result)
	b.flag(&row, v, job, &result, problems)
	return row
}

// evaluate says what rules.Evaluate says, but of the open questions only those
// that a flag names: most visits have none, and listing them takes longest.
func (b *Bench) evaluate(job rules.Job) rules.Result {
	r := rules.Judge(job, b.Offered)
	r.Firm = rules.Firm(job, b.Offered, r.Outcome)
	if r.Outcome == rules.Recommended && !r.Firm {
		return rules.Evaluate(job, b.Offered)
	}
	return r
}

// stand fills in how the recommendation stands today.
func (b *Bench) stand(row *Row, v *assess.Visit, r *rules.Result) {
	row.Critical = r.Critical.Requirement
	if id := systemOf(v); id != "" {
		row.System = sanitize.Line(id)
	} else if r.First != nil {
		row.System = r.First.System.ID
	}
	row.Verdict = verdicts[r.Outcome]
	switch {
	case recordedShort(v, r) != nil:
		row.Verdict = FallsShort
	case r.Firm && row.Verdict == Open:
		row.Verdict = Firm
	}
}

// recordedShort is the system that was ordered or else recommended, if it falls
// short today.
func recordedShort(v *assess.Visit, r *rules.Result) *rules.Candidate {
	id := systemOf(v)
	for i := range r.Candidates {
		if c := &r.Candidates[i]; id != "" && c.System.ID == id && c.Status == rules.FallsShort {
			return c
		}
	}
	return nil
}

// systemOf is the system that was ordered, or else recommended; "" if neither
// was saved.
func systemOf(v *assess.Visit) string {
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

func (b *Bench) flag(row *Row, v *assess.Visit, job rules.Job, r *rules.Result, problems []assess.Problem) {
	if c := recordedShort(v, r); c != nil {
		row.raise(Smaller, shortReason(c, v.Style()))
	}
	if reason := b.differs(v, r); reason != "" {
		row.raise(Differs, reason)
	}
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
	if n := len(problems); n > 0 {
		row.raise(Unclear, counted(problems[0].Text, n))
	}
	if reason := unproven(v, job, r); reason != "" {
		row.raise(Unproven, reason)
	}
	if reason := skippedSafety(v); reason != "" {
		row.raise(Unsafe, reason)
	}
}

// contradictions are the warnings of the rules about the use that was claimed.
var contradictions = map[string]bool{"little-production": true, "much-maintenance": true, "busy-over-week": true}

func counted(text string, n int) string {
	if n == 1 {
		return text
	}
	return fmt.Sprintf("%s (and %d more)", text, n-1)
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
func unproven(v *assess.Visit, job rules.Job, r *rules.Result) string {
	s := v.Latest()
	if s == nil || len(s.Cuts) == 0 || r.Critical.Requirement == "" {
		return ""
	}
	could := ""
	for _, c := range demonstration.Plan(job, *r) {
		if c.Proves != r.Critical.Requirement {
			continue
		}
		if _, shown := s.Find(c.ID); shown {
			return ""
		}
		if could == "" {
			could = c.Name.String()
		}
	}
	if could == "" {
		return ""
	}
	return fmt.Sprintf("no cut shown on %s proves %s; one that could: %s", s.Date, words(string(r.Critical.Requirement)), could)
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
func (b *Bench) differs(v *assess.Visit, r *rules.Result) string {
	was := v.Recommended
	if was == nil {
		return ""
	}
	now := assess.Conclude(*r, b.print)
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
	if was.Rated.IsKnown() && now.Rated.IsKnown() {
		field("rated thickness needed", rated(was, v.Style()), rated(now, v.Style()))
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
