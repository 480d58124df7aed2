package main

import (
	"fmt"
	"runtime"
	"runtime/debug"

	"github.com/spf13/cobra"
)

func (a *app) versionCommand() *cobra.Command {
	return &cobra.Command{
		Use:     "version",
		Short:   "Print the version of the program",
		Example: "  cutbrief version",
		Args:    noArgs,
		RunE: func(*cobra.Command, []string) error {
			_, err := fmt.Fprintln(a.out, version())
			return err
		},
	}
}

// version is what the build recorded: a tag, a revision, or that it is a
// development build.
func version() string {
	v := "development build"
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" && info.Main.Version != "(devel)" {
		v = info.Main.Version
	}
	return fmt.Sprintf("cutbrief %s, %s, %s/%s", v, runtime.Version(), runtime.GOOS, runtime.GOARCH)
}
