package catalog

import "cutbrief/rules/message"

// Special explains the rows of a book that are no sentences: how the first cell
// begins, and what the second holds.
func Special() [][2]string {
	return [][2]string{
		{rowLanguage, "what the language is called"},
		{rowTag, "its tag by BCP 47, such as de; it chooses plurals and the marks of counts"},
		{string(message.PluralForm("few")) + "{1} systems", "the wording for a plural form besides one and other, where the language has it: zero, two, few, many"},
		{rowDecimal, "the mark before decimals, such as a comma"},
		{rowThousands, "the mark between thousands"},
		{rowUnit + "in", "how a unit is written, one row a unit"},
		{rowWord + "back", "what may be typed for a word of the plain interview; several are parted by |"},
		{rowAnswer + "none", "what may be typed for an answer that means something; several are parted by |"},
	}
}
