package words

import (
	"strings"

	"cutbrief/assess"
	"cutbrief/report"
	"cutbrief/report/text"
	"cutbrief/rules/price"
	"cutbrief/rules/system"
)

// Result words what the answers come to, for a width in cells.
func Result(v *assess.Visit, offered system.Range, prices *price.List, width int) string {
	return strings.TrimRight(text.Render(report.Build(v, offered, report.Options{Prices: prices}), width), "\n")
}

// Why words how the result was reached, for a width in cells.
func Why(v *assess.Visit, offered system.Range, prices *price.List, width int) string {
	return strings.TrimRight(text.Why(report.Why(v, offered, report.Options{Prices: prices}), width), "\n")
}
