package unit

import (
	"fmt"
	"strings"
)

// ParseStyle reads the name of a style, such as a flag or a choice: "mm",
// "metric", "millimetres", "in", "inch" or "inches".
func ParseStyle(text string) (Style, error) {
	switch strings.ToLower(strings.TrimSpace(text)) {
	case "mm", "metric", "millimetre", "millimetres", "millimeter", "millimeters":
		return Metric, nil
	case "in", "inch", "inches", `"`:
		return Inch, nil
	}
	return "", fmt.Errorf(`"%s" is not a style of units: mm or in would be`, printable(text))
}
