package main

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"cutbrief/rules/csvfile"
	"cutbrief/rules/message/catalog"
	prices "cutbrief/rules/price"
	"cutbrief/rules/system"
)

// listsPart looks at the lists in use, and at who chose them.
func (a *app) listsPart() part {
	return part{"What it reckons with", []notice{a.systemsNotice(), a.pricesNotice(), a.wordsNotice()}}
}

func (a *app) systemsNotice() notice {
	n := notice{What: "systems"}
	path, named := a.systemsFile(a.systems)
	file, own := n.list(path, named, a.chosenBy(a.systems, "--systems", "CUTBRIEF_SYSTEMS"))
	if !own {
		n.say("%s", counted(len(system.Demo().Systems), "system"))
		return n
	}
	if file == nil {
		return n
	}
	defer file.Close()
	offered, findings := examine(file, path)
	n.findings(findings, counted(len(offered.Systems), "system"), "cutbrief systems check "+shellWord(path))
	return n
}

func (a *app) pricesNotice() notice {
	n := notice{What: "prices"}
	path, named := a.pricesFile(a.prices)
	file, own := n.list(path, named, a.chosenBy(a.prices, "--prices", "CUTBRIEF_PRICES"))
	if !own {
		n.say("%s", counted(len(prices.Demo().IDs()), "item"))
		return n
	}
	if file == nil {
		return n
	}
	defer file.Close()
	list, findings := prices.Read(file, filepath.Base(path))
	n.findings(findings, counted(len(list.IDs()), "item"), "cutbrief prices check "+shellWord(path))
	return n
}

func (a *app) wordsNotice() notice {
	n := notice{What: "words"}
	named, from := a.wordsNamed()
	switch tag := strings.ToLower(named); {
	case tag == englishWords, tag == "":
		n.say("English")
		return n
	case catalog.For(tag) != nil:
		n.say("%s, chosen by %s", catalog.For(tag).Language, from)
		return n
	}
	file, err := os.Open(named)
	if from == "" && errors.Is(err, fs.ErrNotExist) {
		n.say("English")
		return n
	}
	n.opened(named, a.chosenBy(a.words, "--words", "CUTBRIEF_WORDS"), err)
	if err != nil {
		return n
	}
	defer file.Close()
	book, findings := catalog.Read(file, filepath.Base(named))
	n.findings(findings, counted(book.Rows(), "phrase"), "cutbrief words check "+shellWord(named))
	return n
}

// list opens a list of the user's own. It reports false where there is none, and
// says that the built-in one is used.
func (n *notice) list(path string, named bool, chosen string) (file *os.File, own bool) {
	file, err := os.Open(path)
	if path == "" || !named && errors.Is(err, fs.ErrNotExist) {
		n.say("built in, and all of it invented")
		return nil, false
	}
	n.opened(path, chosen, err)
	return file, true
}

// opened says which file is used, who chose it, and whether it could be opened.
func (n *notice) opened(path, chosen string, err error) {
	n.say("%s", path)
	n.say("%s", textOr(chosen, "kept in your configuration folder"))
	if err != nil {
		n.wrong("check the name, or take the choice away to use what is built in", "cannot be read: %s", reason(err))
	}
}

// findings says how sound a list is: how much of it can be used, and the first
// things found.
func (n *notice) findings(findings []csvfile.Finding, usable, check string) {
	faults, doubts := csvfile.Count(findings, csvfile.Error), csvfile.Count(findings, csvfile.Warning)
	n.say("%s can be used; %d to correct, %d to look at", usable, faults, doubts)
	const most = 3
	shown := 0
	for _, f := range findings {
		if f.Severity == csvfile.Note || shown == most {
			continue
		}
		shown++
		f.Accepted = "" // what check tells besides
		n.say("%s", f)
	}
	if rest := faults + doubts - shown; rest > 0 {
		n.say("and %d more; see them with: %s", rest, check)
	}
	if faults > 0 {
		n.wrong("correct the file; line by line: "+check, "a file with faults is not used, and neither is the built-in one in its place")
	}
}
