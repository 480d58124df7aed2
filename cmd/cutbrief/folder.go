package main

import (
	"fmt"
	"os"
	"sync"

	"cutbrief/assess/store"
	"cutbrief/report"
	"cutbrief/report/export"
	"cutbrief/rules/message"
)

// briefFolder makes the page of every visit in a folder and below, each in a file
// of its own in the folder that --out names, and says how many. What cannot be
// read or written is named and does not stop the rest; then it fails.
func (c *call) briefFolder(dir string, form export.Format) error {
	out := c.text("out")
	if out == "" || out == "-" {
		return misuse(message.ID("name the folder for the pages: --out DIR").Message(), "a folder of visits gives one file for each")
	}
	files, err := store.Visits(dir)
	if err != nil {
		return store.FolderProblem(dir, err)
	}
	s, err := c.subject(form)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(out, 0o755); err != nil {
		return message.Errorf("make the folder {1}: {2}", message.Name(out), store.Cause(err))
	}
	store.Sweep(out)
	paths := export.PagesBelow(dir, out, files, form)
	var reading sync.Mutex // what is noted on reading goes to one place
	tell := c.progress("{1} page", "{1} pages")
	failed := store.Batch(files, func(file string) error {
		reading.Lock()
		v, err := c.readVisit(file)
		reading.Unlock()
		if err != nil {
			return err
		}
		b, err := report.BuildFor(c.sheet(form), v, s.offered, s.options)
		if err != nil {
			return err
		}
		made, err := render(form, []report.Brief{b}, c.choice("paper"))
		if err != nil {
			return message.Errorf("{1}: {2}", message.Name(file), err)
		}
		return store.WriteFile(paths[file], made, c.on("force"))
	}, tell)
	tell(-1)
	for _, err := range failed {
		fmt.Fprintln(c.err, tidy(c.helpWords().Print(message.Of(err))))
	}
	made := len(files) - len(failed)
	if err := c.say(c.helpWords(), "{1} of {2} written to {3}", message.Count(made), message.Count(len(files)), message.Name(out)); err != nil {
		return err
	}
	if len(failed) > 0 {
		return message.Errorf("{1} of {2} could not be made", message.Count(len(failed)), message.Count(len(files)))
	}
	return nil
}
