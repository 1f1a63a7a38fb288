package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/measure/unit"
)

// personFlags say who works at the holes.
type personFlags struct {
	eye     string
	leftEye bool
	floor   unit.Maybe[unit.Length]
	elbow   unit.Maybe[unit.Length]
}

func (f *personFlags) flags(c *cobra.Command) {
	fl := c.Flags()
	fl.StringVar(&f.eye, "eye", "", "who works: standing, sitting, wheelchair, or an eye height above the floor; tries the heights that suit (instead of --heights)")
	quantity(c, &f.floor, "floor", "length", unit.ParseOffset, "level of the floor behind the boards above the ice (default the arena's boards.floor, else the ice's)")
	fl.BoolVar(&f.leftEye, "left-eye", false, "the left eye is at the finder, so the head stands to its right")
	quantity(c, &f.elbow, "elbow", "length", unit.ParseLength, "room along the boards that each person needs, clear of the next hole and of a neighbour's seat (default not asked; 620 mm holds 19 men of 20)")
}

// person is who the flags describe.
func (f personFlags) person() (choose.Person, error) {
	var p choose.Person
	if f.eye != "" {
		var err error
		if p, err = choose.ParseEye(f.eye); err != nil {
			return p, fmt.Errorf("--eye: %w", err)
		}
	}
	p.Floor, p.LeftEye, p.Elbow = f.floor, f.leftEye, f.elbow.Or(0)
	if err := choose.CheckElbow(p.Elbow); err != nil {
		return p, fmt.Errorf("--elbow: %w", err)
	}
	return p, nil
}
