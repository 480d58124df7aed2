package main

import (
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
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

// examination is what doctor found, as it is written.
type examination struct {
	Sound    bool   `json:"sound"`
	Problems int    `json:"problems"`
	Parts    []part `json:"parts"`
}

// part is one heading of an examination.
type part struct {
	Title    string       `json:"part"`
	Findings []inspection `json:"findings"`
}

// inspection is one thing looked at, and what is to be said of it.
type inspection struct {
	What string   `json:"what"`
	Says []remark `json:"says"`
}

// remark is one thing said, and, where it is wrong, what to do.
type remark struct {
	Text  string `json:"text"`
	Wrong bool   `json:"wrong,omitempty"`
	Do    string `json:"do,omitempty"`
}

// finding is an inspection before it is put into words.
type finding struct {
	What message.ID
	Says store.Remarks
}

// add puts the findings of one heading into words.
func (e *examination) add(words *message.Catalog, title message.ID, list ...finding) {
	say := func(m message.Message) string { return tidy(words.Print(m)) }
	p := part{Title: say(title.Message())}
	for _, f := range list {
		i := inspection{What: say(f.What.Message())}
		for _, r := range f.Says {
			i.Says = append(i.Says, remark{say(r.Text), r.Wrong, say(r.Do)})
			if r.Wrong {
				e.Problems++
			}
		}
		p.Findings = append(p.Findings, i)
	}
	e.Parts = append(e.Parts, p)
	e.Sound = e.Problems == 0
}

// saying is a finding of one remark.
func saying(what, id message.ID, args ...any) finding {
	f := finding{What: what}
	f.Says.Say(id, args...)
	return f
}

// examine looks at everything and prints what it found.
func examine(c *call) error {
	words, err := c.wordsFor(c.form())
	if err != nil {
		words = nil // which is a finding of its own
	}
	var e examination
	e.add(words, "The program", saying("version", "{1}", message.Name(version())), saying("rules", "edition {1}", message.Count(rules.Edition)))
	e.add(words, "Where things are kept", c.visitsFinding(), c.practiceFinding(), c.configFinding(), c.cacheFinding())
	e.add(words, "What it uses", listFinding(c, systemsList), listFinding(c, pricesList), c.wordsFinding())
	e.add(words, "The terminal", c.terminalFindings()...)
	if c.form() == jsonFormat {
		err = c.putData(json.MarshalIndent(e, "", "  "))
		err = cmp.Or(err, c.put("\n"))
	} else {
		err = c.put(e.text(words))
	}
	if err != nil || e.Sound {
		return err
	}
	return message.WithHint(&message.Error{Message: message.Counted(e.Problems, "{1} thing to correct", "{1} things to correct")}, "read what to do under each line marked WRONG")
}

func (e examination) text(words *message.Catalog) string {
	var b strings.Builder
	wrong := words.Print(message.ID("WRONG").Message()) + " "
	for _, p := range e.Parts {
		b.WriteString(p.Title + "\n")
		for _, f := range p.Findings {
			name := f.What
			for _, r := range f.Says {
				mark := ""
				if r.Wrong {
					mark = wrong
				}
				fmt.Fprintf(&b, "%-*s%-11s %s\n", len(wrong), mark, name, r.Text)
				if r.Wrong {
					fmt.Fprintf(&b, "%*s%-11s %s\n", len(wrong), "", "", words.Print(message.New("To do: {1}.", message.Name(r.Do))))
				}
				name = ""
			}
		}
		b.WriteString("\n")
	}
	if e.Sound {
		b.WriteString(words.Print(message.ID("All is sound.").Message()) + "\n")
	}
	return b.String()
}

func (c *call) visitsFinding() finding {
	f := finding{What: "visits"}
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

func (c *call) practiceFinding() finding {
	f := finding{What: "progress"}
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
func (c *call) configFinding() finding {
	f := finding{What: "your lists"}
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
func (c *call) cacheFinding() finding {
	f := finding{What: "cache"}
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
func listFinding[T any](c *call, l store.List[T]) finding {
	f := finding{What: l.Name}
	path, named := c.ownFile(string(l.Name), c.text(string(l.Name)))
	l.Inspect(&f.Says, path, named)
	return f
}

// wordsFinding looks at the words in use: a language, or a list.
func (c *call) wordsFinding() finding {
	named, by := c.chosenWords(c.text("words"))
	switch tag := strings.ToLower(named); {
	case tag == englishWords:
		return saying("words", "English")
	case catalog.For(tag) != nil:
		return saying("words", "{1}, chosen by {2}", message.Name(catalog.For(tag).Language), message.Name(by))
	}
	return listFinding(c, wordsList)
}

// terminalFindings say what the terminal can show, and so how the interview would
// be held.
func (c *call) terminalFindings() []finding {
	kind := saying("kind", "TERM is {1}", message.Name(c.getenv("TERM")))
	if c.getenv("TERM") == "" {
		kind = saying("kind", "TERM is not set")
	}
	colours := saying("colours", "{1}", message.ID(screen.Colours()))
	if c.getenv("NO_COLOR") != "" {
		colours = saying("colours", "none, as NO_COLOR asks")
	}
	return []finding{kind, c.sizeFinding(), colours, c.lettersFinding(), saying("interview", c.manner())}
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

func (c *call) sizeFinding() finding {
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
func (c *call) lettersFinding() finding {
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
