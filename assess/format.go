package assess

import (
	"strconv"
	"sync"
	"time"

	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
)

// The saved format and its limits. The limits are far above any honest visit;
// they keep a damaged or hostile file from costing more than a moment.
const (
	formatName    = "cutbrief-visit"
	formatVersion = 2

	// MaxSize is the largest file that is read or written, in bytes.
	MaxSize = 1 << 20

	maxDepth          = 32
	maxAnswers        = 1000
	maxChosen         = 50
	maxDemonstrations = 50
	maxShown          = 50

	// FigureMost is the largest measured figure kept, in its unit.
	FigureMost = 1e6
	// ObjectionsMost is how many objections are kept of one demonstration.
	ObjectionsMost = maxShown
)

// Errors of Decode and Encode that a caller may want to tell apart.
var (
	ErrNewerFormat = message.Errorf("newer format")
	ErrForeign     = message.Errorf("not a visit")
	ErrTooLarge    = message.Errorf("too large for a visit")
	ErrTooMany     = message.Errorf("a record of demonstrations holds at most {1} of each: days, cuts, objections", whole(maxShown))
)

// visitObject is the whole file. It is built when a visit is first read or
// written, and only ever read.
var visitObject = sync.OnceValue(func() *object[Visit] {
	return &object[Visit]{
		extra: func(v *Visit) *extras { return &v.extra },
		fields: []field[Visit]{
			{name: "format", says: "What kind of file this is.", required: message.New("the file has no format"),
				kind: constant[Visit]{strconv.Quote(formatName), node{"const": formatName}}},
			{name: "version", says: "Of the format.", required: message.New("the file has no format version"),
				kind: constant[Visit]{strconv.Itoa(formatVersion), node{"enum": []int{1, formatVersion}}}},
			{name: "id", says: "Stable identifier, made when the visit starts.",
				kind: line(func(v *Visit) *string { return &v.ID })},
			{name: "created", says: "When the visit was begun.", shared: true,
				kind: moment(func(v *Visit) *time.Time { return &v.Created })},
			{name: "updated", says: "When it was last saved.", shared: true,
				kind: moment(func(v *Visit) *time.Time { return &v.Updated })},
			{name: "revision", says: "Counts saves.",
				kind: count(func(v *Visit) *int { return &v.Revision }, anyNumber)},
			{name: "demo", says: "True if the visit is invented.", shared: true,
				kind: boolean(func(v *Visit) *bool { return &v.Demo })},
			{name: "skipped", says: "Groups of questions left out of this visit.", shared: true,
				kind: texts[Visit, Group]{func(v *Visit) *[]Group { return &v.Skipped }, groupIDs()}},
			{name: "overrule", says: "The rep's own choice of what decides, and why.", shared: true,
				kind: part[Visit, Visit]{overruleObject(), overruled}},
			{name: "recommended", says: "What was concluded at the last save, and by which rules and range.", shared: true,
				kind: part[Visit, Recommendation]{recommendationObject(), begun(func(v *Visit) **Recommendation { return &v.Recommended })}},
			{name: "spent", says: "How long the interview took at the keyboard, without pauses of more than 10 minutes between two answers. It sizes nothing.",
				kind: part[Visit, InterviewTime]{interviewTimeObject(), begun(func(v *Visit) **InterviewTime { return &v.InterviewTime })}},
			{name: "answers", says: "What was said, question by question.", written: always,
				required: message.New("the file has no answers; a list is accepted, which may be empty"),
				kind: list[Visit, Answer]{of: answerObject(), at: func(v *Visit) *[]Answer { return &v.Answers }, most: maxAnswers, usual: 64,
					title: answerTitle, twin: answeredTwice, order: (*Visit).inOrder, reuse: emptied}},
			{name: "showings", says: "The demonstrations that were held.", since: 2, shared: true,
				kind: list[Visit, Demonstration]{of: demonstrationObject(), at: func(v *Visit) *[]Demonstration { return &v.Demonstrations }, most: maxDemonstrations}},
		},
	}
})

func always(*Visit) bool { return true }

// begun finds a part that is held by pointer.
func begun[T, P any](at func(*T) **P) func(*T, bool) *P {
	return func(t *T, begin bool) *P {
		p := at(t)
		if *p == nil && begin {
			*p = new(P)
		}
		return *p
	}
}

// overruled finds the visit whose overrule is meant: that of the rules has no room
// for unknown fields.
func overruled(v *Visit, begin bool) *Visit {
	switch {
	case v.Overrule == nil && !begin:
		return nil
	case v.Overrule == nil:
		v.Overrule = &rules.Overrule{}
	}
	return v
}

func overruleObject() *object[Visit] {
	return &object[Visit]{
		extra: func(v *Visit) *extras { return &v.overruleExtra },
		title: func(*Visit) string { return "overrule" },
		fields: []field[Visit]{
			{name: "requirement", says: "What decides, as the rep sees it.", required: oneIsMissing("requirement", rules.Requirements()), shared: true,
				kind: oneOf(func(v *Visit) *rules.Requirement { return &v.Overrule.Requirement }, rules.Requirements())},
			{name: "reason", says: "Why.", kind: lines(func(v *Visit) *string { return &v.Overrule.Reason })},
		},
	}
}

func answerObject() *object[Answer] {
	return &object[Answer]{
		extra: func(a *Answer) *extras { return &a.extra },
		title: func(a *Answer) string { return "question " + string(quote(string(a.Question))) },
		known: func(a *Answer) bool { _, known := Find(a.Question); return known },
		check: checkAnswer, schema: answerSchema,
		fields: []field[Answer]{
			{name: "question", says: "Which question it answers.", required: message.New("the answer names no question"), shared: true,
				kind: anyOf(func(a *Answer) *rules.Fact { return &a.Question }, questionIDs())},
			{name: "metal", says: "For questions asked for each metal.", shared: true,
				kind: anyOf(func(a *Answer) *metal.ID { return &a.Metal }, metalIDs())},
			{name: "said", says: "As said.",
				kind: uncleaned(func(a *Answer) *string { return &a.Said })},
			{name: "unit", says: "Unit taken for a bare number.",
				kind: line(func(a *Answer) *string { return &a.Unit })},
			{name: "chosen", says: "What was chosen, where a question offers choices.",
				kind: texts[Answer, string]{at: func(a *Answer) *[]string { return &a.Chosen }}},
			{name: "state", says: "How the answer is known.", shared: true,
				kind: oneOf(func(a *Answer) *State { return &a.State }, states)},
			{name: "note", says: "The rep's note.",
				kind: lines(func(a *Answer) *string { return &a.Note })},
		},
	}
}

// oneIsMissing says that a field is not there that must be one of some words.
func oneIsMissing[S ~string](name string, accepted []S) message.Message {
	return message.New("{1} is missing; one of {2} is accepted", message.Name(name), message.Name(joined(accepted)))
}

// states are all states, as saved.
var states = []State{Told, Measured, Assumed, Unknown}

func groupIDs() []Group {
	var ids []Group
	for _, g := range Groups() {
		ids = append(ids, g.ID)
	}
	return ids
}

func questionIDs() []rules.Fact {
	var ids []rules.Fact
	for _, q := range catalogue {
		ids = append(ids, q.ID)
	}
	return ids
}

func metalIDs() []metal.ID {
	var ids []metal.ID
	for _, m := range metal.List() {
		ids = append(ids, m.ID)
	}
	return ids
}
