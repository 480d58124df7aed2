package main

import (
	"github.com/spf13/cobra"

	"cutbrief/assess"
)

func (a *app) schemaCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "schema",
		Short: "Print the JSON Schema of a saved visit",
		Long:  "schema prints the JSON Schema of the files the interview saves, for programs that read\nor write them.",
		Example: `  cutbrief schema
  cutbrief schema > visit.schema.json`,
		Args: noArgs,
		RunE: func(*cobra.Command, []string) error {
			_, err := a.out.Write(assess.Schema())
			return err
		},
	}
}
