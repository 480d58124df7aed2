package text

import (
	"strings"
	"testing"
	"time"

	"cutbrief/assess"
	"cutbrief/report"

	"pgregory.net/rapid"
)

// after is what an invented demonstration left behind.
func after() report.FollowUp {
	return report.FollowUp{
		Customer: "Brook Farm", Contact: "M. Brook", Place: "Mill Lane 3", Rep: "J. Weaver", Shown: "1 December 2026, with Demo 45",
		Cuts: []report.Line{{Label: "Straight cut, timed, 6 mm mild steel", Value: "went well", Why: "300 mm in 18 s"}}, Words: "It stays flat.",
		Answered: []report.Line{{Label: "The air has to be dry.", Value: "A drier is in the quote."}},
		Outcome:  assess.Quote, Because: "the owner decides", Step: "Send the quote.", Owner: "J. Weaver", Due: time.Date(2026, 12, 8, 0, 0, 0, 0, time.UTC),
	}
}

func TestLetter(t *testing.T) {
	const want = `Brook Farm
Mill Lane 3

Dear M. Brook,

Thank you for your time at the demonstration on 1 December 2026, with Demo 45.

What you saw:
  - Straight cut, timed, 6 mm mild steel: went well, 300 mm in 18 s

In your own words: “It stays flat.”

What you asked, and what we answered:
  - The air has to be dry. – A drier is in the quote.

You asked for a quote.

The next step: Send the quote (J. Weaver), by 8 December 2026.

With kind regards

J. Weaver
`
	if got := Letter(after(), 0); got != want {
		t.Errorf("%s", got)
	}
}

// What was not recorded is not in the letter.
func TestLetterInventsNothing(t *testing.T) {
	got := Letter(report.FollowUp{Shown: "1 December 2026"}, 0)
	for _, not := range []string{"saw", "words", "asked", "next step", "order", "Dear"} {
		if strings.Contains(got, not) {
			t.Errorf("%q stands in\n%s", not, got)
		}
	}
	if strings.Contains(Letter(after(), 0), "owner decides") {
		t.Error("the rep's own note goes to the customer")
	}
}

func TestLetterFitsAndIsHarmless(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(rapid.String(), rapid.SampledFrom([]string{strings.Repeat("W", 300), "株式会社切断機械製作所株式会社切断機械製作所", "\x1b[31mred\x1b[0m", "\u202eleft", "a\tb\r\nc"}))
		f := after()
		f.Customer, f.Words, f.Step, f.Rep = text.Draw(t, "customer"), text.Draw(t, "words"), text.Draw(t, "step"), text.Draw(t, "rep")
		width := rapid.IntRange(30, 120).Draw(t, "width")
		for l := range strings.Lines(Letter(f, width)) {
			l = strings.TrimSuffix(l, "\n")
			if w := cells.StringWidth(l); w > width {
				t.Errorf("%d cells wide, %d asked: %q", w, width, l)
			}
			harmless(t, l)
		}
	})
}

// A contact is often told with what he does: a letter greets the person alone.
func TestALetterGreetsThePerson(t *testing.T) {
	f := after()
	f.Contact = "Halvard Stenby, owner"
	if out := Letter(f, 0); !strings.Contains(out, "\nDear Halvard Stenby,\n") {
		t.Error(out)
	}
}
