package main

import (
	"crypto/rand"
	"encoding/hex"
	"io"
	"os"
	"runtime"
	"time"

	"golang.org/x/term"
)

// world is everything outside the program that a command may touch, handed in
// so that tests can hand in another.
type world struct {
	args     []string
	in       io.Reader
	out, err io.Writer
	env      func(name string) string
	now      func() time.Time
	newID    func() string // for a new visit; never the same twice
	goos     string
}

// theWorld is the real one.
func theWorld() world {
	return world{
		args: os.Args[1:],
		in:   os.Stdin, out: os.Stdout, err: os.Stderr,
		env:   os.Getenv,
		now:   time.Now,
		newID: randomID,
		goos:  runtime.GOOS,
	}
}

// randomID is 64 random bits, enough that two reps never share one.
func randomID() string {
	var b [8]byte
	rand.Read(b[:]) // never fails: the runtime ends the program instead
	return hex.EncodeToString(b[:])
}

// isTerminal reports whether a stream is a terminal.
func isTerminal(stream any) bool {
	f, ok := stream.(*os.File)
	return ok && term.IsTerminal(int(f.Fd()))
}

// widthOf is how many columns a terminal has; 0 if the stream is none.
func widthOf(stream any) int {
	f, ok := stream.(*os.File)
	if !ok || !term.IsTerminal(int(f.Fd())) {
		return 0
	}
	width, _, err := term.GetSize(int(f.Fd()))
	if err != nil {
		return 0
	}
	return width
}

// wantsPlain reports whether screens cannot be drawn here: no terminal at one
// end, or one that says it understands no cursor movement.
func (w *world) wantsPlain() bool {
	return !isTerminal(w.in) || !isTerminal(w.out) || w.env("TERM") == "dumb"
}
