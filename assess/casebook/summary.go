package casebook

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
	"time"

	"cutbrief/rules/message"
)

// summary is what a trainer is told of a trainee's progress. Text, CSV and JSON
// are written from it.
type summary struct {
	Recent    int          `json:"tries_counted"`
	Due       Skill        `json:"due,omitempty"`
	Skills    []skillState `json:"skills"`
	Practices []Practice   `json:"practices"`
}

// skillState is how one skill stands.
type skillState struct {
	ID    Skill      `json:"skill"`
	Name  message.ID `json:"name"`
	Right int        `json:"right"`
	Of    int        `json:"of"`
	Tries int        `json:"tries"`
	trail string     // every try, the oldest first: + well, - not well
}

func (p *Progress) summary() summary {
	const trailMost = 12 // tries
	s := summary{recentMost, p.Due(), nil, append([]Practice{}, p.Practices...)}
	for _, id := range Skills() {
		h := p.history(id)
		trail := ""
		for _, well := range h.tries[max(0, len(h.tries)-trailMost):] {
			trail += map[bool]string{true: "+", false: "-"}[well]
		}
		s.Skills = append(s.Skills, skillState{id, id.Name(), h.recent.Right, h.recent.Of, min(len(h.tries), recentMost), trail})
	}
	return s
}

// Repetition says in one sentence, on two lines, how the next customer is chosen.
func Repetition(words *message.Catalog) string {
	return words.Print(message.Join("\n", message.New("A skill that went well comes back after 1, then 2, then 4, then 8 practices;"), message.New("one that did not comes back in the next.")))
}

// Chart is how each skill stands, a line each: a bar over its last five tries,
// and how the tries went over time.
func (p *Progress) Chart(words *message.Catalog) string {
	var b strings.Builder
	for _, s := range p.summary().Skills {
		if s.Tries > 0 {
			fmt.Fprintf(&b, "%-48s %s\n", bar(words, s.ID, Tally{s.Right, s.Of}), s.trail)
			continue
		}
		fmt.Fprintf(&b, "%s %*s  %s\n", nameOf(words, s.ID), bars, "", words.Print(message.New("not tried yet")))
	}
	return b.String()
}

// Text is the summary for a trainer to read.
func (p *Progress) Text(words *message.Catalog) string {
	if len(p.Practices) == 0 {
		return words.Print(message.New("No practice yet. Start with: cutbrief practice")) + "\n"
	}
	s := p.summary()
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n%s\n\n%s\n", words.Print(message.Counted(len(s.Practices), "{1} practice. The bars count the last {2} tries at each skill; behind them every try,",
		"{1} practices. The bars count the last {2} tries at each skill; behind them every try,", number(recentMost))),
		words.Print(message.New("the newest last: + went well, - did not.")), p.Chart(words))
	if s.Due != "" {
		fmt.Fprintf(&b, "%s\n%s\n\n", words.Print(message.New("Next: {1}.", s.Due.Name())), Repetition(words))
	}
	row := func(cells ...message.Message) {
		var c [7]any
		for i, cell := range cells {
			c[i] = words.Print(cell)
		}
		fmt.Fprintf(&b, "%-11s %-17s %5s  %-10s %-7s %-8s %s\n", c[:]...)
	}
	row(message.Each([]message.ID{"WHEN", "CUSTOMER", "LEVEL", "MINUTES", "SYSTEM", "DECIDES", "SHOWN"}, message.ID.Message)...)
	for _, one := range s.Practices {
		again := message.Text(one.Case).Or(message.New("seed {1}", message.Name(strconv.FormatUint(one.Seed, 10)))) // how to meet the same customer
		row(message.Text(one.At.Format(time.DateOnly)), again, message.Text(strconv.Itoa(one.Level)),
			message.New("{1} of {2}", message.Name(fmt.Sprintf("%3d", one.Used)), message.Name(strconv.Itoa(one.Of))), yes(one.System).Message(), yes(one.Decides).Message(), yes(one.Proven).Message())
	}
	return b.String()
}

func yes(is bool) message.ID { return map[bool]message.ID{true: "yes", false: "no"}[is] }

// CSV is a line each practice, with two columns for each skill: how many were right,
// and of how many. Their names set them apart from what was right as a whole.
func (p *Progress) CSV() ([]byte, error) {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	head := []string{"at", "case", "seed", "level", "manner", "minutes", "of_minutes", "system_right", "decides_right", "proven"}
	for _, s := range Skills() {
		head = append(head, "skill_"+string(s)+"_right", "skill_"+string(s)+"_of")
	}
	w.Write(head)
	for _, one := range p.summary().Practices {
		row := []string{one.At.Format(time.RFC3339), one.Case, strconv.FormatUint(one.Seed, 10), strconv.Itoa(one.Level), string(one.Manner),
			strconv.Itoa(one.Used), strconv.Itoa(one.Of), string(yes(one.System)), string(yes(one.Decides)), string(yes(one.Proven))}
		for _, s := range Skills() {
			right, of := "", "" // not tried is not zero
			if t, tried := one.Skills[s]; tried {
				right, of = strconv.Itoa(t.Right), strconv.Itoa(t.Of)
			}
			row = append(row, right, of)
		}
		w.Write(row)
	}
	w.Flush()
	return b.Bytes(), w.Error()
}

// JSON is the summary for a program: how each skill stands, and all practices.
func (p *Progress) JSON() ([]byte, error) { return indented(p.summary()) }
