package assess

import (
	"cutbrief/rules"
	"cutbrief/rules/message"
)

// todayQuestions say how they cut now and what they would change.
var todayQuestions = []*Question{
	{ID: rules.FactToday, Name: "how they cut today", Group: GroupToday, Form: FormSeveral,
		Ask: "What do you cut with today?", Why: "The demonstration is measured against what they know.",
		Help:    "Oxy-fuel is a torch with oxygen and a fuel gas. A nibbler takes small bites out of sheet. Sent out means another firm cuts it.",
		Example: "oxy-fuel and abrasive discs",
		Options: []Option{
			{string(rules.OxyFuel), "oxy-fuel torch"},
			{string(rules.Abrasive), "abrasive disc"},
			{string(rules.BandSaw), "band saw"},
			{string(rules.Shear), "shear"},
			{string(rules.Nibbler), "nibbler"},
			{string(rules.SentOut), "sent out"},
			{string(rules.OtherPlasma), "another plasma system"},
			{string(rules.OtherWay), "another way"}}},
	{ID: rules.FactAnnoysMost, Name: "what annoys most", Group: GroupToday, Form: FormOne,
		Ask: "What annoys you most about the way you cut today?", Why: "What they say themselves decides what the demonstration must show.",
		Example: "it is too slow",
		Options: annoyances("nothing, it is fine")},
	{ID: rules.FactAnnoysNext, Name: "what annoys next", Group: GroupToday, Form: FormOne, applies: annoyed,
		Ask: "And what annoys you next most?", Why: "The second complaint shows how firm the first one is.",
		Example: "the edge needs too much work afterwards",
		Options: annoyances("nothing else")},
	{ID: FactWords, Name: "in their own words", Group: GroupToday, Form: FormLong, Optional: true,
		Ask: "How would you put it yourself?", Why: "Their own words belong on the page.",
		Example: "Every plate I cut with gas comes out like a crisp."},
}

func annoyances(nothing message.ID) []Option {
	return []Option{
		{string(rules.TooSlow), "it is too slow"},
		{string(rules.Warps), "the pieces warp"},
		{string(rules.RoughEdge), "the edge needs too much work afterwards"},
		{string(rules.HardToUse), "it is hard to use or to teach"},
		{string(rules.CostsTooMuch), "it costs too much"},
		{string(rules.TooHeavy), "it is too heavy to take to the work"},
		{string(rules.TooThick), "it does not get through our heavy pieces"},
		{string(rules.LosesArc), "grating and mesh cannot be cut well"},
		{string(rules.Nothing), nothing},
	}
}
