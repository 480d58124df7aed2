package report

import (
	"cmp"
	"fmt"
	"strings"

	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// title is what a rule is called.
func title(id rules.RuleID) string {
	if r, ok := id.Find(); ok {
		return string(r.Title)
	}
	return string(id)
}

// numeric reports whether a check compares two numbers that are worth showing.
func numeric(c *rules.Check) bool { return c.Need.Value > 0 && c.Have.Value > 0 }

// shortfall words a check that is not met: the numbers, or the rule itself.
func (b *builder) shortfall(c *rules.Check) string {
	if numeric(c) {
		return title(c.Rule) + ": " + b.against(c)
	}
	r, _ := c.Rule.Find()
	if c.Verdict == rules.Short && r.Cure != "" {
		return title(c.Rule) + ": it would take " + string(r.Cure)
	}
	return title(c.Rule) + ": " + string(r.Words)
}

// against words need and capability, "needs 12.7 mm, gives 16 mm".
func (b *builder) against(c *rules.Check) string {
	need, have := b.pair(c)
	return need + ", " + have
}

// pair words need and capability apart.
func (b *builder) pair(c *rules.Check) (need, have string) {
	rule, _ := c.Rule.Find()
	asks, gives := cmp.Or(rule.Asks, "needs {1}"), cmp.Or(rule.Gives, "gives {1}")
	need, have = b.figures(c)
	return message.New(asks, message.Figure(need)).String(), message.New(gives, message.Figure(have)).String()
}

// figures writes need and capability, each rounded to its safe side. Where a
// need is met but both lie within one step of the display, that would show more
// needed than there is; then both are shown to the nearest.
func (b *builder) figures(c *rules.Check) (need, have string) {
	oneStep := b.needed(c.Need) == b.needed(c.Have) && b.given(c.Need) == b.given(c.Have)
	if oneStep && c.Need.Value <= c.Have.Value*(1+lastBit) {
		return b.told(c.Need), b.told(c.Have)
	}
	return b.needed(c.Need), b.given(c.Have)
}

// lastBit is how far two numbers that meet may differ by calculation alone.
const lastBit = 1e-9

// formula words where a need comes from: "12 mm (thickest regular clean cut,
// mild steel) × 1.5 (factor for use)".
func (b *builder) formula(inputs []rules.Input) string {
	text := ""
	for i, in := range inputs {
		if i > 0 && in.Word == "" && in.Value == (unit.Quantity{Value: 1}) {
			continue // a factor of 1 changes nothing
		}
		value := string(in.Word)
		if value == "" {
			value = b.told(in.Value)
		}
		if text != "" {
			if in.Op == "" {
				text += ", "
			} else {
				text += " " + in.Op + " "
			}
		}
		text += value + " (" + in.Name.String() + ")"
	}
	return text
}

// because says why this system, or what would fit, or what must be told first.
func (b *builder) because() []string {
	switch b.result.Outcome {
	case rules.Recommended:
		return b.reasons(b.result.First)
	case rules.NoneFits:
		return b.instead()
	}
	return b.missing()
}

// headline names the recommended system, or why there is none.
func (b *builder) headline() string {
	switch b.result.Outcome {
	case rules.Recommended:
		name := plain(b.result.First.System.Name)
		switch b.result.First.Status {
		case rules.FitsAfterSite:
			return name + ", once the site is changed"
		case rules.FitsNearly:
			return name + ", borderline"
		}
		return name
	case rules.NoneFits:
		if b.onlySupply() {
			return "No system of this range that does this work can be fed from this supply"
		}
		return "No system of this range does this work by hand"
	}
	return "Too much is still open to recommend a system"
}

// reasons say what the site has to change before the first choice can be used,
// why it is right, what is nearly too little, how sure that is, and what else it
// needs. The most important
// come first: a page that is full drops the last.
func (b *builder) reasons(c *rules.Candidate) []string {
	changes, nearly, others := b.shortComings(c)
	list := changes
	for i := range c.Checks {
		if check := &c.Checks[i]; check.Rule == rules.RuleClean && numeric(check) {
			list = append(list, b.rated(check))
		}
	}
	list = append(list, nearly...)
	list = append(list, b.sure())
	list = append(list, others...)
	return append(list, b.weighs(c))
}

// sure says whether open answers could change the choice, and how far it
// holds.
func (b *builder) sure() string {
	text := "Open answers could still change this choice: see what is to be confirmed."
	if b.result.Firm {
		text = "No answer still open could change this choice."
	}
	if holds := b.holds(); holds != "" {
		text += " " + holds
	}
	return text
}

// rated says what the system is rated for and where the need comes from.
func (b *builder) rated(c *rules.Check) string {
	need, have := b.figures(c)
	text := fmt.Sprintf("Rated for %s by hand in mild steel; the work needs %s", have, need)
	formula := b.formula(c.Inputs)
	if rest, found := strings.CutPrefix(formula, need+" ("); found && !strings.Contains(rest, " (") {
		return text + " (" + rest + "." // nothing was worked out
	}
	return text + ": " + formula + "."
}

// shortComings are the checks that wait for the site, the hard ones that are
// borderline, and what else is to be said openly.
func (b *builder) shortComings(c *rules.Candidate) (changes, nearly, others []string) {
	for i := range c.Checks {
		check := &c.Checks[i]
		r, _ := check.Rule.Find()
		switch {
		case check.Verdict == rules.Short && r.Site:
			changes = append(changes, b.siteFirst(check, r))
		case check.Verdict == rules.Borderline && (r.Hard || r.Site):
			nearly = append(nearly, b.borderline(check, r))
		case check.Verdict == rules.Borderline:
			others = append(others, b.borderline(check, r))
		case check.Verdict == rules.Short && !r.Hard:
			others = append(others, "To be said openly: "+stop(b.shortfall(check)))
		}
	}
	return changes, nearly, others
}

// siteFirst words what has to change at the site. A shortfall without numbers
// says itself what it would take.
func (b *builder) siteFirst(c *rules.Check, r rules.Rule) string {
	text := "The site has to change first: " + stop(b.shortfall(c))
	if numeric(c) && r.Cure != "" {
		text += " What would do: " + stop(string(r.Cure))
	}
	return text
}

// borderline words a check that is nearly met, and what that means for it.
func (b *builder) borderline(c *rules.Check, r rules.Rule) string {
	switch {
	case !r.Hard && !r.Site:
		return capital(title(c.Rule)) + ": " + stop(string(r.Almost))
	case r.Almost == "" && c.Need.Kind != unit.Thickness:
		return "Borderline on " + stop(b.shortfall(c)) + " That is short by no more than 6 %."
	case r.Almost == "":
		return "Borderline on " + stop(b.shortfall(c)) + " That is within 6 %, one step between nominal sizes."
	case c.Almost != "":
		return "Borderline on " + b.shortfall(c) + ": " + string(c.Almost) + "; " + stop(string(r.Almost))
	case numeric(c):
		return "Borderline on " + stop(b.shortfall(c)) + " " + stop(capital(string(r.Almost)))
	}
	return "Borderline on " + title(c.Rule) + ": " + stop(string(r.Almost))
}

// holds says how far the thickest regular cut of the deciding metal may move.
func (b *builder) holds() string {
	need, _ := b.result.Need.Get()
	for _, m := range b.result.Margins {
		if m.Asked.Fact != rules.FactThickest || m.Asked.Metal != need.Metal || m.HoldsTo.Value < m.Now.Value {
			continue
		}
		return fmt.Sprintf("It holds up to %s of %s; %s", b.given(m.HoldsTo), metalName(m.Asked.Metal), b.beyond(m))
	}
	return ""
}

// beyond says what is right once an answer is more than the choice holds.
func (b *builder) beyond(m rules.Margin) string {
	switch {
	case m.Then == nil:
		return "above that, no system of this range is right."
	case b.result.First == nil || m.Then.ID != b.result.First.System.ID:
	case m.ThenStatus == rules.FitsAfterSite:
		return "above that, the site has to change first."
	default:
		return "above that, it is borderline."
	}
	return "above that, " + plain(m.Then.Name) + " is next."
}

// weighs gives the weight and, if listed, the price.
func (b *builder) weighs(c *rules.Candidate) string {
	text := "Weighs " + b.needed(unit.Quantity{Value: float64(c.System.Weight), Kind: unit.Weight}) + " without leads"
	price, ok := c.System.Price.Get()
	if !ok {
		return text + "; the list gives no price."
	}
	return text + "; list price " + b.told(unit.Quantity{Value: float64(price), Kind: unit.Price}) + "."
}

// missing lists what must be told before anything can be recommended.
func (b *builder) missing() []string {
	list := []string{"This page is not a recommendation. It lists what is needed for one."}
	for _, a := range b.result.Missing {
		if a.Fact == rules.FactMetals && len(b.job.Pieces) > 0 {
			list = append(list, "No figures are held for this metal: only a trial on their own piece can tell.")
			continue
		}
		list = append(list, "To be told first: "+askedName(a)+".")
	}
	return list
}

// second names the second choice and what would change the first.
func (b *builder) second() string {
	if b.result.Second == nil {
		return ""
	}
	text := "Second choice: " + plain(b.result.Second.System.Name) + "."
	if b.result.Second.Status != rules.Fits {
		text = strings.TrimSuffix(text, ".") + " (" + string(b.result.Second.Status) + ")."
	}
	return text
}

// unique drops repeated texts, keeping the first.
func unique(texts []string) []string {
	seen := map[string]bool{}
	var list []string
	for _, t := range texts {
		if !seen[t] {
			list = append(list, t)
		}
		seen[t] = true
	}
	return list
}
