package main

import (
	"cmp"
	"strings"

	"cutbrief/assess/store"
	"cutbrief/report/export"
	"cutbrief/rules/cost"
	"cutbrief/rules/message"
	"cutbrief/rules/message/catalog"
	"cutbrief/rules/system"
)

// check prints every finding about a file, one a line, and fails if there is an
// error among them.
func check[T any](l store.List[T]) func(*call) error {
	return func(c *call) error {
		lines, wrong := l.Check(c.args[0])
		return cmp.Or(c.putLines(lines), wrong)
	}
}

func (c *call) systems() (system.Range, error) {
	return store.Systems.InUse(c.files(), c.text("systems"))
}

func (c *call) prices() (*cost.PriceList, error) {
	return store.Prices.InUse(c.files(), c.text("prices"))
}

// words is the catalog in use, nil for our own words.
func (c *call) words() (*message.Catalog, error) { return c.files().Words(c.text("words")) }

// wordsFor is the catalog for a document in a format.
func (c *call) wordsFor(f export.Format) (*message.Catalog, error) {
	if !f.ForPeople() {
		return nil, nil
	}
	return c.words()
}

// helpWords are those of help and errors, which come before the command line is
// understood. A catalog that cannot be read is no reason to say nothing.
func (a *app) helpWords() *message.Catalog {
	flag := ""
	for i, arg := range a.args {
		if value, is := strings.CutPrefix(arg, "--words="); is {
			flag = value
		} else if arg == "--words" && i+1 < len(a.args) {
			flag = a.args[i+1]
		}
	}
	words, err := a.files().Words(flag)
	if err != nil {
		return nil
	}
	return words
}

// showSystems lists the systems in use.
func showSystems(c *call) error {
	offered, err := c.systems()
	if err != nil {
		return err
	}
	return c.putWords(func(words *message.Catalog) string { return export.Systems(offered, words) })
}

// showPrices lists the prices in use.
func showPrices(c *call) error {
	list, err := c.prices()
	if err != nil {
		return err
	}
	return c.putWords(func(words *message.Catalog) string { return export.Prices(list.OrDemo(), words) })
}

// checkCommand checks a file of a kind line by line.
func checkCommand(check func(*call) error) command {
	return command{use: "check FILE", args: oneFile, run: check}
}

// templateCommand prints a file of a kind to start from.
func templateCommand(template func() string) command {
	return command{use: "template", run: func(c *call) error { return c.put(template()) }}
}

// showWords says which words are in use and where they come from.
func showWords(c *call) error {
	words, err := c.words()
	if err != nil {
		return err
	}
	if words == nil {
		return c.say(words, "The texts are the program's own, in English.")
	}
	_, by := c.files().WordsNamed(c.text("words"))
	if err := c.say(words, "The texts come from {1}: {2}, chosen by {3}.", message.Name(words.Name), store.UsableWords(words), message.Name(by)); err != nil {
		return err
	}
	if n := len(catalog.Lacks(words)); n > 0 {
		return c.put(words.Print(message.Counted(n, "{1} text of the program stays in English.", "{1} texts of the program stay in English.")) + "\n")
	}
	return nil
}
