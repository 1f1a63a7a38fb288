package main

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

type panelFlags struct {
	index    unit.Maybe[float64]
	material unit.Maybe[glass.Material]
	thick    unit.Maybe[unit.Length]
	angle    unit.Maybe[unit.Angle]
}

func panelCommand(a *app) *cobra.Command {
	var f panelFlags
	c := &cobra.Command{
		Use:   "panel",
		Short: "What shooting through a clear panel costs",
		Long: `Says what a ray suffers in a clear plane-parallel panel: how far it is shifted
square to itself, which way it runs inside, and what share of unpolarised light
comes through both faces. Scratches, coatings and tint are left out.`,
		Example: `  # half an inch of acrylic at 45 degrees from the normal
  rinkpane panel --index 1.491 --thick "1/2 in" --angle 45

  # the index of a material of this program
  rinkpane panel --material polycarbonate --thick "12 mm"`,
		Args: noArgument,
		RunE: func(c *cobra.Command, _ []string) error { return runPanel(a, c, f) },
	}
	quantity(c, &f.index, "index", "number", parseNumber, "refractive index: "+indices())
	quantity(c, &f.material, "material", "name", form.Words(glass.Materials()...), "instead of --index: "+strings.Join(glass.Names(nil), ", "))
	quantity(c, &f.thick, "thick", "length", unit.ParseLength, `thickness, as "12.7 mm"`)
	quantity(c, &f.angle, "angle", "angle", unit.ParseAngle, "of the ray from the panel's normal, degrees, below 90 (default 0)")
	return c
}

// parseNumber reads a plain decimal number.
func parseNumber(s string) (float64, error) {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || v-v != 0 { // NaN and infinities differ from themselves
		return 0, errors.New("not a number: " + strconv.Quote(s) + `; write one as "1.49"`)
	}
	return v, nil
}

// indices lists the materials' refractive indices: "1.491 acrylic, ...".
func indices() string {
	var list []string
	for _, p := range glass.Table() {
		list = append(list, fmt.Sprintf("%.3f %s", p.Index, p.Name))
	}
	return strings.Join(list, ", ")
}

// refraction returns the index given, or that of the material named.
func (f panelFlags) refraction() (float64, error) {
	index, given := f.index.Get()
	material, named := f.material.Get()
	switch {
	case given && named:
		return 0, errors.New("--index and --material together: give one or the other")
	case given:
		return index, nil
	case !named:
		return 0, errors.New("panel needs --index or --material; see the example in rinkpane panel --help")
	}
	p, err := material.Properties()
	return p.Index, err
}

func runPanel(a *app, c *cobra.Command, f panelFlags) error {
	if err := needFlags(c, "thick"); err != nil {
		return err
	}
	index, err := f.refraction()
	if err != nil {
		return err
	}
	sys, err := a.system(unit.SystemOf(c.Flags().Lookup("thick").Value.String()))
	if err != nil {
		return err
	}
	plate, angle := optics.Plate{Index: index, Thickness: f.thick.Or(0)}, f.angle.Or(0)
	r, err := plate.Report(angle)
	if err != nil {
		return err
	}
	return a.print(wire.Panel(r), func() string { return words.Panel(plate, angle, r, sys) })
}
