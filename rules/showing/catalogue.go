package showing

import (
	"fmt"

	"cutbrief/rules"
	"cutbrief/rules/cite"
	"cutbrief/rules/metal"
)

// showpiece is one row of the catalogue: a cut worth showing, what it proves,
// and when the system does it well. The rows are common practice, no source.
type showpiece struct {
	id     string
	name   string
	naming func(*scene) string // the name where it depends on the customer
	proves []rules.Requirement
	piece  func(*scene) (piece, bool) // what is cut; false if there is nothing to cut
	does   func(*scene, piece) bool   // the system does it well
	wanted func(*scene) bool          // the customer's work holds it
	always bool                       // belongs in every plan there is room for
	last   bool                       // closes the demonstration
	tilted bool                       // the torch is tilted by the bevel angle
	props  string                     // to bring, separated by commas
	see    string
	why    string
	source cite.Ref
}

var showing = cite.Ref{Source: "practice-showing"}

// catalogue lists the cuts from thin to heavy; the planner keeps this order
// among cuts of the same worth.
var catalogue = []showpiece{
	{id: "thin-straight", name: "Straight cut, tip on the work, along a straight edge",
		proves: []rules.Requirement{rules.Distortion, rules.EdgeQuality, rules.Ease},
		piece:  sheet, does: thinWell, wanted: cutsSheet, source: showing,
		props: "non-conductive straight edge, clamps",
		see:   "a straight, narrow cut; the sheet stays flat and can be touched soon",
		why:   "thin sheet shows heat and shake first"},
	{id: "large-circle", name: "Large circle with the radius guide",
		proves: []rules.Requirement{rules.Distortion, rules.EdgeQuality},
		piece:  sheet, does: circleWell, wanted: features(rules.Circles), source: showing,
		props: "radius guide with the sleeve that fits the torch",
		see:   "a round disc that drops out flat, and meets its start",
		why:   "a large circle shows warping more than any straight cut"},
	{id: "everyday-straight", name: "Straight cut, timed",
		proves: []rules.Requirement{rules.Speed, rules.RunningCost},
		piece:  (*scene).everyday, does: cleanWell, always: true, source: showing,
		props: "non-conductive straight edge, watch, marked length",
		see:   "the time for the marked length, and the cut face with its dross",
		why:   "this is the cut they make most days"},
	{id: "inside-circle", name: "Pierce and inside circle, against a template",
		proves: []rules.Requirement{rules.EdgeQuality, rules.Ease},
		piece:  pierced, does: pierceWell, wanted: startsInside, source: showing,
		props: "non-conductive template, clamps",
		see:   "a clean start inside the waste, and a hole without grinding marks",
		why:   "a start away from the edge is where other ways need a drilled hole"},
	{id: "own-hand", name: "The customer changes the consumables and makes the cut",
		proves: []rules.Requirement{rules.Ease},
		piece:  (*scene).everyday, does: cleanWell, source: showing,
		props: "spare set of consumables, second lens and gloves",
		see:   "their own first cut, after a minute of showing",
		why:   "nobody believes a thing is easy until they have done it"},
	{id: "bevel", naming: bevelName, tilted: true,
		proves: []rules.Requirement{rules.EdgeQuality},
		piece:  bevelPlate, does: bevelWell, wanted: bevels, source: showing,
		props: "non-conductive straight edge, clamps",
		see:   "an even face at one angle, with little to brush off",
		why:   "a shaking hand shows on a bevel before anything else"},
	{id: "gaps", name: "Across the gaps of expanded metal",
		proves: []rules.Requirement{rules.AcrossGaps},
		piece:  mesh, does: gapsWell, wanted: features(rules.Gaps), source: showing,
		props: "expanded metal or grating clamped so that it cannot spring",
		see:   "one pull from side to side, without pressing the trigger again",
		why:   "a torch that loses its arc stops at every gap"},
	{id: "at-the-work", name: "Carry it to the work, connect, cut there",
		proves: []rules.Requirement{rules.Portability},
		piece:  (*scene).everyday, does: cleanWell, wanted: goesToTheWork, source: showing,
		props: "supply lead, air hose, adapters that fit the site",
		see:   "minutes from the van to the first cut, by one person",
		why:   "the work does not come to the bench"},
	{id: "sever", name: "The rare thickest piece, severed",
		proves: []rules.Requirement{rules.Reach},
		piece:  (*scene).rarest, does: severWell, wanted: always, source: showing,
		props: "a short length of the real section on good supports",
		see:   "the piece comes apart, slowly and with a rough face: that is what to expect",
		why:   "an honest look at the limit, before they find it themselves"},
	{id: "side-by-side", name: "The same cut beside today's way",
		proves: []rules.Requirement{rules.Speed, rules.RunningCost, rules.Distortion},
		piece:  (*scene).everyday, does: besideToday, wanted: always, source: showing,
		props: "their own tool and operator, two equal pieces, watch",
		see:   "both times and both edges, side by side on the bench",
		why:   "their own tool is the only fair yardstick"},
	{id: "own-piece", name: "The customer's own piece",
		proves: []rules.Requirement{rules.Reach},
		piece:  (*scene).thickest, does: cleanWell, last: true, source: showing,
		props: "a piece from the shop whose coating and contents are known",
		see:   "their part, cut as they need it",
		why:   "their own part is the cut they will remember"},
}

