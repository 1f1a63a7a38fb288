package main

import (
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
	"example.org/rinkpane/internal/survey/starter"
)

// layout returns what the flags ask a first survey to be.
func (f surveyFlags) layout(a *app, c *cobra.Command) (starter.Layout, error) {
	l := starter.Layout{Name: f.plan.name, Place: f.plan.place, Standard: f.rink.standard, Benches: starter.Benches(f.plan.benches)}
	fills := anyChanged(c, ownDimensions()...) && !c.Flags().Changed("standard")
	for _, m := range markingFlags {
		fills = fills && !c.Flags().Changed(m.name)
	}
	if !fills && f.plan.markings != "" {
		return l, errors.New("--markings fills in those of own dimensions; leave it out with --standard, or where a flag gives a marking")
	}
	if !fills {
		r, own, err := f.rink.rink(c)
		if err != nil {
			return l, err
		}
		l.Rink, l.Units = r, own
	} else if err := needFlags(c, "length", "width"); err != nil {
		return l, err
	}
	sys, err := a.system(unit.SystemOf(c.Flags().Lookup("length").Value.String()))
	if !fills {
		sys, err = a.system(l.Units)
	}
	if err != nil {
		return l, err
	}
	l.Units, l.Pane = sys, f.pane.Or(starter.UsualPane(sys))
	if fills {
		if l, err = l.OfSize(f.rink.dimensions(), rink.Filling(f.plan.markings)); err != nil {
			return l, fmt.Errorf("survey: %w", err)
		}
	}
	return f.panes(a, l)
}

// panes reads the sentence, or the list, that tells the panes.
func (f surveyFlags) panes(a *app, l starter.Layout) (starter.Layout, error) {
	var err error
	if f.plan.panes != "" && f.plan.list != "" {
		return l, errors.New("--panes and --pane-list: give one or the other")
	}
	if l.Wish, err = starter.ReadWish(f.plan.panes); err != nil {
		return l, fmt.Errorf("--panes: %w", err)
	}
	if f.plan.list != "" {
		err = withInput(a, f.plan.list, func(name string, r io.Reader) (err error) {
			l.List, err = starter.ReadList(name, r)
			return err
		})
	}
	return l, err
}
