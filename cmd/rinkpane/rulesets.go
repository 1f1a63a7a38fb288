package main

import (
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/form"
)

// rulesFlag adds --rules to a command: the rule sets in force together, each
// one that ships with the program or a file of the user's.
func rulesFlag(c *cobra.Command, into *[]string) {
	c.Flags().StringSliceVar(into, "rules", nil,
		"rule set, by name ("+strings.Join(rules.Names(), ", ")+") or file; repeat it or use commas to combine (default "+rules.Default+")")
}

// readRules returns the rule sets that --rules names, common practice when it
// names none, with those that are always in force.
func readRules(a *app, named []string) (rules.Sets, error) {
	if len(named) == 0 {
		named = []string{rules.Default}
	}
	var out []rules.Set
	for _, n := range named {
		set, err := readRuleSet(a, strings.TrimSpace(n))
		if err != nil {
			return rules.Sets{}, fmt.Errorf("--rules: %w", err)
		}
		for _, before := range out {
			if before.ID == set.ID {
				return rules.Sets{}, fmt.Errorf("--rules: two rule sets have the id %s; leave one out or give it another id", set.ID)
			}
		}
		out = append(out, set)
	}
	return rules.InForce(out...)
}

func readRuleSet(a *app, name string) (rules.Set, error) {
	if set, err := rules.Shipped(name); err == nil {
		return set, nil
	}
	if _, err := os.Stat(name); err != nil && name != "-" {
		cure := "write " + form.Choices(rules.Names()) + ", or a file's path"
		if near := form.Nearest(name, rules.Names()); near != "" {
			cure = fmt.Sprintf("did you mean %q?", near)
		}
		return rules.Set{}, fmt.Errorf("%s is neither a rule set that ships with the program nor a file; %s", form.Quote(name), cure)
	}
	var set rules.Set
	err := withInput(a, name, func(name string, r io.Reader) (err error) {
		set, err = rules.Read(name, r)
		return err
	})
	return set, err
}
