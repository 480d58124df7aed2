package demonstration

import (
	"fmt"
	"slices"

	"cutbrief/rules"
	"cutbrief/rules/cite"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/size"
	"cutbrief/rules/unit"
)

// CatalogueCut is one row of the catalogue: a cut worth showing, what it proves,
// and when the system does it well. The rows, with their minutes and lengths,
// are common practice, no source.
type CatalogueCut struct {
	ID                     string
	Name                   message.ID // "" where it depends on the customer
	Proves                 []rules.Requirement
	Minutes                float64
	See, Why, Fails, Avoid message.ID
	Source                 cite.Ref

	naming  func(*situation) message.Message // the name where it depends on the customer
	piece   func(*situation) (piece, bool)   // what is cut; false if there is nothing to cut
	nothing message.ID                       // what there is nothing to cut of
	needs   []need                           // on system, metal, thickness and site
	wanted  func(*situation) bool            // the customer's work holds it
	always  bool                             // belongs in every plan there is room for
	last    bool                             // closes the demonstration where nothing speaks against it
	tilted  bool                             // the torch is tilted by the bevel angle
	noSpeed bool                             // the speed model does not hold for it
	timed   bool                             // a straight cut whose time is taken
	length  unit.Millimetre                  // of the cut; 0 where it depends on the piece
	props   []message.ID                     // to bring, separated by commas
}

var showing = cite.Ref{Source: "practice-showing"}

const noPiece message.ID = "thickness given for the metal that decides"

