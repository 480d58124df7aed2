package assess

import (
	"cutbrief/rules"
	"cutbrief/rules/message"
)

// conditions say in words when a question can matter; a test holds them to the
// questions that have a condition.
var conditions = map[rules.Fact]message.ID{
	rules.FactBusyLength:  "the cuts in the busiest ten minutes are not none and not unknown",
	rules.FactPierced:     "cuts start in the middle, or both ways",
	rules.FactBevelled:    "bevels are among the kinds of cut",
	rules.FactBevelAngle:  "bevels are among the kinds of cut",
	rules.FactBreaker:     "the power source is not a generator alone",
	rules.FactCordSection: "the cord length is not none",
	rules.FactGenerator:   "the power source is a generator, or both",
	rules.FactAirDelivery: "there is a compressor",
	rules.FactAirPressure: "there is a compressor",
	rules.FactReceiver:    "there is a compressor",
	rules.FactHoseBore:    "there is a compressor",
	rules.FactHoseLength:  "there is a compressor",
	rules.FactAnnoysNext:  "something annoys most",
	rules.FactLabour:      "some way of cutting is in use today, other ways apart",
	rules.FactGasYear:     "oxy-fuel is used today on mild or galvanised steel, and the length cut is given",
	rules.FactFuel:        "oxy-fuel is used today on mild or galvanised steel, and there is no bill for its gas with a length cut",
	rules.FactSentYear:    "cutting is sent out today, and the length cut is given",
}

// When says in words when the question can matter, "" if always. An answer given
// while it cannot is kept and sizes nothing.
func (q *Question) When() message.ID { return conditions[q.ID] }
