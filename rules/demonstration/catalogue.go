package demonstration

import (
	"fmt"
	"slices"

	"cutbrief/rules"
	"cutbrief/rules/cite"
	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// cutRow is one row of the catalogue: a cut worth showing, what it proves,
// and when the system does it well. The rows, with their minutes and lengths,
// are common practice, no source.
type cutRow struct {
	id                     string
	name                   message.ID
	naming                 func(*situation) message.Message // the name where it depends on the customer
	proves                 []rules.Requirement
	piece                  func(*situation) (piece, bool) // what is cut; false if there is nothing to cut
	nothing                message.ID                     // what there is nothing to cut of
	needs                  []need                         // on system, metal, thickness and site
	wanted                 func(*situation) bool          // the customer's work holds it
	always                 bool                           // belongs in every plan there is room for
	last                   bool                           // closes the demonstration where nothing speaks against it
	tilted                 bool                           // the torch is tilted by the bevel angle
	noSpeed                bool                           // the speed model does not hold for it
	timed                  bool                           // a straight cut whose time is taken
	minutes                float64
	length                 unit.Millimetre // of the cut; 0 where it depends on the piece
	props                  []message.ID    // to bring, separated by commas
	see, why, fails, avoid message.ID
	source                 cite.Ref
}

var showing = cite.Ref{Source: "practice-showing"}

const noPiece message.ID = "thickness given for the metal that decides"

// catalogue lists the cuts from thin to heavy; the planner keeps this order
// among cuts of the same worth.
var catalogue = []cutRow{
	{id: "thin-straight", name: "Straight cut, tip on the work, along a straight edge",
		proves: []rules.Requirement{rules.Distortion, rules.EdgeQuality, rules.Ease},
		piece:  sheet, needs: []need{lowOutput, withinRated}, wanted: cutsSheet, source: showing,
		minutes: 3, length: 300, timed: true,
		props: []message.ID{"non-conductive straight edge", "clamps"},
		see:   "a straight, narrow cut; the sheet stays flat and can be touched soon",
		why:   "thin sheet shows heat and shake first",
		fails: "a worn tip widens the cut, and a slow hand warps the sheet",
		avoid: "new tip, output turned down, one steady pull without a stop"},
	{id: "large-circle", name: "Large circle with the radius guide",
		proves: []rules.Requirement{rules.Distortion, rules.EdgeQuality},
		piece:  sheet, needs: []need{lowOutput, withinRated, sheetOrRound}, wanted: features(rules.Circles), source: showing,
		minutes: 5, length: 1257, // π times 400 mm across
		props: []message.ID{"radius guide with the sleeve that fits the torch"},
		see:   "a round disc that drops out flat, and meets its start",
		why:   "a large circle shows warping more than any straight cut",
		fails: "the pivot slips, the lead is too short, or the disc falls on a foot",
		avoid: "turn one dry lap first, lead over the shoulder, support the disc from below"},
	{id: "everyday-straight", name: "Straight cut, timed",
		proves: []rules.Requirement{rules.Speed, rules.RunningCost},
		piece:  (*situation).everyday, nothing: noPiece, needs: []need{withinClean}, always: true, source: showing,
		minutes: 3, length: 300, timed: true,
		props: []message.ID{"non-conductive straight edge", "watch", "marked length"},
		see:   "the time for the marked length, and the cut face with its dross",
		why:   "this is the cut they make most days",
		fails: "too fast and it does not come through, too slow and dross hangs",
		avoid: "watch the arc trail below, and cut the length once before they look"},
	{id: "inside-circle", name: "Pierce and inside circle, against a template",
		proves: []rules.Requirement{rules.EdgeQuality, rules.Ease},
		piece:  pierced, nothing: noPiece, needs: []need{withinPierce}, wanted: startsInside, source: showing,
		minutes: 4, length: 251, // π times 80 mm across
		props: []message.ID{"non-conductive template", "clamps"},
		see:   "a clean start inside the waste, and a hole without grinding marks",
		why:   "a start away from the edge is where other ways need a drilled hole",
		fails: "metal blows back into the tip and spoils it",
		avoid: "tilt the torch at the start, roll it upright once through, pierce in the waste"},
	{id: "own-hand", name: "The customer changes the consumables and makes the cut",
		proves: []rules.Requirement{rules.Ease},
		piece:  (*situation).everyday, nothing: noPiece, needs: []need{withinClean}, source: showing,
		minutes: 5, length: 300, timed: true,
		props: []message.ID{"spare set of consumables", "second lens and gloves"},
		see:   "the operator's own first cut, after a minute of showing",
		why:   "nobody believes a thing is easy until they have done it",
		fails: "parts go in crooked, or a first-timer flinches at the arc",
		avoid: "supply off while parts are changed, one dry pull, your hand near the switch"},
	{id: "bevel", naming: bevelName, tilted: true,
		proves: []rules.Requirement{rules.EdgeQuality},
		piece:  bevelPlate, needs: []need{withinTilted}, wanted: features(rules.Bevels), source: showing,
		minutes: 4, length: 200, timed: true,
		props: []message.ID{"non-conductive straight edge", "clamps"},
		see:   "an even face at one angle, with little to brush off",
		why:   "a shaking hand shows on a bevel before anything else",
		fails: "the angle drifts, or the speed is that of the plate and not of the slant",
		avoid: "rest the wrist, and go by the true thickness of the slant"},
	{id: "gaps", name: "Across the gaps of expanded metal",
		proves: []rules.Requirement{rules.AcrossGaps},
		piece:  mesh, needs: []need{arcHolds, withinRated}, wanted: features(rules.Gaps), source: showing,
		minutes: 3, length: 300, noSpeed: true,
		props: []message.ID{"expanded metal or grating clamped so that it cannot spring"},
		see:   "one pull from side to side, without pressing the trigger again",
		why:   "a torch that loses its arc stops at every gap",
		fails: "the mesh springs, or the clamp does not reach every strand",
		avoid: "clamp close on both sides, work clamp on bare strands"},
	{id: "coated", name: "Rusty or painted plate, as it comes",
		proves: []rules.Requirement{rules.Ease},
		piece:  coated, nothing: "coated or weathered steel beside the everyday cut", needs: []need{fumeTaken, withinClean}, wanted: cutsCoated, source: showing,
		minutes: 3, length: 300, timed: true,
		props: []message.ID{"a plate whose coating is known and named", "grinder for the clamp's place"},
		see:   "a cut through the coat without grinding the line first",
		why:   "gas and saws want it clean, and cleaning takes longer than cutting",
		fails: "the arc will not start through the coat, and the fume drives people off",
		avoid: "work clamp on bare metal, start at a bare edge, extraction on, coating known beforehand"},
	{id: "hard-metal", name: "The same cut in stainless or aluminium",
		proves: []rules.Requirement{rules.EdgeQuality, rules.Speed},
		piece:  hardMetal, nothing: "stainless or aluminium beside the metal of the everyday cut", needs: []need{withinClean}, wanted: always, source: showing,
		minutes: 3, length: 300, timed: true,
		props: []message.ID{"non-conductive straight edge", "clamps"},
		see:   "the same torch and the same air through a metal that gas cannot cut",
		why:   "one tool for every metal in the shop",
		fails: "a rougher face than steel, and hard dross when too slow",
		avoid: "say beforehand what this metal's edge looks like, and keep the speed up"},
	{id: "at-the-work", naming: carryName,
		proves: []rules.Requirement{rules.Portability},
		piece:  (*situation).everyday, nothing: noPiece, needs: []need{withinClean}, wanted: goesToTheWork, source: showing,
		minutes: 10, length: 300,
		props: []message.ID{"supply lead", "air hose", "adapters that fit the site"},
		see:   "minutes from the van to the first cut, by one person",
		why:   "the work does not come to the bench",
		fails: "a plug that does not fit, or air and leads that do not reach",
		avoid: "walk the way first, with the adapters in the hand"},
	{id: "gouge", name: "Gouge out a weld",
		piece: (*situation).thickest, nothing: noPiece, needs: []need{canGouge, withinClean, clearFloor, openPlace}, wanted: features(rules.Gouging), source: showing,
		minutes: 4, noSpeed: true,
		props: []message.ID{"gouging consumables", "a plate with an old weld", "a screen to catch what flies"},
		see:   "an even groove down to sound metal, quieter than they know it",
		why:   "repairs begin with taking the old weld out",
		fails: "it cuts through instead, and throws metal far",
		avoid: "torch held flat, gouging parts fitted, nobody and nothing in line of the groove"},
	{id: "sever", name: "The rare thickest piece, severed",
		proves: []rules.Requirement{rules.Reach},
		piece:  (*situation).rarest, nothing: "rare thickest piece given", needs: []need{withinSever}, wanted: always, source: showing,
		minutes: 4, length: 100, timed: true,
		props: []message.ID{"a short length of the real section on good supports"},
		see:   "a severance cut is slow and leaves a rough face: that is what to expect",
		why:   "an honest look at the limit, before they find it themselves",
		fails: "it does not come through, or the heavy end drops",
		avoid: "start at a clean edge, wait until it is through, hold both ends from below"},
	{id: "side-by-side", name: "The same cut beside today's way",
		proves: []rules.Requirement{rules.Speed, rules.RunningCost, rules.Distortion},
		piece:  (*situation).everyday, nothing: noPiece, needs: []need{withinClean, todayHere}, wanted: always, source: showing,
		minutes: 8, length: 300, timed: true,
		props: []message.ID{"their own tool and operator", "two equal pieces", "watch"},
		see:   "both times and both edges, side by side on the bench",
		why:   "their own tool is the only fair yardstick",
		fails: "the man with today's tool is made to look slow, and the room turns",
		avoid: "let the best hand go first, and praise what his way does better"},
	{id: "own-piece", name: "The customer's own piece",
		proves: []rules.Requirement{rules.Reach, rules.EdgeQuality, rules.Distortion, rules.Speed},
		piece:  (*situation).thickest, nothing: noPiece, needs: []need{withinClean}, wanted: always, last: true, source: showing,
		minutes: 5,
		props:   []message.ID{"a piece from the shop whose coating and contents are known"},
		see:     "the part, cut as it is needed",
		why:     "their own part is the cut they will remember",
		fails:   "an unknown coating, a hollow part, or a shape that will not lie still",
		avoid:   "see and clamp the piece before the others come, and try its scrap first"},
}

func bevelName(s *situation) message.Message {
	return message.New("Bevel at {1} from square", message.Figure(fmt.Sprintf("%.0f°", float64(s.angle()))))
}

// carryName: in a tank, pit or closed room nothing is cut for show.
func carryName(s *situation) message.Message {
	if !openPlace.holds(s, piece{}) {
		return message.New("Carry it to an open place by the work, connect, cut there")
	}
	return message.New("Carry it to the work, connect, cut there")
}

// CatalogueCut is a cut of the catalogue as it stands there, whoever the customer is.
type CatalogueCut struct {
	ID      string
	Name    message.ID // "" where it depends on the customer
	Proves  []rules.Requirement
	Minutes float64
	See     message.ID
	Fails   message.ID
	Avoid   message.ID
	Source  cite.Ref
}

// Cuts returns the catalogue, from thin to heavy.
func Cuts() []CatalogueCut {
	var list []CatalogueCut
	for i := range catalogue {
		p := &catalogue[i]
		list = append(list, CatalogueCut{p.id, p.name, slices.Clone(p.proves), p.minutes, p.see, p.fails, p.avoid, p.source})
	}
	return list
}
