package plain

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
