package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

func checkCommand(a *app) *cobra.Command {
	var from source
	var show string
	var all bool
	c := &cobra.Command{
		Use:   "check ARENA",
		Short: "Do the holes keep the rules, and by what margin?",
		Long: `Proves an arena's working holes against one rule set or several together. Prints
the verdict, what is broken with what to do about it, what the survey lacks, and
what is kept with its least margin. Exit 0 when every rule passes, 1 when one
fails or is unknown, 2 on bad input.`,
		Example: `  # common practice, and the glazing trade's distances for tempered panes
  rinkpane check my.yaml --rules common-practice --rules tempered-glass

  # start a rule set of one's own from one that ships
  rinkpane check --show common-practice > my-rules.yaml
  rinkpane check my.yaml --rules my-rules.yaml`,
		Args: func(c *cobra.Command, args []string) error {
			if show != "" {
				return atMostOne(c, args)
			}
			return oneArena(c, args)
		},
		RunE: func(_ *cobra.Command, args []string) error {
			if show != "" {
				return showRuleSet(a, show)
			}
			if err := from.open(a, args[0]); err != nil {
				return err
			}
			rep, sys := from.Rules.Check(from.arena), from.arena.Units
			return a.verdict(rep.Verdict == rules.Pass, wire.ReportOf(rep, sys), func() string {
				return words.Check(from.arena.Name, from.Rules, rep, all, sys)
			})
		},
	}
	from.rulesFlag(c)
	c.Flags().StringVar(&show, "show", "", "print the document of a rule set that ships with the program, and do nothing else")
	c.Flags().BoolVar(&all, "all", false, "list every finding that passes, not only each rule's tightest")
	return c
}

func showRuleSet(a *app, id string) error {
	text, err := rules.Document(id)
	if err != nil {
		return fmt.Errorf("--show: %w", err)
	}
	return a.print(wire.Object{"rule_set", id, "document", string(text)}, func() string { return string(text) })
}
