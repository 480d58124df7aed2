package main

import (
	"github.com/spf13/cobra"

	"cutbrief/assess"
)

func (a *app) redactCommand() *cobra.Command {
	var out string
	var force bool
	c := &cobra.Command{
		Use:   "redact FILE",
		Short: "Copy a visit without names, to share it as a case",
		Long: `redact writes a copy of a visit without anybody's name or words. It is sized like the
visit itself. The copy goes to standard output unless --out names a file; the name of
your own file often holds the company's. "-" as FILE reads a visit from standard input.

Removed: company, contact, place, representative, who decides and when, the operator,
the customer's words, all notes, the reason of an overrule, all that was said about
demonstrations, the next step and its owner, and every field or answer this program does
not know. The copy is a visit of its own, with a new identifier.

Kept: figures and choices, as far as they are understood; dates; identifiers of systems
and cuts; results and outcomes. Read the copy before you send it: an unusual job can be
known by its figures.`,
		Example: `  cutbrief redact visit.json
  cutbrief redact visit.json --out case.json
  cutbrief redact - < visit.json > case.json`,
		Args: anyVisit("redact"),
		RunE: func(_ *cobra.Command, args []string) error { return a.redact(args[0], out, force) },
	}
	c.Flags().StringVar(&out, "out", "-", "`path` of the file to write to; - is standard output")
	c.Flags().BoolVar(&force, "force", false, "write over a file that exists")
	return c
}

// redact writes the copy.
func (a *app) redact(file, out string, force bool) error {
	v, err := a.readVisit(file)
	if err != nil {
		return err
	}
	data, err := assess.Redact(v, a.newID()).Encode()
	if err != nil {
		return fail(err, "shorten the visit")
	}
	return a.deliver([]target{{path: out, data: data}}, force)
}