func sheet(s *scene) (piece, bool) { return s.sheet(), true }

// thinWell: the output turns down so that the tip can rest on thin sheet.
func thinWell(s *scene, p piece) bool { return turnsDown(s.system) && s.within(p, s.system.Rated) }

// circleWell: a large circle in sheet says little to a customer who cuts
// neither sheet nor circles.
func circleWell(s *scene, p piece) bool {
	return thinWell(s, p) && (cutsSheet(s) || contains(s.job.Features, rules.Circles))
}

func cleanWell(s *scene, p piece) bool { return s.within(p, s.system.CleanMax) }

func pierceWell(s *scene, p piece) bool { return s.within(p, s.pierce()) }

func gapsWell(s *scene, p piece) bool { return s.system.HoldsGaps && s.within(p, s.system.Rated) }

func severWell(s *scene, p piece) bool { return s.within(p, s.system.Severance) }

func bevelWell(s *scene, p piece) bool {
	return s.within(piece{p.metal, through(p.thickness, s.angle())}, s.system.CleanMax)
}

// cutsSheet reports whether thin sheet is among the customer's everyday work.
func cutsSheet(s *scene) bool {
	for i := range s.job.Pieces {
		if t, ok := s.job.Pieces[i].Everyday.Get(); ok && t > 0 && t <= thinMost {
			return true
		}
	}
	return false
}

func startsInside(s *scene) bool {
	start := s.job.Start.Or("")
	return start == rules.InPlate || start == rules.Anywhere || contains(s.job.Features, rules.Holes)
}

func bevels(s *scene) bool { return contains(s.job.Features, rules.Bevels) }

func features(f rules.Feature) func(*scene) bool {
	return func(s *scene) bool { return contains(s.job.Features, f) }
}

func always(*scene) bool { return true }

func goesToTheWork(s *scene) bool {
	return contains(s.job.Places, rules.InPlace) || contains(s.job.Places, rules.UpHigh) || contains(s.job.Places, rules.Field)
}

// besideToday: today's way stands in the shop, so that it can be shown beside.
func besideToday(s *scene, p piece) bool {
	if !cleanWell(s, p) {
		return false
	}
	today, _ := s.job.Today.Get()
	for _, p := range today {
		if p != rules.SentOut && p != rules.OtherWay {
			return true
		}
	}
	return false
}

// pierced is the everyday piece, or the thickest they pierce if it is thinner.
func pierced(s *scene) (piece, bool) {
	p, ok := s.everyday()
	if s.main != nil {
		if t, told := s.main.Pierced.Get(); told && t > 0 && t < p.thickness {
			p.thickness = t
		}
	}
	if ok && !pierceWell(s, p) {
		return s.sheet(), true // a hole that starts well in thinner metal
	}
	return p, ok
}

// bevelPlate is 6 mm mild steel: thick enough to show the face, thin enough
// for most systems at 45°.
func bevelPlate(*scene) (piece, bool) { return piece{metal.MildSteel, 6}, true }

func bevelName(s *scene) string {
	return fmt.Sprintf("Bevel at %.0f° from square", float64(s.angle()))
}

// mesh is common expanded metal in mild steel.
func mesh(*scene) (piece, bool) { return piece{metal.MildSteel, 3}, true }
