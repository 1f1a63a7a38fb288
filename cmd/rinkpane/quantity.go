package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
)

// quantityFlag is a flag whose value a parser of package unit reads.
type quantityFlag[T any] struct {
	into  *unit.Maybe[T]
	parse func(string) (T, error)
	kind  string // shown in the help
	text  string
}

func (q *quantityFlag[T]) String() string { return q.text }
func (q *quantityFlag[T]) Type() string   { return q.kind }

func (q *quantityFlag[T]) Set(s string) error {
	v, err := q.parse(s)
	if err != nil {
		return err
	}
	*q.into, q.text = unit.Known(v), s
	return nil
}

// quantity adds a flag that is unknown until it is given.
func quantity[T any](c *cobra.Command, into *unit.Maybe[T], name, kind string, parse func(string) (T, error), usage string) {
	c.Flags().Var(&quantityFlag[T]{into: into, parse: parse, kind: kind}, name, usage)
}

// flagProblem names the flag first, says the rest once, and offers the flag that was meant.
func flagProblem(c *cobra.Command, err error) error {
	var bad *pflag.InvalidValueError
	if errors.As(err, &bad) {
		switch bad.GetFlag().Value.Type() {
		case "bool":
			return fmt.Errorf("--%s %q: write true or false, or the flag alone", bad.GetFlag().Name, bad.GetValue())
		case "int":
			return fmt.Errorf("--%s: %q: write a whole number", bad.GetFlag().Name, bad.GetValue())
		case "uint64":
			return fmt.Errorf("--%s: %q: write a whole number from 0", bad.GetFlag().Name, bad.GetValue())
		case "float64":
			return fmt.Errorf("--%s: %q: write a number", bad.GetFlag().Name, bad.GetValue())
		}
		return fmt.Errorf("--%s: %w", bad.GetFlag().Name, bad.Unwrap())
	}
	var unknown *pflag.NotExistError
	if errors.As(err, &unknown) && len(unknown.GetSpecifiedName()) > 1 {
		var names []string
		c.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
		if meant := form.Nearest(unknown.GetSpecifiedName(), names); meant != "" {
			return fmt.Errorf("unknown flag --%s; did you mean --%s?", unknown.GetSpecifiedName(), meant)
		}
		return fmt.Errorf("unknown flag --%s; see rinkpane %s --help", unknown.GetSpecifiedName(), c.Name())
	}
	return err
}

// anyChanged reports whether one of the flags was given.
func anyChanged(c *cobra.Command, names ...string) bool {
	return slices.ContainsFunc(names, c.Flags().Changed)
}

// refuseFlags is the error when one of the flags was given where it has no meaning.
func refuseFlags(c *cobra.Command, names []string, why string) error {
	if i := slices.IndexFunc(names, c.Flags().Changed); i >= 0 {
		return fmt.Errorf("--%s %s", names[i], why)
	}
	return nil
}

// needFlags names those of the flags that were not given.
func needFlags(c *cobra.Command, names ...string) error {
	missing := slices.DeleteFunc(names, c.Flags().Changed)
	if len(missing) == 0 {
		return nil
	}
	return fmt.Errorf("%s needs --%s; see the example in rinkpane %[1]s --help", c.Name(), strings.Join(missing, ", --"))
}
