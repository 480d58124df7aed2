package demonstration

import (
	"slices"
	"strings"

	"cutbrief/rules"
	"cutbrief/rules/cite"
	"cutbrief/rules/message"
)

// Item is one line of a checklist, with what it rests on.
type Item struct {
	ID     string // stable: "plates", "fire-watch", ...
	Text   message.ID
	Source cite.Ref
}

// check is one row of a checklist; a row without applies always belongs. It may
// stand for cautions, each with its own text, source and occasion.
type check struct {
	id       string
	text     message.ID
	source   cite.Ref
	applies  func(*situation, Programme) bool
	cautions []string // by their ID
}

var practice = cite.Ref{Source: "practice"}

// leaving are the checks before leaving, in the order of packing.
var leaving = []check{
	{id: "manual", source: practice, text: "The machine's manual is in the van: it comes before this list."},
	{id: "consumables", source: showing, text: "New consumables of the right kind for each cut, and a spare set."},
	{id: "gouging-parts", source: showing, text: "Gouging consumables, and a screen for what flies.", applies: shows("gouge")},
	{id: "torch", source: showing, text: "Torch assembled, and tried once."},
	{id: "guide", source: showing, text: "Radius guide assembled, with the sleeve that fits the torch.", applies: shows("large-circle")},
	{id: "templates", source: showing, text: "Templates and straight edge: non-conductive, with clamps.", applies: brings("non-conductive")},
	{id: "plates", source: showing, text: "Plates cut to size, edges clean, lengths marked."},
	{id: "leads", source: showing, text: "Supply lead, air hose, and adapters for their plug and coupling."},
	{id: "generator", source: practice, text: "Generator fuelled, its earth as its own manual says.", applies: told(fromGenerator)},
	{id: "drier", source: showing, text: "Dryer and filter for the air: theirs may not be enough.", applies: told(dampAir)},
	{id: "extraction", source: showing, text: "Extraction for the fume of their metals: we do not know of any at the cut.", applies: brings(string(fumeExtraction))},
	{cautions: []string{"lens"}},
	{id: "clothing", source: practice, text: "Dry gloves, hearing protection, covered skin, cloth that does not melt; no lighter in a pocket."},
	{id: "extinguisher", source: cite.Ref{Source: "osha-hot-work", Clause: "(a)(2)(ii)"}, text: "Extinguisher of a suitable kind, in date, to stand at the work ready for use."},
	{id: "permit", source: cite.Ref{Source: "osha-hot-work-unread", Clause: "(a)(2)(iv)"}, text: "Permission for hot work: who gives it is known, and it is asked for."},
	{id: "watch", source: showing, text: "Someone is named for the fire watch, and for the onlookers."},
}

// onSite are the checks at the bench, in the order of setting up.
var onSite = []check{
	{cautions: []string{"manual"}},
	{id: "circuit", source: practice, text: "Circuit, breaker and earth: confirmed by an electrician against the sizing."},
	{id: "air", source: practice, text: "Air: pressure read while it flows, dry, against the sizing."},
	{id: "bench", source: showing, text: "Bench: steady, at waist height, the cut clear of its edge and of your legs."},
	{cautions: []string{"shock", "permit-here", "combustibles-stay", "closed-space", "closed-space-air", "ask-permit",
		"hot-work", "fire-watch", "fume", "chromium", "coatings", "copper", "aluminium-water", "solvents", "cast-iron", "up-high",
		"in-place", "gouging", "field", "containers"}},
	{id: "never-containers", source: practice, text: "At a demonstration no drum, tank or closed part is cut at all, cleaned or not."},
	{cautions: []string{"lens"}},
	{id: "onlookers", source: showing, text: "Onlookers: to the side, out of the sparks, nobody behind the cut, all with a lens on."},
	{cautions: []string{"implants"}},
	{id: "test-cut", source: showing, text: "One test cut with the new consumables, before anyone looks."},
}

// BeforeLeaving lists what to check before leaving for the demonstration,
// chosen by the plan, the metals, the current and the place.
func BeforeLeaving(job rules.Job, result rules.Result, p Programme) []Item {
	return list(leaving, &job, &result, p)
}

// AtSite lists what to check at the bench before the first arc. It holds every
// caution that belongs to this job.
func AtSite(job rules.Job, result rules.Result, p Programme) []Item {
	return list(onSite, &job, &result, p)
}

func list(rows []check, job *rules.Job, result *rules.Result, p Programme) []Item {
	s := newSituation(job, result)
	var items []Item
	for _, c := range rows {
		for _, id := range c.cautions {
			if w := warning(id, &s); w.applies == nil || w.applies(&s) {
				items = append(items, Item{w.ID, w.Text, w.Source})
			}
		}
		if c.text != "" && (c.applies == nil || c.applies(&s, p)) {
			items = append(items, Item{c.id, c.text, c.source})
		}
	}
	return items
}

// warning is the caution with this ID.
func warning(id string, s *situation) Caution {
	if id == "lens" {
		return lens(s.system)
	}
	return warnings[slices.IndexFunc(warnings, func(w Caution) bool { return w.ID == id })]
}

// shows applies where the plan holds a cut.
func shows(id string) func(*situation, Programme) bool {
	return func(_ *situation, p Programme) bool {
		return slices.ContainsFunc(p.Cuts, func(c Cut) bool { return c.ID == id })
	}
}

// brings applies where a cut of the plan brings something so named.
func brings(what string) func(*situation, Programme) bool {
	named := func(prop message.ID) bool { return strings.HasPrefix(string(prop), what) }
	return func(_ *situation, p Programme) bool {
		return slices.ContainsFunc(p.Cuts, func(c Cut) bool { return slices.ContainsFunc(c.Props, named) })
	}
}

// told applies by what the customer told.
func told(applies func(*situation) bool) func(*situation, Programme) bool {
	return func(s *situation, _ Programme) bool { return applies(s) }
}

func fromGenerator(s *situation) bool {
	from := s.job.Power.Source.Or("")
	return from == rules.GenSet || from == rules.MainsGen
}

// dampAir: nothing told says that the air is dried well.
func dampAir(s *situation) bool {
	d := s.job.Air.Drier.Or("")
	return d != rules.Refrigerant && d != rules.Desiccant
}
