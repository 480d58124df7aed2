package main

import (
	"fmt"

	"github.com/spf13/cobra"
)

func (a *app) completionCommand() *cobra.Command {
	shells := []string{"bash", "fish", "powershell", "zsh"}
	return &cobra.Command{
		Use:   "completion bash|fish|powershell|zsh",
		Short: "Print a script that completes commands and flags in your shell",
		Long: `completion prints a script for your shell. Load it once to try it, or put it where
your shell looks for completions to keep it.`,
		Example: `  cutbrief completion bash > cutbrief.bash
  cutbrief completion fish > cutbrief.fish
  cutbrief completion zsh > _cutbrief
  cutbrief completion powershell > cutbrief.ps1`,
		ValidArgs: shells,
		Args:      takes(1, 1, "completion needs the name of one shell", "one of bash, fish, powershell, zsh"),
		RunE:      func(c *cobra.Command, args []string) error { return a.completion(c.Root(), args[0]) },
	}
}

func (a *app) completion(root *cobra.Command, shell string) error {
	switch shell {
	case "bash":
		return root.GenBashCompletionV2(a.out, true)
	case "fish":
		return root.GenFishCompletion(a.out, true)
	case "powershell":
		return root.GenPowerShellCompletionWithDesc(a.out)
	case "zsh":
		return root.GenZshCompletion(a.out)
	}
	return misuse(fmt.Sprintf("%q is not a shell we can complete for", shell), "one of bash, fish, powershell, zsh")
}
