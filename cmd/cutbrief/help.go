package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
)

// helpCommand is --help in another place, for those who look for it there.
func helpCommand() *cobra.Command {
	return &cobra.Command{
		Use:     "help [COMMAND]",
		Short:   "Show the help of a command",
		Example: "  cutbrief help brief",
		RunE: func(c *cobra.Command, words []string) error {
			about, rest, err := c.Root().Find(words)
			if err != nil || len(rest) > 0 {
				return misuse(fmt.Sprintf("there is no help on %q", strings.Join(words, " ")), "see cutbrief --help for the commands")
			}
			about.InitDefaultHelpFlag() // or the help would not list it
			return about.Help()
		},
		ValidArgsFunction: func(c *cobra.Command, words []string, _ string) ([]string, cobra.ShellCompDirective) {
			var names []string
			if about, _, err := c.Root().Find(words); err == nil {
				for _, sub := range about.Commands() {
					names = append(names, sub.Name())
				}
			}
			return names, cobra.ShellCompDirectiveNoFileComp
		},
	}
}
