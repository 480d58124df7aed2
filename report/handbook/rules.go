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
			"Formulas stand in the source of the program, each with its range, what it rests on and a value to check it by: go doc -all ./rules/size and ./rules/cost.",
			"A rule of thumb is no more than that. The machine's own manual, local codes, the site's hot-work permit and a licensed electrician come before any of this.",
		},
		Sections: []Section{ruleTable(), metalTable(), pointerTable(), cautionTable(), cutTable(), figureTable(), priceTable(), sourceTable()},
	}
}

func ruleTable() Section {
	s := Section{
		Title: "Rules",
		Says:  []string{"A rule about the work that is not met shuts a system out. One about the site can be put right there. The others are said, and shut out nothing."},
		Head:  []string{"Rule", "In words", "Is about", "Borderline", "What turns a no round", "Source", "Known as"},
	}
	for _, r := range rules.Table() {
		s.Rows = append(s.Rows, []string{r.Title, r.Words, about(r), r.Almost, r.Cure, cited(r.Source), known(r.Source)})
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
		s.Rows = append(s.Rows, []string{m.Name, counts, m.Note, cited(m.Basis), known(m.Basis)})
	}
	return s
}

func pointerTable() Section {
	s := Section{
		Title: "What points to the requirement that decides",
		Says:  []string{"What the customer says outranks all that is inferred. Among what is inferred the heavier weight wins, and a difference of one is a tie. The weights order these sentences and mean nothing else."},
		Head:  []string{"Sentence", "Points to", "How", "Question", "Known as"},
	}
	for _, p := range rules.Pointers() {
		how := "inferred, weight " + strconv.Itoa(p.Weight)
		if p.Said {
			how = "said"
		}
		s.Rows = append(s.Rows, []string{p.Sentence, report.RequirementName(p.Requirement), how, string(p.From.Fact), known(p.Source)})
	}
	return s
}

func cautionTable() Section {
	s := Section{Title: "Cautions", Says: []string{"They are reminders, and come in this order on the page."}, Head: []string{"Caution", "Given when", "Source", "Known as"}}
	for _, w := range demonstration.Warnings() {
		when := w.When
		if when == "" {
			when = "always"
		}
		s.Rows = append(s.Rows, []string{w.Text, when, cited(w.Source), known(w.Source)})
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
		name := c.Name
		if name == "" {
			name = strings.ToUpper(c.ID[:1]) + strings.ReplaceAll(c.ID[1:], "-", " ") // its full name is the customer's
		}
		s.Rows = append(s.Rows, []string{name, strings.Join(shows, ", "), number(c.Minutes), c.See, c.Fails, c.Avoid, known(c.Source)})
	}
	return s
}

func figureTable() Section {
	s := Section{
		Title: "What a cost assumes where nothing was told",
		Says:  []string{"A metre is worked out with the likely figures, and its range with the low and the high ones."},
		Head:  []string{"Figure", "Low", "Likely", "High", "Unit", "Known as"},
	}
	for _, f := range cost.Figures() {
		s.Rows = append(s.Rows, []string{f.Name, number(f.Spread.Low), number(f.Spread.Likely), number(f.Spread.High), f.Unit, string(f.Trust)})
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
		s.Rows = append(s.Rows, []string{item.Name, number(p.Low), number(p.Likely), number(p.High), unitOf(item, demo.Currency), string(p.Basis)})
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
