package assess

import (
	"strings"
	"unicode/utf8"

	"cutbrief/assess/sanitize"
	"cutbrief/rules/message"
)

// The longest texts that are kept, in characters. sanitize would shorten what
// is longer; here it is refused instead, so that saving loses nothing.
const (
	maxLine     = 200 // a line
	maxNoteLine = 500 // a line of a long text
	maxLines    = 40  // lines of a long text
	maxLong     = maxLines * (maxNoteLine + 1)
)

// clean sanitizes a text: one line, or several if long.
func clean(s string, long bool) string {
	if isPlain(s, long) {
		return s
	}
	if long {
		return sanitize.Lines(s)
	}
	return sanitize.Line(s)
}

// isPlain reports a text that is let through as it is: printable ASCII and letters
// of Western Europe, with no space at the ends of a line, in several lines if long.
// Nearly every answer is one, and a folder of visits is full of answers.
func isPlain(s string, long bool) bool {
	if s == "" {
		return true
	}
	most, first, rows := maxLine, 0, 1
	if long {
		most = maxNoteLine
	}
	for i := 0; i < len(s); i++ {
		switch c := s[i]; {
		case c >= ' ' && c <= '~':
		case c == '\n' && long && i > 0 && i < len(s)-1:
			if rows++; i > first && !isTrim(s[first:i], most) {
				return false
			}
			first = i + 1
		case c == 0xC3 && i+1 < len(s) && s[i+1] >= 0x80 && s[i+1] <= 0xBF: // À to ÿ, each by itself in normal form C
			i++
		default:
			return false
		}
	}
	return rows <= maxLines && isTrim(s[first:], most)
}

// isTrim reports a line with no space at its ends, of at most some bytes.
func isTrim(s string, most int) bool {
	return len(s) <= most && s[0] != ' ' && s[len(s)-1] != ' '
}

// lineEnds are all that sanitize takes for the end of a line.
var lineEnds = strings.NewReplacer("\r\n", "\n", "\r", "\n", "\u0085", "\n", "\u2028", "\n", "\u2029", "\n")

// room says what would fit if a text is too long, or "".
func room(s string, long bool) message.Message {
	if len(s) <= maxLine && !long {
		return message.Message{}
	}
	if !long {
		if utf8.RuneCountInString(strings.TrimSpace(s)) > maxLine {
			return message.New("at most {1} characters", message.Count(maxLine))
		}
		return message.Message{}
	}
	lines := strings.Split(strings.TrimSpace(lineEnds.Replace(s)), "\n")
	for _, line := range lines {
		if len(lines) > maxLines || utf8.RuneCountInString(line) > maxNoteLine {
			return message.New("at most {1} lines of at most {2} characters", message.Count(maxLines), message.Count(maxNoteLine))
		}
	}
	return message.Message{}
}
