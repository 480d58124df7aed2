package handbook

import (
	"cutbrief/rules"
	"cutbrief/rules/cite"
	"cutbrief/rules/cost"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
)

// trusts are the kinds of trust by the word they are asked for with.
var trusts = []struct {
	name  string
	trust cite.Trust
}{{"published", cite.Published}, {"practice", cite.Practice}, {"memory", cite.Memory}, {"invented", cite.Invented}}

// Trusts names the kinds of trust there is a page about.
func Trusts() []string {
	names := make([]string, len(trusts))
	for i, t := range trusts {
		names[i] = t.name
	}
	return names
}

// What a value is used for.
const (
	inVerdict message.ID = "a verdict"
	inCost    message.ID = "a cost"
	inHint    message.ID = "a hint"
	inText    message.ID = "a text"
	inReading message.ID = "reading an answer"
)

// behind are the values that stand behind a formula and in no table of this page,
// by the source they rest on. A test asks for every source that is only
// remembered.
var behind = []struct {
	source     string
	value, use message.ID
}{
	{"msg", "gauge numbers of steel sheet, in mm", inReading},
	{"astm-b258", "gauge numbers of aluminium, copper and brass sheet; sections of American wire gauges", inReading},
	{"smacna-1995", "gauge numbers of galvanised sheet, in mm", inReading},
	{"usc-15-206", "gauge numbers of stainless sheet, in mm", inReading},
	{"nist-sp-811", "conversion of units", inReading},
	{"iec-60228", "resistance of a cord of 1.5 to 25 mm²", inVerdict},
	{"iec-60228-unread", "resistance of a cord below 1.5 and above 25 mm²", inVerdict},
	{"iec-60287", "resistance of a warm cord against one at 20 °C", inVerdict},
	{"iec-60974-1", "load voltage at an output, which scales the supply current of the rating plate", inVerdict},
	{"iec-60038", "nominal voltages that count as one", inVerdict},
	{"nec-630-11", "root of the duty cycle for the effective current", inVerdict},
	{"nec-240-6", "standard sizes of breakers", inVerdict},
	{"nec-9-8", "resistance of American wire gauges, to check cords by", inHint},
	{"aws-glossary", "ten minutes as the period of a duty cycle", inVerdict},
	{"osha-254", "40 °C for the duty cycle of a plate", inVerdict},
	{"physics", "power, apparent power, gas laws, mixing of air and vapour", inVerdict},
	{"geometry", "metal along a tilted cut", inVerdict},
	{"iso-2533", "air pressure and density at an altitude", inVerdict},
	{"iso-8778", "free air: 100 kPa and 20 °C", inVerdict},
	{"hose-darcy", "pressure lost in a hose", inVerdict},
	{"pipe-texts", "pressure lost in a hose, to check it by", inHint},
	{"receiver-ornl", "time a receiver bridges, and its volume", inHint},
	{"receiver-example", "volume of a receiver, to check it by", inHint},
	{"iso-8573-1", "water classes of compressed air", inHint},
	{"wmo-8", "dew point of an air line without a drier", inHint},
	{"iapws-if97", "pressure of water vapour, to check the dew point by", inHint},
	{"aws-pac", "fastest travel on a carriage", inVerdict},
	{"carvill", "speeds of oxy-fuel cutting, to check costs by", inHint},
	{"aws-wh-1", "heat of a cut, and how far it changes steel", inHint},
	{"aws-wh-2", "heat of a cut, to check it by", inHint},
	{"wells-1952", "heat that a cut leaves in a plate", inHint},
	{"rosenthal", "heat balance the factors of metals are held against", inHint},
	{"kou", "conductivity of hot steel in that balance", inHint},
	{"property-tables", "properties of metals in that balance, and whether a row of the range is physically possible", inHint},
	{"iso-9013-unread", "metal to leave on for machining between 20 and 80 mm", inText},
	{"en-1090-2", "range 4 for edges that are welded", inHint},
	{"osha-hot-work-unread", "permission for hot work, on the checklist", inText},
	{"nfpa-51b", "60 min of fire watch, which many sites ask for", inText},
	{"chemistry-aluminium", "hydrogen where aluminium meets water", inText},
	{"aws-oxyfuel", "speeds and gas of oxy-fuel cutting", inCost},
	{"faa-8083-31", "where shears end", inCost},
	{"doe-air", "power a compressor takes for its delivery", inCost},
	{"nist-135", "payback and worth of a saving over the years", inCost},
	{"gum", "how uncertain figures add up to a range", inCost},
}

// Trusted is the page of everything that rests on one kind of trust alone, and what
// it is used for, in the words asked for; empty if there is no such kind.
func Trusted(name string, words *message.Catalog) Page {
	for _, t := range trusts {
		if t.name != name {
			continue
		}
		w := writer{words}
		return Page{
			Title: w.say("What is known as: {1}", message.ID(t.trust).Message()),
			Says:  []string{w.say("Values and texts of edition {1} of the rules that are based on this alone, and what they are used for. A value in a verdict never decides about safety by itself.", message.Count(rules.Edition))},
			Sections: []Section{table(w, "Values", nil, []message.ID{"What", "Used for", "Source"}, restingOn(t.trust),
				func(v resting) []any { return []any{v.what, v.use, v.on} })},
		}
	}
	return Page{}
}

// resting is a value or a text, what it is used for, and what it rests on.
type resting struct {
	what any
	use  message.ID
	on   any
}

func restingOn(trust cite.Trust) (list []resting) {
	from := func(r cite.Ref, what any, use message.ID) {
		if source, ok := r.Find(); ok && source.Trust == trust {
			list = append(list, resting{what, use, r.Message()})
		}
	}
	for _, r := range rules.Table() {
		use := inVerdict
		if about(r) == noteOnly {
			use = inHint
		}
		from(r.Source, message.New("rule: {1}", r.Title), use)
	}
	for _, b := range behind {
		from(cite.Ref{Source: b.source}, b.value, b.use)
	}
	for _, m := range metal.List() {
		from(m.Basis, message.New("what {1} counts for", m.Name), inVerdict)
	}
	for _, p := range rules.PossibleEvidence() {
		from(p.Source, p.Sentence, inHint)
	}
	for _, c := range demonstration.Warnings() {
		from(c.Source, c.Text, inText)
	}
	for _, c := range demonstration.Cuts() {
		from(c.Source, message.New("demonstration: {1}", message.Name(c.ID)), inText)
	}
	for _, f := range cost.Figures() {
		if f.Trust == trust {
			list = append(list, resting{f.Name, inCost, message.ID(trust)})
		}
	}
	demo := cost.DemoPrices()
	for _, id := range demo.IDs() {
		p, _ := demo.Get(id)
		if item, _ := cost.FindItem(id); priceTrust[p.Basis] == trust {
			list = append(list, resting{message.New("price: {1}", item.Name), inCost, message.ID(trust)})
		}
	}
	return list
}

// priceTrust is what the basis of a built-in price comes to.
var priceTrust = map[cost.Basis]cite.Trust{cost.BasisPublic: cite.Published, cost.BasisPractice: cite.Practice, cost.BasisInvented: cite.Invented}
