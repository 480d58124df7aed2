package casebook

import (
	_ "embed"
	"math/rand/v2"
	"slices"
	"strings"
	"sync"

	"cutbrief/assess"
	"cutbrief/assess/sanitize"
	"cutbrief/rules/message"
	"cutbrief/rules/tabular"
	"cutbrief/rules/unit"
)

// What customers say, in sections: "[name]" and a line for each way of saying
// it. Each line identifies a message, in which {1} is the answer, {2} what was
// asked and {3} the answer with a capital.
//
//go:embed words.txt
var wordsText string

// phrases are the sections, read when somebody first speaks. They are only ever
// read.
var phrases = sync.OnceValue(func() map[string][]message.ID {
	sections := map[string][]message.ID{}
	section := ""
	for line := range strings.Lines(wordsText) {
		line = strings.TrimSpace(line)
		switch {
		case tabular.Skipped(line):
		case strings.HasPrefix(line, "["):
			section = strings.Trim(line, "[]")
		default:
			sections[section] = append(sections[section], message.ID(line))
		}
	}
	return sections
})

// speaker speaks for one customer through one practice, and never says the same
// twice.
type speaker struct {
	*Customer
	rng  *rand.Rand
	used map[string]bool // in English, as every language has as many ways
}

// say picks a way of saying something that was not used yet: the body alone
// first, then with words before and behind it. about is the question, and value
// what is said of it.
func (s *speaker) say(section string, about assess.Step, value message.Message) message.Message {
	bodies := phrases()[section]
	before := slices.Concat([]message.ID{""}, phrases()["before "+string(s.Manner)], phrases()["before"])
	body := func(i int) message.Message {
		return message.New(bodies[i], value, stepName(about), value.Capital()).Capital()
	}
	order := s.rng.Perm(len(bodies))
	for _, b := range slices.Concat([]message.ID{""}, phrases()["behind"]) {
		for _, f := range before {
			for _, i := range order {
				said := message.Join(" ", f.Message(), body(i), b.Message())
				if s.fresh(said) {
					return said
				}
			}
		}
	}
	return body(order[0])
}

// fresh reports whether something was not said before, and keeps it in mind.
func (s *speaker) fresh(said message.Message) bool {
	text := said.String()
	fresh := !s.used[text]
	s.used[text] = true
	return fresh
}

// tell is a plain, true answer, in the words of the manner where it has its own.
func (s *speaker) tell(step assess.Step, truth assess.Answer) message.Message {
	section := "text"
	switch {
	case isNone(truth):
		return s.say("none", step, message.Message{})
	case step.Question.Form == assess.FormQuantity:
		section = "figure"
	case len(truth.Chosen) > 0:
		section = "choice"
	}
	if own := section + " " + string(s.Manner); phrases()[own] != nil && s.rng.IntN(2) == 0 {
		section = own
	}
	return s.say(section, step, s.answer(step.Question, truth))
}

// evade is a first answer that tells nothing yet: a question back, or a
// comparison. That of a thickness goes by how thick the metal is.
func (s *speaker) evade(step assess.Step, truth assess.Answer) message.Message {
	section := "vague " + comparedTo(step.Question.Kind)
	if step.Question.PerMetal {
		section = "vague amount"
		thick, known := s.Facts.Quantity(truth).Get()
		for _, c := range comparisons {
			if known && thick.Value < c.below {
				section = "vague " + c.section
				break
			}
		}
	}
	if s.Manner == AsksBack {
		section = "asks back"
	}
	return s.say(section, step, message.Message{})
}

// comparedTo is the section for what is no thickness of a metal.
func comparedTo(k unit.Kind) string {
	switch k {
	case unit.Length:
		return "length"
	case unit.Price:
		return "money"
	case unit.Voltage, unit.Current, unit.Flow, unit.Pressure, unit.Volume, unit.Section, unit.Thickness, unit.ApparentPower:
		return "plant"
	}
	return "amount"
}

// comparisons are what people compare a thickness with, below so many mm.
var comparisons = []struct {
	below   float64
	section string
}{{2, "thin"}, {5, "sheet"}, {9, "plate"}, {16, "thick"}, {1000, "heavy"}}

// answer is an answer as the customer would say it: the figure with its unit, or
// the words of what is chosen.
func (c *Customer) answer(q *assess.Question, a assess.Answer) message.Message {
	said := sanitize.Line(strings.TrimSpace(a.Said + " " + a.Unit))
	switch {
	case len(a.Chosen) > 0:
		return message.And(chosen(q, a, 1)...)
	case q.Form == assess.FormQuantity:
		return quantity(said)
	}
	return c.prose(said)
}

// label is an answer in one word where its options have one: "production".
func (c *Customer) label(q *assess.Question, a assess.Answer) message.Message {
	if len(a.Chosen) == 1 {
		return message.And(chosen(q, a, 0)...)
	}
	return c.answer(q, a)
}

// chosen are the words of what is chosen. Some have a label before a colon, as
// "maintenance: repair and odd jobs"; part is 0 for that and 1 for what follows.
func chosen(q *assess.Question, a assess.Answer, part int) []message.Message {
	return message.Each(a.Chosen, func(id string) message.Message {
		i := slices.IndexFunc(q.Options, func(o assess.Option) bool { return o.ID == id })
		if i < 0 {
			return message.Message{}
		}
		parts := strings.SplitN(string(q.Options[i].Text), ": ", 2)
		return message.ID(parts[min(part, len(parts)-1)]).Message()
	})
}

// quantity is a figure as it was said, with the few words of ours it may hold.
func quantity(said string) message.Message {
	if strings.EqualFold(said, "none") {
		return message.ID("none").Message()
	}
	if rest, is := strings.CutPrefix(said, "about "); is {
		return message.New("about {1}", quantity(rest))
	}
	for _, every := range []message.ID{"{1} a day", "{1} a week"} {
		if rest, is := strings.CutSuffix(said, string(every[len("{1}"):])); is {
			return message.New(every, message.Figure(rest))
		}
	}
	return message.Number(said)
}

// isNone reports an answer that is a known zero.
func isNone(a assess.Answer) bool {
	return slices.Contains([]string{"none", "no", "nothing", "never", "0"}, strings.ToLower(strings.TrimSpace(a.Said)))
}

// stepName is what a step is called, with its metal.
func stepName(s assess.Step) message.Message {
	if s.Question == nil {
		return message.Message{}
	}
	return s.Name()
}
