package main

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"cutbrief/report/table"
	"cutbrief/rules"
	"cutbrief/rules/cost"
	"cutbrief/rules/csvfile"
	"cutbrief/rules/message"
	"cutbrief/rules/message/catalog"
	"cutbrief/rules/system"
)

// list is a kind of file that a user may have of their own. Its name is that of
// its flag, of its variable and of the command that checks it.
type list[T any] struct {
	name    string
	builtIn func() T
	read    func(r io.Reader, name string) (T, []csvfile.Finding)
	usable  func(T) message.Message
	lacks   func(own T, wrong int) []message.Message // more lines of a check, nil if there are none
}

// systemsList judges every row by itself and by whether an arc of its output can
// melt what its figures promise.
var systemsList = list[system.Range]{
	name: "systems", builtIn: system.Demo,
	read: func(r io.Reader, name string) (system.Range, []csvfile.Finding) {
		offered, findings := system.Read(r, name)
		return offered, offered.Merge(findings, rules.Implausible(offered))
	},
	usable: func(r system.Range) message.Message {
		return message.Counted(len(r.Systems), "{1} system", "{1} systems")
	},
}

var pricesList = list[cost.PriceList]{
	name: "prices", builtIn: cost.DemoPrices, read: cost.ReadPrices,
	usable: func(l cost.PriceList) message.Message { return message.Counted(len(l.IDs()), "{1} item", "{1} items") },
}

var wordsList = list[*message.Catalog]{
	name: "words", builtIn: func() *message.Catalog { return nil }, read: catalog.Read,
	usable: func(b *message.Catalog) message.Message {
		return message.Counted(b.Rows(), "{1} entry", "{1} entries")
	},
	lacks: func(b *message.Catalog, wrong int) (lines []message.Message) {
		lacking := catalog.Lacks(b)
		for _, s := range lacking {
			if b.Rows() > 0 || wrong == 0 { // of a file that is no catalog, the reason is enough
				lines = append(lines, message.New("no words for: {1}", message.Name(s)))
			}
		}
		return append(lines, message.Counted(len(lacking), "{1} text without words", "{1} texts without words"))
	},
}

// load is the list in use: the user's own, or the built-in one where there is
// none. One with errors is refused: a page must not rest on a line that was not
// understood.
func (l list[T]) load(a *app, flag string) (own T, err error) {
	path, named := a.ownFile(l.name, flag)
	if path == "" {
		return l.builtIn(), nil
	}
	own, findings, err := l.open(path)
	switch {
	case named == "" && errors.Is(err, fs.ErrNotExist):
		return l.builtIn(), nil
	case err != nil:
		return own, err
	}
	for _, f := range findings {
		if f.Severity == csvfile.Error {
			return own, failure(message.Errorf("{1} {2}: {3}", message.ID(l.name), message.Name(path), message.Name(f.String())),
				"see every line with: {1}", message.Name("cutbrief "+l.name+" check "+path))
		}
	}
	return own, nil
}

// open reads a file and judges every line of it.
func (l list[T]) open(path string) (own T, findings []csvfile.Finding, err error) {
	file, err := os.Open(path)
	if err != nil {
		return own, nil, failure(message.Errorf("read {1} {2}: {3}", message.ID(l.name), message.Name(path), err.(*fs.PathError).Err),
			"an example to start from: {1}", message.Name("cutbrief "+l.name+" template"))
	}
	defer file.Close()
	own, findings = l.read(file, filepath.Base(path))
	return own, findings, nil
}

// check prints every finding about a file, one a line, and fails if there is an
// error among them.
func (l list[T]) check(c *call) error {
	path := c.args[0]
	own, findings, err := l.open(path)
	if err != nil {
		return err
	}
	wrong := csvfile.Count(findings, csvfile.Error)
	sum := message.New("{1}: {2} can be used", message.Name(path), l.usable(own))
	var more []message.Message
	if l.lacks != nil {
		more = l.lacks(own, wrong)
		last := len(more) - 1
		more, sum = more[:last], message.New("{1}, {2}", sum, more[last])
	}
	return c.putFindings(findings, append(more, sum), wrong, message.New("{1} {2}", message.ID(l.name), message.Name(path)))
}

