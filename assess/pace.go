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

// paceText is a length followed by its period: "40 m a day", "200 m/week".
var paceText = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)^(.*?)(?:\s*/\s*|\s+(?:a|per|each|every)\s+|\s+)(day|daily|week|weekly|wk)$`)
})

// splitPace takes the period off a cut length. Without one it is a day.
func splitPace(said string) (length, period string) {
	found := paceText().FindStringSubmatch(strings.TrimSpace(said))
	if found == nil {
		return said, perDay
	}
	if strings.HasPrefix(strings.ToLower(found[2]), "w") {
		return found[1], perWeek
	}
	return found[1], perDay
}
