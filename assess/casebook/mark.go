package casebook

import (
	"slices"

	"cutbrief/assess"
	"cutbrief/report"
	"cutbrief/rules"
	"cutbrief/rules/system"
)

// Decision is what the trainee concludes.
type Decision struct {
	Decides rules.Requirement
	System  string   // System.ID; "" says that none fits
	Cuts    []string // of the demonstration, in the order shown
}

// State says how one fact came out.
type State string

// The states of a fact.
const (
	Right     State = "right"
	WrongFact State = "wrong"     // noted, and not so
	NotAsked  State = "not asked" // no note
	LeftOpen  State = "left open" // noted as not known, though it can be learned
)

// Item is one fact with how it came out and what a miss could have cost.
type Item struct {
	Asked rules.Asked
	Name  string
	State State
	Noted string // as the trainee has it, "" if not
	Truth string
	Cost  string // one sentence; "" if it is right or would have changed nothing
	Costs int    // 3 the system, 2 what decides, 1 a verdict, 0 nothing
}

// Tally is how often something came out right.
type Tally struct {
	Right int `json:"right"`
	Of    int `json:"of"`
}

// Mark is the page at the end of a practice: no score, but what happened and
// what it would have led to.
type Mark struct {
	Customer *Customer
	Decision Decision
	Used     int
	Acts     int

	Items   []Item
	System  []string // whether the system is right, and what it would have meant
	Decides []string
	Showing []string
	Order   []string
	Caught  []string // unclear or wrong answers that were cleared up
	Let     []string // those that were not
	Safety  []string // questions of safety forgotten
	Route   Route
	Skills  map[Skill]Tally
	Next    Skill // to practise next
	Why     []report.Reason

	RightSystem, RightDecides, Proven bool
}

// judge holds what a mark is made from.
type judge struct {
	*Session
	decision Decision
	truth    rules.Result
	notes    rules.Result
	mark     *Mark
}

// Mark judges a practice by the rules: the trainee's understanding against what
// is true. It changes nothing in the session.
func (s *Session) Mark(d Decision) Mark {
	noted, _ := s.Notes.Job()
	m := Mark{Customer: s.Customer, Decision: d, Used: s.Used(), Acts: len(s.Log), Skills: map[Skill]Tally{}}
	j := judge{Session: s, decision: d, truth: rules.Judge(s.Customer.job(), s.Offered), notes: rules.Judge(noted, s.Offered), mark: &m}
	m.Route = NewRoute(s.Customer, s.Offered)
	j.items()
	j.system()
	j.decides()
	j.showing()
	j.order()
	j.followed()
	j.safety()
	m.Why = report.Why(s.Customer.Facts, s.Offered, report.Options{})
	m.Next = j.next()
	return m
}

// items goes through every fact that is true of the customer.
func (j *judge) items() {
	for _, s := range j.Customer.Facts.Steps() {
		truth, known := j.Customer.truth(s.Asked())
		if !known || s.Question.Group == assess.GroupVisit || s.Question.Optional {
			continue
		}
		item := Item{Asked: s.Asked(), Name: s.Name(), Truth: spoken(s.Question, truth), State: Right}
		note, noted := j.Notes.Answer(s.Asked())
		switch {
		case !noted:
			item.State = NotAsked
		case note.State == assess.Unknown:
			item.State = LeftOpen
		default:
			item.Noted = spoken(s.Question, note)
			if !j.Customer.same(s, note) {
				item.State = WrongFact
			}
		}
		if item.State != Right {
			item.Cost, item.Costs = j.cost(s, note, item)
		}
		j.mark.Items = append(j.mark.Items, item)
		j.tally(skillOf(s.Question.ID), item)
	}
}

// tally counts a fact towards its skill. What was not asked counts only if it
// mattered: nobody asks everything.
func (j *judge) tally(of Skill, item Item) {
	matters := slices.Contains(j.mark.Route.Asked, item.Asked)
	if of != "" && (item.State != NotAsked || matters || item.Costs > 1) {
		j.count(of, item.State == Right)
	}
}

func (j *judge) count(of Skill, right bool) {
	t := j.mark.Skills[of]
	t.Of++
	if right {
		t.Right++
	}
	j.mark.Skills[of] = t
}

// followed says which answers that were unclear or wrong were cleared up.
func (j *judge) followed() {
	for _, a := range j.Customer.tricky() {
		step := stepOf(a)
		truth, _ := j.Customer.truth(a)
		note, noted := j.Notes.Answer(a)
		caught := noted && j.heard[a] && j.Customer.same(step, note)
		text := step.Name() + ": " + j.firstHeard(step) + "; it is " + spoken(step.Question, truth)
		switch {
		case caught:
			j.mark.Caught = append(j.mark.Caught, text)
		case j.asked[a]:
			j.mark.Let = append(j.mark.Let, text)
		}
		if caught || j.asked[a] {
			j.count(SkillFollow, caught)
		}
	}
}

// firstHeard is what was heard before any follow-up.
func (j *judge) firstHeard(s assess.Step) string {
	a := s.Asked()
	if wrong, has := j.Customer.Wrong[a]; has {
		return "first heard as " + label(s.Question, wrong)
	}
	if j.Customer.onlySeen(a.Fact) {
		return "only its plate says it"
	}
	return "first heard without a figure"
}

// safety lists the questions of safety that were forgotten.
func (j *judge) safety() {
	for _, f := range safetyFacts {
		step := stepOf(rules.Asked{Fact: f})
		if truth, known := j.Customer.truth(step.Asked()); known && !j.asked[step.Asked()] {
			j.mark.Safety = append(j.mark.Safety, step.Name()+": "+spoken(step.Question, truth))
		}
	}
}

// weak is the share of right below which a skill wants practice.
const weak = 0.8

// next is the one skill to practise next: what cost most, else the weakest.
func (j *judge) next() Skill {
	worst, most := Skill(""), 0
	for _, item := range j.mark.Items {
		if s := skillOf(item.Asked.Fact); item.Costs > most && item.Costs > 1 && s != "" {
			worst, most = s, item.Costs
		}
	}
	if worst != "" {
		return worst
	}
	least := 1.0
	for _, s := range Skills() {
		if t := j.mark.Skills[s]; t.Of > 0 && t.share() < least {
			worst, least = s, t.share()
		}
	}
	return worst
}

func (t Tally) share() float64 {
	if t.Of == 0 {
		return 0
	}
	return float64(t.Right) / float64(t.Of)
}

// find is a system of the range, by its identifier.
func find(r *rules.Result, id string) *rules.Candidate {
	for i := range r.Candidates {
		if r.Candidates[i].System.ID == id {
			return &r.Candidates[i]
		}
	}
	return nil
}

// with is a result that recommends one system, whatever the rules say, so that
// its demonstration can be planned.
func with(r rules.Result, id string) rules.Result {
	r.First = find(&r, id)
	return r
}

// called is what a system is called in the mark: "Demo 30, a 30 A unit".
func called(s *system.System) string {
	return s.Name + ", a " + amperes(s.OutputMax) + " unit"
}
