package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"cutbrief/assess"
	"cutbrief/assess/store"
)

// interviewOptions are the flags of interview.
type interviewOptions struct {
	plain bool
	dir   string
	paper string
	file  string // "" starts a new visit in the folder of visits
}

func (o *interviewOptions) flags(c *cobra.Command) {
	c.Flags().BoolVar(&o.plain, "plain", false, "ask line by line, without drawing a screen")
	c.Flags().StringVar(&o.paper, "paper", "a4", "sheet of the page made at the end: a4 or letter")
	complete(c, "paper", papers)
	c.Flags().StringVar(&o.dir, "dir", "", "`folder` that new visits are kept in (default: CUTBRIEF_DIR, else in your data folder)")
}

func (a *app) interviewCommand() *cobra.Command {
	var o interviewOptions
	c := &cobra.Command{
		Use:   "interview [FILE]",
		Short: "Interview a customer, or go on with a saved visit",
		Long: `interview asks one question at a time and shows what the answers already mean. It can
be left at any question, by any key that leaves: the draft is kept, and the program says
where it is and how to go on.

With FILE it goes on at the first open question of that visit, or opens a finished one
for changes; a FILE that does not exist yet is where a new visit will be saved. Without
FILE a new visit is kept in your folder of visits. Nothing is created before there is
something to save.

Where no screen can be drawn (a pipe, or TERM=dumb) the same questions are asked line
by line. --plain asks for that.`,
		Example: `  cutbrief interview
  cutbrief interview visit.json
  cutbrief interview --plain new.json
  cutbrief interview --dir visits`,
		Args: takes(0, 1, "interview takes the file of one visit", "open one visit at a time"),
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) == 1 {
				o.file = args[0]
			}
			return a.interview(c.Context(), o)
		},
	}
	o.flags(c)
	return c
}

// interview runs one interview from the first question to the farewell.
func (a *app) interview(ctx context.Context, o interviewOptions) error {
	paper, err := paperOf(o.paper)
	if err != nil {
		return err
	}
	offered, prices, err := a.lists()
	if err != nil {
		return err
	}
	words, err := a.book()
	if err != nil {
		return err
	}
	s, err := a.seat(o)
	if err != nil {
		return err
	}
	s.words = words
	s.app, s.offered, s.prices, s.paper = a, offered, prices, paper
	s.watch = assess.NewStopwatch(s.visit, a.now())
	if o.file == "" {
		if err := put(a.out, []byte(unfinished(s.folder))); err != nil {
			return err
		}
	}
	return a.hold(ctx, s, o.plain || a.wantsPlain())
}

// seat finds the visit to go on with, or starts one. It creates nothing.
func (a *app) seat(o interviewOptions) (*sitting, error) {
	if o.file == "" {
		dir, err := a.visitsDir(o.dir)
		return &sitting{visit: assess.New(a.newID(), a.now()), folder: store.Folder{Dir: dir}}, err
	}
	if o.file == "-" {
		return nil, misuse("an interview needs a file to keep the draft in", "name one, or leave it out for a new visit")
	}
	if _, err := os.Stat(o.file); errors.Is(err, fs.ErrNotExist) {
		return a.seatAt(o.file)
	}
	v, err := a.openVisit(o.file)
	return &sitting{visit: v, path: o.file, kept: true}, err
}

// seatAt starts a visit that will be saved at path. Its folder must be there:
// better to say so now than after the first answer.
func (a *app) seatAt(path string) (*sitting, error) {
	if info, err := os.Stat(filepath.Dir(path)); err != nil || !info.IsDir() {
		return nil, fail(fmt.Errorf("%s: there is no folder %s", path, filepath.Dir(path)), "make the folder first, or name another file")
	}
	return &sitting{visit: assess.New(a.newID(), a.now()), path: path}, nil
}

// lately is how many of the last visits are looked at for one to finish.
const lately = 20

// unfinished says which of the last visits of a folder are still open, or "". A
// folder that cannot be read is no reason not to start a new visit.
func unfinished(folder store.Folder) string {
	var open []store.Entry
	for _, e := range folder.Newest(lately) {
		if e.Open > 0 {
			open = append(open, e)
		}
	}
	if len(open) == 0 {
		return ""
	}
	const most = 3
	text := fmt.Sprintf("%s unfinished in %s:\n", counted(len(open), "visit"), tidy(folder.Dir))
	for _, e := range open[:min(len(open), most)] {
		text += "  cutbrief interview " + shellWord(tidy(e.Path)) + "\n"
	}
	return text + "\n"
}