// catalogue lists the cuts from thin to heavy; the planner keeps this order
// among cuts of the same worth.
var catalogue = []CatalogueCut{
	{ID: "thin-straight", Name: "Straight cut, tip on the work, along a straight edge",
		Proves: []rules.Requirement{rules.Distortion, rules.EdgeQuality, rules.Ease},
		piece:  (*situation).sheet, needs: []need{lowOutput, withinRated}, wanted: cutsSheet, Source: showing,
		Minutes: 3, length: 300, timed: true,
		props: []message.ID{"non-conductive straight edge", "clamps"},
		See:   "a straight, narrow cut; the sheet stays flat and can be touched soon",
		Why:   "thin sheet shows heat and shake first",
		Fails: "a worn tip widens the cut, and a slow hand warps the sheet",
		Avoid: "new tip, output turned down, one steady pull without a stop"},
	{ID: "large-circle", Name: "Large circle with the radius guide",
		Proves: []rules.Requirement{rules.Distortion, rules.EdgeQuality},
		piece:  (*situation).sheet, needs: []need{lowOutput, withinRated, sheetOrRound}, wanted: features(rules.Circles), Source: showing,
		Minutes: 5, length: 1257, // π times 400 mm across
		props: []message.ID{"radius guide with the sleeve that fits the torch"},
		See:   "a round disc that drops out flat, and meets its start",
		Why:   "a large circle shows warping more than any straight cut",
		Fails: "the pivot slips, the lead is too short, or the disc falls on a foot",
		Avoid: "turn one dry lap first, lead over the shoulder, support the disc from below"},
	{ID: "everyday-straight", Name: "Straight cut, timed",
		Proves: []rules.Requirement{rules.Speed, rules.RunningCost},
		piece:  (*situation).everyday, nothing: noPiece, needs: []need{withinClean}, always: true, Source: showing,
		Minutes: 3, length: 300, timed: true,
		props: []message.ID{"non-conductive straight edge", "watch", "marked length"},
		See:   "the time for the marked length, and the cut face with its dross",
		Why:   "this is the cut they make most days",
		Fails: "too fast and it does not come through, too slow and dross hangs",
		Avoid: "watch the arc trail below, and cut the length once before they look"},
	{ID: "inside-circle", Name: "Pierce and inside circle, against a template",
		Proves: []rules.Requirement{rules.EdgeQuality, rules.Ease},
		piece:  pierced, nothing: noPiece, needs: []need{withinPierce}, wanted: startsInside, Source: showing,
		Minutes: 4, length: 251, // π times 80 mm across
		props: []message.ID{"non-conductive template", "clamps"},
		See:   "a clean start inside the waste, and a hole without grinding marks",
		Why:   "a start away from the edge is where other ways need a drilled hole",
		Fails: "metal blows back into the tip and spoils it",
		Avoid: "tilt the torch at the start, roll it upright once through, pierce in the waste"},
	{ID: "own-hand", Name: "The customer changes the consumables and makes the cut",
		Proves: []rules.Requirement{rules.Ease},
		piece:  (*situation).everyday, nothing: noPiece, needs: []need{withinClean}, Source: showing,
		Minutes: 5, length: 300, timed: true,
		props: []message.ID{"spare set of consumables", "second lens and gloves"},
		See:   "the operator's own first cut, after a minute of showing",
		Why:   "nobody believes a thing is easy until they have done it",
		Fails: "parts go in crooked, or a first-timer flinches at the arc",
		Avoid: "supply off while parts are changed, one dry pull, your hand near the switch"},
	{ID: "bevel", naming: bevelName, tilted: true,
		Proves: []rules.Requirement{rules.EdgeQuality},
		piece:  bevelPlate, needs: []need{withinTilted}, wanted: features(rules.Bevels), Source: showing,
		Minutes: 4, length: 200, timed: true,
		props: []message.ID{"non-conductive straight edge", "clamps"},
		See:   "an even face at one angle, with little to brush off",
		Why:   "a shaking hand shows on a bevel before anything else",
		Fails: "the angle drifts, or the speed is that of the plate and not of the slant",
		Avoid: "rest the wrist, and go by the true thickness of the slant"},
	{ID: "gaps", Name: "Across the gaps of expanded metal",
		Proves: []rules.Requirement{rules.AcrossGaps},
		piece:  mesh, needs: []need{arcHolds, withinRated}, wanted: features(rules.Gaps), Source: showing,
		Minutes: 3, length: 300, noSpeed: true,
		props: []message.ID{"expanded metal or grating clamped so that it cannot spring"},
		See:   "one pull from side to side, without pressing the trigger again",
		Why:   "a torch that loses its arc stops at every gap",
		Fails: "the mesh springs, or the clamp does not reach every strand",
		Avoid: "clamp close on both sides, work clamp on bare strands"},
	{ID: "coated", Name: "Rusty or painted plate, as it comes",
		Proves: []rules.Requirement{rules.Ease},
		piece:  coated, nothing: "coated or weathered steel beside the everyday cut", needs: []need{fumeTaken, withinClean}, wanted: cutsCoated, Source: showing,
		Minutes: 3, length: 300, timed: true,
		props: []message.ID{"a plate whose coating is known and named", "grinder for the clamp's place"},
		See:   "a cut through the coat without grinding the line first",
		Why:   "gas and saws want it clean, and cleaning takes longer than cutting",
		Fails: "the arc will not start through the coat, and the fume drives people off",
		Avoid: "work clamp on bare metal, start at a bare edge, extraction on, coating known beforehand"},
	{ID: "hard-metal", Name: "The same cut in stainless or aluminium",
		Proves: []rules.Requirement{rules.EdgeQuality, rules.Speed},
		piece:  hardMetal, nothing: "stainless or aluminium beside the metal of the everyday cut", needs: []need{withinClean}, wanted: always, Source: showing,
		Minutes: 3, length: 300, timed: true,
		props: []message.ID{"non-conductive straight edge", "clamps"},
		See:   "the same torch and the same air through a metal that gas cannot cut",
		Why:   "one tool for every metal in the shop",
		Fails: "a rougher face than steel, and hard dross when too slow",
		Avoid: "say beforehand what this metal's edge looks like, and keep the speed up"},
	{ID: "at-the-work", naming: carryName,
		Proves: []rules.Requirement{rules.Portability},
		piece:  (*situation).everyday, nothing: noPiece, needs: []need{withinClean}, wanted: goesToTheWork, Source: showing,
		Minutes: 10, length: 300,
		props: []message.ID{"supply lead", "air hose", "adapters that fit the site"},
		See:   "minutes from the van to the first cut, by one person",
		Why:   "the work does not come to the bench",
		Fails: "a plug that does not fit, or air and leads that do not reach",
		Avoid: "walk the way first, with the adapters in the hand"},
	{ID: "gouge", Name: "Gouge out a weld",
		piece: (*situation).thickest, nothing: noPiece, needs: []need{canGouge, withinClean, clearFloor, openPlace}, wanted: features(rules.Gouging), Source: showing,
		Minutes: 4, noSpeed: true,
		props: []message.ID{"gouging consumables", "a plate with an old weld", "a screen to catch what flies"},
		See:   "an even groove down to sound metal, quieter than they know it",
		Why:   "repairs begin with taking the old weld out",
		Fails: "it cuts through instead, and throws metal far",
		Avoid: "torch held flat, gouging parts fitted, nobody and nothing in line of the groove"},
	{ID: "sever", Name: "The rare thickest piece, severed",
		Proves: []rules.Requirement{rules.Reach},
		piece:  (*situation).rarest, nothing: "rare thickest piece given", needs: []need{withinSever}, wanted: always, Source: showing,
		Minutes: 4, length: 100, timed: true,
		props: []message.ID{"a short length of the real section on good supports"},
		See:   "a severance cut is slow and leaves a rough face: that is what to expect",
		Why:   "an honest look at the limit, before they find it themselves",
		Fails: "it does not come through, or the heavy end drops",
		Avoid: "start at a clean edge, wait until it is through, hold both ends from below"},
	{ID: "side-by-side", Name: "The same cut beside today's way",
		Proves: []rules.Requirement{rules.Speed, rules.RunningCost, rules.Distortion},
		piece:  (*situation).everyday, nothing: noPiece, needs: []need{withinClean, todayHere}, wanted: always, Source: showing,
		Minutes: 8, length: 300, timed: true,
		props: []message.ID{"their own tool and operator", "two equal pieces", "watch"},
		See:   "both times and both edges, side by side on the bench",
		Why:   "their own tool is the only fair yardstick",
		Fails: "the man with today's tool is made to look slow, and the room turns",
		Avoid: "let the best hand go first, and praise what his way does better"},
	{ID: "own-piece", Name: "The customer's own piece",
		Proves: []rules.Requirement{rules.Reach, rules.EdgeQuality, rules.Distortion, rules.Speed},
		piece:  (*situation).thickest, nothing: noPiece, needs: []need{withinClean}, wanted: always, last: true, Source: showing,
		Minutes: 5,
		props:   []message.ID{"a piece from the shop whose coating and contents are known"},
		See:     "the part, cut as it is needed",
		Why:     "their own part is the cut they will remember",
		Fails:   "an unknown coating, a hollow part, or a shape that will not lie still",
		Avoid:   "see and clamp the piece before the others come, and try its scrap first"},
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

// Cuts returns the catalogue, from thin to heavy.
func Cuts() []CatalogueCut { return slices.Clone(catalogue) }

// need is one precondition of a cut: on the system, the metal, the thickness
// or the site. A thickness or a way of taking fume that is not known does not
// hold; a place is taken for open until it is told to be closed, as the cautions
// and the checklist ask about it in any case.
type need struct {
	words message.ID // what must hold, after "it needs "
	holds func(*situation, piece) bool
}

var (
	lowOutput = need{"an output low enough for an open tip to rest on the work",
		func(s *situation, _ piece) bool { return s.system.OutputMin <= contactMost }}
	withinRated = need{"metal no thicker than the system is rated for",
		func(s *situation, p piece) bool { return s.within(p, s.system.Rated) }}
	withinClean = need{"metal no thicker than the system cuts clean",
		func(s *situation, p piece) bool { return s.within(p, s.system.CleanMax) }}
	withinPierce = need{"metal no thicker than the system pierces",
		func(s *situation, p piece) bool {
			t, err := size.Pierce(s.system)
			return err == nil && s.within(p, t)
		}}
	withinSever = need{"metal no thicker than the system parts",
		func(s *situation, p piece) bool { return s.parts(p) }}
	withinTilted = need{"a bevel whose true thickness the system cuts clean",
		func(s *situation, p piece) bool {
			return s.within(piece{p.metal, through(p.thickness, s.angle())}, s.system.CleanMax)
		}}
	arcHolds = need{"a system that holds or relights its arc across gaps",
		func(s *situation, _ piece) bool { return s.system.HoldsGaps }}
	canGouge = need{"a system with a gouging process in its manual",
		func(s *situation, _ piece) bool { return s.system.Gouges }}
	sheetOrRound = need{"a customer who cuts sheet or circles",
		func(s *situation, _ piece) bool { return cutsSheet(s) || contains(s.job.Features, rules.Circles) }}
	todayHere = need{"today's way standing in the shop, and able to make this cut",
		todayStands}
	openPlace = need{"a place that is no tank, pit or closed room",
		func(s *situation, _ piece) bool { return s.job.HotWork.Or("") != rules.HotWorkClosed }}
	clearFloor = need{"a floor where what burns has been moved away",
		func(s *situation, _ piece) bool { return s.job.HotWork.Or("") != rules.HotWorkSensitive }}
	fumeTaken = need{"extraction at the cut or a place outdoors, and that is not known so far",
		func(s *situation, _ piece) bool { return takesFume(s) }}
)

// takesFume reports whether fume is known to be taken away at the cut.
func takesFume(s *situation) bool {
	v := s.job.Ventilation.Or("")
	return v == rules.VentExtract || v == rules.VentOutside
}

// smokes reports whether a metal's fume is worse than mild steel's.
func smokes(id metal.ID) bool { return id != metal.MildSteel && id != metal.CastIron }

// cutsSheet reports whether thin sheet is among the customer's everyday work.
func cutsSheet(s *situation) bool {
	return slices.ContainsFunc(s.job.Pieces, func(p rules.Piece) bool {
		t := p.Everyday.Or(0)
		return t > 0 && t <= thinMost
	})
}

func startsInside(s *situation) bool {
	start := s.job.Start.Or("")
	return start == rules.InPlate || start == rules.Anywhere || contains(s.job.Features, rules.Holes)
}

// features: the customer's work holds that feature.
func features(f rules.Feature) func(*situation) bool {
	return func(s *situation) bool { return contains(s.job.Features, f) }
}

func always(*situation) bool { return true }

func goesToTheWork(s *situation) bool {
	return contains(s.job.Places, rules.InPlace) || contains(s.job.Places, rules.UpHigh) || contains(s.job.Places, rules.Field)
}

// cutsCoated: coated metal is their work, or steel that has stood outdoors.
func cutsCoated(s *situation) bool { return s.cutsMetal(metal.Galvanised) || goesToTheWork(s) }

// todayStands: a way of today stands in the shop and makes that cut, so that it
// can be shown beside.
func todayStands(s *situation, p piece) bool {
	today, _ := s.job.Today.Get()
	return slices.ContainsFunc(today, func(way rules.Process) bool {
		return way != rules.SentOut && way != rules.OtherWay && makes(way, p)
	})
}

// makes reports whether nothing speaks against a way in that piece: the metal
// for gas, the thickness for a shear or nibbler, up to a nominal step.
func makes(way rules.Process, p piece) bool {
	if way == rules.OxyFuel {
		return rules.GasCuts(p.metal)
	}
	end, held := rules.ToolLimit(way, p.metal)
	return !held || size.Compare(float64(p.thickness), float64(end)) != size.TooSmall
}

// pierced is the everyday piece, or the thickest they pierce if it is thinner,
// or sheet where neither starts well.
func pierced(s *situation) (piece, bool) {
	p, ok := s.everyday()
	if s.main != nil {
		if t, told := s.main.Pierced.Get(); told && t > 0 && t < p.thickness {
			p.thickness = t
		}
	}
	if ok && !withinPierce.holds(s, p) {
		return s.sheet() // a hole that starts well in thinner metal
	}
	return p, ok
}

// brought is a piece the rep brings along.
func brought(id metal.ID, t unit.Millimetre) func(*situation) (piece, bool) {
	return func(*situation) (piece, bool) { return piece{id, t}, true }
}

// Common expanded metal, and a plate to bevel: thick enough to show the face, thin
// enough for most systems at 45°.
var mesh, bevelPlate = brought(metal.MildSteel, 3), brought(metal.MildSteel, 6)

// coated is the customer's own coated steel, or their mild steel as it stands
// outdoors; none where the everyday cut is in it anyway.
func coated(s *situation) (piece, bool) {
	for _, id := range []metal.ID{metal.Galvanised, metal.MildSteel} {
		if p, ok := s.daily(id); ok && (id != metal.Galvanised || s.main == nil || s.main.Metal != id) {
			return p, true
		}
	}
	return piece{}, false
}

// hardMetal is the customer's stainless or aluminium beside the metal of the
// everyday cut.
func hardMetal(s *situation) (piece, bool) {
	for _, id := range []metal.ID{metal.Stainless, metal.Aluminium} {
		if p, ok := s.daily(id); ok && s.main != nil && s.main.Metal != id {
			return p, true
		}
	}
	return piece{}, false
}

// daily is what is cut most days in one metal, else the thickest regular cut.
func (s *situation) daily(id metal.ID) (piece, bool) {
	for i := range s.job.Pieces {
		p := &s.job.Pieces[i]
		if p.Metal != id {
			continue
		}
		for _, told := range []unit.Maybe[unit.Millimetre]{p.Everyday, p.Thickest} {
			if t, ok := told.Get(); ok && t > 0 {
				return piece{id, t}, true
			}
		}
	}
	return piece{}, false
}
