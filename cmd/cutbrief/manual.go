package main

import (
	"strconv"

	"github.com/spf13/cobra"

	"cutbrief/report/handbook"
	"cutbrief/rules/message"
)

// manual is the page of every command a user can see, for man(1), by the name of
// its file.
func (a *app) manual(root *cobra.Command, words *message.Catalog) map[string]string {
	a.localize(root, words)
	environment, statuses := handbook.ManualPart{Title: "ENVIRONMENT"}, handbook.ManualPart{Title: "EXIT STATUS"}
	for _, v := range variables {
		environment.Entries = append(environment.Entries, handbook.ManualEntry{Name: v.name, Says: words.Print(v.says.Message())})
	}
	for _, s := range exitStatuses {
		statuses.Entries = append(statuses.Entries, handbook.ManualEntry{Name: strconv.Itoa(s.status), Says: words.Print(s.says.Message())})
	}
	return handbook.Manuals(root, words, environment, statuses)
}
