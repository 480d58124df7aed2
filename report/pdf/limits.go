package pdf

import (
	"slices"

	"cutbrief/report"
)

// limits say how much of each part is printed. The zero page has room for
// everything; a page that is too long is shortened step by step.
type limits struct {
	gap       float64 // mm between the parts
	notes     int     // lines of notes
	excluded  int     // systems not taken, one by one; the rest are counted
	evidence  int     // sentences behind what decides
	planNotes int     // lines of notes on the demonstration
	bring     int     // lines of what to bring
	confirm   int     // things to confirm
	because   int     // sentences behind the recommendation
	bars      int     // needs against capabilities
	cost      int     // sentences about cost
	costBars  bool    // the two bars below them
	curves    bool    // the lines of cost by thickness below those
	speeds    bool    // the line of speed by thickness
	timeline  bool    // the demonstration in minutes
	plan      int     // cuts
	cautions  int     // cautions
	footing   int     // lines of what the figures rest on
	who       int     // lines of one answer to who and when
	long      int     // lines of one sentence elsewhere
	cell      int     // lines of one cell of the demonstration table
	caution   int     // lines of one caution
}

// roomy is a page that is not full.
var roomy = limits{
	gap: 4.2, notes: 12, excluded: 12, evidence: 6, planNotes: 3, bring: 3, confirm: 12, because: 6,
	bars: 12, cost: 3, costBars: true, curves: true, speeds: true, timeline: true, plan: 8, cautions: 40, footing: 5, who: 2, long: 4, cell: 4, caution: 5,
}

// steps shorten a page that is too long, in this order: first the space
// between the parts, then the pictures that repeat what is said in words (the
// demonstration in minutes, speed by thickness, cost by thickness), the notes,
// the systems not taken, the evidence, the reasons, what is to be confirmed,
// the demonstration, what it costs, the answers to who and when, and only at
// the very end what to bring, by which the rep packs, and the cautions. The page is measured after each step; once it
// fits, steps that were not needed are taken back.
var steps = []func(*limits){
	func(l *limits) { l.gap = 3 },
	func(l *limits) { l.gap = 2.2 },
	func(l *limits) { l.timeline = false },
	func(l *limits) { l.speeds = false },
	func(l *limits) { l.curves = false },
	func(l *limits) { l.notes = 4 },
	func(l *limits) { l.excluded = 6 },
	func(l *limits) { l.bars = 6 },
	func(l *limits) { l.notes = 2 },
	func(l *limits) { l.excluded = 3 },
	func(l *limits) { l.evidence = 3 },
	func(l *limits) { l.notes = 1 },
	func(l *limits) { l.excluded = 2 },
	func(l *limits) { l.evidence = 2 },
	func(l *limits) { l.footing = 3 },
	func(l *limits) { l.notes = 0 },
	func(l *limits) { l.excluded = 1 },
	func(l *limits) { l.because = 4 },
	func(l *limits) { l.confirm = 8 },
	func(l *limits) { l.excluded = 0 },
	func(l *limits) { l.planNotes = 2 },
	func(l *limits) { l.confirm = 6 },
	func(l *limits) { l.long = 3 },
	func(l *limits) { l.cell = 3 },
	func(l *limits) { l.evidence = 1 },
	func(l *limits) { l.because = 3 },
	func(l *limits) { l.bars = 5 },
	func(l *limits) { l.confirm = 5 },
	func(l *limits) { l.long = 2 },
	func(l *limits) { l.plan = 5 },
	func(l *limits) { l.planNotes = 1 },
	func(l *limits) { l.cell = 2 },
	func(l *limits) { l.bars = 4 },
	func(l *limits) { l.confirm = 4 },
	func(l *limits) { l.because = 2 },
	func(l *limits) { l.plan = 4 },
	func(l *limits) { l.planNotes = 0 },
	func(l *limits) { l.costBars = false },
	func(l *limits) { l.who = 1 },
	func(l *limits) { l.confirm, l.gap = 3, 1.8 },
	func(l *limits) { l.cost = 2 },
	func(l *limits) { l.plan = 3 },
	func(l *limits) { l.cost = 1 },
	func(l *limits) { l.bars = 3 },
	func(l *limits) { l.footing = 2 },
	func(l *limits) { l.confirm, l.because = 2, 1 },
	func(l *limits) { l.long = 1 },
	func(l *limits) { l.plan = 2 },
	func(l *limits) { l.cell = 1 },
	func(l *limits) { l.caution = 3 },
	func(l *limits) { l.caution, l.bring = 2, 2 },
	func(l *limits) { l.cautions = 24 },
	func(l *limits) { l.cautions, l.footing = 18, 1 },
	func(l *limits) { l.cautions, l.bring, l.cost = 12, 1, 0 },
}

// gaps is how many of the steps take space between the parts, and spacing how
// many come before any content but pictures goes.
const (
	gaps    = 2
	spacing = 5
)

// moneyFirst are taken before anything else where the prices are nobody's:
// assumed sums give way to reasons.
var moneyFirst = []func(*limits){
	func(l *limits) { l.costBars = false },
	func(l *limits) { l.cost = 2 },
	func(l *limits) { l.cost = 1 },
}

// stepsFor are the steps for one brief.
func stepsFor(b *report.Brief) []func(*limits) {
	if b.Cost == nil || !b.Cost.Assumed {
		return steps
	}
	return slices.Concat(steps[:spacing], moneyFirst, steps[spacing:])
}
