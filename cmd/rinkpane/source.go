package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

// source is what a command answers from: an arena, and the kit and rule sets that
// it asks for. These are the ones that flags name, else the arena's own, else
// the program's.
type source struct {
	kitPath   string
	ruleNames []string
	asksKit   bool
	asksRules bool

	doc   *arena.Document
	arena arena.Arena // in the units to print in
	plan.Maker
}

// kitFlag adds --kit; the command is answered with a kit.
func (s *source) kitFlag(c *cobra.Command) {
	s.asksKit = true
	c.Flags().StringVar(&s.kitPath, "kit", "", "kit file (default: the arena's own, else the built-in kit)")
}

// rulesFlag adds --rules: the rule sets in force together, each one that ships
// with the program or a file of the user's.
func (s *source) rulesFlag(c *cobra.Command) {
	s.asksRules = true
	c.Flags().StringSliceVar(&s.ruleNames, "rules", nil, "rule set, by name ("+strings.Join(rules.Names(), ", ")+
		") or file; repeat it or use commas to combine (default: the arena's own, else "+rules.Default+")")
}

// open reads and checks the arena file that a user named, "-" for standard
// input and "" for the demo, and finds what goes with it.
func (s *source) open(a *app, path string) (err error) {
	if path == "-" && slices.Contains(s.ruleNames, "-") {
		return errors.New("standard input cannot be both the arena and a rule set; name a file for one of them")
	}
	if s.asksRules && len(s.ruleNames) > 0 { // what flags name wrongly is said first
		if err := s.readRules(a); err != nil {
			return err
		}
	}
	if path == "" {
		s.doc, err = arena.Demo()
	} else {
		err = withInput(a, path, func(name string, r io.Reader) (err error) { s.doc, err = arena.Read(name, r); return err })
	}
	if err != nil {
		return err
	}
	s.doc = s.doc.For(time.Now().Format(time.DateOnly))
	if s.arena, err = s.doc.Check(); err != nil {
		return err
	}
	if s.arena.Units, err = a.system(s.arena.Units); err != nil {
		return err
	}
	if err := s.follow(a, path); err != nil {
		return err
	}
	return s.outfit(a)
}

// outfit reads the rule sets and the kit as far as the command asks for them.
func (s *source) outfit(a *app) error {
	if s.asksRules && len(s.Rules.IDs()) == 0 {
		if err := s.readRules(a); err != nil {
			return err
		}
	}
	return s.readKit(a)
}

// follow takes the kit and the rule sets that the arena names where no flag names
// any, and says so. They are files beside the arena's, or ship with the program.
func (s *source) follow(a *app, file string) error {
	if k := s.arena.Kit; s.asksKit && s.kitPath == "" && k != "" {
		path, err := beside(file, k, "kit", k == kit.DefaultID)
		if err != nil {
			return err
		}
		s.kitPath = path
		fmt.Fprintf(a.err, "kit: %s, which the arena names\n", printable(form.Quote(k)))
	}
	if !s.asksRules || len(s.ruleNames) > 0 || len(s.arena.RuleSets) == 0 {
		return nil
	}
	for _, id := range s.arena.RuleSets {
		_, err := rules.Shipped(id)
		path, err := beside(file, id, "rules", err == nil)
		if err != nil {
			return err
		}
		if path == "" {
			path = id
		}
		s.ruleNames = append(s.ruleNames, path)
	}
	fmt.Fprintf(a.err, "rules: %s, which the arena names\n", printable(strings.Join(s.arena.RuleSets, ", ")))
	return nil
}

// beside returns the path of NAME.yaml in the folder of an arena's file, "" when the
// program carries one of that name and the folder does not.
func beside(file, name, field string, carried bool) (string, error) {
	path := filepath.Join(filepath.Dir(file), name+".yaml")
	switch _, err := os.Stat(path); {
	case err == nil:
		return path, nil
	case carried:
		return "", nil
	case !errors.Is(err, fs.ErrNotExist):
		return "", plainPathError(err)
	}
	return "", &form.Problem{File: file, Field: field, Text: fmt.Sprintf(
		"%s does not ship with the program, and there is no file %s; name a file with --%s", form.Quote(name), path, field)}
}

// readRules reads the rule sets named, common practice when none is.
func (s *source) readRules(a *app) error {
	names := s.ruleNames
	if len(names) == 0 {
		names = []string{rules.Default}
	}
	var sets []rules.Set
	for _, n := range names {
		set, err := readRuleSet(a, strings.TrimSpace(n))
		if err != nil {
			return fmt.Errorf("--rules: %w", err)
		}
		if slices.ContainsFunc(sets, func(before rules.Set) bool { return before.ID == set.ID }) {
			return fmt.Errorf("--rules: two rule sets have the id %s; leave one out or give it another id", set.ID)
		}
		sets = append(sets, set)
	}
	var err error
	s.Rules, err = rules.InForce(sets...)
	return err
}

func readRuleSet(a *app, name string) (set rules.Set, err error) {
	if set, err := rules.Shipped(name); err == nil {
		return set, nil
	}
	if _, err := os.Stat(name); err != nil && name != "-" {
		cure := "write " + form.Choices(rules.Names()) + ", or a file's path"
		if near := form.Nearest(name, rules.Names()); near != "" {
			cure = fmt.Sprintf("did you mean %q?", near)
		}
		return set, fmt.Errorf("%s is neither a rule set that ships with the program nor a file; %s", form.Quote(name), cure)
	}
	err = withInput(a, name, func(name string, r io.Reader) (err error) { set, err = rules.Read(name, r); return err })
	return set, err
}

// readKit reads the kit named, the built-in one when none is.
func (s *source) readKit(a *app) (err error) {
	switch {
	case !s.asksKit:
	case s.kitPath == "":
		s.Kit, err = kit.Default()
	default:
		err = withInput(a, s.kitPath, func(name string, r io.Reader) (err error) { s.Kit, err = kit.Read(name, r); return err })
	}
	return err
}

// openings returns the working holes and low windows with the ids asked for, all
// working holes without any.
func (s *source) openings(ids []string) ([]arena.Opening, error) {
	out, err := s.arena.Pick(ids)
	if err != nil {
		return nil, fmt.Errorf("--hole %w", err)
	}
	return out, nil
}

// lensFlags pick one lens and one body of the kit.
type lensFlags struct{ lens, body string }

func (f *lensFlags) flags(c *cobra.Command) {
	c.Flags().StringVar(&f.lens, "lens", "", "lens of the kit by its id (default: the usual 70-200 mm zoom)")
	c.Flags().StringVar(&f.body, "body", "", "body of the kit by its id (default: the lens's own, else its first)")
}

// of returns the lens and the body that were named, or the usual ones.
func (f lensFlags) of(s *source) (kit.Lens, kit.Body, error) {
	l, err := s.Kit.PickLens(f.lens, s.arena.Lenses)
	if err != nil {
		return l, kit.Body{}, fmt.Errorf("--%w", err)
	}
	b, err := s.Kit.PickBody(cmp.Or(f.body, l.Body))
	if err != nil {
		return l, b, fmt.Errorf("--%w", err)
	}
	return l, b, nil
}
