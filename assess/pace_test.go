package assess

import (
	"regexp"
	"strings"
	"testing"
)

// A length and its period are parted as a pattern says it in one line.
func TestSplitPace(t *testing.T) {
	pattern := regexp.MustCompile(`(?i)^(?:(.*?)(?:\s*/\s*|\s+(?:a|per|each|every)\s+|\s+)(day|daily|d|week|weekly|wk|w)|(.*\d)(d|w))$`)
	parts := []string{"", " ", "40", "40 m", "200m", "/", " / ", " a ", "a", " per ", " PER", "each", " every ", "day", "Daily", "d", "week", "weekly", "wk", "w", "W", "ü", "\t"}
	for _, first := range parts {
		for _, second := range parts {
			for _, third := range parts {
				for _, fourth := range parts {
					said := first + second + third + fourth
					wantLength, wantPeriod := said, perDay
					if found := pattern.FindStringSubmatch(strings.TrimSpace(said)); found != nil {
						wantLength = found[1] + found[3]
						if strings.HasPrefix(strings.ToLower(found[2]+found[4]), "w") {
							wantPeriod = perWeek
						}
					}
					if length, period := splitPace(said); length != wantLength || period != wantPeriod {
						t.Errorf("%q: got %q a %s, the pattern %q a %s", said, length, period, wantLength, wantPeriod)
					}
				}
			}
		}
	}
}
