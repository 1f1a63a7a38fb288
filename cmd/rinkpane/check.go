package main

import (
	"errors"
	"fmt"
	"io"
	"slices"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/tell/wire"
)

type checkFlags struct {
	rules []string
	show  string
	all   bool
}

func checkCommand(a *app) *cobra.Command {
	var f checkFlags
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
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 1 || f.show == "" && len(args) != 1 {
				return errors.New("check needs one arena file (- for standard input), as in: rinkpane check my.yaml")
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error {
			if f.show != "" {
				return showRuleSet(a, f.show)
			}
			return runCheck(a, args[0], f)
		},
	}
	rulesFlag(c, &f.rules)
	c.Flags().StringVar(&f.show, "show", "", "print the document of a rule set that ships with the program, and do nothing else")
	c.Flags().BoolVar(&f.all, "all", false, "list every finding that passes, not only each rule's tightest")
	return c
}

func runCheck(a *app, path string, f checkFlags) error {
	if path == "-" && slices.Contains(f.rules, "-") {
		return errors.New("standard input cannot be both the arena and a rule set; name a file for one of them")
	}
	sets, err := readRules(a, f.rules)
	if err != nil {
		return err
	}
	ar, err := readArena(a, path)
	if err != nil {
		return err
	}
	rep := sets.Check(ar)
	err = a.print(wire.ReportOf(rep, ar.Units), func(w io.Writer) {
		checkText{w: w, units: ar.Units, all: f.all}.report(ar.Name, sets, rep)
	})
	if err == nil && rep.Verdict != rules.Pass {
		return errAnswerNo
	}
	return err
}

// shownSet is the answer of --show under --json.
type shownSet struct {
	RuleSet  string `json:"rule_set"`
	Document string `json:"document"`
}

func showRuleSet(a *app, id string) error {
	text, err := rules.Document(id)
	if err != nil {
		return fmt.Errorf("--show: %w", err)
	}
	return a.print(shownSet{id, string(text)}, func(w io.Writer) { fmt.Fprintf(w, "%s", text) })
}
