package report

import (
	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/cost"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// builder holds what the parts of a brief are worded from.
type builder struct {
	visit    *assess.Visit
	offered  *system.Range
	style    unit.Style
	prices   func() cost.PriceList // read when they are first asked for
	words    *message.Catalog
	job      rules.Job
	problems []assess.Problem
	result   rules.Result
	holding  unit.Maybe[rules.Holding] // over what ranges and assumed answers allow
	showing  demonstration.Programme
	plan     []demonstration.Cut
	warned   []demonstration.Caution
}

func newBuilder(v *assess.Visit, offered *system.Range, o Options) *builder {
	b := &builder{visit: v, offered: offered, style: o.Style, prices: o.Prices.OrDemo, words: o.Words}
	if b.style == "" {
		b.style = v.Style()
	}
	b.job, b.problems = v.Job()
	b.result = rules.Evaluate(b.job, *offered)
	return b
}

// Build turns a visit and a range into a brief. Every number is rounded here,
// once: up for what is needed, down for what is given. The date is the
// visit's; the same visit and range give the same brief.
func Build(v *assess.Visit, offered system.Range, o Options) Brief {
	b := newBuilder(v, &offered, o)
	b.plans()
	if b.result.Firm && len(b.job.Doubts) > 0 { // which was shown for all cases together
		b.holding = unit.Known(rules.Holding{Share: 1})
	} else {
		b.holding = rules.Hold(b.job, offered)
	}
	b.warned = demonstration.Cautions(b.job, b.result)
	brief := b.brief()
	if o.Checklist {
		brief.Leaving, brief.OnSite = b.checklists()
	}
	if o.Working || o.Notes {
		brief.Working = b.derivation()
	}
	if c := o.check; c != nil {
		brief.Check = c.String()
		brief.Footing = append(brief.Footing, "Check code: "+c.printed()+".")
	}
	brief.Words = o.Words
	brief.Pictures, brief.Private = o.Pictures || o.Working || o.Notes, o.Notes
	if o.Notes {
		brief.Objections = b.objections(&brief)
	}
	return brief
}

// plans chooses the cuts of the demonstration.
func (b *builder) plans() {
	b.showing = demonstration.Choose(b.job, b.result)
	b.plan = b.showing.Cuts
}

func (b *builder) brief() Brief {
	critical, evidence := b.critical()
	props := b.props(b.plan...)
	title := when(b.recommended(), "Cutting recommendation").Or(msg("Cutting assessment")) // a page that is none is not called one
	return Brief{
		Title:    b.print(title),
		Outcome:  string(b.result.Outcome),
		Demo:     b.demo(),
		Date:     b.date(),
		Who:      b.who(),
		Need:     b.need(),
		Headline: b.print(b.headline()),
		Because:  b.because(),
		Bars:     b.bars(),
		Speeds:   b.speeds(),
		Cost:     b.cost(),
		Second:   b.print(b.second()),
		Critical: critical,
		Evidence: evidence,
		ShownBy:  b.print(b.shownBy()),
		Plan:     b.rows(),
		PlanNote: b.planNotes(),
		Bring:    b.print(when(props != "", "Bring: {1}.", message.Name(props))),
		Timeline: b.timeline(),
		LeftOut:  mapped(b.showing.LeftOut, func(l *demonstration.LeftOut) Line { return b.line(l.Name, message.Message{}, l.Reason) }),
		Shown:    b.shown(),
		Confirm:  b.confirm(),
		Flags:    b.flags(),
		Excluded: b.excluded(),
		Cautions: b.cautions(),
		Notes:    b.notes(),
		Footing:  b.sources(),
	}
}

// demo says what on the page is invented, "" if nothing is.
func (b *builder) demo() string {
	customer, systems := b.visit.Demo, b.offered.Invented
	return b.print(when(customer && systems, "Invented data: this customer and these systems do not exist. Nothing can be ordered from this page.").
		Or(when(customer, "Invented data: this customer does not exist.")).
		Or(when(systems, "Invented data: these systems do not exist. Nothing can be ordered from this page.")))
}
