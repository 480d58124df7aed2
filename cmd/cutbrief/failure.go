package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"cutbrief/assess/sanitize"
	"cutbrief/rules/message"
)

// The exit statuses.
const (
	exitDone        = 0
	exitFailed      = 1
	exitUsage       = 2
	exitInterrupted = 130
)

// exitStatuses say what the program ends with.
var exitStatuses = []struct {
	status int
	says   message.ID
}{
	{exitDone, "it is done"},
	{exitFailed, "it failed; two lines on standard error say what happened and what to do"},
	{exitUsage, "the command line was not understood"},
	{exitInterrupted, "it was interrupted"},
}

// problem is an error as the user sees it: what went wrong, and what to do.
type problem struct {
	err    error
	hint   message.Message
	status int
}

func (p *problem) Error() string { return p.err.Error() }
func (p *problem) Unwrap() error { return p.err }

// failure is a problem with something other than the command line.
func failure(err error, hint message.ID, args ...any) error {
	return &problem{err, message.New(hint, args...), exitFailed}
}

// misuse is a problem with the command line.
func misuse(hint message.Message, what message.ID, args ...any) error {
	return &problem{message.Errorf(what, args...), hint, exitUsage}
}

// oneOf is the hint that lists what would be taken.
func oneOf(values []string) message.Message {
	return message.New("one of {1}", message.Name(strings.Join(values, ", ")))
}

const seeHelp message.ID = "see {1} --help"

// complain prints an error in two lines, what and hint, and returns the exit
// status. An error nobody worded is one of reading the command line, unless a
// command was running.
func complain(w io.Writer, words *message.Catalog, err error, running bool) int {
	var p *problem
	if !errors.As(err, &p) {
		p = &problem{err, message.New(seeHelp, message.Name("cutbrief")), exitUsage}
		if running {
			p.status = exitFailed
		}
	}
	fmt.Fprintf(w, "cutbrief: %s\n", tidy(words.Print(message.Of(p.err))))
	fmt.Fprintf(w, "%s %s\n", words.Print(message.ID("hint:").Message()), tidy(words.Print(p.hint)))
	return p.status
}

// tidy puts a text that may quote a file, a flag or a path on one line, without
// what could mislead a terminal. Lines may be as long as those of notes.
func tidy(s string) string {
	return strings.ReplaceAll(sanitize.Lines(s), "\n", " ")
}
