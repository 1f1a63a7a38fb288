package main

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/starter"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

type surveyFlags struct {
	rink   rinkFlags
	pane   unit.Maybe[unit.Length]
	plan   struct{ name, place, markings, panes, list, benches string }
	out    target
	schema bool
	kit    bool
}

func surveyCommand(a *app) *cobra.Command {
	var f surveyFlags
	c := &cobra.Command{
		Use:   "survey [ARENA]",
		Short: "Begin an arena file, or tell what one still lacks",
		Long: `With a rink's standard or dimensions: writes a commented arena file to start from,
with a whole schedule of panes, doors, zones and a few planned holes. It goes to
standard output, or to the file named by --out.

With an arena file: tells what the survey lacks and what each gap costs. Exit 0;
exit 2 when the file cannot be read as an arena.`,
		Example: `  # begin a survey: panes 4 ft wide all round
  rinkpane survey --standard north-american --pane "4 ft" --out my.yaml

  # a rink of your own size, its panes in a sentence; the rest by the book or in proportion
  rinkpane survey --length "60 m" --width "26 m" --panes "1.2 m, 1.8 m at the ends" --out my.yaml

  # the panes from the contractor's list (id,from,width,count,height,thickness,material,curved,gate)
  rinkpane survey --standard international --pane-list panes.csv --out my.yaml

  # what is still missing?
  rinkpane survey my.yaml

  # the format, for editors that check while one types
  rinkpane survey --schema > arena.schema.json

  # the built-in bodies and lenses, to measure and edit
  rinkpane survey --kit > my-kit.yaml`,
		Args: atMostOne,
		RunE: func(c *cobra.Command, args []string) error { return runSurvey(a, c, f, args) },
	}
	f.rink.flags(c)
	quantity(c, &f.pane, "pane", "length", unit.ParseLength, "width of most panes (default 4 ft or 1.2 m)")
	for _, t := range []struct {
		to          *string
		name, usage string
	}{
		{&f.plan.name, "name", "the rink's name"},
		{&f.plan.place, "place", "its town or building"},
		{&f.plan.markings, "markings", "of own dimensions: book, proportion or none (default: the book where the length is its, else in proportion)"},
		{&f.plan.panes, "panes", `the panes in a sentence, as "126 panes of 4 ft, 6 ft at the ends, gates at 20 ft and 180 ft"`},
		{&f.plan.list, "pane-list", "the panes from a list, a CSV file with a line for each"},
		{&f.plan.benches, "benches", `where the players' benches stand: "one side" (default) or opposite`},
	} {
		c.Flags().StringVar(t.to, t.name, "", t.usage)
	}
	f.out.flags(c, "out", "write the new arena file here")
	c.Flags().BoolVar(&f.schema, "schema", false, "print the JSON Schema of the arena file, and do nothing else")
	c.Flags().BoolVar(&f.kit, "kit", false, "print the built-in kit of bodies and lenses, to edit, and do nothing else")
	return c
}

func runSurvey(a *app, c *cobra.Command, f surveyFlags, args []string) error {
	begins := anyChanged(c, append(ownDimensions(), "standard", "pane", "out", "force", "name", "place", "markings", "panes", "pane-list", "benches")...)
	switch {
	case (f.schema || f.kit) && (begins || len(args) > 0 || f.schema && f.kit):
		return errors.New("--schema and --kit each stand alone: they print a text and do nothing else")
	case f.schema:
		a.out.Write(arena.Schema())
		return nil
	case f.kit:
		text := string(kit.DefaultYAML())
		return a.print(wire.Object{"document", text}, func() string { return text })
	case begins && len(args) > 0:
		return errors.New("an arena file and a rink to begin one: give one or the other")
	case begins:
		return beginSurvey(a, c, f)
	case len(args) == 0:
		return errors.New(`survey needs an arena file, or a rink to begin one, as in: rinkpane survey --standard north-american --out my.yaml`)
	}
	return reportSurvey(a, args[0])
}

func beginSurvey(a *app, c *cobra.Command, f surveyFlags) error {
	l, err := f.layout(a, c)
	if err != nil {
		return err
	}
	text, ar, err := starter.Begin(l)
	if err != nil {
		return fmt.Errorf("survey: %w", err)
	}
	notes := l.Notes(ar)
	if f.out.path == "" {
		return a.print(wire.Object{"document", string(text), "panes", len(ar.Panes), "holes", len(ar.Holes), "notes", notes}, func() string { return string(text) })
	}
	if err := f.out.write(text); err != nil {
		return err
	}
	return a.print(wire.Object{"path", f.out.path, "panes", len(ar.Panes), "holes", len(ar.Holes), "notes", notes}, func() string { return words.Begun(f.out.path, ar, notes) })
}

func reportSurvey(a *app, path string) error {
	var from source
	if err := from.open(a, path); err != nil {
		return err
	}
	rep := starter.Missing(from.arena)
	return a.print(wire.Missing(from.arena, rep), func() string { return words.Survey(from.arena, rep, from.arena.Units) })
}
