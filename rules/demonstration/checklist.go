package demonstration

import (
	"strings"

	"cutbrief/rules"
	"cutbrief/rules/cite"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
)

// Item is one line of a checklist, with what it rests on.
type Item struct {
	ID     string // stable: "plates", "fire-watch", ...
	Text   message.ID
	Source cite.Ref
}

// check is one row of a checklist. It has a text of its own or that of a
// caution; a row without applies always belongs.
type check struct {
	id      string
	text    message.ID
	caution string // ID of a warning whose text and source are taken
	source  cite.Ref
	applies func(*situation, Programme) bool
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
	{id: "lens"}, // by current, see lens
	{id: "clothing", source: practice, text: "Dry gloves, hearing protection, covered skin, cloth that does not melt; no lighter in a pocket."},
	{id: "extinguisher", source: cite.Ref{Source: "osha-hot-work", Clause: "(a)(2)(ii)"}, text: "Extinguisher of a suitable kind, in date, to stand at the work ready for use."},
	{id: "permit", source: cite.Ref{Source: "osha-hot-work-unread", Clause: "(a)(2)(iv)"}, text: "Permission for hot work: who gives it is known, and it is asked for."},
	{id: "watch", source: showing, text: "Someone is named for the fire watch, and for the onlookers."},
}

// onSite are the checks at the bench, in the order of setting up.
var onSite = []check{
	{id: "manual", caution: "manual"},
	{id: "circuit", source: practice, text: "Circuit, breaker and earth: confirmed by an electrician against the sizing."},
	{id: "air", source: practice, text: "Air: pressure read while it flows, dry, against the sizing."},
	{id: "bench", source: showing, text: "Bench: steady, at waist height, the cut clear of its edge and of your legs."},
	{id: "shock", caution: "shock"},
	{id: "permit-here", caution: "permit-here", applies: told(hotWork(rules.HotWorkPermit))},
	{id: "combustibles-stay", caution: "combustibles-stay", applies: told(hotWork(rules.HotWorkSensitive))},
	{id: "closed-space", caution: "closed-space", applies: told(hotWork(rules.HotWorkClosed))},
	{id: "closed-space-air", caution: "closed-space-air", applies: told(hotWork(rules.HotWorkClosed))},
	{id: "ask-permit", caution: "ask-permit", applies: told(hotWork(""))},
	{id: "hot-work", caution: "hot-work"},
	{id: "fire-watch", caution: "fire-watch"},
	{id: "fume", caution: "fume"},
	{id: "chromium", caution: "chromium", applies: told(cuts(metal.Stainless))},
	{id: "coatings", caution: "coatings", applies: told(cuts(metal.Galvanised))},
	{id: "copper", caution: "copper", applies: told(cuts(metal.Copper))},
	{id: "aluminium-water", caution: "aluminium-water", applies: told(cuts(metal.Aluminium))},
	{id: "solvents", caution: "solvents", applies: told(cuts(metal.Stainless, metal.Aluminium, metal.Copper))},
	{id: "cast-iron", caution: "cast-iron", applies: told(cuts(metal.CastIron))},
	{id: "up-high", caution: "up-high", applies: told(at(rules.UpHigh))},
	{id: "in-place", caution: "in-place", applies: told(at(rules.InPlace))},
	{id: "gouging", caution: "gouging", applies: told(features(rules.Gouging))},
	{id: "field", caution: "field", applies: told(at(rules.Field))},
	{id: "containers", caution: "containers"},
	{id: "never-containers", source: practice, text: "At a demonstration no drum, tank or closed part is cut at all, cleaned or not."},
	{id: "lens"},
	{id: "onlookers", source: showing, text: "Onlookers: to the side, out of the sparks, nobody behind the cut, all with a lens on."},
	{id: "implants", caution: "implants"},
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
		if c.applies != nil && !c.applies(&s, p) {
			continue
		}
		item := Item{ID: c.id, Text: c.text, Source: c.source}
		if from, ok := c.from(&s); ok {
			item.Text, item.Source = from.Text, from.Source
		}
		items = append(items, item)
	}
	return items
}

// from is the caution that a row takes its text from.
func (c *check) from(s *situation) (Caution, bool) {
	if c.id == "lens" {
		return lens(s.system), true
	}
	for _, w := range warnings {
		if c.caution != "" && w.id == c.caution {
			return w.caution(), true
		}
	}
	return Caution{}, false
}

// shows applies where the plan holds a cut.
func shows(id string) func(*situation, Programme) bool {
	return func(_ *situation, p Programme) bool {
		for _, c := range p.Cuts {
			if c.ID == id {
				return true
			}
		}
		return false
	}
}

// brings applies where a cut of the plan brings something so named.
func brings(what string) func(*situation, Programme) bool {
	return func(_ *situation, p Programme) bool {
		for _, c := range p.Cuts {
			for _, prop := range c.Props {
				if strings.HasPrefix(string(prop), what) {
					return true
				}
			}
		}
		return false
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
