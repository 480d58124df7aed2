package main

import (
	"cmp"
	"encoding/json"

	"cutbrief/assess/casebook"
	"cutbrief/assess/screen"
	"cutbrief/assess/store"
	"cutbrief/report/export"
	"cutbrief/rules"
	"cutbrief/rules/message"
)

// examine looks at everything and prints what it found.
func examine(c *call) error {
	words, err := c.wordsFor(c.form())
	if err != nil {
		words = nil // which is a finding of its own
	}
	var e store.Examination
	e.Add(words, "The program", store.Say("version", "{1}", message.Name(version())), store.Say("rules", "edition {1}", message.Count(rules.Edition)))
	e.Add(words, "Where things are kept", c.places()...)
	e.Add(words, "What it uses", store.Systems.Finding(c.files(), c.text("systems")), store.Prices.Finding(c.files(), c.text("prices")), c.files().WordsFinding(c.text("words")))
	e.Add(words, "The terminal", c.terminalFindings()...)
	if c.form() == export.FormatJSON {
		err = c.putData(json.MarshalIndent(e, "", "  "))
		err = cmp.Or(err, c.put("\n"))
	} else {
		err = c.put(e.Text(words))
	}
	if err != nil || e.Sound {
		return err
	}
	return message.WithHint(&message.Error{Message: message.Counted(e.Problems, "{1} thing to correct", "{1} things to correct")}, "read what to do under each line marked WRONG")
}

// places looks at where files are kept. Names of customers lie in the cache too.
func (c *call) places() []store.Finding {
	visits, noVisits := c.files().Visits(c.text("dir"))
	if noVisits != nil {
		noVisits = store.ErrNoHome
	}
	by := ""
	switch {
	case c.text("dir") != "":
		by = "--dir"
	case c.getenv("CUTBRIEF_DIR") != "":
		by = "CUTBRIEF_DIR"
	}
	progress, noProgress := c.files().Find(store.DataFolder, "practice.json")
	lists, noLists := c.files().Find(store.ConfigFolder)
	cache, noCache := c.files().Find(store.CacheFolder)
	return []store.Finding{
		store.Place{What: "visits", Path: visits, Err: noVisits, Do: "name a folder with --dir or CUTBRIEF_DIR"}.Inspect(func(r *store.Remarks) { store.Folder{Dir: visits}.InspectVisits(r, by) }),
		store.Place{What: "progress", Path: progress, Err: noProgress, Do: "set HOME"}.Inspect(func(r *store.Remarks) { casebook.InspectProgress(r, progress) }),
		store.Place{What: "your lists", Path: lists, Err: noLists}.Inspect(func(r *store.Remarks) { store.Folder{Dir: lists}.InspectLists(r) }),
		store.Place{What: "cache", Path: cache, Err: noCache, None: "nowhere: {1}; a review only takes longer"}.Inspect(func(r *store.Remarks) {
			store.Folder{Dir: cache}.Inspect(r, "the first review makes it", c.getenv("XDG_CACHE_HOME") == "")
		}),
	}
}

// terminalFindings say what the terminal can show, and so how the interview would
// be held.
func (c *call) terminalFindings() []store.Finding {
	kind := store.Say("kind", "TERM is {1}", message.Name(c.getenv("TERM")))
	if c.getenv("TERM") == "" {
		kind = store.Say("kind", "TERM is not set")
	}
	colours := store.Say("colours", "{1}", screen.Colours())
	if c.getenv("NO_COLOR") != "" {
		colours = store.Say("colours", "none, as NO_COLOR asks")
	}
	return []store.Finding{kind, c.sizeFinding(), colours, c.files().LettersFinding(), store.Say("interview", c.manner())}
}

// manner says how an interview would be held here, and why.
func (c *call) manner() message.ID {
	switch {
	case !isTerminal(c.in):
		return "line by line, as the input is no terminal"
	case !isTerminal(c.out):
		return "line by line, as the output is no terminal"
	case c.wantsPlain():
		return "line by line, as TERM is dumb"
	}
	return "on the full screen; --plain asks for line by line"
}

func (c *call) sizeFinding() store.Finding {
	width, height := sizeOf(c.out)
	switch {
	case !isTerminal(c.out):
		return store.Say("size", "not known, as the output is no terminal")
	case width == 0:
		return store.Say("size", "the terminal does not say")
	}
	return store.Say("size", "{1} columns, {2} lines", message.Count(width), message.Count(height))
}