// putFindings prints what was found about a file and what it comes to, and fails
// if something is to be corrected.
func (c *call) putFindings(findings []csvfile.Finding, more []message.Message, wrong int, file message.Message) error {
	words, err := c.words()
	if err != nil {
		return err
	}
	var b strings.Builder
	for _, f := range findings {
		b.WriteString(tidy(f.String()) + "\n")
	}
	for _, m := range more {
		b.WriteString(tidy(words.Print(m)) + "\n")
	}
	if err := c.put(b.String()); err != nil || wrong == 0 {
		return err
	}
	return failure(message.Errorf("{1}: {2} to correct", file, message.Count(wrong)), "correct the lines above; each says what would be accepted")
}

func (c *call) systems() (system.Range, error) { return systemsList.load(c.app, c.text("systems")) }

func (c *call) prices() (*cost.PriceList, error) {
	own, err := pricesList.load(c.app, c.text("prices"))
	return &own, err
}

// words is the catalog in use, nil for our own words.
func (c *call) words() (*message.Catalog, error) { return c.catalog(c.text("words")) }

// wordsFor is the catalog for a document in a format.
func (c *call) wordsFor(f format) (*message.Catalog, error) {
	if !f.forPeople() {
		return nil, nil
	}
	return c.words()
}

// englishWords names our own words, for which no file is needed.
const englishWords = "en"

// chosenWords is the language or file with the words to use, and by what it was
// chosen: --words, else CUTBRIEF_WORDS, else by its path the file in the
// configuration folder if it is there, else the locale of the machine, as far as
// we have its language.
func (a *app) chosenWords(flag string) (named, by string) {
	path, by := a.ownFile("words", flag)
	if by != "" {
		return path, by
	}
	if _, err := os.Stat(path); path != "" && err == nil {
		return path, path
	}
	locale, variable := a.locale("LC_MESSAGES")
	language, _, _ := strings.Cut(strings.ToLower(locale), "_")
	language, _, _ = strings.Cut(language, ".")
	if catalog.For(language) != nil {
		return language, variable
	}
	return englishWords, ""
}

// catalog is the catalog to print with, nil for our own words. One with errors is
// refused: a page must not be half in other words.
func (a *app) catalog(flag string) (*message.Catalog, error) {
	named, _ := a.chosenWords(flag)
	tag := strings.ToLower(named)
	if tag == englishWords {
		return nil, nil
	}
	if c := catalog.For(tag); c != nil {
		return c, nil
	}
	return wordsList.load(a, named)
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
	words, err := a.catalog(flag)
	if err != nil {
		return nil
	}
	return words
}

func systemsCommand() command {
	return command{
		use: "systems",
		run: func(c *call) error {
			offered, err := c.systems()
			if err != nil {
				return err
			}
			return c.putWords(func(words *message.Catalog) string { return table.Systems(offered, words) })
		},
		below: []command{checkCommand(systemsList.check), templateCommand(system.Template)},
	}
}

func pricesCommand() command {
	return command{
		use: "prices",
		run: func(c *call) error {
			list, err := c.prices()
			if err != nil {
				return err
			}
			return c.putWords(func(words *message.Catalog) string { return table.Prices(list, words) })
		},
		below: []command{checkCommand(pricesList.check), templateCommand(cost.PricesTemplate)},
	}
}

// checkCommand checks a file of a kind line by line.
func checkCommand(check func(*call) error) command {
	return command{use: "check FILE", args: oneFile, run: check}
}

// templateCommand prints a file of a kind to start from.
func templateCommand(template func() string) command {
	return command{use: "template", run: func(c *call) error { return c.put(template()) }}
}

func wordsCommand() command {
	return command{
		use: "words",
		run: showWords,
		below: []command{
			checkCommand(wordsList.check),
			{
				use:  "template [de]",
				args: arguments{most: 1, what: "one language", values: catalog.Languages(), refuse: "there are no words in {1}"},
				run:  func(c *call) error { return c.put(catalog.Template(c.arg(0))) },
			},
		},
	}
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
	_, by := c.chosenWords(c.text("words"))
	if err := c.say(words, "The texts come from {1}: {2}, chosen by {3}.", message.Name(words.Name), wordsList.usable(words), message.Name(by)); err != nil {
		return err
	}
	if n := len(catalog.Lacks(words)); n > 0 {
		return c.put(words.Print(message.Counted(n, "{1} text of the program stays in English.", "{1} texts of the program stay in English.")) + "\n")
	}
	return nil
}
