package handbook

import (
	"cmp"
	"strconv"
	"strings"

	"cutbrief/report"
	"cutbrief/rules"
	"cutbrief/rules/cite"
	"cutbrief/rules/cost"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
)

// knownAs heads the column that says how a thing is known.
const knownAs message.ID = "Known as"

// Rules is the page of everything a recommendation rests on, in the words asked
// for.
func Rules(words *message.Catalog) Page {
	w := writer{words}
	demo := cost.DemoPrices()
	p := Page{
		Title: w.say("The rules and their sources"),
		Says: []string{
			w.say("This is edition {1} of the rules. Each has its source, and says how that is known: a published source, common practice without one, from memory of a document, or invented for the demo. No verdict about safety or supply is based on memory alone.", message.Count(rules.Edition)),
			w.say("How a check and a cost are worked out is below. Every formula is once more in the source of the program, with its range, its source and a value to check it by: go doc -all ./rules/size and ./rules/cost."),
			w.say("A rule of thumb is no more than that. The machine's own manual, local codes, the site's hot-work permit and a licensed electrician come before any of this."),
		},
	}
	p.Sections = []Section{
		table(w, "Rules", w.paragraphs("A rule about the work that is not met rules a system out. One about the site can be corrected there. The others are only notes, and rule nothing out."),
			[]message.ID{"Rule", "In words", "Is about", "Borderline", "What changes a no", "Source", knownAs}, rules.Table(),
			func(r rules.Rule) []any {
				return []any{r.Title, r.Words, about(r), r.Almost, r.Cure, cited(r.Source), known(r.Source)}
			}),
		w.workings(),
		table(w, "What each metal counts for", w.paragraphs("A thickness of the metal needs as much as so many times that thickness of mild steel. A system's own figure for a metal is used before this."),
			[]message.ID{"Metal", "Counts", "Why", "Source", knownAs}, metal.List(),
			func(m metal.Metal) []any {
				counts := message.ID("not known").Message()
				if f, ok := m.Equivalence.Get(); ok {
					counts = message.New("{1} times", message.Figure(number(f)))
				}
				return []any{m.Name, counts, m.Note, cited(m.Basis), known(m.Basis)}
			}),
		table(w, "What points to the requirement that decides", []string{w.say("What the customer says outranks all that is inferred: what annoys most counts 10, what annoys next 6. Weights of one requirement add up."),
			w.say("Among what is inferred the heavier sum wins. A difference of one is a tie: then the first of this order decides: {1}. What the rep chooses instead is used before all. The weights order these sentences and mean nothing else.", names(rules.Requirements()))},
			[]message.ID{"Sentence", "Points to", "How", "Question", knownAs}, rules.PossibleEvidence(),
			func(p rules.Evidence) []any {
				how := message.New("inferred, weight {1}", message.Count(p.Weight))
				if p.Said {
					how = message.ID("said").Message()
				}
				return []any{p.Sentence, report.RequirementName(p.Requirement), how, message.Name(p.From.Fact), known(p.Source)}
			}),
		table(w, "Cautions", w.paragraphs("They are reminders, in the order of the page."), []message.ID{"Caution", "Given when", "Source", knownAs}, demonstration.Warnings(),
			func(c demonstration.Caution) []any {
				return []any{c.Text, cmp.Or(c.When, "always"), cited(c.Source), known(c.Source)}
			}),
		table(w, "Cuts of a demonstration", nil, []message.ID{"Cut", "Shows", "Minutes", "Look for", "Can fail", "So", knownAs}, demonstration.Cuts(),
			func(c demonstration.CatalogueCut) []any {
				name := cmp.Or(string(c.Name), strings.ToUpper(c.ID[:1])+strings.ReplaceAll(c.ID[1:], "-", " ")) // its full name may be the customer's
				return []any{name, names(c.Proves), message.Figure(number(c.Minutes)), c.See, c.Fails, c.Avoid, known(c.Source)}
			}),
		table(w, "What a cost assumes where nothing was given", w.paragraphs(
			"A metre is worked out with the likely figures. Then one figure at a time goes to its low and its high end; the effects on either side are added as the root of the sum of their squares. A cost is never below zero.",
			"Work: time while it cuts (1 m ÷ speed ÷ share that really cuts × share somebody stands by), set-up and preheat or pierce once a cut, cleaning and straightening by the metre, at the price of an hour. Nobody cleans the edge of scrap.",
			"Plasma: power = arc power (as for the breaker, at full output) ÷ the share the source passes on, while the arc burns, pierce included; power between cuts for the rest of cutting and set-up.",
			"Air counts while the arc burns and after each cut, at the kilowatts a compressor takes. A set of consumables is worn by starts ÷ starts it lasts + arc hours ÷ hours it lasts.",
			"Speed as in the row of the system for the cut and metal, times that of a hand, up to the fastest a torch is guided. Another plasma system works at 1 A for 0.25 mm, 20 to 125 A.",
			"Oxy-fuel: straight between the thicknesses of the table, likely in the middle of low and high. Cutting oxygen counts while it cuts, fuel and its oxygen while it preheats too, rental over the metres of a year.",
			"A yearly bill that is given takes the place of gas and rental. 1 ft³/h is 0.47195 l/min.",
			"Disc: straight in logarithms between thicknesses, below 3 mm as at 3 mm, above 11 mm going on; the area cut over what a disc cuts. Band saw: rate ÷ thickness; the area over what a blade cuts.",
			"Shear and nibbler: the metre over what knives cut. Sent out: the price of a metre and its share of a trip, or the yearly bill.",
			"The cut is the everyday one, else the thickest clean one, of the first metal the way can cut. A saving is today's metre less the system's, with the figures both share moved together; of today's ways the first that can be worked out."),
			[]message.ID{"Figure", "Low", "Likely", "High", "Unit", knownAs}, cost.Figures(),
			func(f cost.Figure) []any {
				return []any{f.Name, figure(f.Estimate.Low), figure(f.Estimate.Likely), figure(f.Estimate.High), f.Unit, message.ID(f.Trust)}
			}),
		table(w, "Where other ways of cutting end", w.paragraphs("Up to 6 % beyond is the same size. Oxy-fuel is worked out in mild and galvanised steel from 3.17 to 101.6 mm. A way in a metal that is not listed is not worked out."),
			[]message.ID{"Way", "Thickest"}, cost.Ends(),
			func(e cost.End) []any {
				m, _ := metal.Find(e.Metal)
				return []any{message.New("{1}: {2}", e.Method.Name(), m.Name), message.Figure(number(float64(e.Most)) + " mm")}
			}),
		table(w, "Prices where nobody gave better ones", []string{w.say("This is the built-in list, in {1}. A price list of your own takes its place, and what the customer gives is used before both.", message.Name(demo.Currency))},
			[]message.ID{"Item", "Low", "Likely", "High", "Unit", knownAs}, demo.IDs(),
			func(id cost.ItemID) []any {
				p, _ := demo.Get(id)
				item, _ := cost.FindItem(id)
				return []any{item.Name, figure(p.Low), figure(p.Likely), figure(p.High), item.UnitIn(demo.Currency), message.ID(p.Basis)}
			}),
		table(w, "Register of sources", nil, []message.ID{"Name", "Title", "Edition", knownAs}, cite.All(),
			func(c cite.Source) []any {
				return []any{message.Name(c.ID), c.Titled(), message.ID(c.Edition), message.ID(c.Trust)}
			}),
	}
	return p
}

// names are requirements side by side.
func names(list []rules.Requirement) message.Message {
	return message.Join(", ", message.Each(list, func(r rules.Requirement) message.Message { return report.RequirementName(r).Message() })...)
}

// noteOnly is a rule that rules nothing out.
const noteOnly message.ID = "a note only"

// about says what a rule can do.
func about(r rules.Rule) message.ID {
	switch {
	case r.Hard:
		return "the work"
	case r.Site:
		return "the site"
	case r.Cure == "" && r.Asks == "":
		return "the size asked for"
	}
	return noteOnly
}

// cited is a source in words, empty where it has no document.
func cited(r cite.Ref) message.Message {
	if s, ok := r.Find(); !ok || s.Trust == cite.Practice || s.Trust == cite.Invented {
		return message.Message{}
	}
	return r.Message()
}

// known is how much a source is trusted.
func known(r cite.Ref) message.ID {
	s, ok := r.Find()
	if !ok {
		return "not known"
	}
	return message.ID(s.Trust)
}

func figure(v float64) message.Figure { return message.Figure(number(v)) }

// number writes five digits that count, and a large number in full.
func number(v float64) string {
	if short, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 5, 64), 64); err == nil {
		v = short
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}
