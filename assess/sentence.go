package assess

import (
	"slices"
	"strconv"
	"strings"
	"unicode"

	"cutbrief/rules"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// Found is a fact that a sentence seems to give: the question it answers, the
// answer, and the words that say so. It is no answer before somebody accepts it.
type Found struct {
	Step   Step
	Answer Answer
	Words  string
}

// Understand finds the facts in a sentence said freely, in English or German,
// such as "half inch plate most days, 230 single phase, 30 amp breaker". It would
// rather miss a fact than offer a wrong one: what is denied, wished for, past,
// somebody else's, asked, or could mean two things is not offered. rest is what
// nothing was found in.
func (v *Visit) Understand(sentence string) (found []Found, rest []string) {
	s := heard{visit: v, metals: v.Metals()}
	clauses := clausesOf(sentence)
	for i := range clauses {
		s.choices(&clauses[i])
	}
	if named := s.chosen(rules.FactMetals); len(named) > 0 {
		s.metals = nil
		for _, m := range named {
			s.metals = append(s.metals, metal.ID(m))
		}
	}
	for i := range clauses {
		s.figures(&clauses[i])
	}
	for i := range clauses {
		if c := &clauses[i]; !c.gave && c.text != "" {
			rest = append(rest, c.text)
		}
	}
	return s.sorted(), rest
}

// heard gathers what the clauses of one sentence give.
type heard struct {
	visit  *Visit
	metals []metal.ID
	found  []Found
	torn   []rules.Asked // said in two ways that cannot both be true
}

// clause is a part of a sentence between commas, stops and some conjunctions.
type clause struct {
	text   string
	words  []string
	spent  []bool      // words that belong to a figure
	linked bool        // joined to the one before by "and"
	before *clause     // in the same sentence, whose subject this one may go on with
	kinds  []unit.Kind // of the figures in it
	denied bool        // there is a "no" or "never" in it
	void   bool        // a wish, the past, somebody else's, or a question
	gave   bool
}

// clausesOf takes a sentence apart.
func clausesOf(sentence string) []clause {
	var list []clause
	words, text, linked := []string{}, []string{}, false
	end := func() {
		if len(words) > 0 {
			list = append(list, clause{text: strings.Join(text, " "), words: words, spent: make([]bool, len(words)), linked: linked})
		}
		words, text = nil, nil
	}
	fresh := []int{} // where a new sentence begins
	all := strings.Fields(limits.Replace(strings.ToLower(sentence)))
	for i, w := range all {
		low := w
		switch {
		case slices.Contains(conjunctions, low) && !(i+2 < len(all) && all[i+1] == "a" && strings.HasPrefix(all[i+2], "half")):
			end()
			linked = low == "and" || low == "und"
			if !linked {
				fresh = append(fresh, len(list))
			}
			continue
		case w == "–" || w == "-":
			end()
			linked = false
			continue
		}
		if unsure := low == "vielleicht" || low == "maybe" || low == "perhaps"; unsure && i+1 < len(all) && strings.ContainsAny(all[i+1][:1], "0123456789") {
			continue // about so much, and no wish
		}
		bare := strings.TrimRight(low, ",;:.!?")
		if bare != "" {
			words, text = append(words, strings.Trim(bare, `()“”„`)), append(text, strings.TrimRight(w, ",;:.!"))
		}
		if mark := low[len(bare):]; mark != "" {
			end()
			linked = false
			if strings.ContainsAny(mark, ".;!?") {
				fresh = append(fresh, len(list))
				if strings.Contains(mark, "?") {
					voidBack(list, fresh)
				}
			}
		}
	}
	end()
	carry(list, fresh)
	return list
}

// voidBack makes a question of the clauses since the sentence before.
func voidBack(list []clause, fresh []int) {
	from := 0
	if len(fresh) > 1 {
		from = fresh[len(fresh)-2]
	}
	for i := from; i < len(list); i++ {
		list[i].void = true
	}
}

// carry marks what is denied or void, and carries it on: a wish to the end of its
// sentence or a "but", a "no" into what is linked to it.
func carry(list []clause, fresh []int) {
	void, denied := false, false
	for i := range list {
		c := &list[i]
		if slices.Contains(fresh, i) {
			void, denied = false, false
		} else if i > 0 {
			c.before = &list[i-1]
		}
		if !c.linked && !c.has(alternatives...) {
			denied = false
		}
		void = void || c.void || c.has(voids...)
		denied = denied || c.has(denials...)
		c.void, c.denied = void, denied
	}
}

// has reports whether one of some phrases is in the clause.
func (c *clause) has(phrases ...string) bool {
	return slices.ContainsFunc(phrases, func(p string) bool { return c.find(p) >= 0 })
}

// find is where a phrase begins in the clause, −1 if it is not there. A word of it
// that ends in a star stands for all words that begin so.
func (c *clause) find(phrase string) int {
	want := strings.Fields(phrase)
	for i := 0; i+len(want) <= len(c.words); i++ {
		fits := true
		for k, w := range want {
			begin, open := strings.CutSuffix(w, "*")
			if got := c.words[i+k]; got != w && !(open && strings.HasPrefix(got, begin)) {
				fits = false
				break
			}
		}
		if fits {
			return i
		}
	}
	return -1
}

// choices finds the options that a clause names.
func (s *heard) choices(c *clause) {
	if c.void {
		return
	}
	for i := range optionCues {
		cue := &optionCues[i]
		if c.denied != cue.denies || !c.has(cue.phrases...) || c.has(cue.unless...) {
			continue
		}
		s.choose(c, cue)
	}
}

// choose offers an option, beside those of the same question where several may be
// chosen. Two options of a question with one answer are torn.
func (s *heard) choose(c *clause, cue *optionCue) {
	q, known := Find(cue.fact)
	if !known {
		return
	}
	step := Step{Question: q}
	c.gave = true
	i := slices.IndexFunc(s.found, func(f Found) bool { return f.Step.Asked() == step.Asked() })
	if q.Form == FormQuantity {
		s.read(c, step, cue.option, c.text)
		return
	}
	options := []string{cue.option}
	if before, has := s.visit.Answer(step.Asked()); has && q.Form == FormSeveral && !slices.Contains(before.Chosen, cue.option) {
		options = append(slices.Clone(before.Chosen), cue.option)
	}
	if i >= 0 {
		if slices.Contains(s.found[i].Answer.Chosen, cue.option) {
			return
		}
		if q.Form == FormOne {
			s.torn = append(s.torn, step.Asked())
			return
		}
		options = append(slices.Clone(s.found[i].Answer.Chosen), cue.option)
	}
	a, err := s.visit.Choose(step, options)
	switch {
	case err != nil:
	case i >= 0:
		s.found[i].Answer, s.found[i].Words = a, s.found[i].Words+"; "+c.text
	default:
		s.found = append(s.found, Found{step, a, c.text})
	}
}

func (s *heard) chosen(f rules.Fact) []string {
	for i := range s.found {
		if s.found[i].Step.Question.ID == f {
			return s.found[i].Answer.Chosen
		}
	}
	return nil
}

// figures finds the quantities in a clause and the questions they answer.
func (s *heard) figures(c *clause) {
	if c.void || c.denied {
		return
	}
	taken := map[unit.Kind]int{}
	type figure struct {
		kind unit.Kind
		said string
	}
	var list []figure
	mains := c.has("single phase", "single-phase", "one phase", "three phase", "three-phase", "3 phase", "3-phase", "1 phase", "einphasig", "dreiphasig", "drehstrom")
	for i := 0; i < len(c.words); i++ {
		s.counted(c, i)
		kind, said, n := c.figureAt(i)
		if n == 0 && mains && slices.Contains(usualMains, c.words[i]) {
			kind, said, n = unit.Voltage, c.words[i]+" V", 1
		}
		if n == 0 {
			continue
		}
		if c.second(i) {
			taken[kind]++
		}
		list = append(list, figure{kind, said})
		c.kinds = append(c.kinds, kind)
		taken[kind]++
		for k := range n {
			c.spent[i+k] = true
		}
		i += n - 1
	}
	for _, f := range list {
		if taken[f.kind] > 1 { // two thicknesses: nobody knows which is which
			continue
		}
		s.assign(c, f.kind, f.said)
	}
}

// counted finds cuts in ten minutes and days in a week: numbers of things.
func (s *heard) counted(c *clause, i int) {
	if i+1 == len(c.words) {
		return
	}
	fact := rules.Fact("")
	switch c.words[i+1] {
	case "cuts", "schnitte":
		if c.has("ten minutes", "10 minutes", "zehn minuten", "10 minuten") {
			fact = rules.FactBusyCuts
		}
	case "days", "tage":
		if c.has("a week", "die woche", "in der woche") {
			fact = rules.FactDays
		}
	}
	if q, known := Find(fact); known {
		s.read(c, Step{Question: q}, inEnglish(c.words[i]), c.text)
	}
}

// second reports that a figure follows another that shares its unit: "6 or 8 mm".
func (c *clause) second(i int) bool {
	return i > 1 && slices.Contains([]string{"or", "to", "oder", "bis", "-", "–"}, c.words[i-1]) && strings.ContainsFunc(c.words[i-2], unicode.IsDigit)
}

// longestFigure is how many words a figure with its unit has at most: "one and a
// half inches" is cut at its conjunction, "three eighths of an inch" is not.
const longestFigure = 5

// figureAt reads the longest figure with a unit that begins at a word.
func (c *clause) figureAt(i int) (kind unit.Kind, said string, n int) {
	for n = min(longestFigure, len(c.words)-i); n > 0; n-- {
		words := make([]string, n)
		for k := range n {
			words[k] = inEnglish(c.words[i+k])
		}
		said = inDigits(words)
		if fractional(words[0]) && n == 1 && !(i+1 < len(c.words) && c.words[i+1] == "of") {
			said += " in" // as the trade says it
		}
		if words[0] == "inch" && (i == 0 || slices.Contains(beforeInch, c.words[i-1])) {
			said = "1 " + said
		}
		if !figured(said) {
			continue
		}
		for _, kind = range figureKinds {
			r, err := unit.Read(said, kind, unit.Metric, unit.SteelGauge)
			long := kind == unit.Thickness && (r.Unit == "m" || r.Unit == "ft" || r.Unit == "yd")
			if err == nil && !r.Bare && !long {
				return kind, said, n
			}
		}
	}
	return unit.None, "", 0
}

// figured reports whether there is a number in a text, or an inch said without
// its one.
func figured(said string) bool {
	first, rest, _ := strings.Cut(said, " ")
	if first == "an" && !strings.HasPrefix(rest, "inch") && !strings.HasPrefix(rest, "eighth") {
		return false // the German preposition
	}
	return strings.ContainsFunc(said, unicode.IsDigit) || first != "inch" && slices.Contains(numberStarts, first)
}

// beforeInch are the words behind which an inch is said without its one. Behind any
// other, such as a slip of the keys, its figure is not known.
var beforeInch = []string{"sometimes", "occasionally", "often", "mostly", "usually", "to", "of", "about", "around", "then", "and", "cut", "manchmal", "bis", "selten", "oft", "etwa"}

// fractional reports a fraction said without its unit: "3/8", "three-eighths".
func fractional(w string) bool {
	return strings.HasSuffix(w, "-eighths") || strings.HasPrefix(w, "three-quarter") || slices.Contains([]string{"1/4", "3/8", "1/2", "5/8", "3/4"}, w)
}

// inDigits joins the words of a figure, "four hundred volts" as "400 volts".
func inDigits(words []string) string {
	if i := slices.Index(words, "hundred"); i == 1 && (words[0] == "a" || slices.Contains(numberStarts, words[0])) {
		times := max(1, slices.Index([]string{"", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"}, words[0]))
		words = append([]string{strconv.Itoa(100 * times)}, words[2:]...)
	} else if i := slices.Index([]string{"sixty", "seventy", "eighty", "ninety"}, words[0]); i >= 0 {
		words = append([]string{strconv.Itoa(60 + 10*i)}, words[1:]...)
	}
	return strings.Join(words, " ")
}

// about are the questions about figures of a kind that some words are about.
func about(kind unit.Kind, has func(...string) bool) []figureCue {
	var fits []figureCue
	for _, cue := range figureCues {
		if cue.kind == kind && (len(cue.phrases) == 0 || has(cue.phrases...)) && !has(cue.unless...) {
			fits = append(fits, cue)
		}
	}
	return fits
}

// assign offers a figure to the one question its clause is about. A clause without
// a subject of its own goes on with the one before, if that has no figure of the
// kind: "the hose is 15 m, bore 9 mm".
func (s *heard) assign(c *clause, kind unit.Kind, said string) {
	fits := about(kind, c.has)
	if b := c.before; b != nil && !b.void && !b.denied && !slices.Contains(b.kinds, kind) {
		both := about(kind, func(p ...string) bool { return c.has(p...) || b.has(p...) })
		if len(fits) == 0 || len(both) == 1 {
			fits = both
		}
	}
	if len(fits) != 1 {
		return
	}
	q, known := Find(fits[0].fact)
	if !known {
		return
	}
	step := Step{Question: q}
	if q.PerMetal {
		m := s.metalOf(c)
		if m == "" {
			return
		}
		step.Metal = m
	}
	if fits[0].fact == rules.FactCutLength {
		said = strings.TrimSuffix(said, " a") + fits[0].period(c)
	}
	s.read(c, step, said, c.text)
}

// metalOf is the one metal a clause is about: that it names, or the only one there
// is.
func (s *heard) metalOf(c *clause) metal.ID {
	var named []metal.ID
	for i := range optionCues {
		if cue := &optionCues[i]; cue.fact == rules.FactMetals && c.has(cue.phrases...) && !c.has(cue.unless...) {
			named = append(named, metal.ID(cue.option))
		}
	}
	switch {
	case len(named) == 1:
		return named[0]
	case len(named) == 0 && len(s.metals) == 1:
		return s.metals[0]
	}
	return ""
}

// read offers an answer in the words of a figure. A second, other answer to the
// same question tears both.
func (s *heard) read(c *clause, step Step, said, words string) {
	a, _, err := s.visit.Read(step, said)
	if err != nil {
		return
	}
	c.gave = true
	for i := range s.found {
		if s.found[i].Step.Asked() == step.Asked() {
			if s.found[i].Answer.Said != a.Said {
				s.torn = append(s.torn, step.Asked())
			}
			return
		}
	}
	s.found = append(s.found, Found{step, a, words})
}

// sorted are the facts found, without what is torn, in the order of the catalogue.
func (s *heard) sorted() []Found {
	list := slices.DeleteFunc(s.found, func(f Found) bool {
		before, _ := s.visit.Answer(f.Step.Asked())
		known := !slices.ContainsFunc(f.Answer.Chosen, func(o string) bool { return !slices.Contains(before.Chosen, o) })
		return slices.Contains(s.torn, f.Step.Asked()) || len(f.Answer.Chosen) > 0 && known
	})
	slices.SortStableFunc(list, func(a, b Found) int { return placeOf(a.Step.Question.ID) - placeOf(b.Step.Question.ID) })
	return list
}
