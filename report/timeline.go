package report

import (
	"strconv"

	"cutbrief/rules/demonstration"
	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// Timeline is the demonstration in minutes, in order, against the time there
// is. Places are shares of an axis that begins at nothing and ends with the
// time there is, or with the plan where that is longer.
type Timeline struct {
	Title   string         `json:"title"`
	Across  string         `json:"across"` // what the axis counts: "minutes"
	Steps   []TimelineStep `json:"steps"`  // cuts, set-ups between them, and what is left
	Ticks   []CurveTick    `json:"ticks"`
	GivenAt float64        `json:"given_at"` // 0..1, the end of the time there is
	Says    string         `json:"says"`     // "Takes about 24 min of the usual 30 min."
	Rests   string         `json:"rests"`
}

// TimelineStep is one stretch of the demonstration.
type TimelineStep struct {
	Kind   StepKind `json:"kind"`
	Number int      `json:"number,omitempty"` // of a cut, as in the plan
	Name   string   `json:"name"`
	When   string   `json:"when"`  // "3 to 7 min"
	Takes  string   `json:"takes"` // "4 min"
	From   float64  `json:"from"`  // 0..1
	To     float64  `json:"to"`
}

// StepKind is what a stretch is filled with.
type StepKind string

// The kinds of a stretch.
const (
	StepCut   StepKind = "cut"
	StepSetUp StepKind = "set-up"
	StepLeft  StepKind = "left" // over, for questions
)

// timeline is the plan in minutes, nil without one.
func (b *builder) timeline() *Timeline {
	if len(b.plan) == 0 || !(b.showing.Takes > 0) {
		return nil
	}
	end := max(b.showing.Given, b.showing.Takes)
	out := Timeline{
		Title: b.print(msg("The demonstration in minutes")), Across: b.print(msg("minutes")), Ticks: minuteTicks(end),
		GivenAt: float64(b.showing.Given / end), Says: b.print(b.timeNote()),
		Rests: b.print(msg("Minutes are common practice, no source; talking and looking are in them.")),
	}
	at := unit.Second(0)
	put := func(kind StepKind, name message.Message, number int, takes unit.Second) {
		to := at + takes
		when := msg("{1} to {2}", message.Figure(wholeMinutes(at)), minutes(to))
		out.Steps = append(out.Steps, TimelineStep{
			Kind: kind, Number: number, Name: b.print(name), When: b.print(when), Takes: b.print(minutes(takes)),
			From: float64(at / end), To: float64(to / end),
		})
		at = to
	}
	for i, c := range b.plan {
		if c.SetUp {
			put(StepSetUp, msg("change the plate or the setting"), 0, demonstration.SetUpTakes)
		}
		put(StepCut, c.Name, i+1, c.Takes)
	}
	if left := b.showing.Given - at; left > 0 {
		put(StepLeft, msg("left for questions"), 0, left)
	}
	return &out
}

// minuteTicks are every 5, 10 or 20 minutes.
func minuteTicks(end unit.Second) []CurveTick {
	step := unit.Second(5 * 60)
	for end/step > 9 {
		step *= 2
	}
	var list []CurveTick
	for t := unit.Second(0); t <= end; t += step {
		list = append(list, CurveTick{float64(t / end), strconv.Itoa(int(t / 60))})
	}
	return list
}
