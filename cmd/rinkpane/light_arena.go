package main

import (
	"fmt"
	"io"
	"strings"

	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/tell/wire"
)

// runLightArena answers for every hole and zone of an arena.
func runLightArena(a *app, path string, f lightFlags) error {
	ar, err := readArena(a, path)
	if err != nil {
		return err
	}
	q, err := f.request(a, ar)
	if err != nil {
		return err
	}
	r, err := light.Compute(ar, q)
	if err != nil {
		return err
	}
	out := struct {
		light.Report
		Assumed []wire.Assumption `json:"assumed"`
	}{r, wire.Assumed(r.Assumed, ar.Units)}
	if err := a.print(out, func(w io.Writer) {
		lightText{w, ar.Units}.report(r, q)
		writeAssumed(w, r.Assumed, ar.Units)
	}); err != nil {
		return err
	}
	if !r.Known {
		return errAnswerNo
	}
	return nil
}

// request gathers the flags; with none of shutter, stop and ISO the usual setting is meant.
func (f lightFlags) request(a *app, ar arena.Arena) (light.Request, error) {
	k, err := readKit(a, f.kit)
	if err != nil {
		return light.Request{}, err
	}
	lens, body, err := pickKit(k, ar, f.lens, f.body)
	if err != nil {
		return light.Request{}, err
	}
	q := light.Request{Wanted: f.wanted(), Calibration: f.constant(), Uniform: f.lux, Mains: f.mains, Holes: f.holes, Body: body, Lens: unit.Known(lens)}
	if !known(f.shutter) && !known(f.stop) && !known(f.iso) {
		q.Wanted = light.Usual()
	}
	return q, nil
}

func known[T any](m unit.Maybe[T]) bool {
	_, ok := m.Get()
	return ok
}

// readKit reads the kit file that a user named, or the built-in one.
func readKit(a *app, path string) (kit.Kit, error) {
	if path == "" {
		return kit.Default()
	}
	var k kit.Kit
	err := withInput(a, path, func(name string, r io.Reader) (err error) {
		k, err = kit.Read(name, r)
		return err
	})
	return k, err
}

// pickKit returns the lens and the body that were named, or the usual ones.
func pickKit(k kit.Kit, ar arena.Arena, lens, body string) (kit.Lens, kit.Body, error) {
	l, err := k.PickLens(lens, ar.Lenses)
	if err != nil {
		return l, kit.Body{}, fmt.Errorf("--%w", err)
	}
	b, err := k.PickBody(body)
	if err != nil {
		return l, b, fmt.Errorf("--%w", err)
	}
	return l, b, nil
}

// lightText writes a light report for people.
type lightText struct {
	w     io.Writer
	units unit.System
}

func (t lightText) report(r light.Report, q light.Request) {
	fmt.Fprintf(t.w, "%s\n", r.Arena)
	if !r.Known {
		fmt.Fprintln(t.w)
		t.notes(r)
		return
	}
	t.head(r, q)
	t.zones(r)
	for _, h := range r.Holes {
		t.hole(h)
	}
	if len(r.Notes) > 0 {
		fmt.Fprintln(t.w)
		t.notes(r)
	}
}

func (t lightText) head(r light.Report, q light.Request) {
	if r.Readings > 0 {
		fmt.Fprintf(t.w, "%d readings", r.Readings)
	} else {
		fmt.Fprint(t.w, "the same light everywhere")
	}
	if r.Ice != nil {
		fmt.Fprintf(t.w, ": ice %s to %s, median %s, uniformity %.2f", t.lux(r.Ice.LowLx), t.lux(r.Ice.HighLx), t.lux(r.Ice.MedianLx), r.Ice.Uniformity)
	}
	fmt.Fprintf(t.w, "\nasked    %s\n", askedText(q))
	fmt.Fprintf(t.w, "kit      lens %s on %s\n", r.Lens, r.Body)
	if r.MainsHz != nil {
		times := make([]string, len(r.FlickerSafeS))
		for i, s := range r.FlickerSafeS {
			times[i] = unit.Shutter(s).Format()
		}
		wrapText(t.w, "flicker  ", fmt.Sprintf("safe on %v Hz mains: %s", *r.MainsHz, strings.Join(times, ", ")))
	}
}

