// Package report builds the brief: every fact of the page, worded and rounded
// once, with its reason and source. Its renderers in report/text, report/pdf
// and report/export lay the brief out and add nothing.
package report

import (
	"time"

	"cutbrief/rules"
	"cutbrief/rules/cost"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// Line is one labelled fact.
type Line struct {
	Label  string `json:"label"`
	Value  string `json:"value"`
	Why    string `json:"why,omitempty"`
	Source string `json:"source,omitempty"`
	Trust  string `json:"trust,omitempty"`

	Hazard demonstration.Hazard `json:"-"` // of a caution: what it is about
	Raised bool                 `json:"-"` // of a caution: this job raises it
}

// Bar is need against capability, in numbers and as shares of the longer one.
type Bar struct {
	Label     string  `json:"label"`      // "clean cut"
	Need      string  `json:"need"`       // "needs 12.7 mm"
	Have      string  `json:"have"`       // "gives 16 mm"
	Verdict   string  `json:"verdict"`    // rules.Verdict, worded
	NeedShare float64 `json:"need_share"` // 0..1
	HaveShare float64 `json:"have_share"`
	Why       string  `json:"why"`
	Source    string  `json:"source"`
	Trust     string  `json:"trust"`
}

// Row is one cut of the demonstration table.
type Row struct {
	Cut     string `json:"cut"`
	Piece   string `json:"piece"`   // "6 mm mild steel"
	Setting string `json:"setting"` // "40 A, tip on the work, lead 5–10°"
	See     string `json:"see"`
	Because string `json:"because,omitempty"` // why it is in the plan
	Beware  string `json:"beware,omitempty"`  // how it can fail, and how to avoid that
	Takes   string `json:"takes,omitempty"`   // "3 min"
	Source  string `json:"source"`
}

// Brief is the page as facts. Empty parts are left out by the renderers.
type Brief struct {
	Title    string    `json:"title"`
	Outcome  string    `json:"outcome"`        // rules.Outcome
	Demo     string    `json:"demo,omitempty"` // "Invented data…" when the visit or the range is invented
	Date     time.Time `json:"date"`           // the day of the visit, never the clock's
	Who      []Line    `json:"who"`
	Need     string    `json:"need"`     // one sentence
	Headline string    `json:"headline"` // the recommended system, or why there is none
	Because  []string  `json:"because"`  // why this system; for none, what would fit
	Bars     []Bar     `json:"bars"`
	Speeds   *Speeds   `json:"speeds,omitempty"` // how fast the system cuts, by thickness; nil where the model says nothing
	Cost     *Cost     `json:"cost,omitempty"`   // what cutting costs today and with it; nil while nothing can be said
	Second   string    `json:"second,omitempty"` // the second choice and what would change the first
	Critical string    `json:"critical"`         // the requirement that decides
	Evidence []Line    `json:"evidence"`
	ShownBy  string    `json:"shown_by,omitempty"` // how the demonstration shows it
	Plan     []Row     `json:"plan"`
	PlanNote []string  `json:"plan_note,omitempty"` // new consumables, one test cut, steady bench
	Bring    string    `json:"bring,omitempty"`     // what the rep packs: "Bring: clamps, watch."
	Timeline *Timeline `json:"timeline,omitempty"`  // the plan in minutes; nil without one
	LeftOut  []Line    `json:"left_out,omitempty"`  // cuts not in the plan, each with its reason
	Shown    []Line    `json:"shown,omitempty"`     // demonstrations held: results, times against the model, what was said
	Confirm  []Line    `json:"confirm"`             // assumed or open, and what it could change
	Flags    []string  `json:"flags,omitempty"`
	Excluded []Line    `json:"excluded"` // every system not taken, with its reason
	Cautions []Line    `json:"cautions"`
	Notes    []string  `json:"notes,omitempty"`   // the customer's words and the rep's notes
	Footing  []string  `json:"footing"`           // what the figures rest on; range; date
	Check    string    `json:"check,omitempty"`   // on demand: CheckCode as a whole; its printed form ends the footing
	Dropped  []string  `json:"dropped,omitempty"` // what could not be shown, and why
	Leaving  []Line    `json:"leaving,omitempty"` // on demand: what to check before leaving
	OnSite   []Line    `json:"on_site,omitempty"` // on demand: what to check at the site
	Working  []Reason  `json:"working,omitempty"` // on demand: the derivation of every number

	Objections []Line `json:"objections,omitempty"` // on demand: what they may say against it, and the answer

	Words *message.Catalog `json:"-"` // the book the texts are worded by; nil for our own words

	Pictures bool `json:"-"` // on demand: a sheet of all pictures behind a printed page
	Private  bool `json:"-"` // on demand: the representative's own sheet behind it
}

// Options choose how a brief is worded.
type Options struct {
	Style     unit.Style      // "" takes the visit's own
	Checklist bool            // with both checklists
	Working   bool            // with the derivation
	Pictures  bool            // with all pictures on a sheet behind a printed page
	Notes     bool            // with the representative's own sheet: objections, pictures and working too
	Prices    *cost.PriceList // nil takes the built-in list, which is invented
	Coded     bool            // BuildFor prints on the page what it was made from

	check *CheckCode // is printed on the page

	Words *message.Catalog // puts every text into other words; nil leaves our own
}

// Extras are what can be added behind the page, as Add takes it.
func Extras() []string { return []string{"checklist", "pictures", "working", "check-code", "notes"} }

// Add has one of the Extras added; any other is none.
func (o *Options) Add(extra string) {
	switch extra {
	case "checklist":
		o.Checklist = true
	case "pictures":
		o.Pictures = true
	case "working":
		o.Working = true
	case "check-code":
		o.Coded = true
	case "notes":
		o.Notes = true
	}
}

// Answer heads the part of the brief that answers the question.
func (b *Brief) Answer() message.ID {
	switch rules.Outcome(b.Outcome) {
	case rules.Recommended:
		return "Recommended system"
	case rules.NoneFits:
		return "No recommendation: no system fits"
	}
	return "No recommendation yet"
}
