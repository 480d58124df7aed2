package talk

import (
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
)

// word is what a line asks for, if it is neither an act nor a note.
type word int

const (
	note word = iota
	act
	next
	back
	help
	list
	soFar
	goTo
	unknown
	how
	clear
	done
	quit
)

// words are the lines that are no note, whole and in small letters.
var words = map[string]word{
	"": next, "next": next, "back": back, "help": help, "?": help, "list": list, "so far": soFar,
	"not known": unknown, "-": unknown, "clear": clear, "done": done, "quit": quit,
}

// parse tells a word from a note; rest is what follows it.
func parse(line string) (w word, rest string) {
	line = strings.TrimSpace(line)
	small := strings.ToLower(line)
	for _, a := range casebook.Acts() {
		if small == string(a) {
			return act, small
		}
	}
	for _, s := range []assess.State{assess.Told, assess.Measured, assess.Assumed} {
		if small == string(s) {
			return how, small
		}
	}
	if w, ok := words[small]; ok {
		return w, ""
	}
	if first, rest, ok := strings.Cut(small, " "); ok && first == "go" {
		return goTo, strings.TrimSpace(rest)
	}
	return note, line
}
