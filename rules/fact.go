package rules

import "cutbrief/rules/metal"

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
