package casebook

import (
	"bufio"
	_ "embed"
	"math/rand/v2"
	"strings"
	"sync"

	"cutbrief/assess"
	"cutbrief/rules/unit"
)

// What customers say, in sections: "[name]" and a line for each way of saying
// it. "{value}" stands for the answer, "{Value}" for the same with a capital, "{thing}" for what was asked.
//
//go:embed words.txt
var wordsText string

// phrases are the sections, read when somebody first speaks. They are only ever
// read.
var phrases = sync.OnceValue(func() map[string][]string {
	sections := map[string][]string{}
	section := ""
	for in := bufio.NewScanner(strings.NewReader(wordsText)); in.Scan(); {
		line := strings.TrimSpace(in.Text())
		switch {
		case line == "" || strings.HasPrefix(line, "#"):
		case strings.HasPrefix(line, "["):
			section = strings.Trim(line, "[]")
		default:
			sections[section] = append(sections[section], line)
		}
	}
	return sections
})

// voice speaks for one customer through one practice, and never says the same
// twice.
type voice struct {
	rng    *rand.Rand
	manner Manner
	used   map[string]bool
}

// say picks a way of saying something about a step.
func (v *voice) say(section string, of any, values ...assess.Answer) string {
	thing, value := "", ""
	if step, ok := of.(assess.Step); ok {
		thing = step.Name()
		for _, a := range values {
			value = spoken(step.Question, a)
			if strings.HasPrefix(section, "wrong") {
				value = label(step.Question, a)
			}
		}
	}
	return v.fresh(section, strings.NewReplacer("{thing}", thing, "{value}", value, "{Value}", capital(value)))
}

// list says a list of readings.
func (v *voice) list(section string, items []string) string {
	return v.fresh(section, strings.NewReplacer("{value}", strings.Join(items, "; ")))
}

// fresh fills a way of saying it that was not used yet: the body alone first,
// then with words before and behind it.
func (v *voice) fresh(section string, fill *strings.Replacer) string {
	bodies := phrases()[section]
	before := append([]string{""}, phrases()["before "+string(v.manner)]...)
	before = append(before, phrases()["before"]...)
	behind := append([]string{""}, phrases()["behind"]...)
	order := v.rng.Perm(len(bodies))
	for _, b := range behind {
		for _, f := range before {
			for _, i := range order {
				text := strings.TrimSpace(f + " " + capital(fill.Replace(bodies[i])) + " " + b)
				if !v.used[text] {
					v.used[text] = true
					return text
				}
			}
		}
	}
	return capital(fill.Replace(bodies[order[0]]))
}

// tell is a plain, true answer, in the words of the manner where it has its own.
func (v *voice) tell(step assess.Step, truth assess.Answer) string {
	section := "text"
	switch {
	case isNone(truth):
		return v.say("none", step)
	case step.Question.Form == assess.FormQuantity:
		section = "figure"
	case len(truth.Chosen) > 0:
		section = "choice"
	}
	if own := section + " " + string(v.manner); phrases()[own] != nil && v.rng.IntN(2) == 0 {
		section = own
	}
	return v.say(section, step, truth)
}

// clear is a true answer after a first one that was none.
func (v *voice) clear(act Act, step assess.Step, truth assess.Answer) string {
	if isNone(truth) {
		return v.say("none", step)
	}
	return v.say("clear "+string(act), step, truth)
}

// slip is a first answer that is wrong.
func (v *voice) slip(step assess.Step, wrong assess.Answer) string {
	section := "wrong " + string(v.manner)
	if phrases()[section] == nil {
		return v.tell(step, wrong)
	}
	return v.say(section, step, wrong)
}

// unclear is a first answer that tells nothing yet: a question back, or a
// comparison. That of a thickness goes by how thick the metal is.
func (v *voice) unclear(step assess.Step, truth assess.Answer) string {
	if v.manner == AsksBack {
		return v.say("asks back", step)
	}
	if !step.Question.PerMetal {
		return v.say("vague "+likeness(step.Question.Kind), step)
	}
	r, err := unit.Read(strings.TrimSpace(truth.Said+" "+truth.Unit), unit.Thickness, unit.Metric, sheetOf(step))
	for _, row := range likenesses {
		if err == nil && r.Quantity.Value < row.below {
			return v.say("vague "+row.section, step)
		}
	}
	return v.say("vague amount", step)
}

// likeness is the section for what is no thickness of a metal.
func likeness(k unit.Kind) string {
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

// likenesses are what people compare a thickness with, by mm.
var likenesses = []struct {
	below   float64
	section string
}{{2, "thin"}, {5, "sheet"}, {9, "plate"}, {16, "thick"}, {1000, "heavy"}}
