package rules

import (
	"slices"

	"cutbrief/rules/metal"
	"cutbrief/rules/size"
	"cutbrief/rules/unit"
)

// Fact is the stable identifier of one thing a customer can tell. The record
// of a visit uses the same identifiers for its questions; once in a saved file
// they are never renamed.
type Fact string

// Facts about the work.
const (
	FactMetals     Fact = "metals"
	FactUse        Fact = "use"                // maintenance, mixed or production
	FactEveryday   Fact = "everyday-thickness" // per metal
	FactThickest   Fact = "thickest-clean"     // per metal: thickest regular cut that must be clean
	FactRarest     Fact = "rare-thickest"      // per metal: need only come apart
	FactCutLength  Fact = "cut-length"         // per day or per week
	FactDays       Fact = "days-a-week"
	FactBusyCuts   Fact = "busy-cuts"   // cuts in the busiest ten minutes
	FactBusyLength Fact = "busy-length" // length of each of them
)

// Facts about how it is cut.
const (
	FactStart      Fact = "start"            // at the edge, in the middle of the plate, or both
	FactPierced    Fact = "thickest-pierced" // per metal
	FactFeatures   Fact = "features"
	FactBevelled   Fact = "bevelled-thickness" // per metal
	FactBevelAngle Fact = "bevel-angle"
	FactEdgeNext   Fact = "edge-next"
	FactGuidance   Fact = "guidance"
	FactPlaces     Fact = "places"
)

// Facts about the site.
const (
	FactSource      Fact = "power-source" // mains, generator or both
	FactPhases      Fact = "supply-phase"
	FactVolts       Fact = "supply-voltage"
	FactBreaker     Fact = "breaker"
	FactCord        Fact = "cord-length"
	FactCordSection Fact = "cord-section"
	FactGenerator   Fact = "generator-rating"
	FactAirDelivery Fact = "air-delivery"
	FactAirPressure Fact = "air-pressure"
	FactReceiver    Fact = "air-receiver"
	FactHoseBore    Fact = "hose-bore"
	FactHoseLength  Fact = "hose-length"
	FactDrier       Fact = "air-drier"
	FactAltitude    Fact = "altitude"
	FactHotWork     Fact = "hot-work"
)

// Facts about today and the decision.
const (
	FactToday       Fact = "today"
	FactAnnoysMost  Fact = "annoys-most"
	FactAnnoysNext  Fact = "annoys-next"
	FactLabour      Fact = "labour-cost"     // of an hour
	FactGasYear     Fact = "gas-a-year"      // with cylinders
	FactFuel        Fact = "fuel-gas"        // what the torch burns
	FactSentYear    Fact = "sent-out-a-year" // with transport
	FactBudget      Fact = "budget"
	FactShowing     Fact = "showing-minutes" // the time there is for a demonstration
	FactExperience  Fact = "experience"
	FactEyes        Fact = "eye-protection"
	FactVentilation Fact = "ventilation"
)

// Asked names a fact and, for facts asked once per metal, the metal.
type Asked struct {
	Fact  Fact
	Metal metal.ID // "" unless the fact is asked per metal
}

// Job is what is known of a customer's work, site and wishes. A field that is
// not known stays not known: it becomes a question, never a zero.
type Job struct {
	Pieces     []Piece // one per metal, in the order told; none means metals not known
	Use        unit.Maybe[Use]
	CutPerWeek unit.Maybe[unit.Metre]
	DaysAWeek  unit.Maybe[float64]
	BusyCuts   unit.Maybe[float64] // cuts in the busiest ten minutes
	BusyLength unit.Maybe[unit.Metre]

	Start      unit.Maybe[Start]
	Features   unit.Maybe[[]Feature]
	BevelAngle unit.Maybe[unit.Degree] // from square
	EdgeNext   unit.Maybe[[]EdgeUse]
	Guidance   unit.Maybe[Guidance]
	Places     unit.Maybe[[]Place]

	Power    SitePower
	Air      SiteAir
	Altitude unit.Maybe[unit.Metre]
	HotWork  unit.Maybe[HotWork]

	Today       unit.Maybe[[]Process]
	Annoys      []Annoyance // in order of weight, as the customer said; empty if not asked
	Prices      Prices
	Budget      unit.Maybe[unit.Money]
	BudgetIn    string                  // currency the budget was told in; "" for that of the range
	Showing     unit.Maybe[unit.Second] // the time there is for a demonstration
	Experience  unit.Maybe[Experience]
	Eyes        unit.Maybe[Eyes]
	Ventilation unit.Maybe[Ventilation]

	Overrule *Overrule // the rep's own choice of critical requirement, or nil

	Doubts []Doubt // which of these answers are not sure, and what they may be instead
}

// Piece is what is cut of one metal. Thicknesses are of that metal. For Rarest,
// Pierced and Bevelled a known zero means "none in this metal"; not known is
// not the same.
type Piece struct {
	Metal    metal.ID
	Everyday unit.Maybe[unit.Millimetre]
	Thickest unit.Maybe[unit.Millimetre] // thickest regular cut that must be clean
	Rarest   unit.Maybe[unit.Millimetre] // rare, need only come apart
	Pierced  unit.Maybe[unit.Millimetre] // thickest started away from an edge
	Bevelled unit.Maybe[unit.Millimetre] // plate thickness of the thickest bevel
}

// SitePower is the electricity at the place of use.
type SitePower struct {
	Source      unit.Maybe[PowerSource]
	Phases      unit.Maybe[Phases]
	Volts       unit.Maybe[unit.Volt]
	Breaker     unit.Maybe[unit.Ampere]
	Cord        unit.Maybe[unit.Metre] // one way
	CordSection unit.Maybe[unit.SquareMillimetre]
	Generator   unit.Maybe[unit.KilovoltAmpere] // continuous rating
}

