package demonstration

import (
	"cutbrief/rules"
	"cutbrief/rules/cite"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// warning is one row of the table of cautions. A row without applies is
// general: it is printed also when nothing is known.
type warning struct {
	id      string
	hazard  Hazard
	text    message.ID
	source  cite.Ref
	when    message.ID // what applies says, in words; "" for always
	applies func(*situation) bool
}

// caution is a row as it is given.
func (w *warning) caution() Caution {
	return Caution{ID: w.id, Text: w.text, Source: w.source, Hazard: w.hazard, Raised: w.applies != nil}
}

// warnings are in the order they are printed. Their figures are tied to the
// reference table by a test.
var warnings = []warning{
	{id: "manual", hazard: AnyHazard, source: cite.Ref{Source: "practice"},
		text: "The manual, local codes, the site's rules and a licensed electrician (circuit, breaker, earth) come before this page."},
	{id: "beginner", hazard: AnyHazard, source: cite.Ref{Source: "practice"}, when: "the operator is a beginner", applies: func(s *situation) bool { return s.job.Experience.Or("") == rules.Novice },
		text: "A beginner is trained first, and cuts with someone practised beside them."},
	{id: "permit-here", hazard: AnyHazard, source: cite.Ref{Source: "practice"}, when: "the site works with permits", applies: hotWork(rules.HotWorkPermit),
		text: "This site works with hot-work permits: the permit is signed before the first arc."},
	{id: "combustibles-stay", hazard: Fire, source: cite.Ref{Source: "osha-hot-work", Clause: "(a)(2)(vii)"}, when: "what can burn cannot be moved", applies: hotWork(rules.HotWorkSensitive),
		text: "Here some things that burn cannot be moved: shield them well, or show the cut in another place."},
	{id: "closed-space", hazard: ClosedSpace, source: cite.Ref{Source: "osha-confined", Clause: "(b)"}, when: "the work is in closed spaces", applies: hotWork(rules.HotWorkClosed),
		text: "Tanks, pits and closed rooms: only under the site's confined-space permit, with the air tested (oxygen 19.5 to 23.5 %, flammable gas below 10 % of its lower limit)."},
	{id: "closed-space-air", hazard: ClosedSpace, source: cite.Ref{Source: "osha-hot-work", Clause: "(c)(4)"}, when: "the work is in closed spaces", applies: hotWork(rules.HotWorkClosed),
		text: "In there, ventilate all the time, never with oxygen, and keep one person outside."},
	{id: "ask-permit", hazard: AnyHazard, source: cite.Ref{Source: "practice"}, when: "the limits on hot work are not known", applies: hotWork(""),
		text: "Not known yet: whether this site needs a hot-work permit, or has closed spaces. Ask before the first arc."},
	{id: "hot-work", hazard: Fire, source: cite.Ref{Source: "osha-hot-work", Clause: "(a)(2)"},
		text: "What can burn: at least 35 ft (11 m) away, or shielded; floor swept as far; extinguisher ready."},
	{id: "fire-watch", hazard: Fire, source: cite.Ref{Source: "osha-hot-work", Clause: "(a)(2)(iii)(B)"},
		text: "Fire watch at least 30 min after the last cut where fire is possible; many sites ask 60 min."},
	{id: "containers", hazard: Explosion, source: cite.Ref{Source: "osha-hot-work", Clause: "(a)(3)"},
		text: "Ask for coating and last contents of every piece. No drum, tank or pipe that held something that burns, unless cleaned of it and its vapour; vent hollow parts first."},
	{id: "fume", hazard: Fume, source: cite.Ref{Source: "hse-fume"},
		text: "Extraction at the cut indoors, however short the cut; a suitable mask outdoors; heads out of the plume."},
	{id: "noise", hazard: Noise, source: cite.Ref{Source: "eu-noise", Clause: "Art. 3"},
		text: "Hearing protection: due from 85 dB(A) over a working day, and a torch is often louder."},
	{id: "shock", hazard: Shock, source: cite.Ref{Source: "ansi-z49", Clause: "clause 11"},
		text: "Dry gloves, dry place, no rain; work clamp on clean metal of the piece; supply off before touching torch parts."},
	{id: "implants", hazard: MagneticField, source: cite.Ref{Source: "ansi-z49"},
		text: "Anyone with a pacemaker or implant stays away until a doctor agrees."},
	{id: "chromium", hazard: Fume, source: cite.Ref{Source: "osha-chromium", Clause: "(c)"}, when: "stainless is cut, or a metal we hold no figures for", applies: cuts(metal.Stainless),
		text: "Stainless fume carries chromium VI, which causes cancer: 5 µg/m³ of air at most over 8 h. Extraction at the cut, always."},
	{id: "coatings", hazard: Fume, source: cite.Ref{Source: "osha-coatings"}, when: "coated or galvanised steel is cut, or a metal we hold no figures for", applies: cuts(metal.Galvanised),
		text: "Coatings, at most in air over 8 h: zinc fume 5 mg/m³ (brings fever), lead from old paint 50 µg/m³, cadmium from plating 5 µg/m³. Have it tested and stripped before any cut."},
	{id: "copper", hazard: Fume, source: cite.Ref{Source: "osha-limits-unread"}, when: "copper or brass is cut, or a metal we hold no figures for", applies: cuts(metal.Copper),
		text: "Copper and brass fume needs extraction at the cut; never cut copper that may hold beryllium."},
	{id: "aluminium-water", hazard: Explosion, source: cite.Ref{Source: "chemistry-aluminium"}, when: "aluminium is cut, or a metal we hold no figures for", applies: cuts(metal.Aluminium),
		text: "No aluminium over water: it frees hydrogen, which can explode under the plate."},
	{id: "solvents", hazard: Fume, source: cite.Ref{Source: "army-solvents", Clause: "3-8.3"}, when: "stainless, aluminium, copper or brass is cut, or a metal we hold no figures for", applies: cuts(metal.Stainless, metal.Aluminium, metal.Copper),
		text: "Parts degreased with chlorinated solvent: washed with water, dried and aired before the arc."},
	{id: "cast-iron", hazard: HotMetal, source: cite.Ref{Source: "practice"}, when: "cast iron is cut, or a metal we hold no figures for", applies: cuts(metal.CastIron),
		text: "Cast iron may spit and crack: stand clear of the cut, and let it cool slowly."},
	{id: "up-high", hazard: Height, source: cite.Ref{Source: "osha-hot-work", Clause: "(a)(2)(iii)(A)"}, when: "the work is up high", applies: at(rules.UpHigh),
		text: "Up high: sparks fall through openings, so clear and watch below; secure yourself and the piece."},
	{id: "in-place", hazard: Fire, source: cite.Ref{Source: "osha-hot-work", Clause: "(a)(2)(iii)(A)"}, when: "the work is done in place", applies: at(rules.InPlace),
		text: "In place: know what lies behind the cut (pipes, cables, linings); sparks and heat come out there, so watch the far side too."},
	{id: "gouging", hazard: HotMetal, source: cite.Ref{Source: "practice"}, when: "the customer gouges", applies: features(rules.Gouging),
		text: "Gouging throws molten metal far: screens up, and nobody in its line."},
	{id: "field", hazard: Fire, source: cite.Ref{Source: "practice"}, when: "the work is out in the field", applies: at(rules.Field),
		text: "In the field: no dry grass near, mind the wind, no cutting in rain, earth the generator as its manual says."},
}

// Cautions chooses the cautions by metal, current and place. It always returns
// the general ones, also when nothing is known. The lens comes first: it
// protects everyone present.
func Cautions(job rules.Job, result rules.Result) []Caution {
	s := newSituation(&job, &result)
	list := []Caution{lens(s.system)}
	for _, w := range warnings {
		if w.applies == nil || w.applies(&s) {
			list = append(list, w.caution())
		}
	}
	return list
}

// shades are the least filter shades for an arc in clear sight, by current.
// Source: 29 CFR 1910.133(a)(5), table, plasma arc cutting.
var shades = []struct {
	below unit.Ampere
	text  message.ID
}{
	{300, "Filter lens shade 8 or darker (below 300 A) over safety glasses, for everyone who sees the arc, onlookers too."},
	{400, "Filter lens shade 9 or darker (300 to 400 A) over safety glasses, for everyone who sees the arc, onlookers too."},
	{800, "Filter lens shade 10 or darker (400 to 800 A) over safety glasses, for everyone who sees the arc, onlookers too."},
}

// lens is the caution about the filter lens. Without a system it speaks of
// hand-held systems, which stay below the first limit.
func lens(s *system.System) Caution {
	c := Caution{ID: "lens", Hazard: Arc, Text: shades[0].text, Source: cite.Ref{Source: "osha-eyes", Clause: "(a)(5)"}}
	if s == nil {
		return c
	}
	for _, row := range shades {
		if s.OutputMax < row.below {
			c.Text = row.text
			return c
		}
	}
	c.Text = "Above the table of filter shades: ask the maker which lens protects everyone who sees the arc."
	return c
}

// hotWork applies where the site answered so about hot work, "" where it gave no
// answer.
func hotWork(limit rules.HotWork) func(*situation) bool {
	return func(s *situation) bool { return s.job.HotWork.Or("") == limit }
}

// cuts applies where one of the metals is cut, or may be: a metal not named
// counts as any of them only if it is "other".
func cuts(metals ...metal.ID) func(*situation) bool {
	return func(s *situation) bool {
		for _, m := range metals {
			if s.cutsMetal(m) || s.cutsMetal(metal.Other) {
				return true
			}
		}
		return false
	}
}

// at applies where the work is done in that place.
func at(p rules.Place) func(*situation) bool {
	return func(s *situation) bool { return contains(s.job.Places, p) }
}

// Warning is a caution with when it is given, as it stands in the table.
type Warning struct {
	Caution
	When message.ID // such as "copper or brass is cut"; "" for always
}

// Warnings returns every caution in the order they are printed, the lens first,
// which is worded here for hand-held systems.
func Warnings() []Warning {
	list := []Warning{{Caution: lens(nil)}}
	for _, w := range warnings {
		list = append(list, Warning{w.caution(), w.when})
	}
	return list
}
