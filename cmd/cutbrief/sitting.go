package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/store"
	"cutbrief/report"
	"cutbrief/rules"
	"cutbrief/rules/message"
	prices "cutbrief/rules/price"
	"cutbrief/rules/system"
)

// sitting is one interview: where its visit is kept, and what was written. The
// screens save and make pages through it.
type sitting struct {
	app     *app
	offered system.Range
	prices  *prices.List
	visit   *assess.Visit
	path    string // "" until a new visit is first saved
	folder  store.Folder
	paper   string
	words   *message.Catalog
	watch   *assess.Stopwatch // nil where no interview is held
	kept    bool              // there is a file at path
	beside  string            // the file another program changed meanwhile, which is kept too
	page    string            // the page made last, which may be written over
}

// Save keeps the visit, with what is recommended by now, and says where. The
// folder and the name of a new visit are made now, when there is something to
// save. If another program changed the file meanwhile both are kept: the visit
// goes on in a file beside it.
func (s *sitting) Save(v *assess.Visit) (string, error) {
	if s.path == "" {
		path, err := s.folder.NewPath(v)
		if err != nil {
			return "", err
		}
		s.path = path
	}
	job, _ := v.Job()
	v.Record(rules.Evaluate(job, s.offered), system.Fingerprint(s.offered))
	if s.watch != nil {
		s.watch.Lap(v, s.app.now())
	}
	err := store.Save(s.path, v, s.app.now())
	if errors.Is(err, store.ErrChanged) && s.beside == "" {
		err = s.saveBeside(v)
	}
	if cause := reason(err); cause != err {
		err = fmt.Errorf("%s: %w", s.path, cause)
	}
	if err != nil {
		return s.path, err
	}
	s.kept = true
	return s.path, nil
}

// saveBeside goes on in a file of its own. The other program's stays as it is.
func (s *sitting) saveBeside(v *assess.Visit) error {
	path, err := store.Folder{Dir: filepath.Dir(s.path)}.NewPath(v)
	if err != nil {
		return err
	}
	if err := store.Save(path, v, s.app.now()); err != nil {
		return err
	}
	s.beside, s.path = s.path, path
	return nil
}

// Page makes the page in the current folder and says where. A page made
// earlier in the same sitting is written over, anything else is not.
func (s *sitting) Page(v *assess.Visit) (string, error) {
	brief := report.Build(v, s.offered, report.Options{Prices: s.prices, Words: s.words})
	data, err := render(pdfFormat, []report.Brief{brief}, s.paper)
	if err != nil {
		return "", err
	}
	if s.page != "" {
		return s.page, writeFile(s.page, data, true)
	}
	name := "brief.pdf"
	if s.path != "" {
		name = nameAfter(s.path, pdfFormat)
	}
	s.page, err = writeFree(name, data)
	return s.page, err
}

// farewell is what a user who leaves is told, in two lines: where the visit
// is, and how to go on. It is not an error. path is "" if nothing was ever
// saved.
func farewell(words *message.Catalog, path string, open int) (where, on string) {
	shown, word := message.Keep(tidy(path)), shellWord(tidy(path))
	where, on = "The visit is in "+shown+".", "To make its page: "+message.Keep("cutbrief brief "+word)
	switch {
	case path == "":
		where, on = "Nothing was answered, so nothing was saved.", "To start again: "+message.Keep("cutbrief interview")
	case open > 0:
		where, on = "The draft is in "+shown+".", "To go on: "+message.Keep("cutbrief interview "+word)
	}
	return words.Say(where) + "\n", words.Say(on) + "\n"
}

// shellWord quotes a path that a shell would take apart.
func shellWord(path string) string {
	if strings.ContainsAny(path, " '\"()&;$`|<>*?!#~") && filepath.Separator == '/' {
		return "'" + strings.ReplaceAll(path, "'", `'\''`) + "'"
	}
	if strings.Contains(path, " ") {
		return `"` + path + `"`
	}
	return path
}

// keptAt is where the visit is kept, "" if it is not yet.
func (s *sitting) keptAt() string {
	if !s.kept {
		return ""
	}
	return s.path
}
