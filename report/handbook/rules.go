package handbook

import (
	"fmt"
	"strconv"
	"strings"

	"cutbrief/report"
	"cutbrief/rules"
	"cutbrief/rules/cite"
	"cutbrief/rules/cost"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/metal"
	"cutbrief/rules/price"
)

// Rules is the page of everything a recommendation rests on.
func Rules() Page {
	return Page{
		Title: "The rules, and what they rest on",
		Says: []string{
			fmt.Sprintf("This is edition %d of the rules. Each stands with its source and with how that is known: a published source, common practice without one, from memory of a document, or invented for the demo. No verdict about safety or supply rests on memory alone.", rules.Edition),
			"How a check and a cost are worked out is told below. Every formula stands once more in the source of the program, with its range, what it rests on and a value to check it by: go doc -all ./rules/size and ./rules/cost.",
			"A rule of thumb is no more than that. The machine's own manual, local codes, the site's hot-work permit and a licensed electrician come before any of this.",
		},
		Sections: []Section{ruleTable(), workingTable(), metalTable(), pointerTable(), cautionTable(), cutTable(), figureTable(), endTable(), priceTable(), sourceTable()},
	}
}

func ruleTable() Section {
	s := Section{
		Title: "Rules",
		Says:  []string{"A rule about the work that is not met shuts a system out. One about the site can be put right there. The others are said, and shut out nothing."},
		Head:  []string{"Rule", "In words", "Is about", "Borderline", "What turns a no round", "Source", "Known as"},
	}
	for _, r := range rules.Table() {
		s.Rows = append(s.Rows, []string{string(r.Title), string(r.Words), about(r), string(r.Almost), string(r.Cure), cited(r.Source), known(r.Source)})
	}
	return s
}

// about says what a rule can do.
func about(r rules.Rule) string {
	switch {
	case r.Hard:
		return "the work"
	case r.Site:
		return "the site"
	case r.Cure == "" && r.Asks == "":
		return "the size asked for"
	}
	return "said only"
}

func metalTable() Section {
	s := Section{
		Title: "What each metal counts for",
		Says:  []string{"A thickness of the metal asks of a system what so many times that thickness of mild steel asks. A system's own figure for a metal stands before this."},
		Head:  []string{"Metal", "Counts", "Why", "Source", "Known as"},
	}
	for _, m := range metal.List() {
		counts := "not known"
		if f, ok := m.Equivalence.Get(); ok {
			counts = number(f) + " times"
		}
		s.Rows = append(s.Rows, []string{string(m.Name), counts, string(m.Note), cited(m.Basis), known(m.Basis)})
	}
	return s
}

func pointerTable() Section {
	s := Section{
		Title: "What points to the requirement that decides",
		Says:  []string{"What the customer says outranks all that is inferred: what annoys most counts 10, what annoys next 6. Weights of one requirement add up. Among what is inferred the heavier sum wins, and a difference of one is a tie, in which the first of this order stands: " + inOrder() + ". What the rep chooses instead stands before all. The weights order these sentences and mean nothing else."},
		Head:  []string{"Sentence", "Points to", "How", "Question", "Known as"},
	}
	for _, p := range rules.Pointers() {
		how := "inferred, weight " + strconv.Itoa(p.Weight)
		if p.Said {
			how = "said"
		}
		s.Rows = append(s.Rows, []string{string(p.Sentence), report.RequirementName(p.Requirement), how, string(p.From.Fact), known(p.Source)})
	}
	return s
}

// inOrder names the requirements in the order that settles a tie.
func inOrder() string {
	var names []string
	for _, r := range rules.Requirements() {
		names = append(names, report.RequirementName(r))
	}
	return strings.Join(names, ", ")
}

func cautionTable() Section {
	s := Section{Title: "Cautions", Says: []string{"They are reminders, and come in this order on the page."}, Head: []string{"Caution", "Given when", "Source", "Known as"}}
	for _, w := range demonstration.Warnings() {
		when := w.When
		if when == "" {
			when = "always"
		}
		s.Rows = append(s.Rows, []string{string(w.Text), string(when), cited(w.Source), known(w.Source)})
	}
	return s
}

func cutTable() Section {
	s := Section{Title: "Cuts of a demonstration", Head: []string{"Cut", "Shows", "Minutes", "Look for", "Can fail", "So", "Known as"}}
	for _, c := range demonstration.Cuts() {
		var shows []string
		for _, r := range c.Proves {
			shows = append(shows, report.RequirementName(r))
		}
		name := string(c.Name)
		if name == "" {
			name = strings.ToUpper(c.ID[:1]) + strings.ReplaceAll(c.ID[1:], "-", " ") // its full name is the customer's
		}
		s.Rows = append(s.Rows, []string{name, strings.Join(shows, ", "), number(c.Minutes), string(c.See), string(c.Fails), string(c.Avoid), known(c.Source)})
	}
	return s
}

