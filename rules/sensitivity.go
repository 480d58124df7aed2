package rules

import (
	"slices"

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

// eachUnknown calls do with the unanswered questions that can still matter.
func eachUnknown(j *Job, do func(unknown)) {
	for i := range answers {
		a := &answers[i]
		if !a.perMetal && a.open(j, nil) {
			do(unknown{a, -1})
		}
		for p := range j.Pieces {
			if a.perMetal && a.open(j, &j.Pieces[p]) {
				do(unknown{a, p})
			}
		}
	}
}

// conclusion is what the answers so far point at.
type conclusion struct {
	first  int // −1 if none fits
	status rank
	decide Requirement
}

func conclude(j *Job, systems []system.System) conclusion {
	s := study{systems: systems}
	return s.conclude(j)
}

func (s *study) conclude(j *Job) conclusion {
	s.demand.of(j)
	first, status := best(&s.demand, s.systems)
	if status == short {
		first = -1
	}
	return conclusion{first, status, s.demand.requirement}
}

// study is the trying of other answers in a job: one copy serves every try.
type study struct {
	job       *Job
	systems   []system.System
	now       conclusion // of the job as told
	hardest   conclusion // with every open answer at its hardest
	demand    demand     // of the job looked at
	atHardest demand
	copy      copied
	hard      copied
	ends      [2]copied // with what is in doubt at its easiest and at its hardest
	overruled Overrule
}

// copied is a copy of a job that can be changed, with room for its pieces.
type copied struct {
	job  Job
	room [8]Piece
}

// of copies a job in place of what was copied before.
func (c *copied) of(j *Job) *Job {
	c.job = *j
	c.job.Pieces = append(c.room[:0], j.Pieces...)
	return &c.job
}

// open lists the unanswered questions that could change something, strongest
// first.
func (s *study) open() []OpenQuestion {
	list := essentials(s.job)
	essential := len(list)
	s.hardest = s.conclude(allHardest(s.job, &s.hard))
	eachUnknown(s.job, func(q unknown) {
		if listed(list[:essential], q.asked(s.job)) {
			return
		}
		if item := s.weigh(q); item.Strength > couldNothing {
			list = append(list, item)
		}
	})
	list = append(list, s.openSupply()...)
	list = append(list, s.openRequirement()...)
	list = append(list, s.openHints()...)
	if without := openMetals(s.job); !listed(list[:essential], without.Asked) && without.Strength > couldNothing {
		list = append(list, without)
	}
	slices.SortStableFunc(list, func(a, b OpenQuestion) int { return b.Strength - a.Strength })
	return list
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

// allHardest copies a job and answers every open question in it the hardest
// plausible way.
func allHardest(j *Job, room *copied) *Job {
	hard := room.of(j)
	eachUnknown(j, func(q unknown) { q.put(hard, 1) })
	return hard
}

// weigh tries the plausible answers to one question, alone and beside the
// hardest answers to all the others, and reports the strongest change.
func (s *study) weigh(q unknown) OpenQuestion {
	item := OpenQuestion{Asked: q.asked(s.job)}
	for i := 0; i < q.answer.steps && item.Strength < couldSystem; i++ {
		changed := s.copy.of(s.job)
		q.put(changed, float64(i)/float64(q.answer.steps-1))
		s.raise(&item, s.now, s.conclude(changed))
	}
	if item.Strength < couldSystem { // the hardest case with one question answered the easiest way
		eased := s.copy.of(s.job)
		q.put(eased, 0)
		s.raise(&item, s.conclude(allHardest(eased, &s.hard)), s.hardest)
	}
	return item
}

// try raises a question by what one answer to it changes.
func (s *study) try(item *OpenQuestion, answer func(*Job)) {
	changed := s.copy.of(s.job)
	answer(changed)
	s.raise(item, s.now, s.conclude(changed))
}

// raise keeps the strongest difference seen between two leads.
func (s *study) raise(o *OpenQuestion, from, to conclusion) {
	strength, could, flip := couldNothing, message.ID(""), ""
	switch {
	case to.first < 0 && from.first >= 0:
		strength, could = couldSystem, "could mean that no system of the range fits"
	case to.first != from.first:
		strength, could, flip = couldSystem, "could change the system to {1}", s.systems[to.first].ID
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
			o.Could = message.New(could, message.Name(s.systems[to.first].Name))
		}
	}
}

// openSupply weighs phase and voltage, whose answers are neither easy nor hard.
func (s *study) openSupply() []OpenQuestion {
	phases, volts := OpenQuestion{Asked: Asked{Fact: FactPhases}}, OpenQuestion{Asked: Asked{Fact: FactVolts}}
	if s.job.Power.Phases.IsKnown() && s.job.Power.Volts.IsKnown() {
		return nil
	}
	for _, m := range mainsFor(s.job) {
		changed := s.copy.of(s.job)
		m.put(changed)
		to := s.conclude(changed)
		s.raise(&phases, s.now, to)
		s.raise(&volts, s.now, to)
	}
	var list []OpenQuestion
	if phases.Strength > 0 && !s.job.Power.Phases.IsKnown() {
		list = append(list, phases)
	}
	if volts.Strength > 0 && !s.job.Power.Volts.IsKnown() {
		list = append(list, volts)
	}
	return list
}

// mainsFeed is phase and voltage of a site.
type mainsFeed struct {
	phases unit.Maybe[Phases]
	volts  unit.Maybe[unit.Volt]
}

func (m mainsFeed) put(j *Job) { j.Power.Phases, j.Power.Volts = m.phases, m.volts }

// mainsFor are phase and voltage at every supply that agrees with what is told,
// and as told if both are.
func mainsFor(j *Job) []mainsFeed {
	phases, told1 := j.Power.Phases.Get()
	volts, told2 := j.Power.Volts.Get()
	if told1 && told2 {
		return []mainsFeed{{j.Power.Phases, j.Power.Volts}}
	}
	var list []mainsFeed
	for _, s := range supplies {
		if (told1 && phases != BothPhases && phases != s.phases) || (told2 && volts != s.volts) {
			continue
		}
		m := mainsFeed{unit.Known(s.phases), unit.Known(s.volts)}
		if told1 {
			m.phases = j.Power.Phases
		}
		list = append(list, m)
	}
	if told2 && !told1 && len(list) == 0 { // a voltage not in the table
		return []mainsFeed{{unit.Known(SinglePhase), j.Power.Volts}, {unit.Known(ThreePhase), j.Power.Volts}}
	}
	return list
}

// openRequirement weighs the question what annoys them most: it names what decides.
func (s *study) openRequirement() []OpenQuestion {
	if len(s.job.Annoys) > 0 || s.job.Overrule != nil {
		return nil
	}
	item := OpenQuestion{Asked: Asked{Fact: FactAnnoysMost}}
	for _, row := range annoyances {
		s.try(&item, func(j *Job) { j.Annoys = []Annoyance{row.id} })
	}
	if item.Strength == couldNothing {
		return nil
	}
	return []OpenQuestion{item}
}

// firm reports that the first choice of a recommendation stands whatever the open
// answers are, and whatever is in doubt: at both ends of each figure and with each
// option. Where a choice of those in doubt could come together in too many ways to
// try, it is not firm.
func (s *study) firm(o Outcome) bool {
	if o != Recommended || s.now.first < 0 || anyPiece(s.job, withoutFigures) {
		return false
	}
	if len(s.job.Doubts) == 0 {
		return s.stands(s.job, s.job)
	}
	cases, all := withDoubts(s.job, s.systems)
	for i := range cases {
		easy, hard := s.atEnd(&cases[i], easiest), s.atEnd(&cases[i], hardest)
		all = all && s.leads(easy) && s.leads(hard) && s.stands(easy, hard)
	}
	return all
}

// leads reports that the first choice leads in another job too.
func (s *study) leads(j *Job) bool { return s.conclude(j).first == s.now.first }

// stands reports that the first choice stands from one job to another in which
// what is told is no easier, whatever the open answers are. It tries the first as
// it is and the other with every open answer at its hardest, at every supply that
// agrees with what is told, led either way, and with all that may yet decide.
// Every rule only gets harder from the one to the other, and the order of systems
// of equal standing does not depend on the job; so if the first choice keeps its
// standing at the hardest answers, no answer in between lets another lead. Where
// only its standing at the site drops, it still leads if every system that could
// overtake it drops in the same checks.
func (s *study) stands(from, to *Job) bool {
	easy, hard := s.copy.of(from), to
	if to == from {
		hard = easy
	}
	for _, s.overruled.Requirement = range mayDecide(from) {
		easy.Overrule, hard.Overrule = &s.overruled, &s.overruled
		for _, feed := range mainsFor(from) {
			feed.put(easy)
			feed.put(hard)
			for _, easy.Guidance = range guidancesFor(from) {
				hard.Guidance = easy.Guidance
				if !s.standsThrough(easy, allHardest(hard, &s.hard), s.now.first) {
					return false
				}
			}
		}
	}
	return true
}

// guidancesFor are by hand and on a carriage where it is not told how the torch is
// led: a carriage asks for a torch of its own, but takes less of the duty
// cycle, so neither is the harder. Along an edge is easier than by hand.
func guidancesFor(j *Job) []unit.Maybe[Guidance] {
	if j.Guidance.IsKnown() {
		return []unit.Maybe[Guidance]{j.Guidance}
	}
	return []unit.Maybe[Guidance]{unit.Known(FreeHand), unit.Known(Mechanised)}
}

// standsThrough reports that system first leads at the job as told and cannot
// be overtaken up to the hardest answers.
func (s *study) standsThrough(easy, hard *Job, first int) bool {
	systems, e, h := s.systems, &s.demand, &s.atHardest
	e.of(easy)
	h.of(hard)
	lead, status := best(e, systems)
	if lead != first || status == short {
		return false
	}
	atHard := statusOf(h, &systems[first])
	if atHard == status {
		return true
	}
	if atHard != afterSite {
		return false
	}
	for i := range systems {
		g := &systems[i]
		if i != first && (overtakes(h, g, &systems[first]) || (before(g, &systems[first]) && statusOf(e, g) == afterSite)) {
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
