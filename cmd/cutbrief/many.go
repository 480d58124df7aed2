package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strconv"

	"github.com/spf13/cobra"

	"cutbrief/assess/sample"
)

// manyCommand writes very many invented visits, for trying and measuring what
// reads a folder. It is no part of the job, and so is not listed.
func (a *app) manyCommand() *cobra.Command {
	return &cobra.Command{
		Use:     "many COUNT DIR",
		Short:   "Write very many invented visits into a new folder",
		Example: "  cutbrief many 1000 visits",
		Hidden:  true,
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) != 2 {
				return misuse("many needs a count and a new folder", "such as cutbrief many 1000 visits")
			}
			n, err := strconv.Atoi(args[0])
			if err != nil || n < 1 || n > 1e6 {
				return misuse(fmt.Sprintf("%q is not a count from 1 to 1000000", args[0]), "such as cutbrief many 1000 visits")
			}
			if err := writeMany(n, args[1]); err != nil {
				return fail(err, "name a folder that does not exist yet")
			}
			return nil
		},
	}
}

func writeMany(n int, dir string) error {
	if err := os.Mkdir(dir, 0o755); err != nil {
		return err
	}
	for path, data := range sample.Many(n, 1) {
		name := filepath.Join(dir, filepath.FromSlash(path))
		if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(name, data, 0o644); err != nil {
			return err
		}
	}
	return nil
}
