package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"cutbrief/report/handbook"
)

func (a *app) formatsCommand() *cobra.Command {
	var name string
	files := handbook.Formats()
	c := &cobra.Command{
		Use:   "formats " + strings.Join(files, "|"),
		Short: "Explain the files of the program, field by field",
		Long: `formats explains one kind of file field by field, with units and limits, from the tables
the program reads it with: a saved visit, the systems you can offer, the prices to reckon
with, practice cases, or a book of phrases. What review keeps in your cache folder has no
page: it is private to one build of the program, and can be deleted at any time.`,
		Example: `  cutbrief formats visit
  cutbrief formats systems --format markdown > systems.md`,
		ValidArgs: files,
		Args:      takes(1, 1, "formats needs the name of one kind of file", "one of "+strings.Join(files, ", ")),
		RunE: func(_ *cobra.Command, args []string) error {
			p, ok := handbook.Format(args[0])
			if !ok {
				return misuse(fmt.Sprintf("%q is not a kind of file of ours", args[0]), "one of "+strings.Join(files, ", "))
			}
			return a.putPage(p, name)
		},
	}
	c.Flags().StringVar(&name, "format", string(textFormat), "text or markdown")
	complete(c, "format", namesOf(pageFormats))
	return c
}
