package assess

import (
	"regexp"
	"strings"
	"sync"
)

// Periods that a cut length can be told for.
const (
	perDay  = "day"
	perWeek = "week"
)

// paceText is a length followed by its period: "40 m a day", "200 m/week", "200w".
var paceText = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)^(?:(.*?)(?:\s*/\s*|\s+(?:a|per|each|every)\s+|\s+)(day|daily|d|week|weekly|wk|w)|(.*\d)(d|w))$`)
})

// splitPace takes the period off a cut length. Without one it is a day.
func splitPace(said string) (length, period string) {
	found := paceText().FindStringSubmatch(strings.TrimSpace(said))
	if found == nil {
		return said, perDay
	}
	length, period = found[1]+found[3], found[2]+found[4]
	if strings.HasPrefix(strings.ToLower(period), "w") {
		return length, perWeek
	}
	return length, perDay
}
