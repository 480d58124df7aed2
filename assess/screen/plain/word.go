package plain

import (
	"strconv"
	"strings"
)

// word is what a line asks for, if it is no answer.
type word int

const (
	answer word = iota
	nothing
	back
	help
	unknown
	note
	later
	skip
	quit
	list
	goTo
	how
	clear
	result
	page
	overrule
)

// words are the lines that are no answer, whole and in small letters.
var words = map[string]word{
	"":          nothing,
	"back":      back,
	"help":      help,
	"?":         help,
	"not known": unknown,
	"-":         unknown,
	"note":      note,
	"later":     later,
	"skip":      skip,
	"quit":      quit,
	"result":    result,
	"list":      list,
	"told":      how,
	"measured":  how,
	"assumed":   how,
	"clear":     clear,
}

// ending are the further words once the questions are done.
var ending = map[string]word{"page": page}

// parse tells a word from an answer; rest is what follows the word.
func parse(line string) (w word, rest string) {
	line = strings.TrimSpace(line)
	small := strings.ToLower(line)
	if w, ok := words[small]; ok && w == how {
		return how, small
	} else if ok {
		return w, ""
	}
	first, rest, _ := strings.Cut(line, " ")
	rest = strings.TrimSpace(rest)
	switch strings.ToLower(first) {
	case "note":
		return note, rest
	case "go":
		if _, err := strconv.Atoi(rest); err == nil {
			return goTo, rest
		}
	}
	return answer, line
}

// parseEnding is parse for a line after the questions.
func parseEnding(line string) (w word, rest string) {
	if w, ok := ending[strings.ToLower(strings.TrimSpace(line))]; ok {
		return w, ""
	}
	if rest, ok := strings.CutPrefix(strings.TrimSpace(line), "overrule"); ok {
		return overrule, strings.TrimSpace(rest)
	}
	return parse(line)
}
