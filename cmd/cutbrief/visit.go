package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/store"
	"cutbrief/rules/system"
)

// readVisit reads the visit in a file, or on standard input for "-", for a
// page. What it says but cannot mean is refused: a page with a hole where an
// answer was would mislead. Fields nobody here knows are reported and kept.
func (a *app) readVisit(file string) (*assess.Visit, error) {
	v, err := a.openVisit(file)
	if err != nil {
		return nil, err
	}
	if _, problems := v.Job(); len(problems) > 0 {
		what := file + ": " + problems[0].Text
		if n := len(problems) - 1; n > 0 {
			what += fmt.Sprintf(" (and %d more)", n)
		}
		return nil, fail(errors.New(what), "correct it in the file, or answer anew with: cutbrief interview %s", shellWord(file))
	}
	return v, nil
}

// visitAndRange reads a visit, and the systems to size it with.
func (a *app) visitAndRange(file string) (*assess.Visit, system.Range, error) {
	offered, err := a.offered()
	if err != nil {
		return nil, system.Range{}, err
	}
	v, err := a.readVisit(file)
	return v, offered, err
}

// openVisit reads a visit and reports what it did not know.
func (a *app) openVisit(file string) (*assess.Visit, error) {
	v, unknown, err := a.load(file)
	if err != nil {
		return nil, fail(err, "%s", loadHint(err))
	}
	if len(unknown) > 0 {
		fmt.Fprintf(a.err, "note: %s\n", tidy(fmt.Sprintf("%s has what this version does not know, kept as it is: %s", file, strings.Join(unknown, ", "))))
	}
	return v, nil
}

// load reads a visit; every error names where it came from.
func (a *app) load(file string) (*assess.Visit, []string, error) {
	if file != "-" {
		v, unknown, err := store.Load(file)
		if cause := reason(err); cause != err {
			err = fmt.Errorf("read %s: %w", file, cause)
		}
		return v, unknown, err
	}
	data, err := io.ReadAll(io.LimitReader(a.in, assess.MaxSize+1))
	if err != nil {
		return nil, nil, fmt.Errorf("standard input: %w", err)
	}
	v, unknown, err := assess.Decode(data)
	if err != nil {
		err = fmt.Errorf("standard input: %w", err)
	}
	return v, unknown, err
}

// loadHint says what to do about a visit that cannot be read.
func loadHint(err error) string {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "check the name; cutbrief interview lists unfinished visits"
	case errors.Is(err, fs.ErrPermission):
		return "ask for the right to read the file"
	case errors.Is(err, assess.ErrNewerFormat):
		return "a newer version of cutbrief wrote it, and can read it"
	}
	return "the form of a saved visit: cutbrief schema"
}
