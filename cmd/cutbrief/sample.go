package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"text/tabwriter"

	"github.com/spf13/cobra"

	"cutbrief/assess"
	"cutbrief/assess/sample"
	"cutbrief/report"
	"cutbrief/rules"
	"cutbrief/rules/message"
)

// sampleOptions are the flags of sample.
type sampleOptions struct {
	name        string // "" is the first
	list, force bool
	save        string // where the visit itself is kept too
	folder      string // a new folder for all of them, in place of a page
}

func (a *app) sampleCommand() *cobra.Command {
	var o sampleOptions
	c := &cobra.Command{
		Use:   "sample [NAME]",
		Short: "See the whole chain on an invented visit: a page, and the same as text",
		Long: `sample takes an invented visit through the whole chain: it writes the one-page PDF in
the current folder, prints its path, and prints the same brief as text. No set-up is
needed. Where another file has the page's name, the next free name is taken; --force
writes over it.

--save keeps the visit as well, to try the other commands on it. --folder writes all
invented visits into a new folder, to try review on.`,
		Example: `  cutbrief sample
  cutbrief sample --list
  cutbrief sample kitchen-fitter --save kitchen.json
  cutbrief sample --folder invented`,
		ValidArgs: sampleNames(),
		Args:      takes(0, 1, "sample takes the name of one visit", "see cutbrief sample --list"),
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) == 1 {
				o.name = args[0]
			}
			switch {
			case o.list:
				return a.listSamples()
			case o.folder != "":
				return a.saveSamples(o.folder)
			}
			return a.sample(o)
		},
	}
	c.Flags().BoolVar(&o.list, "list", false, "list the invented visits")
	c.Flags().StringVar(&o.save, "save", "", "`file` to keep the visit in as well")
	c.Flags().StringVar(&o.folder, "folder", "", "new `folder` to write all invented visits into, and nothing else")
	c.Flags().BoolVar(&o.force, "force", false, "write over files of the same name")
	return c
}

// sampleNames are the invented visits, the first being the one shown unasked.
func sampleNames() []string { return sample.Names() }

// listSamples prints the invented visits, one a line.
func (a *app) listSamples() error {
	var b bytes.Buffer
	t := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	fmt.Fprintln(t, "NAME\tCOMPANY\tPLACE")
	for _, name := range sample.Names() {
		v, _ := sample.Visit(name) // it is one of the names
		fmt.Fprintf(t, "%s\t%s\t%s\n", name, said(v, assess.FactCompany), said(v, assess.FactPlace))
	}
	t.Flush() // into memory; it cannot fail
	b.WriteString("\nEvery company, person and figure in them is invented.\n")
	return put(a.out, b.Bytes())
}

// said is what a visit says to one of its own questions.
func said(v *assess.Visit, f rules.Fact) string {
	a, _ := v.Answer(rules.Asked{Fact: f})
	return tidy(a.Said)
}

// sample writes the page of an invented visit and prints it as text.
func (a *app) sample(o sampleOptions) error {
	if o.name == "" {
		o.name = sample.Names()[0]
	}
	v, ok := sample.Visit(o.name)
	if !ok {
		return misuse(fmt.Sprintf("%q is not an invented visit", o.name), "one of "+strings.Join(sample.Names(), ", "))
	}
	if o.save != "" {
		if err := saveSample(v, o.save, o.force); err != nil {
			return err
		}
	}
	offered, prices, err := a.lists()
	if err != nil {
		return err
	}
	words, err := a.book()
	if err != nil {
		return err
	}
	briefs := []report.Brief{report.Build(v, offered, report.Options{Prices: prices, Words: words})}
	page, err := render(pdfFormat, briefs, "a4")
	if err != nil {
		return err
	}
	path, err := writePage(o.name+pdfFormat.ending(), page, o.force)
	if err != nil {
		return err
	}
	same, err := render(textFormat, briefs, "")
	if err != nil {
		return err
	}
	said := words.Say("The page is in " + message.Keep(path))
	return put(a.out, append([]byte(said+".\n\n"), same...))
}

// writePage writes over the file only if told to, else beside it.
func writePage(path string, data []byte, force bool) (string, error) {
	if force {
		return path, writeFile(path, data, true)
	}
	return writeFree(path, data)
}

// saveSample keeps an invented visit as a file, as any visit.
func saveSample(v *assess.Visit, path string, force bool) error {
	data, err := v.Encode()
	if err != nil {
		return err
	}
	return writeFile(path, data, force)
}

// saveSamples writes all invented visits into a new folder.
func (a *app) saveSamples(dir string) error {
	if err := os.Mkdir(dir, 0o700); err != nil {
		return fail(fmt.Errorf("make the folder %s: %w", dir, reason(err)), "name a folder that is not there yet")
	}
	for _, name := range sample.Names() {
		v, _ := sample.Visit(name) // it is one of the names
		if err := saveSample(v, filepath.Join(dir, name+jsonFormat.ending()), false); err != nil {
			return err
		}
	}
	return put(a.out, []byte(counted(len(sample.Names()), "invented visit")+" in "+tidy(dir)+".\n"))
}
