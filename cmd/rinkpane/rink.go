package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

// rinkFlags are a rink by name or by its dimensions.
type rinkFlags struct {
	standard string
	length   unit.Maybe[unit.Length]
	width    unit.Maybe[unit.Length]
	corner   unit.Maybe[unit.Length]
	markings map[string]*unit.Maybe[unit.Length]
}

// markingFlags are the flags of own markings, with the dimension each one sets.
var markingFlags = []struct {
	name, usage string
	set         func(*rink.Markings) *unit.Length
}{
	{"goal-line", "end boards to the goal line", func(m *rink.Markings) *unit.Length { return &m.GoalLine }},
	{"blue-line", "end boards to the blue line", func(m *rink.Markings) *unit.Length { return &m.BlueLine }},
	{"circle-radius", "outer radius of the end-zone circles", func(m *rink.Markings) *unit.Length { return &m.CircleRadius }},
	{"spot-from-goal", "goal line to the end-zone spots", func(m *rink.Markings) *unit.Length { return &m.SpotFromGoal }},
}

// ownDimensions names the flags of a rink of one's own.
func ownDimensions() []string {
	out := []string{"length", "width", "corner-radius"}
	for _, m := range markingFlags {
		out = append(out, m.name)
	}
	return out
}

func rinkCommand(a *app) *cobra.Command {
	var f rinkFlags
	c := &cobra.Command{
		Use:   "rink",
		Short: "Measures of a rink: perimeter, ice area, landmarks on the boards",
		Long: `Prints a rink's measures and, where its markings are known, the station and the
place of each corner's landmarks. Stations run along the boards' rink face,
counter-clockwise seen from above, from the bench-side end of the red line.`,
		Example: `  # one of the built-in rinks
  rinkpane rink --standard north-american

  # a rink of your own, then with its goal lines
  rinkpane rink --length "56 m" --width "26 m" --corner-radius "7 m"
  rinkpane rink --length "56 m" --width "26 m" --corner-radius "7 m" --goal-line "4 m"`,
		Args: noArgument,
		RunE: func(c *cobra.Command, _ []string) error { return runRink(a, c, f) },
	}
	f.flags(c)
	return c
}

// flags adds the flags to a command.
func (f *rinkFlags) flags(c *cobra.Command) {
	f.markings = map[string]*unit.Maybe[unit.Length]{}
	c.Flags().StringVar(&f.standard, "standard", "", "a built-in rink: "+strings.Join(rink.Standards(), " or "))
	quantity(c, &f.length, "length", "length", unit.ParseLength, `along the rink, as "200 ft"`)
	quantity(c, &f.width, "width", "length", unit.ParseLength, `across the rink, as "85 ft"`)
	quantity(c, &f.corner, "corner-radius", "length", unit.ParseLength, `of the boards' corners, as "28 ft"`)
	for _, m := range markingFlags {
		f.markings[m.name] = new(unit.Maybe[unit.Length])
		quantity(c, f.markings[m.name], m.name, "length", unit.ParseLength, m.usage+", with own dimensions")
	}
}

func runRink(a *app, c *cobra.Command, f rinkFlags) error {
	r, own, err := f.rink(c)
	if err != nil {
		return err
	}
	sys, err := a.system(own)
	if err != nil {
		return err
	}
	return a.print(wire.Rink(r), func() string { return words.Rink(r, sys) })
}

// rink returns the rink that the flags name and the system it is written in.
func (f rinkFlags) rink(c *cobra.Command) (rink.Rink, unit.System, error) {
	named := c.Flags().Changed("standard")
	own := anyChanged(c, ownDimensions()...)
	switch {
	case named && own:
		return rink.Rink{}, 0, errors.New("--standard and own dimensions together: give one or the other")
	case named:
		r, err := rink.Standard(f.standard)
		if err != nil {
			return r, 0, fmt.Errorf("--standard: %w", err)
		}
		if f.standard == rink.NorthAmerican {
			return r, unit.Imperial, nil
		}
		return r, unit.Metric, nil
	case !own:
		return rink.Rink{}, 0, fmt.Errorf("%s needs --standard %s, or --length, --width and --corner-radius", c.Name(), strings.Join(rink.Standards(), "|"))
	}
	if err := needFlags(c, "length", "width", "corner-radius"); err != nil {
		return rink.Rink{}, 0, err
	}
	r, err := rink.New(f.dimensions())
	return r, unit.SystemOf(c.Flags().Lookup("length").Value.String()), err
}

func (f rinkFlags) dimensions() rink.Dimensions {
	d := rink.Dimensions{Length: f.length.Or(0), Width: f.width.Or(0), CornerRadius: f.corner.Or(0)}
	for _, m := range markingFlags {
		*m.set(&d.Markings) = f.markings[m.name].Or(0)
	}
	return d
}
