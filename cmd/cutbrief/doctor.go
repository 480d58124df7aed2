package main

import (
	"cmp"
	"encoding/json"
	"errors"
	"io/fs"
	"os"
	"strings"

	"cutbrief/assess/casebook"
	"cutbrief/assess/screen"
	"cutbrief/assess/store"
	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/message/catalog"
)

func doctorCommand() command {
	return command{
		use: "doctor",
		flags: []option{formatFlag(textFormat, jsonFormat),
			{name: "dir", value: "", usage: "`folder` of visits to look at (default: CUTBRIEF_DIR, else in your data folder)"}},
		run: examine,
	}
}

// saying is a finding of one remark.
func saying(what, id message.ID, args ...any) store.Finding {
	f := store.Finding{What: what}
	f.Says.Say(id, args...)
	return f
}

// examine looks at everything and prints what it found.
func examine(c *call) error {
	words, err := c.wordsFor(c.form())
	if err != nil {
		words = nil // which is a finding of its own
	}
	var e store.Examination
	e.Add(words, "The program", saying("version", "{1}", message.Name(version())), saying("rules", "edition {1}", message.Count(rules.Edition)))
	e.Add(words, "Where things are kept", c.visitsFinding(), c.practiceFinding(), c.configFinding(), c.cacheFinding())
	e.Add(words, "What it uses", listFinding(c, store.Systems), listFinding(c, store.Prices), c.wordsFinding())
	e.Add(words, "The terminal", c.terminalFindings()...)
	if c.form() == jsonFormat {
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

func (c *call) visitsFinding() store.Finding {
	f := store.Finding{What: "visits"}
	flag := c.text("dir")
	dir, err := c.visitsDir(flag)
	if err != nil {
		f.Says.Wrong(message.ID("name a folder with --dir or CUTBRIEF_DIR").Message(), "nowhere: {1}", errNoHome)
		return f
	}
	f.Says.Say("{1}", message.Name(dir))
	switch {
	case flag != "":
		f.Says.Say("named by {1}", message.Name("--dir"))
	case c.getenv("CUTBRIEF_DIR") != "":
		f.Says.Say("named by {1}", message.Name("CUTBRIEF_DIR"))
	default:
		f.Says.Say("the usual place")
	}
	folder, own := store.Folder{Dir: dir}, flag == "" && c.getenv("CUTBRIEF_DIR") == ""
	if folder.Inspect(&f.Says, "the first visit makes it", own) {
		folder.InspectVisits(&f.Says)
	}
	return f
}

func (c *call) practiceFinding() store.Finding {
	f := store.Finding{What: "progress"}
	path, err := c.place(dataFolder, "practice.json")
	if err != nil {
		f.Says.Wrong(message.ID("set HOME").Message(), "nowhere: {1}", err)
		return f
	}
	f.Says.Say("{1}", message.Name(path))
	if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
		f.Says.Say("not there yet; the first practice makes it")
	} else if _, err := casebook.LoadProgress(path); err != nil {
		f.Says.Wrong(message.ID("move the file away to begin anew").Message(), "cannot be read: {1}", err)
	} else {
		f.Says.Say("can be read")
	}
	return f
}

// configFinding names the folder of the user's own lists; what is in it is looked
// at with the lists.
func (c *call) configFinding() store.Finding {
	f := store.Finding{What: "your lists"}
	dir, err := c.place(configFolder)
	if err != nil {
		f.Says.Say("nowhere: {1}", err)
		return f
	}
	f.Says.Say("{1}", message.Name(dir))
	if _, err := os.Stat(dir); errors.Is(err, fs.ErrNotExist) {
		f.Says.Say("not there; make it to keep lists of your own")
	}
	return f
}

// cacheFinding looks at where reviews are kept. Names of customers lie there.
func (c *call) cacheFinding() store.Finding {
	f := store.Finding{What: "cache"}
	dir, err := c.place(cacheFolder)
	if err != nil {
		f.Says.Say("nowhere: {1}; a review only takes longer", err)
		return f
	}
	f.Says.Say("{1}", message.Name(dir))
	store.Folder{Dir: dir}.Inspect(&f.Says, "the first review makes it", c.getenv("XDG_CACHE_HOME") == "")
	return f
}

// listFinding looks at a list in use, and at who chose it.
func listFinding[T any](c *call, l store.List[T]) store.Finding {
	f := store.Finding{What: l.Name}
	path, named := c.ownFile(string(l.Name), c.text(string(l.Name)))
	l.Inspect(&f.Says, path, named)
	return f
}

// wordsFinding looks at the words in use: a language, or a list.
func (c *call) wordsFinding() store.Finding {
	named, by := c.chosenWords(c.text("words"))
	switch tag := strings.ToLower(named); {
	case tag == englishWords:
		return saying("words", "English")
	case catalog.For(tag) != nil:
		return saying("words", "{1}, chosen by {2}", message.Name(catalog.For(tag).Language), message.Name(by))
	}
	return listFinding(c, store.Words)
}

// terminalFindings say what the terminal can show, and so how the interview would
// be held.
func (c *call) terminalFindings() []store.Finding {
	kind := saying("kind", "TERM is {1}", message.Name(c.getenv("TERM")))
	if c.getenv("TERM") == "" {
		kind = saying("kind", "TERM is not set")
	}
	colours := saying("colours", "{1}", screen.Colours())
	if c.getenv("NO_COLOR") != "" {
		colours = saying("colours", "none, as NO_COLOR asks")
	}
	return []store.Finding{kind, c.sizeFinding(), colours, c.lettersFinding(), saying("interview", c.manner())}
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
		return saying("size", "not known, as the output is no terminal")
	case width == 0:
		return saying("size", "the terminal does not say")
	}
	return saying("size", "{1} columns, {2} lines", message.Count(width), message.Count(height))
}

// lettersFinding says whether letters outside ASCII can be relied on.
func (c *call) lettersFinding() store.Finding {
	value, variable := c.locale("LC_CTYPE")
	switch lower := strings.ToLower(value); {
	case c.goos == "windows":
		return saying("letters", "Unicode")
	case value == "":
		return saying("letters", "LANG is not set: signs such as ≤ and é may come out wrong; one that ends in .UTF-8 corrects it")
	case strings.Contains(lower, "utf-8") || strings.Contains(lower, "utf8"):
		return saying("letters", "UTF-8, by {1}", message.Name(variable))
	}
	return saying("letters", "{1} is {2}: signs such as ≤ and é may come out wrong; one that ends in .UTF-8 corrects it", message.Name(variable), message.Name(value))
}
