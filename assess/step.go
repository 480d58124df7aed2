package assess

import (
	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
)

// Text returns the step's question with the metal's name put in.
func (s Step) Text() message.Message {
	if !s.Question.PerMetal {
		return s.Question.Ask.Message()
	}
	return message.New(s.Question.Ask, s.metalName())
}

// Name returns what the step is called in lists and messages, with its metal:
// "thickest clean cut, stainless".
func (s Step) Name() message.Message {
	if s.Metal == "" {
		return s.Question.Name.Message()
	}
	return message.New("{1}, {2}", s.Question.Name, s.metalName())
}

func (s Step) metalName() message.Message {
	m, ok := metal.Find(s.Metal)
	if !ok {
		return message.Text(string(s.Metal))
	}
	return m.Name.Message()
}

// Asked returns the fact and metal the step asks for.
func (s Step) Asked() rules.Asked { return rules.Asked{Fact: s.Question.ID, Metal: s.Metal} }

// Steps returns the questions that can matter, given the answers so far, in
// the order asked: questions asked per metal that stand together are asked
// metal by metal. Steps of skipped groups are left out.
func (v *Visit) Steps() []Step {
	steps := make([]Step, 0, len(asking())+8)
	v.eachStep(func(s Step) { steps = append(steps, s) })
	return steps
}

func (v *Visit) eachStep(do func(Step)) {
	metals, c, asking := v.Metals(), v.circumstances(), asking()
	for i := 0; i < len(asking); {
		j, group := i+1, asking[i].Group
		for asking[i].PerMetal && j < len(asking) && asking[j].PerMetal && asking[j].Group == group {
			j++
		}
		if block := asking[i:j]; !v.Skips(group) {
			if block[0].PerMetal {
				for _, m := range metals {
					stepsOf(block, m, c, do)
				}
			} else {
				stepsOf(block, "", c, do)
			}
		}
		i = j
	}
}

// stepsOf calls do with the steps of one question, or of several asked of a metal.
func stepsOf(block []*Question, m metal.ID, c *circumstances, do func(Step)) {
	for _, q := range block {
		if q.matters(c) {
			do(Step{q, m})
		}
	}
}

// matters reports whether the question can matter, given the answers so far.
func (q *Question) matters(c *circumstances) bool { return q.applies == nil || q.applies(c) }

// Unanswered returns the steps without an answer. "Not known" is an answer;
// optional texts are never missed.
func (v *Visit) Unanswered() []Step {
	var answered [2]uint64 // questions asked once, by place
	place := 0
	for i := range v.Answers {
		if place = placeNear(v.Answers[i].Question, place); place < len(catalogue) && v.Answers[i].Metal == "" {
			answered[place/64] |= 1 << (place % 64)
		}
	}
	var steps []Step
	v.eachStep(func(s Step) {
		if s.Question.Optional {
			return
		}
		isAnswered := s.Metal != "" && v.index(s.Asked()) >= 0
		if s.Metal == "" {
			place = placeNear(s.Question.ID, place)
			isAnswered = answered[place/64]&(1<<(place%64)) != 0
		}
		if !isAnswered {
			steps = append(steps, s)
		}
	})
	return steps
}

// NextOpen returns the first step without an answer.
func (v *Visit) NextOpen() (Step, bool) {
	if steps := v.Unanswered(); len(steps) > 0 {
		return steps[0], true
	}
	return Step{}, false
}

// Open counts the steps without an answer.
func (v *Visit) Open() int { return len(v.Unanswered()) }

// Options returns what can be chosen at a step, given the answers so far: the
// second complaint is never the first one again.
func (v *Visit) Options(s Step) []Option {
	if s.Question.ID != rules.FactAnnoysNext {
		return s.Question.Options
	}
	var left []Option
	for _, o := range s.Question.Options {
		if !v.chose(rules.FactAnnoysMost, o.ID) {
			left = append(left, o)
		}
	}
	return left
}
