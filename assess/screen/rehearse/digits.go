package rehearse

import "strings"

// digits are drawn five lines high, legible from across the bench.
var digits = map[rune][5]string{
	'0': {"█████", "█   █", "█   █", "█   █", "█████"},
	'1': {"  █  ", " ██  ", "  █  ", "  █  ", " ███ "},
	'2': {"█████", "    █", "█████", "█    ", "█████"},
	'3': {"█████", "    █", " ████", "    █", "█████"},
	'4': {"█   █", "█   █", "█████", "    █", "    █"},
	'5': {"█████", "█    ", "█████", "    █", "█████"},
	'6': {"█████", "█    ", "█████", "█   █", "█████"},
	'7': {"█████", "    █", "   █ ", "  █  ", "  █  "},
	'8': {"█████", "█   █", "█████", "█   █", "█████"},
	'9': {"█████", "█   █", "█████", "    █", "█████"},
	'.': {"  ", "  ", "  ", "  ", "██"},
	',': {"  ", "  ", "  ", "██", " █"},
	':': {"  ", "██", "  ", "██", "  "},
	's': {"     ", " ████", " ███ ", "   ██", "████ "},
	' ': {"  ", "  ", "  ", "  ", "  "},
}

// large writes a figure in five lines.
func large(text string) []string {
	lines := make([]string, 5)
	for _, r := range text {
		for i, part := range digits[r] {
			lines[i] += part + " "
		}
	}
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " ")
	}
	return lines
}