func figureTable() Section {
	s := Section{
		Title: "What a cost assumes where nothing was told",
		Says: []string{
			"A metre is worked out with the likely figures. Then one figure at a time goes to its low and its high end; the effects on either side are added as the root of the sum of their squares. A cost is never below nothing.",
			"Work: time while it cuts (1 m ÷ speed ÷ share that really cuts × share somebody stands by), set-up and preheat or pierce once a cut, cleaning and straightening by the metre, at the price of an hour. Nobody cleans the edge of scrap.",
			"Plasma: power = arc power (as for the breaker, at full output) ÷ what the source makes of it, while the arc burns, pierce included; power between cuts for the rest of cutting and set-up; air while it burns and after each cut, at the kilowatts a compressor takes; a set of consumables is worn by starts ÷ starts it lasts + arc hours ÷ hours it lasts. Speed as in the row of the system for the cut and metal, times that of a hand, up to the fastest a torch is led. Another plasma system works at 1 A for 0.25 mm, 20 to 125 A.",
			"Oxy-fuel: straight between the thicknesses of the table, likely in the middle of low and high; cutting oxygen while it cuts, fuel and its oxygen while it preheats too, rental over the metres of a year. A yearly bill that is told stands for gas and rental. 1 ft³/h is 0.47195 l/min.",
			"Disc: straight in logarithms between thicknesses, below 3 mm as there, above 11 mm going on; the area cut over what a disc cuts. Band saw: rate ÷ thickness; the area over what a blade cuts. Shear and nibbler: the metre over what knives cut. Sent out: the price of a metre and its share of a trip, or the yearly bill.",
			"The cut is the everyday one, else the thickest clean one, of the first metal the way can cut. A saving is today's metre less the system's, with the figures both share moved together; of today's ways the first that can be worked out.",
		},
		Head: []string{"Figure", "Low", "Likely", "High", "Unit", "Known as"},
	}
	for _, f := range cost.Figures() {
		s.Rows = append(s.Rows, []string{f.Name, number(f.Spread.Low), number(f.Spread.Likely), number(f.Spread.High), f.Unit, string(f.Trust)})
	}
	return s
}

func endTable() Section {
	s := Section{
		Title: "Where other ways of cutting end",
		Says:  []string{"Up to 6 % beyond is the same size. Oxy-fuel is worked out in mild and galvanised steel from 3.17 to 101.6 mm. A way in a metal that is not listed is not worked out."},
		Head:  []string{"Way", "Thickest"},
	}
	for _, e := range cost.Ends() {
		m, _ := metal.Find(e.Metal)
		s.Rows = append(s.Rows, []string{string(e.Way.Name()) + " in " + string(m.Name), number(float64(e.Most)) + " mm"})
	}
	return s
}

func priceTable() Section {
	demo := price.Demo()
	s := Section{
		Title: "Prices where nobody told better ones",
		Says:  []string{"This is the built-in list, in " + demo.Currency + ". A price list of your own takes its place, and what the customer tells stands before both."},
		Head:  []string{"Item", "Low", "Likely", "High", "Unit", "Known as"},
	}
	for _, id := range demo.IDs() {
		p, _ := demo.Get(id)
		item, _ := price.FindItem(id)
		s.Rows = append(s.Rows, []string{string(item.Name), number(p.Low), number(p.Likely), number(p.High), unitOf(item, demo.Currency), string(p.Basis)})
	}
	return s
}

// unitOf is the unit of an item: EUR per h, or a plain one.
func unitOf(item price.Item, currency string) string {
	if item.Money {
		return currency + " per " + item.Unit()
	}
	return item.Unit()
}

func sourceTable() Section {
	s := Section{Title: "Register of sources", Head: []string{"Name", "Title", "Edition", "Known as"}}
	for _, c := range cite.All() {
		s.Rows = append(s.Rows, []string{c.ID, c.Title, c.Edition, string(c.Trust)})
	}
	return s
}

// cited is a source in words, "" where it has no document.
func cited(r cite.Ref) string {
	if s, ok := r.Find(); !ok || s.Trust == cite.Practice || s.Trust == cite.Invented {
		return ""
	}
	return r.String()
}

// known is how much a source is trusted.
func known(r cite.Ref) string {
	s, ok := r.Find()
	if !ok {
		return "not known"
	}
	return string(s.Trust)
}

// number writes five digits that count, and a large number in full.
func number(v float64) string {
	if short, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 5, 64), 64); err == nil {
		v = short
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}
