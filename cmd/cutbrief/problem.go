package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"cutbrief/assess/sanitize"
)

// The exit statuses.
const (
	done        = 0
	failed      = 1
	wrongUsage  = 2
	interrupted = 130
)

// problem is an error as the user sees it: what went wrong, and what to do.
type problem struct {
	err    error
	hint   string
	status int
}

func (p *problem) Error() string { return p.err.Error() }
func (p *problem) Unwrap() error { return p.err }

// fail is a problem with something other than the command line.
func fail(err error, hint string, args ...any) error {
	return &problem{err: err, hint: fmt.Sprintf(hint, args...), status: failed}
}

// misuse is a problem with the command line.
func misuse(what, hint string) error {
	return &problem{err: errors.New(what), hint: hint, status: wrongUsage}
}

// complain prints an error in two lines, what and hint, and returns the exit
// status. began tells an error of a command from one of reading its flags.
func complain(w io.Writer, err error, began bool) int {
	if err == nil {
		return done
	}
	p := asProblem(err, began)
	fmt.Fprintf(w, "cutbrief: %s\n", tidy(p.Error()))
	fmt.Fprintf(w, "hint: %s\n", tidy(p.hint))
	return p.status
}

// asProblem finds the problem in err, or makes one of an error nobody worded.
func asProblem(err error, began bool) *problem {
	var p *problem
	switch {
	case errors.As(err, &p):
		return p
	case began:
		return &problem{err: err, hint: "see cutbrief --help", status: failed}
	}
	return &problem{err: err, hint: "see cutbrief --help", status: wrongUsage}
}

// tidy puts a text that may quote a file, a flag or a path through the gate,
// and on one line. It takes the gate for notes, whose lines may be longer.
func tidy(s string) string {
	return strings.ReplaceAll(sanitize.Lines(s), "\n", " ")
}