// SiteAir is the compressed air at the place of use.
type SiteAir struct {
	Delivery   unit.Maybe[unit.LitrePerMinute] // free air delivered, not displacement
	Pressure   unit.Maybe[unit.Bar]
	Receiver   unit.Maybe[unit.Litre]
	HoseBore   unit.Maybe[unit.Millimetre]
	HoseLength unit.Maybe[unit.Metre]
	Drier      unit.Maybe[Drier]
}

// Prices are what the customer told of their costs, in the currency of the
// price list. They stand before the list's own figures.
type Prices struct {
	Labour      unit.Maybe[unit.Money] // an hour of work, with everything on top of the wage
	GasYear     unit.Maybe[unit.Money] // a year's gas for cutting, with the rental of cylinders
	Fuel        unit.Maybe[Fuel]       // what the torch burns
	SentOutYear unit.Maybe[unit.Money] // a year's cutting sent out, with transport
}

// Overrule keeps the rep's own choice of the critical requirement and why.
type Overrule struct {
	Requirement Requirement
	Reason      string
}

// The answers that are chosen from a list. Their text is their identifier in
// saved files.
type (
	Use         string
	Start       string
	Feature     string
	EdgeUse     = size.EdgeWork
	Guidance    = size.Lead
	Place       string
	PowerSource string
	Phases      string
	Drier       string
	HotWork     string
	Process     string
	Fuel        string
	Annoyance   string
	Experience  string
	Eyes        string
	Ventilation string
)

// How the system is used.
const (
	Maintenance Use = "maintenance" // repair and odd jobs, at irregular times
	Mixed       Use = "mixed"       // some of both, or light production
	Production  Use = "production"  // the same cuts most days, and the work waits for them
)

// Where cuts start.
const (
	AtEdge   Start = "edge"
	InPlate  Start = "middle" // piercing
	Anywhere Start = "both"
)

// What is cut.
const (
	Straight Feature = "straight"
	Shapes   Feature = "shapes"
	Circles  Feature = "circles"
	Holes    Feature = "holes"
	Bevels   Feature = "bevels"
	Gouging  Feature = "gouging"
	Gaps     Feature = "gaps" // expanded metal, grating, mesh
)

// What happens to the edge next.
const (
	Welded   = size.ToWeld
	Machined = size.ToMachine
	Seen     = size.ToShow
	Scrap    = size.ToScrap
)

// How the torch is guided.
const (
	FreeHand   = size.LedByHand
	Guided     = size.LedAlongEdge  // straight edge, template, radius guide
	Mechanised = size.LedByCarriage // carriage or table
)

// Where the work is done.
const (
	Bench   Place = "bench"
	InPlace Place = "in-place"
	UpHigh  Place = "up-high"
	Field   Place = "field"
)

// Where the electricity comes from.
const (
	Mains    PowerSource = "mains"
	GenSet   PowerSource = "generator"
	MainsGen PowerSource = "both"
)

// Phases at the place of use.
const (
	SinglePhase Phases = "single"
	ThreePhase  Phases = "three"
	BothPhases  Phases = "both"
)

// How the air is dried.
const (
	NoDrier     Drier = "none"
	Separator   Drier = "separator" // water separator or filter only
	Refrigerant Drier = "refrigerant"
	Desiccant   Drier = "desiccant"
	NoAir       Drier = "no-compressor"
)

// Limits on hot work at the site.
const (
	HotWorkFree      HotWork = "none"
	HotWorkPermit    HotWork = "permit"
	HotWorkSensitive HotWork = "combustibles" // combustibles that cannot be moved
	HotWorkClosed    HotWork = "closed-space" // tanks, pits, closed rooms
)

// What they cut with today.
const (
	OxyFuel     Process = "oxy-fuel"
	Abrasive    Process = "abrasive-disc"
	BandSaw     Process = "band-saw"
	Shear       Process = "shear"
	Nibbler     Process = "nibbler"
	SentOut     Process = "sent-out"
	OtherPlasma Process = "other-plasma"
	OtherWay    Process = "other"
)

// What an oxy-fuel torch burns.
const (
	Acetylene Fuel = "acetylene"
	Propane   Fuel = "propane"
)

// What annoys them about it.
const (
	TooSlow      Annoyance = "too-slow"
	Warps        Annoyance = "warps"
	RoughEdge    Annoyance = "rough-edge"
	HardToUse    Annoyance = "hard-to-use"
	CostsTooMuch Annoyance = "costs-too-much"
	TooHeavy     Annoyance = "too-heavy"
	TooThick     Annoyance = "too-thick" // cannot cut their heavy pieces
	LosesArc     Annoyance = "gaps"      // cannot cut grating or mesh
	Nothing      Annoyance = "nothing"
)

// How used to cutting the operator is.
const (
	Novice      Experience = "new"
	SomePlasma  Experience = "some"
	Experienced Experience = "experienced"
)

// Eye protection on hand.
const (
	EyesNone Eyes = "none"
	EyesSun  Eyes = "wrong-shade" // clear or sun glasses only
	EyesOne  Eyes = "operator"
	EyesAll  Eyes = "everyone"
)

// Ventilation on hand.
const (
	VentNone    Ventilation = "none"
	VentGeneral Ventilation = "general"
	VentExtract Ventilation = "extraction"
	VentOutside Ventilation = "outdoors"
)

// has reports whether a known list holds v.
func has[T comparable](list unit.Maybe[[]T], v T) bool {
	items, _ := list.Get()
	return slices.Contains(items, v)
}
