package casebook

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"strconv"
	"strings"
	"time"
)

// lately is how many of the last tries at a skill its bar counts.
const lately = 5

// recent adds up the last tries at a skill.
func (p *Progress) recent(s Skill) (t Tally, tries int) {
	for i := len(p.Practices) - 1; i >= 0 && tries < lately; i-- {
		if one, ok := p.Practices[i].Skills[s]; ok {
			t.Right, t.Of, tries = t.Right+one.Right, t.Of+one.Of, tries+1
		}
	}
	return t, tries
}

// trailMost is how many practices the trail of a skill shows.
const trailMost = 12

// trail is how the tries at a skill went over time, the oldest first: + well,
// - not well.
func (p *Progress) trail(s Skill) string {
	var marks []byte
	for _, one := range p.Practices {
		if t, ok := one.Skills[s]; ok && t.share() >= weak {
			marks = append(marks, '+')
		} else if ok {
			marks = append(marks, '-')
		}
	}
	return string(marks[max(0, len(marks)-trailMost):])
}

// Chart is how each skill stands, a line each: a bar over its last five tries,
// and how the tries went over time.
func (p *Progress) Chart() string {
	var b strings.Builder
	for _, s := range Skills() {
		if t, tries := p.recent(s); tries > 0 {
			fmt.Fprintf(&b, "%-48s %s\n", bar(s, t), p.trail(s))
			continue
		}
		fmt.Fprintf(&b, "%-20s %s  not tried yet\n", s.Name(), strings.Repeat(" ", bars))
	}
	return b.String()
}

func counted(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

// Text is the report for a trainer.
func (p *Progress) Text() string {
	if len(p.Practices) == 0 {
		return "No practice yet. Start with: cutbrief practice\n"
	}
	var b strings.Builder
	fmt.Fprintf(&b, "%s. The bars count the last %d tries at each skill; behind them every try,\nthe newest last: + went well, - did not.\n\n%s\n", counted(len(p.Practices), "practice"), lately, p.Chart())
	if due := p.Due(); due != "" {
		fmt.Fprintf(&b, "Next: %s.\n%s\n\n", due.Name(), Repetition)
	}
	b.WriteString("WHEN        CUSTOMER          LEVEL  MINUTES    SYSTEM  DECIDES  SHOWN\n")
	for _, one := range p.Practices {
		fmt.Fprintf(&b, "%s  %-16s  %5d  %3d of %-3d %-7s %-8s %s\n", one.At.Format(time.DateOnly), one.called(), one.Level, one.Used, one.Of, yes(one.System), yes(one.Decides), yes(one.Proven))
	}
	return b.String()
}

// called is how to meet the same customer again.
func (p *Practice) called() string {
	if p.Case != "" {
		return p.Case
	}
	return "seed " + strconv.FormatUint(p.Seed, 10)
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

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
	for _, one := range p.Practices {
		row := []string{one.At.Format(time.RFC3339), one.Case, strconv.FormatUint(one.Seed, 10), strconv.Itoa(one.Level), string(one.Manner),
			strconv.Itoa(one.Used), strconv.Itoa(one.Of), yes(one.System), yes(one.Decides), yes(one.Proven)}
		for _, s := range Skills() {
			t, tried := one.Skills[s]
			if !tried {
				row = append(row, "", "") // not tried is not zero
				continue
			}
			row = append(row, strconv.Itoa(t.Right), strconv.Itoa(t.Of))
		}
		w.Write(row)
	}
	w.Flush()
	return b.Bytes(), w.Error()
}

// JSON is the report for a program: how each skill stands, and all practices.
func (p *Progress) JSON() ([]byte, error) {
	type skill struct {
		ID    Skill  `json:"skill"`
		Name  string `json:"name"`
		Right int    `json:"right"`
		Of    int    `json:"of"`
		Tries int    `json:"tries"`
	}
	report := struct {
		Lately    int        `json:"tries_counted"`
		Due       Skill      `json:"due,omitempty"`
		Skills    []skill    `json:"skills"`
		Practices []Practice `json:"practices"`
	}{lately, p.Due(), nil, append([]Practice{}, p.Practices...)}
	for _, s := range Skills() {
		t, tries := p.recent(s)
		report.Skills = append(report.Skills, skill{s, s.Name(), t.Right, t.Of, tries})
	}
	data, err := json.MarshalIndent(report, "", "  ")
	return append(data, '\n'), err
}
