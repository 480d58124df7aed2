package main

import (
	"crypto/rand"
	"encoding/hex"
	"io"
	"os"
	"runtime"
	"time"

	"golang.org/x/term"

	"cutbrief/assess/store"
	"cutbrief/rules/message"
)

// environment is everything outside the program that a command may touch,
// handed in so that tests can hand in another.
type environment struct {
	args     []string
	in       io.Reader
	out, err io.Writer
	getenv   func(name string) string
	now      func() time.Time
	newID    func() string // for a new visit; never the same twice
	goos     string
}

// realEnvironment is that of the process.
func realEnvironment() environment {
	return environment{
		args: os.Args[1:],
		in:   os.Stdin, out: os.Stdout, err: os.Stderr,
		getenv: os.Getenv,
		now:    time.Now,
		newID:  randomID,
		goos:   runtime.GOOS,
	}
}

// randomID is 64 random bits, enough that two reps never share one.
func randomID() string {
	var b [8]byte
	rand.Read(b[:]) // never fails: the runtime ends the program instead
	return hex.EncodeToString(b[:])
}

// files are the places of the user's files.
func (e *environment) files() store.Places { return store.Places{Getenv: e.getenv, System: e.goos} }

// isTerminal reports whether a stream is a terminal.
func isTerminal(stream any) bool {
	f, ok := stream.(*os.File)
	return ok && term.IsTerminal(int(f.Fd()))
}

// sizeOf is how many columns and lines a terminal has; 0 if the stream is none
// or does not tell.
func sizeOf(stream any) (width, height int) {
	if isTerminal(stream) {
		width, height, _ = term.GetSize(int(stream.(*os.File).Fd()))
	}
	return width, height
}

// wantsPlain reports whether screens cannot be drawn here: no terminal at one
// end, or one that says it understands no cursor movement.
func (e *environment) wantsPlain() bool {
	return !isTerminal(e.in) || !isTerminal(e.out) || e.getenv("TERM") == "dumb"
}

// variables are what the program reads from the environment, as the manual
// tells it. A test looks for others.
var variables = []struct {
	name string
	says message.ID
}{
	{"CUTBRIEF_DIR", "folder that visits are kept in, where --dir names none"},
	{"CUTBRIEF_SYSTEMS", "file with the systems you can offer, where --systems names none"},
	{"CUTBRIEF_PRICES", "file with the prices to use, where --prices names none"},
	{"CUTBRIEF_WORDS", "language of all texts, where --words names none"},
	{"LC_ALL, LC_MESSAGES, LANG", "the first that is set chooses the language where nothing else does"},
	{"NO_COLOR", "if set, nothing is coloured"},
	{"TERM", "the kind of terminal; with \"dumb\" nothing is drawn, and questions come line by line"},
	{"HOME, XDG_DATA_HOME, XDG_CONFIG_HOME, XDG_CACHE_HOME", "where files are kept on Linux; on macOS HOME says it, on Windows AppData and LocalAppData"},
}
