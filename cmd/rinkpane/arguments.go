package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/measure/form"
)

// quoteHint answers the commonest slip: a value with a space that the shell split.
const quoteHint = `; put a value with a space in quotes, as in --length "56 m"`

// noArgument accepts flags only.
func noArgument(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	return fmt.Errorf("%s takes no argument, and %s is one%s", c.Name(), form.Quote(args[0]), quoteHint)
}

// atMostOne accepts an arena file or nothing.
func atMostOne(c *cobra.Command, args []string) error {
	if len(args) <= 1 {
		return nil
	}
	return fmt.Errorf("%s takes one arena file at most, and %s is one more%s", c.Name(), form.Quote(args[1]), quoteHint)
}

// oneArena accepts one arena file.
func oneArena(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return fmt.Errorf("%s needs one arena file (- for standard input), as in: %s my.yaml", c.Name(), c.CommandPath())
	}
	return atMostOne(c, args)
}

// knownCommand answers a word that is no command with those there are.
func knownCommand(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	say := fmt.Sprintf("unknown command %s", form.Quote(args[0]))
	if near := c.SuggestionsFor(args[0]); len(near) > 0 {
		return fmt.Errorf("%s; did you mean %s?", say, strings.Join(near, " or "))
	}
	var names []string
	for _, k := range c.Commands() {
		if k.IsAvailableCommand() {
			names = append(names, k.Name())
		}
	}
	return fmt.Errorf("%s; write one of %s", say, strings.Join(names, ", "))
}

// helpTopic refuses help about a word that is no command.
func helpTopic(c *cobra.Command, args []string) error {
	if found, _, err := c.Root().Find(args); err != nil || found == c.Root() {
		return knownCommand(c.Root(), args)
	}
	return nil
}
