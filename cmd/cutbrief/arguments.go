package main

import "github.com/spf13/cobra"

// takes accepts from least to most arguments. Any other count is answered with
// what is needed, and a hint.
func takes(least, most int, needs, hint string) cobra.PositionalArgs {
	return func(_ *cobra.Command, args []string) error {
		if len(args) < least || len(args) > most {
			return misuse(needs, hint)
		}
		return nil
	}
}

// anyVisit takes the file of one visit, or - for standard input.
func anyVisit(command string) cobra.PositionalArgs {
	return takes(1, 1, command+" needs the file of one visit", "such as cutbrief "+command+" visit.json")
}

// oneVisit takes the file of one visit that can be written to.
func oneVisit(command string) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		if err := anyVisit(command)(c, args); err != nil {
			return err
		}
		if args[0] == "-" {
			return misuse(command+" needs a file to keep the record in", "name the file of the visit")
		}
		return nil
	}
}