// askedText tells the two settings given.
func askedText(q light.Request) string {
	var parts []string
	if v, ok := q.Wanted.Shutter.Get(); ok {
		parts = append(parts, v.Format())
	}
	if v, ok := q.Wanted.Stop.Get(); ok {
		parts = append(parts, v.Format())
	}
	if v, ok := q.Wanted.ISO.Get(); ok {
		parts = append(parts, fmt.Sprintf("ISO %g", float64(v)))
	}
	return strings.Join(parts, ", ")
}

func (t lightText) lux(v float64) string { return unit.Illuminance(v).Format(t.units) }

// zones prints what is the same for every hole: light and exposure by zone.
func (t lightText) zones(r light.Report) {
	if len(r.Holes) == 0 {
		return
	}
	solved := r.Holes[0].Zones[0].Solved
	name := map[string]string{"iso": "ISO", "shutter": "shutter", "stop": "stop"}[solved]
	rows := [][]string{}
	for _, z := range r.Holes[0].Zones {
		exact, mark := solvedText(z.ExposureReport.Solved, z)
		rows = append(rows, []string{
			z.Zone, t.lux(z.LowLx), t.lux(z.MedianLx), t.lux(z.HighLx), fmt.Sprintf("%.2f", z.EV100),
			exact, mark[1], mark[0], mark[2], fmt.Sprintf("%.0f %%", 100*z.Extrapolated),
		})
	}
	fmt.Fprintln(t.w)
	writeTable(t.w, []string{"zone", "low", "median", "high", "EV100", name, "mark", "darkest", "brightest", "outside"}, rows)
}

// solvedText returns the solved setting at the median, exact, and the marks at
// the lowest, the median and the highest light.
func solvedText(solved string, z light.Row) (exact string, marks [3]string) {
	switch solved {
	case "shutter":
		return unit.Shutter(z.ShutterS).Format(), [3]string{z.Dark.ShutterNominal, z.ShutterNominal, z.Bright.ShutterNominal}
	case "stop":
		return unit.Stop(z.Stop).Format(), [3]string{z.Dark.StopNominal, z.StopNominal, z.Bright.StopNominal}
	}
	mark := func(v float64) string { return fmt.Sprintf("%g", v) }
	return fmt.Sprintf("%.0f", z.ISO), [3]string{mark(z.Dark.ISONominal), mark(z.ISONominal), mark(z.Bright.ISONominal)}
}

// hole prints what differs from hole to hole: distance and depth of field.
func (t lightText) hole(h light.HoleLight) {
	rows := [][]string{}
	for _, z := range h.Zones {
		near, far, focal := "-", "-", "-"
		if z.Depth != nil {
			focal = (unit.Length(z.Depth.FocalMM) * unit.Millimetre).Format(unit.Metric)
			near, far = t.away(z.Depth.NearM), "infinity"
			if z.Depth.FarM != nil {
				far = t.away(*z.Depth.FarM)
			}
		}
		rows = append(rows, []string{z.Zone, t.away(z.DistanceM), focal, near, far, warnings(z)})
	}
	fmt.Fprintln(t.w)
	writeTable(t.w, []string{"hole " + h.Hole, "distance", "framed at", "sharp from", "to", ""}, rows)
}

// away prints a distance on the ice to a tenth of a metre or foot.
func (t lightText) away(m float64) string {
	if t.units == unit.Imperial {
		return fmt.Sprintf("%.1f ft", unit.Length(m).Feet())
	}
	return fmt.Sprintf("%.1f m", m)
}

// warnings says what the kit cannot do.
func warnings(z light.Row) string {
	var out []string
	if z.OverISO {
		out = append(out, "over the ISO limit")
	}
	if z.PastStop {
		out = append(out, "wider than the lens")
	}
	return strings.Join(out, ", ")
}

func (t lightText) notes(r light.Report) {
	for _, n := range r.Notes {
		wrapText(t.w, "note: ", n)
	}
}
