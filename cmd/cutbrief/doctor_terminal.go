package main

import (
	"os"
	"strings"

	"golang.org/x/term"

	"cutbrief/assess/screen"
)

// terminalPart says what the terminal can show, and so how the interview would
// be held.
func (a *app) terminalPart() part {
	colours := screen.Colours()
	if a.env("NO_COLOR") != "" {
		colours = "none, as NO_COLOR asks"
	}
	return part{"The terminal", []notice{
		saying("kind", "TERM is %s", textOr(a.env("TERM"), "not set")), a.sizeNotice(), saying("colours", "%s", colours), a.lettersNotice(), saying("interview", "%s", a.manner()),
	}}
}

// manner says how an interview would be held here, and why.
func (a *app) manner() string {
	switch {
	case !isTerminal(a.in):
		return "line by line, as the input is no terminal"
	case !isTerminal(a.out):
		return "line by line, as the output is no terminal"
	case a.wantsPlain():
		return "line by line, as TERM is dumb"
	}
	return "on the full screen; --plain asks for line by line"
}

func (a *app) sizeNotice() notice {
	n := notice{What: "size"}
	file, ok := a.out.(*os.File)
	if !ok || !isTerminal(file) {
		n.say("not known, as the output is no terminal")
		return n
	}
	width, height, err := term.GetSize(int(file.Fd()))
	if err != nil {
		n.say("not told by the terminal")
		return n
	}
	n.say("%d columns, %d lines", width, height)
	return n
}

// lettersNotice says whether letters outside ASCII can be relied on. The order
// of the variables is that of POSIX, Base Definitions, 8.2, from memory.
func (a *app) lettersNotice() notice {
	n := notice{What: "letters"}
	if a.goos == "windows" {
		n.say("Unicode")
		return n
	}
	for _, name := range []string{"LC_ALL", "LC_CTYPE", "LANG"} {
		locale := a.env(name)
		if locale == "" {
			continue
		}
		if l := strings.ToLower(locale); strings.Contains(l, "utf-8") || strings.Contains(l, "utf8") {
			n.say("UTF-8, by %s", name)
		} else {
			n.say("%s is %s: signs such as ≤ and é may come out wrong; one that ends in .UTF-8 mends it", name, locale)
		}
		return n
	}
	n.say("LANG is not set: signs such as ≤ and é may come out wrong; one that ends in .UTF-8 mends it")
	return n
}
