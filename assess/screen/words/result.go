package words

import (
	"strings"

	"cutbrief/assess"
	"cutbrief/report"
	"cutbrief/report/text"
	"cutbrief/rules/cost"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
)

// Result words what the answers come to, in the words of a book and for a width
// in cells.
func Result(book *message.Catalog, v *assess.Visit, offered system.Range, prices *cost.PriceList, width int) string {
	return strings.TrimRight(text.Render(report.Build(v, offered, report.Options{Prices: prices, Words: book}), width), "\n")
}

// Why words how the result was reached, in the words of a book and for a width in
// cells.
func Why(book *message.Catalog, v *assess.Visit, offered system.Range, prices *cost.PriceList, width int) string {
	return strings.TrimRight(text.WhyIn(book, report.Why(v, offered, report.Options{Prices: prices, Words: book}), width), "\n")
}
