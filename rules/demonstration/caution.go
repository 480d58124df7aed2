package demonstration

import (
	"cutbrief/rules"
	"cutbrief/rules/cite"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// warnings are in the order they are printed. Their figures are tied to the
// reference table by a test.
var warnings = []Caution{
	{ID: "manual", Hazard: AnyHazard, Source: cite.Ref{Source: "practice"},
		Text: "The manual, local codes, the site's rules and a licensed electrician (circuit, breaker, earth) come before this page."},
	{ID: "beginner", Hazard: AnyHazard, Source: cite.Ref{Source: "practice"}, When: "the operator is a beginner", applies: func(s *situation) bool { return s.job.Experience.Or("") == rules.Novice },
		Text: "A beginner is trained first, and cuts with someone practised beside them."},
	{ID: "permit-here", Hazard: AnyHazard, Source: cite.Ref{Source: "practice"}, When: "the site works with permits", applies: hotWork(rules.HotWorkPermit),
		Text: "This site works with hot-work permits: the permit is signed before the first arc."},
	{ID: "combustibles-stay", Hazard: Fire, Source: cite.Ref{Source: "osha-hot-work", Clause: "(a)(2)(vii)"}, When: "what can burn cannot be moved", applies: hotWork(rules.HotWorkSensitive),
		Text: "Here some things that burn cannot be moved: shield them well, or show the cut in another place."},
	{ID: "closed-space", Hazard: ClosedSpace, Source: cite.Ref{Source: "osha-confined", Clause: "(b)"}, When: "the work is in closed spaces", applies: hotWork(rules.HotWorkClosed),
		Text: "Tanks, pits and closed rooms: only under the site's confined-space permit, with the air tested (oxygen 19.5 to 23.5 %, flammable gas below 10 % of its lower limit)."},
	{ID: "closed-space-air", Hazard: ClosedSpace, Source: cite.Ref{Source: "osha-hot-work", Clause: "(c)(4)"}, When: "the work is in closed spaces", applies: hotWork(rules.HotWorkClosed),
		Text: "In there, ventilate all the time, never with oxygen, and keep one person outside."},
	{ID: "ask-permit", Hazard: AnyHazard, Source: cite.Ref{Source: "practice"}, When: "the limits on hot work are not known", applies: hotWork(""),
		Text: "Not known yet: whether this site needs a hot-work permit, or has closed spaces. Ask before the first arc."},
	{ID: "hot-work", Hazard: Fire, Source: cite.Ref{Source: "osha-hot-work", Clause: "(a)(2)"},
		Text: "What can burn: at least 35 ft (11 m) away, or shielded; floor swept as far; extinguisher ready."},
	{ID: "fire-watch", Hazard: Fire, Source: cite.Ref{Source: "osha-hot-work", Clause: "(a)(2)(iii)(B)"},
		Text: "Fire watch at least 30 min after the last cut where fire is possible; many sites ask 60 min."},
	{ID: "containers", Hazard: Explosion, Source: cite.Ref{Source: "osha-hot-work", Clause: "(a)(3)"},
		Text: "Ask for coating and last contents of every piece. No drum, tank or pipe that held something that burns, unless cleaned of it and its vapour; vent hollow parts first."},
	{ID: "fume", Hazard: Fume, Source: cite.Ref{Source: "hse-fume"},
		Text: "Extraction at the cut indoors, however short the cut; a suitable mask outdoors; heads out of the plume."},
	{ID: "noise", Hazard: Noise, Source: cite.Ref{Source: "eu-noise", Clause: "Art. 3"},
		Text: "Hearing protection: due from 85 dB(A) over a working day, and a torch is often louder."},
	{ID: "shock", Hazard: Shock, Source: cite.Ref{Source: "ansi-z49", Clause: "clause 11"},
		Text: "Dry gloves, dry place, no rain; work clamp on clean metal of the piece; supply off before touching torch parts."},
	{ID: "implants", Hazard: MagneticField, Source: cite.Ref{Source: "ansi-z49"},
		Text: "Anyone with a pacemaker or implant stays away until a doctor agrees."},
	{ID: "chromium", Hazard: Fume, Source: cite.Ref{Source: "osha-chromium", Clause: "(c)"}, When: "stainless is cut, or a metal we hold no figures for", applies: cuts(metal.Stainless),
		Text: "Stainless fume carries chromium VI, which causes cancer: 5 µg/m³ of air at most over 8 h. Extraction at the cut, always."},
	{ID: "coatings", Hazard: Fume, Source: cite.Ref{Source: "osha-coatings"}, When: "coated or galvanised steel is cut, or a metal we hold no figures for", applies: cuts(metal.Galvanised),
		Text: "Coatings, at most in air over 8 h: zinc fume 5 mg/m³ (brings fever), lead from old paint 50 µg/m³, cadmium from plating 5 µg/m³. Have it tested and stripped before any cut."},
	{ID: "copper", Hazard: Fume, Source: cite.Ref{Source: "osha-limits-unread"}, When: "copper or brass is cut, or a metal we hold no figures for", applies: cuts(metal.Copper),
		Text: "Copper and brass fume needs extraction at the cut; never cut copper that may hold beryllium."},
	{ID: "aluminium-water", Hazard: Explosion, Source: cite.Ref{Source: "chemistry-aluminium"}, When: "aluminium is cut, or a metal we hold no figures for", applies: cuts(metal.Aluminium),
		Text: "No aluminium over water: it frees hydrogen, which can explode under the plate."},
	{ID: "solvents", Hazard: Fume, Source: cite.Ref{Source: "army-solvents", Clause: "3-8.3"}, When: "stainless, aluminium, copper or brass is cut, or a metal we hold no figures for", applies: cuts(metal.Stainless, metal.Aluminium, metal.Copper),
		Text: "Parts degreased with chlorinated solvent: washed with water, dried and aired before the arc."},
	{ID: "cast-iron", Hazard: HotMetal, Source: cite.Ref{Source: "practice"}, When: "cast iron is cut, or a metal we hold no figures for", applies: cuts(metal.CastIron),
		Text: "Cast iron may spit and crack: stand clear of the cut, and let it cool slowly."},
	{ID: "up-high", Hazard: Height, Source: cite.Ref{Source: "osha-hot-work", Clause: "(a)(2)(iii)(A)"}, When: "the work is up high", applies: at(rules.UpHigh),
		Text: "Up high: sparks fall through openings, so clear and watch below; secure yourself and the piece."},
	{ID: "in-place", Hazard: Fire, Source: cite.Ref{Source: "osha-hot-work", Clause: "(a)(2)(iii)(A)"}, When: "the work is done in place", applies: at(rules.InPlace),
		Text: "In place: know what lies behind the cut (pipes, cables, linings); sparks and heat come out there, so watch the far side too."},
	{ID: "gouging", Hazard: HotMetal, Source: cite.Ref{Source: "practice"}, When: "the customer gouges", applies: features(rules.Gouging),
		Text: "Gouging throws molten metal far: screens up, and nobody in its line."},
	{ID: "field", Hazard: Fire, Source: cite.Ref{Source: "practice"}, When: "the work is out in the field", applies: at(rules.Field),
		Text: "In the field: no dry grass near, mind the wind, no cutting in rain, earth the generator as its manual says."},
}

// Cautions chooses the cautions by metal, current and place. It always returns
// the general ones, also when nothing is known. The lens comes first: it
// protects everyone present.
func Cautions(job rules.Job, result rules.Result) []Caution {
	s := newSituation(&job, &result)
	list := []Caution{lens(s.system)}
	for _, w := range warnings {
		if w.applies == nil || w.applies(&s) {
			list = append(list, w)
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

// Warnings returns every caution in the order they are printed, the lens first,
// which is worded here for hand-held systems.
func Warnings() []Caution { return append([]Caution{lens(nil)}, warnings...) }
