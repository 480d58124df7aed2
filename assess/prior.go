package assess

import (
	"cmp"
	"iter"
	"slices"
	"strings"

	"cutbrief/rules"
)

// prior is how one question is usually answered. It orders the questions and
// never answers one. All shares are invented for the demo; the seconds, from
// asking to a noted answer, are common practice, no source. Figures that are read
// off a plate, a panel or a sheath take longest.
type prior struct {
	fact    rules.Fact
	seconds float64
	answers []share
}

// share is an answer, in the words of a customer or as the identifiers of its
// options, and how many of ten or so give it.
type share struct {
	said string
	of   float64
}

// priors has a row for every question that can change what is recommended.
var priors = []prior{
	{rules.FactMetals, 8, []share{{"mild-steel", 6}, {"mild-steel, stainless", 2}, {"aluminium", 1}}},
	{rules.FactEveryday, 8, []share{{"3 mm", 3}, {"6 mm", 4}, {"10 mm", 2}}},
	{rules.FactThickest, 8, []share{{"6 mm", 3}, {"12 mm", 4}, {"20 mm", 2}}},
	{rules.FactRarest, 8, []share{{"none", 4}, {"20 mm", 3}, {"32 mm", 2}}},
	{rules.FactUse, 8, []share{{"maintenance", 4}, {"mixed", 3}, {"production", 3}}},
	{rules.FactBusyCuts, 15, []share{{"3", 3}, {"8", 3}, {"16", 1}}},
	{rules.FactBusyLength, 10, []share{{"0.2 m", 3}, {"0.5 m", 2}}},
	{rules.FactCutLength, 15, []share{{"5 m a day", 4}, {"20 m a day", 3}, {"60 m a day", 1}}},
	{rules.FactStart, 8, []share{{"edge", 4}, {"middle", 2}, {"both", 4}}},
	{rules.FactPierced, 8, []share{{"5 mm", 4}, {"10 mm", 2}, {"none", 1}}},
	{rules.FactFeatures, 12, []share{{"straight", 5}, {"shapes, holes", 3}, {"bevels", 1}, {"gouging", 1}, {"gaps", 1}}},
	{rules.FactBevelled, 8, []share{{"8 mm", 2}, {"12 mm", 2}, {"none", 1}}},
	{rules.FactBevelAngle, 10, []share{{"30 degrees", 3}, {"45 degrees", 2}}},
	{rules.FactGuidance, 8, []share{{"by-hand", 4}, {"guided", 3}, {"mechanised", 1}}},
	{rules.FactSource, 8, []share{{"mains", 7}, {"both", 2}, {"generator", 1}}},
	{rules.FactPhases, 10, []share{{"single", 4}, {"both", 3}, {"three", 2}}},
	{rules.FactVolts, 15, []share{{"230 V", 4}, {"400 V", 3}, {"240 V", 2}}},
	{rules.FactBreaker, 30, []share{{"32 A", 4}, {"16 A", 3}, {"63 A", 1}}},
	{rules.FactGenerator, 20, []share{{"7 kVA", 2}, {"15 kVA", 2}}},
	{rules.FactCord, 10, []share{{"none", 6}, {"15 m", 3}}},
	{rules.FactCordSection, 30, []share{{"2.5 mm2", 3}, {"4 mm2", 2}}},
	{rules.FactDrier, 12, []share{{"separator", 5}, {"refrigerant", 2}, {"none", 2}, {"no-compressor", 1}}},
	{rules.FactAirDelivery, 30, []share{{"150 l/min", 3}, {"250 l/min", 3}, {"400 l/min", 1}}},
	{rules.FactAirPressure, 15, []share{{"6 bar", 4}, {"8 bar", 3}}},
	{rules.FactHoseBore, 20, []share{{"8 mm", 3}, {"10 mm", 3}}},
	{rules.FactHoseLength, 10, []share{{"8 m", 3}, {"20 m", 2}}},
	{rules.FactAltitude, 10, []share{{"100 m", 8}, {"800 m", 1}}},
	{rules.FactEdgeNext, 10, []share{{"welded", 5}, {"painted-seen", 2}, {"scrap", 2}}},
	{rules.FactPlaces, 10, []share{{"bench", 5}, {"in-place", 3}, {"field", 1}}},
	{rules.FactToday, 10, []share{{"abrasive-disc", 4}, {"oxy-fuel", 4}, {"sent-out", 1}}},
	{rules.FactAnnoysMost, 10, []share{{"too-slow", 3}, {"costs-too-much", 3}, {"rough-edge", 2}, {"gaps", 1}}},
	{rules.FactExperience, 8, []share{{"some", 4}, {"new", 3}, {"experienced", 3}}},
}

// priorOf is the row of a question, nil if it has none.
func priorOf(f rules.Fact) *prior { return Priors(priors).of(f) }

// Priors are how the questions are usually answered. The nil Priors are the
// built-in ones, which are invented.
type Priors []prior

func (p Priors) of(f rules.Fact) *prior {
	if p == nil {
		p = priors
	}
	for i := range p {
		if p[i].fact == f {
			return &p[i]
		}
	}
	return nil
}

// leastVisits is how many visits have to answer a question before their answers
// take the place of the built-in ones. Common practice, no source.
const leastVisits = 10

// Learn counts how the questions were answered at visits of one's own. It keeps
// counts, and no names; a question few of them answer keeps its built-in row.
// learned is how many questions have counts of their own.
func Learn(visits iter.Seq[*Visit]) (p Priors, learned int) {
	type told struct {
		said  string
		value float64
	}
	all := map[rules.Fact][]told{}
	for v := range visits {
		for _, a := range v.Answers {
			q, known := Find(a.Question)
			if !known || a.State == Unknown {
				continue
			}
			m, err := meaningOf(Step{q, a.Metal}, &a, v.Style())
			switch {
			case err != nil:
			case len(a.Chosen) > 0:
				all[q.ID] = append(all[q.ID], told{said: strings.Join(a.Chosen, ", ")})
			default:
				all[q.ID] = append(all[q.ID], told{strings.TrimSpace(a.Said + " " + a.Unit), m.reading.Quantity.Value})
			}
		}
	}
	p = slices.Clone(Priors(priors))
	for i := range p {
		list := all[p[i].fact]
		if len(list) < leastVisits {
			continue
		}
		learned++
		slices.SortStableFunc(list, func(a, b told) int {
			return cmp.Or(cmp.Compare(a.value, b.value), cmp.Compare(a.said, b.said))
		})
		p[i].answers = nil
		if q, _ := Find(p[i].fact); q.Form == FormQuantity { // the middles of the lower, middle and upper third
			for k := range 3 {
				p[i].answers = append(p[i].answers, share{list[(2*k+1)*len(list)/6].said, 1})
			}
			continue
		}
		for _, t := range list {
			if n := len(p[i].answers); n > 0 && p[i].answers[n-1].said == t.said {
				p[i].answers[n-1].of++
			} else {
				p[i].answers = append(p[i].answers, share{t.said, 1})
			}
		}
	}
	return p, learned
}

// at is the answer at a point between 0 and 1 on the line of all shares laid end
// to end.
func (p *prior) at(point float64) string {
	total := 0.0
	for _, a := range p.answers {
		total += a.of
	}
	for _, a := range p.answers {
		if point -= a.of / total; point < 0 {
			return a.said
		}
	}
	return p.answers[len(p.answers)-1].said
}

// likeliest is the answer with the largest share.
func (p *prior) likeliest() string {
	best := p.answers[0]
	for _, a := range p.answers[1:] {
		if a.of > best.of {
			best = a
		}
	}
	return best.said
}
