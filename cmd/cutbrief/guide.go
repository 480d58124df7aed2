package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"cutbrief/report/handbook"
	"cutbrief/report/text"
)

func (a *app) guideCommand() *cobra.Command {
	var name string
	readers := handbook.Readers()
	c := &cobra.Command{
		Use:   "guide [" + strings.Join(readers, "|") + "]",
		Short: "Show the first ten minutes, step by step: for a rep, a trainee or a manager",
		Long: `guide takes you through your first ten minutes with the program, with the commands to
type and what you will see. Without a name it shows the guide of a representative.`,
		Example: `  cutbrief guide
  cutbrief guide trainee
  cutbrief guide manager --format markdown`,
		ValidArgs: readers,
		Args:      takes(0, 1, "guide takes the name of one reader", "one of "+strings.Join(readers, ", ")),
		RunE: func(_ *cobra.Command, args []string) error {
			reader := readers[0]
			if len(args) == 1 {
				reader = args[0]
			}
			return a.guide(reader, name)
		},
	}
	c.Flags().StringVar(&name, "format", string(textFormat), "text or markdown")
	complete(c, "format", namesOf(pageFormats))
	return c
}

// guide prints the guide of one kind of reader.
func (a *app) guide(reader, name string) error {
	form, err := among(pageFormats, name)
	if err != nil {
		return err
	}
	title, markdown, ok := handbook.Guide(reader)
	if !ok {
		return misuse(fmt.Sprintf("there is no guide for %q", reader), "one of "+strings.Join(handbook.Readers(), ", "))
	}
	if form == markdownFormat {
		return put(a.out, []byte("# "+title+"\n\n"+markdown))
	}
	return put(a.out, []byte(handbook.Told(title, markdown, text.DefaultWidth)))
}
