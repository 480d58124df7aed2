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

// errInterrupted means that a command was interrupted while it waited, and left
// nothing to say.
var errInterrupted = errors.New("interrupted")

// usageError is an error of the command line.
type usageError struct{ error }

func (u usageError) Unwrap() error { return u.error }

// misuse is a problem with the command line.
func misuse(hint message.Message, what message.ID, args ...any) error {
	return usageError{message.WithHint(message.Errorf(what, args...), "{1}", hint)}
}

// oneOf is the hint that lists what would be taken.
func oneOf(values []string) message.Message {
	return message.New("one of {1}", message.Name(strings.Join(values, ", ")))
}

const seeHelp message.ID = "see {1} --help"

// complain prints an error in two lines, what happened and what to do, and returns
// the exit status. An error without a hint is one of reading the command line,
// unless a command was running.
func complain(w io.Writer, words *message.Catalog, err error, running bool) int {
	status, hint := exitFailed, message.New(seeHelp, message.Name("cutbrief"))
	usage, misused := errors.AsType[usageError](err)
	if misused {
		err = usage.error
	}
	if worded, is := errors.AsType[*message.Error](err); is && !worded.Hint.IsEmpty() {
		hint = worded.Hint
	} else if !running {
		status = exitUsage
	}
	if misused {
		status = exitUsage
	}
	fmt.Fprintf(w, "cutbrief: %s\n", tidy(words.Print(message.Of(err))))
	fmt.Fprintf(w, "%s %s\n", words.Print(message.ID("hint:").Message()), tidy(words.Print(hint)))
	return status
}

// tidy puts a text that may quote a file, a flag or a path on one line, without
// what could mislead a terminal. Lines may be as long as those of notes.
func tidy(s string) string {
	return strings.ReplaceAll(sanitize.Lines(s), "\n", " ")
}
