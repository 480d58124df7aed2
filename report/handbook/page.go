// Package handbook writes what the program goes by as documents: the rules with
// their sources, and the forms of its files. Each page is made of the tables that
// the program itself works with, so that the two cannot drift apart; only how a
// rule comes to its figures is told here, and held to the rules by a program that
// was written from it.
package handbook

// Page is one document.
type Page struct {
	Title    string
	Says     []string // paragraphs
	Sections []Section
}

// Section is one table of a page. The first cell of a row is what it is about;
// an empty cell is left out where it can be.
type Section struct {
	Title string
	Says  []string
	Head  []string
	Rows  [][]string
}
