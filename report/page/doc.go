// Package page holds what every form of the page has in common, apart from
// where it stands: the headings of its zones, the cautions grouped by hazard,
// the signs beside them and the key of their sources. It words and rounds no
// fact; that is report's.
package page

import "cutbrief/rules/message"

// The headings, and the words a page adds to a brief.
const (
	Proof     message.ID = "The figures behind it"
	Next      message.ID = "What happens next"
	Given     message.ID = "Requirements and capabilities"
	Met       message.ID = "Met"
	Costs     message.ID = "What it costs"
	Assumed   message.ID = "What it costs (prices assumed)"
	Decides   message.ID = "Deciding requirement"
	Shows     message.ID = "Demonstration"
	Confirm   message.ID = "To confirm before ordering"
	Open      message.ID = "Still open"
	Dangers   message.ID = "Cutting can hurt people and start fires"
	Sources   message.ID = "Sources: {1}. Without a letter: common practice."
	NotTaken  message.ID = "Other systems, and why not"
	Notes     message.ID = "Notes"
	Sheet     message.ID = "Notes for the representative"
	Elsewhere message.ID = "On the sheet “{1}”: {2}."
	AndMore   message.ID = "and more"
	Private   message.ID = "For the representative only. Not to be handed to the customer."
	Customer  message.ID = "Customer"
	Seller    message.ID = "Representative"
	Date      message.ID = "Date"

	Objections  message.ID = "Objections to expect"
	Answers     message.ID = "Which to expect is common practice, no source. The answers are facts of the page; nothing is added."
	Assumptions message.ID = "Assumed or open"
	Steps       message.ID = "The demonstration, step by step"
	LeftOut     message.ID = "Not shown, and why"
	Packing     message.ID = "What to bring"
)
