package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"
	"github.com/spf13/cobra/doc"

	"example.org/rinkpane/internal/tell/wire"
)

// shells are those whose completions can be written.
var shells = []string{"bash", "fish", "powershell", "zsh"}

func completionsCommand(a *app) *cobra.Command {
	return &cobra.Command{
		Use:   "completions SHELL",
		Short: "Write what a shell needs to complete commands and options",
		Long: "Prints a script for " + strings.Join(shells, ", ") + " that lets the Tab key complete the program's\n" +
			"commands and options. Packages bring it along.",
		Example:   "  rinkpane completions bash > ~/.local/share/bash-completion/completions/rinkpane",
		ValidArgs: shells,
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) != 1 || !slices.Contains(shells, args[0]) {
				return fmt.Errorf("completions: name one shell of %s", strings.Join(shells, ", "))
			}
			var script bytes.Buffer
			if err := completionsOf(c.Root(), args[0], &script); err != nil {
				return err
			}
			return a.print(wire.Object{"shell", args[0], "script", script.String()}, script.String)
		},
	}
}

func completionsOf(root *cobra.Command, shell string, out *bytes.Buffer) error {
	switch shell {
	case "bash":
		return root.GenBashCompletionV2(out, true)
	case "fish":
		return root.GenFishCompletion(out, true)
	case "powershell":
		return root.GenPowerShellCompletionWithDesc(out)
	}
	return root.GenZshCompletion(out)
}

func manualCommand(a *app) *cobra.Command {
	return &cobra.Command{
		Use:   "manual FOLDER",
		Short: "Write the manual pages of all commands into a folder",
		Long: "Writes a page for man(1) of each command, from the same texts as --help. The pages carry no date\n" +
			"of their own: the same program writes the same pages.",
		Example: "  rinkpane manual ~/.local/share/man/man1",
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) != 1 {
				return fmt.Errorf("manual needs one folder to write to, as in: rinkpane manual man1")
			}
			names, err := writeManual(c.Root(), args[0])
			if err != nil {
				return err
			}
			return a.print(wire.Object{"folder", args[0], "pages", names}, func() string {
				return fmt.Sprintf("Wrote %d pages to %s. Read one with: man %s\n", len(names), args[0], filepath.Join(args[0], "rinkpane.1"))
			})
		},
	}
}

// noDate stands on manual pages where a date would: a page follows from the program alone.
var noDate = time.Unix(0, 0).UTC()

func writeManual(root *cobra.Command, folder string) ([]string, error) {
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return nil, err
	}
	root.DisableAutoGenTag = true
	var names []string
	var write func(c *cobra.Command) error
	write = func(c *cobra.Command) error {
		if !c.IsAvailableCommand() && c != root {
			return nil
		}
		var page bytes.Buffer
		c.Long = strings.ReplaceAll(c.Long, "\n  ", "\n      ") // what is indented stays as it is
		head := &doc.GenManHeader{Section: "1", Source: "rinkpane " + release, Manual: "Rinkpane", Date: &noDate}
		if err := doc.GenMan(c, head, &page); err != nil {
			return err
		}
		name := strings.ReplaceAll(c.CommandPath(), " ", "-") + ".1"
		names = append(names, name)
		if err := os.WriteFile(filepath.Join(folder, name), page.Bytes(), 0o644); err != nil {
			return err
		}
		for _, k := range c.Commands() {
			if err := write(k); err != nil {
				return err
			}
		}
		return nil
	}
	return names, write(root)
}
