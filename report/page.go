package report

import "cutbrief/rules/message"

// What every form of the page has in common, apart from where it stands: the
// headings of its zones, and the words it adds to a brief.
const (
	PageProof     message.ID = "The figures behind it"
	PageNext      message.ID = "What happens next"
	PageGiven     message.ID = "Requirements and capabilities"
	PageMet       message.ID = "Met"
	PageCosts     message.ID = "What it costs"
	PageAssumed   message.ID = "What it costs (prices assumed)"
	PageDecides   message.ID = "Deciding requirement"
	PageShows     message.ID = "Demonstration"
	PageConfirm   message.ID = "To confirm before ordering"
	PageOpen      message.ID = "Still open"
	PageDangers   message.ID = "Cutting can hurt people and start fires"
	PageSources   message.ID = "Sources: {1}. Without a letter: common practice."
	PageNotTaken  message.ID = "Other systems, and why not"
	PageNotes     message.ID = "Notes"
	PageSheet     message.ID = "Notes for the representative"
	PageElsewhere message.ID = "On the sheet “{1}”: {2}."
	PageAndMore   message.ID = "and more"
	PagePrivate   message.ID = "For the representative only. Not to be handed to the customer."
	PageCustomer  message.ID = "Customer"
	PageSeller    message.ID = "Representative"
	PageDate      message.ID = "Date"

	PageObjections  message.ID = "Objections to expect"
	PageAnswers     message.ID = "Which to expect is common practice, no source. The answers are facts of the page; nothing is added."
	PageAssumptions message.ID = "Assumed or open"
	PageSteps       message.ID = "The demonstration, step by step"
	PageLeftOut     message.ID = "Not shown, and why"
	PagePacking     message.ID = "What to bring"
)
