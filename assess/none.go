package assess

import (
	"regexp"
	"slices"
	"strings"
	"sync"
)

// zeroText is a zero with or without a unit: "0", "0.0 mm". Patterns are built
// when they are first asked for, as most commands never ask.
var zeroText = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^0+(?:[.,]0+)?\s*[a-z"'°]*$`)
})

// isNone reports whether a text says that there is none. It is a known zero,
// which is not the same as not known.
func isNone(said string) bool {
	if said != "" && said[0] >= '1' && said[0] <= '9' {
		return false
	}
	text := strings.ToLower(strings.TrimSpace(said))
	return slices.Contains([]string{"none", "no", "nothing", "never"}, text) || zeroText().MatchString(text)
}

// isUnknown reports whether a text says that the answer is not known.
func isUnknown(said string) bool {
	if said != "" && said[0] >= '1' && said[0] <= '9' {
		return false
	}
	text := strings.ToLower(strings.ReplaceAll(strings.TrimSpace(said), "’", "'"))
	return slices.Contains([]string{"?", "-", "–", "not known", "unknown", "don't know", "dont know", "do not know", "dunno", "no idea", "not sure"}, text)
}
