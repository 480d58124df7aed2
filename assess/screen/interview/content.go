package interview

import (
	"strings"

	"cutbrief/assess"
	"cutbrief/report"
	"cutbrief/report/text"
	"cutbrief/rules/price"
	"cutbrief/rules/system"
)

// resultText words the result for a width.
func resultText(v *assess.Visit, offered system.Range, prices *price.List, width int) string {
	return strings.TrimRight(text.Render(report.Build(v, offered, report.Options{Prices: prices}), width), "\n")
}

// whyText words how the result was reached, for a width.
func whyText(v *assess.Visit, offered system.Range, prices *price.List, width int) string {
	return strings.TrimRight(text.Why(report.Why(v, offered, report.Options{Prices: prices}), width), "\n")
}
