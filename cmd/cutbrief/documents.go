package main

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/assess/store"
	"cutbrief/report"
	"cutbrief/report/export"
	"cutbrief/report/handbook"
	"cutbrief/report/pdf"
	"cutbrief/report/text"
	"cutbrief/rules/message"
)

// showSamples lists the invented visits, writes them all, or shows one.
func showSamples(c *call) error {
	switch folder := c.text("folder"); {
	case c.on("list"):
		return c.putWords(export.Samples)
	case folder != "":
		if err := casebook.WriteDemoVisits(folder); err != nil {
			return message.WithHint(message.Errorf("make the folder {1}: {2}", message.Name(folder), store.Cause(err)), "name a folder that is not there yet")
		}
		return c.putWords(func(words *message.Catalog) string {
			return words.Print(message.Counted(len(casebook.DemoVisits()), "{1} invented visit in {2}.", "{1} invented visits in {2}.", message.Name(tidy(folder)))) + "\n"
		})
	}
	return showSample(c)
}

// showSample writes the page of an invented visit and prints it as text.
func showSample(c *call) error {
	name := c.arg(0)
	if name == "" {
		name = casebook.DemoVisits()[0]
	}
	v, _ := casebook.DemoVisit(name) // it is one of the names
	if file := c.text("save"); file != "" {
		data, err := v.Encode()
		if err != nil {
			return err
		}
		if err := store.WriteFile(file, data, c.on("force")); err != nil {
			return err
		}
	}
	s, err := c.subject(export.FormatText)
	if err != nil {
		return err
	}
	b := report.Build(v, s.offered, s.options)
	page, err := pdf.Render(b, "a4")
	if err != nil {
		return err
	}
	path := name + export.FormatPDF.Ending()
	if c.on("force") {
		err = store.WriteFile(path, page, true)
	} else {
		path, err = store.WriteNext(path, page)
	}
	if err != nil {
		return err
	}
	where := message.New("The page is in {1}.", message.Name(path))
	return c.put(s.options.Words.Print(where) + "\n\n" + text.Render(b, text.DefaultWidth))
}

// writeMany writes very many invented visits, for trying and measuring what
// reads a folder. It is no part of the job.
func writeMany(c *call) error {
	n, err := strconv.Atoi(c.args[0])
	if err != nil || n < 1 || n > 1e6 {
		return misuse(suchAs(handbook.HelpTexts(nil)["many"]), "{1} is not a count from 1 to 1000000", quoted(c.args[0]))
	}
	if err := casebook.WriteManyVisits(c.args[1], n); err != nil {
		return message.WithHint(store.Cause(err), "name a folder that does not exist yet")
	}
	return nil
}

// showRules prints the rules, or those known in one way.
func showRules(c *call) error {
	trust := c.choice("trust")
	if trust == "" {
		return c.putPage(handbook.Rules)
	}
	return c.putPage(func(words *message.Catalog) handbook.Page { return handbook.Trusted(trust, words) })
}

// showFormats prints how a kind of file is written.
func showFormats(c *call) error {
	return c.putPage(func(words *message.Catalog) handbook.Page {
		p, _ := handbook.Format(c.args[0], words) // it is one of the kinds
		return p
	})
}

// putPage prints a page of the handbook.
func (c *call) putPage(page func(*message.Catalog) handbook.Page) error {
	return c.putWords(func(words *message.Catalog) string {
		if c.form() == export.FormatMarkdown {
			return page(words).Markdown()
		}
		return page(words).Text(text.DefaultWidth)
	})
}

// showGuide prints the guide for a reader.
func showGuide(c *call) error {
	reader := c.arg(0)
	if reader == "" {
		reader = handbook.Readers()[0]
	}
	return c.putWords(func(words *message.Catalog) string {
		title, markdown := handbook.Guide(reader, words)
		if c.form() == export.FormatMarkdown {
			return "# " + title + "\n\n" + markdown
		}
		return handbook.Told(title, markdown, text.DefaultWidth)
	})
}

// showSchema prints the schema of a visit, or of a row of a review.
func showSchema(c *call) error {
	if c.arg(0) == "row" {
		return c.put(string(export.Schema()))
	}
	return c.put(string(assess.Schema()))
}

// shells are those that what is typed can be completed in.
var shells = []string{"bash", "fish", "powershell", "zsh"}

// completeFor prints the script that completes what is typed in a shell.
func completeFor(c *call) error {
	switch c.args[0] {
	case "bash":
		return c.row.Root().GenBashCompletionV2(c.out, true)
	case "fish":
		return c.row.Root().GenFishCompletion(c.out, true)
	case "zsh":
		return c.row.Root().GenZshCompletion(c.out)
	}
	return c.row.Root().GenPowerShellCompletionWithDesc(c.out)
}

// helpCommand is --help in another place, for those who look for it there.
func helpCommand() command {
	return command{
		use:  "help [COMMAND]",
		args: arguments{most: -1, complete: completeCommand},
		run: func(c *call) error {
			about, rest, err := c.row.Root().Find(c.args)
			if err != nil || len(rest) > 0 {
				return misuse(message.New("see {1} --help for the commands", message.Name("cutbrief")), "there is no help on {1}", quoted(strings.Join(c.args, " ")))
			}
			return about.Help()
		},
	}
}

// completeCommand lists the commands below the one typed so far.
func completeCommand(c *cobra.Command, typed []string) []string {
	names := []string{}
	if about, _, err := c.Root().Find(typed); err == nil {
		for _, below := range about.Commands() {
			names = append(names, below.Name())
		}
	}
	return names
}

// completeTopic lists the topics where one is due.
func completeTopic(_ *cobra.Command, typed []string) []string {
	if len(typed) == 1 {
		return report.Topics()
	}
	return nil // a file
}

// writeManual writes the manual pages: who packs the program calls it, and who
// uses it has --help.
func writeManual(c *call) error {
	words, err := c.words()
	if err != nil {
		return err
	}
	dir := c.args[0]
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return message.WithHint(message.Errorf("make the folder {1}: {2}", message.Name(dir), store.Cause(err)), "name another folder")
	}
	for name, page := range c.manual(c.row.Root(), words) {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, []byte(page), 0o644); err != nil {
			return message.WithHint(message.Errorf("write {1}: {2}", message.Name(path), store.Cause(err)), "name another folder")
		}
	}
	return nil
}
