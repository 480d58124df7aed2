package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"cutbrief/report"
	"cutbrief/report/calendar"
	"cutbrief/report/text"
	"cutbrief/rules/message"
)

// icsFormat is a calendar; only the follow-up has it.
const icsFormat format = "ics"

// followFormats are the forms a follow-up can take.
var followFormats = []format{textFormat, icsFormat}

// followOptions are the flags of followup as typed.
type followOptions struct {
	format, out string
	force       bool
}

func (a *app) followupCommand() *cobra.Command {
	var o followOptions
	c := &cobra.Command{
		Use:   "followup FILE...",
		Short: "Write the letter after a demonstration, or its next step for a calendar",
		Long: `followup writes what comes after the last demonstration recorded in each visit.
--format text is a short letter to the customer, for you to edit; --format ics is an
iCalendar file with the next step of every visit named on its day. Importing it again
after a change moves the entry instead of adding one. "-" as FILE reads a visit from
standard input. Both go to standard output unless --out names a file.`,
		Example: `  cutbrief followup another.json
  cutbrief followup another.json --format ics --out next.ics
  cutbrief followup - < another.json`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return misuse("followup needs the file of a visit", "such as cutbrief followup visit.json")
			}
			return nil
		},
		RunE: func(_ *cobra.Command, files []string) error { return a.followup(files, o) },
	}
	f := c.Flags()
	f.StringVar(&o.format, "format", string(textFormat), "text or ics")
	f.StringVar(&o.out, "out", "-", "`path` of the file to write to; - is standard output")
	f.BoolVar(&o.force, "force", false, "write over a file that exists")
	complete(c, "format", namesOf(followFormats))
	return c
}

// followup writes the letters or the calendar of some visits. Nothing is
// written before everything is made.
func (a *app) followup(files []string, o followOptions) error {
	form, err := among(followFormats, o.format)
	if err != nil {
		return err
	}
	words, err := a.bookFor(form)
	if err != nil {
		return err
	}
	list, err := a.follows(files, words)
	if err != nil {
		return err
	}
	data := []byte(letters(list))
	if form == icsFormat {
		if data, err = a.calendar(files, list); err != nil {
			return err
		}
	}
	return a.deliver([]target{{path: o.out, data: data}}, o.force)
}

// follows collects what comes after each visit.
func (a *app) follows(files []string, words *message.Catalog) ([]report.FollowUp, error) {
	offered, err := a.offered()
	if err != nil {
		return nil, err
	}
	var list []report.FollowUp
	for _, file := range files {
		v, err := a.readVisit(file)
		if err != nil {
			return nil, err
		}
		f, err := report.Follow(v, offered, report.Options{Words: words})
		if err != nil {
			return nil, fail(fmt.Errorf("%s: %w", file, err), "record it with: cutbrief record %s", shellWord(file))
		}
		list = append(list, f)
	}
	return list, nil
}

func letters(list []report.FollowUp) string {
	var parts []string
	for _, f := range list {
		parts = append(parts, text.Letter(f, text.DefaultWidth))
	}
	return strings.Join(parts, "\n---\n\n")
}

// calendar writes the next steps; two files of one visit would be one entry.
func (a *app) calendar(files []string, list []report.FollowUp) ([]byte, error) {
	seen := map[string]string{}
	for i, f := range list {
		if other, twice := seen[f.ID]; twice {
			return nil, misuse(fmt.Sprintf("%s and %s hold the same visit", other, files[i]), "name one of them")
		}
		seen[f.ID] = files[i]
		if _, err := calendar.Write(list[i : i+1]); err != nil {
			return nil, fail(fmt.Errorf("%s: %w", files[i], err), "%s", followHint(err, files[i]))
		}
	}
	return calendar.Write(list)
}

// followHint says what to do about a next step that has no place in a calendar.
func followHint(err error, file string) string {
	if errors.Is(err, calendar.ErrNoID) {
		return "save the visit anew with: cutbrief interview " + shellWord(file)
	}
	return "note it with: cutbrief record " + shellWord(file)
}
