package rules

import (
	"sort"

	"cutbrief/rules/message"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// How strongly an answer could matter.
const (
	couldNothing    = 0
	couldSite       = 1
	couldDecide     = 2
	couldSystem     = 3
	couldEverything = 4
)

// unknown is one unanswered question with its plausible answers and, per metal,
// its piece.
type unknown struct {
	answer *answer
	piece  int // −1 unless per metal
}

func (u unknown) asked(j *Job) Asked {
	a := Asked{Fact: u.answer.fact}
	if u.piece >= 0 {
		a.Metal = j.Pieces[u.piece].Metal
	}
	return a
}

// put answers the question, share 0 the easiest.
func (u unknown) put(j *Job, share float64) { u.answer.put(j, j.at(u.piece), share) }

// at returns a piece, or nil for questions not asked per metal.
func (j *Job) at(i int) *Piece {
	if i < 0 {
		return nil
	}
	return &j.Pieces[i]
}

// unknowns lists the unanswered questions that can still matter.
func unknowns(j *Job) []unknown {
	var list []unknown
	for i := range answers {
		a := &answers[i]
		if !a.perMetal && a.open(j, nil) {
			list = append(list, unknown{a, -1})
		}
		for p := range j.Pieces {
			if a.perMetal && a.open(j, &j.Pieces[p]) {
				list = append(list, unknown{a, p})
			}
		}
	}
	return list
}

// conclusion is what the answers so far point at.
type conclusion struct {
	first  int
	status rank
	decide Requirement
}

func conclude(j *Job, systems []system.System) conclusion {
	d := newDemand(j)
	first, status := best(&d, systems)
	if status == short {
		first = -1
	}
	return conclusion{first, status, d.requirement}
}

// open lists the unanswered questions that could change something, strongest
// first, and says whether the recommendation is firm: whether no plausible
// answer to any of them, alone or together, changes the first choice.
func open(d *demand, systems []system.System, o Outcome) ([]OpenQuestion, bool) {
	now := conclude(d.job, systems)
	list := essentials(d.job)
	essential := len(list)
	hardest := allHardest(d.job)
	for _, q := range unknowns(d.job) {
		if listed(list[:essential], q.asked(d.job)) {
			continue
		}
		if item, matters := weigh(d.job, &hardest, systems, q, now); matters {
			list = append(list, item)
		}
	}
	list = append(list, openSupply(d.job, systems, now)...)
	list = append(list, openRequirement(d.job, systems, now)...)
	list = append(list, openHints(d.job, systems, now)...)
	if without := openMetals(d.job); !listed(list[:essential], without.Asked) && without.Strength > couldNothing {
		list = append(list, without)
	}
	sort.SliceStable(list, func(a, b int) bool { return list[a].Strength > list[b].Strength })
	return list, o == Recommended && !anyPiece(d.job, withoutFigures) && firm(d.job, systems, now)
}

// onlyATrial says what remains where no figures are held.
const onlyATrial message.ID = "there are no figures for one of these metals: only a trial cut on their own piece can show it"

// openMetals is what no answer can settle: a metal no figures are held for. Its
// strength is nothing where there is none.
func openMetals(j *Job) OpenQuestion {
	q := OpenQuestion{Asked: Asked{Fact: FactMetals}}
	if anyPiece(j, withoutFigures) {
		q.Could, q.Strength = onlyATrial.Message(), couldSystem
	}
	return q
}

func listed(list []OpenQuestion, a Asked) bool {
	for _, q := range list {
		if q.Asked == a {
			return true
		}
	}
	return false
}

// essentials are the answers without which nothing can be recommended.
func essentials(j *Job) []OpenQuestion {
	var list []OpenQuestion
	for _, a := range missing(j) {
		could := message.ID("nothing can be recommended without this answer")
		if a.Fact == FactMetals && len(j.Pieces) > 0 {
			could = onlyATrial
		}
		list = append(list, OpenQuestion{Asked: a, Could: could.Message(), Strength: couldEverything})
	}
	return list
}

// allHardest answers every open question the hardest plausible way.
func allHardest(j *Job) Job {
	hard := j.clone()
	for _, q := range unknowns(j) {
		q.put(&hard, 1)
	}
	return hard
}

// weigh tries the plausible answers to one question, alone and beside the
// hardest answers to all the others, and reports the strongest change.
func weigh(j, hardest *Job, systems []system.System, q unknown, now conclusion) (OpenQuestion, bool) {
	item := OpenQuestion{Asked: q.asked(j)}
	for i := range q.answer.steps {
		changed := j.clone()
		q.put(&changed, float64(i)/float64(q.answer.steps-1))
		item.raise(systems, now, conclude(&changed, systems))
	}
	if item.Strength < couldSystem {
		eased := easedIn(j, q)
		item.raise(systems, conclude(&eased, systems), conclude(hardest, systems))
	}
	return item, item.Strength > couldNothing
}

// easedIn is the hardest case with one question answered the easiest way.
func easedIn(j *Job, q unknown) Job {
	eased := j.clone()
	q.put(&eased, 0)
	return allHardest(&eased)
}

// raise keeps the strongest difference seen between two leads.
func (o *OpenQuestion) raise(systems []system.System, from, to conclusion) {
	strength, could, flip := couldNothing, message.ID(""), ""
	switch {
	case to.first < 0 && from.first >= 0:
		strength, could = couldSystem, "could mean that no system of the range fits"
	case to.first != from.first:
		strength, could, flip = couldSystem, "could change the system to {1}", systems[to.first].ID
	case to.decide != from.decide:
		strength, could = couldDecide, "could change what decides the sale"
	case to.status == nearly && from.status != nearly:
		strength, could = couldDecide, "could make the system borderline"
	case to.status != from.status:
		strength, could = couldSite, "could mean that the site has to change first"
	}
	if strength > o.Strength {
		o.Strength, o.Could, o.FlipTo = strength, could.Message(), flip
		if flip != "" {
			o.Could = message.New(could, message.Name(systems[to.first].Name))
		}
	}
}

// openSupply weighs phase and voltage, whose answers are neither easy nor hard.
func openSupply(j *Job, systems []system.System, now conclusion) []OpenQuestion {
	phases, volts := OpenQuestion{Asked: Asked{Fact: FactPhases}}, OpenQuestion{Asked: Asked{Fact: FactVolts}}
	for _, changed := range withSupplies(j) {
		to := conclude(&changed, systems)
		phases.raise(systems, now, to)
		volts.raise(systems, now, to)
	}
	var list []OpenQuestion
	if phases.Strength > 0 && !j.Power.Phases.IsKnown() {
		list = append(list, phases)
	}
	if volts.Strength > 0 && !j.Power.Volts.IsKnown() {
		list = append(list, volts)
	}
	return list
}

// withSupplies are the job at every supply that agrees with what is told; the
// job itself if the supply is told.
func withSupplies(j *Job) []Job {
	phases, told1 := j.Power.Phases.Get()
	volts, told2 := j.Power.Volts.Get()
	if told1 && told2 {
		return []Job{*j}
	}
	var list []Job
	for _, s := range supplies {
		if (told1 && phases != BothPhases && phases != s.phases) || (told2 && volts != s.volts) {
			continue
		}
		changed := j.clone()
		changed.Power.Phases, changed.Power.Volts = unit.Known(s.phases), unit.Known(s.volts)
		if told1 {
			changed.Power.Phases = j.Power.Phases
		}
		list = append(list, changed)
	}
	if told2 && !told1 && len(list) == 0 { // a voltage not in the table
		for _, p := range []Phases{SinglePhase, ThreePhase} {
			changed := j.clone()
			changed.Power.Phases = unit.Known(p)
			list = append(list, changed)
		}
	}
	return list
}

// openRequirement weighs the question what annoys them most: it names what decides.
func openRequirement(j *Job, systems []system.System, now conclusion) []OpenQuestion {
	if len(j.Annoys) > 0 || j.Overrule != nil {
		return nil
	}
	item := OpenQuestion{Asked: Asked{Fact: FactAnnoysMost}}
	for _, row := range annoyances {
		changed := j.clone()
		changed.Annoys = []Annoyance{row.id}
		item.raise(systems, now, conclude(&changed, systems))
	}
	if item.Strength == couldNothing {
		return nil
	}
	return []OpenQuestion{item}
}

// firm reports that the first choice stands whatever the open answers are. It
// tries the job as told and with every open answer at its hardest, at every
// supply that agrees with what is told, led either way, and with all that may yet decide. Every rule only
// gets harder from the one to the other, and the order of systems of equal
// standing does not depend on the job; so if the first choice keeps its
// standing at the hardest answers, no answer in between lets another lead.
// Where only its standing at the site drops, it still leads if every system
// that could overtake it drops in the same checks.
func firm(j *Job, systems []system.System, now conclusion) bool {
	if now.first < 0 {
		return false
	}
	for _, wanted := range withRequirements(j) {
		for _, supplied := range withSupplies(&wanted) {
			for _, led := range withGuidance(&supplied) {
				hard := allHardest(&led)
				if !standsThrough(&led, &hard, systems, now.first) {
					return false
				}
			}
		}
	}
	return true
}

// withGuidance are the job led by hand and on a carriage where that is not
// told: a carriage asks for a torch of its own, but takes less of the duty
// cycle, so neither is the harder. Along an edge is easier than by hand.
func withGuidance(j *Job) []Job {
	if j.Guidance.IsKnown() {
		return []Job{*j}
	}
	list := []Job{j.clone(), j.clone()}
	list[0].Guidance, list[1].Guidance = unit.Known(FreeHand), unit.Known(Mechanised)
	return list
}

// standsThrough reports that system first leads at the job as told and cannot
// be overtaken up to the hardest answers.
func standsThrough(easy, hard *Job, systems []system.System, first int) bool {
	e, h := newDemand(easy), newDemand(hard)
	lead, status := best(&e, systems)
	if lead != first || status == short {
		return false
	}
	atHard := statusOf(&h, &systems[first])
	if atHard == status {
		return true
	}
	if atHard != afterSite {
		return false
	}
	for i := range systems {
		g := &systems[i]
		if i != first && (overtakes(&h, g, &systems[first]) || (before(g, &systems[first]) && statusOf(&e, g) == afterSite)) {
			return false
		}
	}
	return true
}

// overtakes reports whether g could pass some site rule that f fails: whether
// it asks less of the site than f there.
func overtakes(h *demand, g, f *system.System) bool {
	for i := range rows {
		mf := rows[i].judge(h, f)
		if effect(&rows[i], mf.verdict) != afterSite {
			continue
		}
		if mg := rows[i].judge(h, g); mg.verdict != Short || mg.need < mf.need || (rows[i].ID == RuleAirPress && g.AirFlow < f.AirFlow) {
			return true // with less air the hose loses less, at any pressure
		}
	}
	return false
}
