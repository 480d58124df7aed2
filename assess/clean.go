package assess

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"cutbrief/assess/gate"
)

// The longest texts that are kept, in characters. The gate would shorten what
// is longer; here it is refused instead, so that saving loses nothing.
const (
	maxLine     = 200 // a line
	maxNoteLine = 500 // a line of a long text
	maxLines    = 40  // lines of a long text
	maxLong     = maxLines * (maxNoteLine + 1)
)

// clean takes a text through the gate: one line, or several if long.
func clean(s string, long bool) string {
	if long {
		return gate.Lines(s)
	}
	return gate.Line(s)
}

// lineEnds are all that the gate takes for the end of a line.
var lineEnds = strings.NewReplacer("\r\n", "\n", "\r", "\n", "\u0085", "\n", "\u2028", "\n", "\u2029", "\n")

// room says what would fit if a text is too long, or "".
func room(s string, long bool) string {
	if !long {
		if utf8.RuneCountInString(strings.TrimSpace(s)) > maxLine {
			return fmt.Sprintf("at most %d characters", maxLine)
		}
		return ""
	}
	lines := strings.Split(strings.TrimSpace(lineEnds.Replace(s)), "\n")
	for _, line := range lines {
		if len(lines) > maxLines || utf8.RuneCountInString(line) > maxNoteLine {
			return fmt.Sprintf("at most %d lines of at most %d characters", maxLines, maxNoteLine)
		}
	}
	return ""
}
