package words

import (
	"fmt"
	"strings"

	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/table"
)

// LightReport tells the light of an arena: what is the same for every hole,
// then each hole's distances and depths of field, then what a reader must know.
func LightReport(r light.Report, asked optics.Wanted, sys unit.System) string {
	var b strings.Builder
	b.WriteString(r.Arena + "\n")
	if r.Known {
		lightHead(&b, r, asked, sys)
	}
	if r.Known && len(r.Holes) > 0 {
		rows := r.Holes[0].Zones
		b.WriteString("\n" + zoneLight(rows[0].Solved).Of("", rows, sys).Text())
	}
	for _, h := range r.Holes {
		b.WriteString("\n" + fromHole(h.Hole).Of("", h.Zones, sys).Text())
	}
	if len(r.Notes) > 0 {
		b.WriteString("\n")
	}
	for _, n := range say.All(r.Notes, sys) {
		b.WriteString(table.Hang("note: ", n))
	}
	b.WriteString(Lines(Assumed(r.Assumed, sys)...))
	return b.String()
}

func lightHead(b *strings.Builder, r light.Report, asked optics.Wanted, sys unit.System) {
	source := "the same light everywhere"
	if r.Readings > 0 {
		source = fmt.Sprintf("%d readings", r.Readings)
	}
	b.WriteString(source)
	if i := r.Ice; i != nil {
		fmt.Fprintf(b, ": ice %s to %s, median %s, uniformity %.2f", i.Low.Format(sys), i.High.Format(sys), i.Median.Format(sys), i.Uniformity)
	}
	var given []string
	if v, ok := asked.Shutter.Get(); ok {
		given = append(given, v.Format())
	}
	if v, ok := asked.Stop.Get(); ok {
		given = append(given, v.Format())
	}
	if v, ok := asked.ISO.Get(); ok {
		given = append(given, fmt.Sprintf("ISO %g", float64(v)))
	}
	fmt.Fprintf(b, "\nasked    %s\nkit      lens %s on %s\n", strings.Join(given, ", "), r.Lens, r.Body)
	if hz, ok := r.Mains.Get(); ok {
		b.WriteString(table.Hang("flicker  ", FlickerSafe(hz, r.FlickerSafe)))
	}
}

// FlickerSafe lists the flicker-safe times of mains in Hz.
func FlickerSafe(mains float64, safe []unit.Shutter) string {
	times := make([]string, len(safe))
	for i, t := range safe {
		times[i] = t.Format()
	}
	return fmt.Sprintf("safe on %v Hz mains: %s", mains, strings.Join(times, ", "))
}

// zoneLight are the columns of what is the same for every hole: light and the
// setting that was solved, exact and as marks from the lowest light to the highest.
func zoneLight(solved string) table.Fields[light.Row] {
	lux := func(head string, of func(light.Row) unit.Illuminance) table.Field[light.Row] {
		return inUnits(head, "", true, func(l light.Row, sys unit.System) table.Cell { return table.Words(of(l).Format(sys)) })
	}
	mark := func(head string, of func(light.Row) optics.Exposure) table.Field[light.Row] {
		return numbered(head, "", func(l light.Row) string {
			shutter, stop, iso := of(l).Marks()
			return map[string]optics.Mark{"shutter": shutter, "stop": stop, "iso": iso}[solved].Text
		})
	}
	return table.Fields[light.Row]{
		left("zone", "", func(l light.Row) string { return l.Zone }),
		lux("low", func(l light.Row) unit.Illuminance { return l.Low }),
		lux("median", func(l light.Row) unit.Illuminance { return l.Median }),
		lux("high", func(l light.Row) unit.Illuminance { return l.High }),
		numbered("EV100", "", func(l light.Row) string { return fmt.Sprintf("%.2f", l.EV100) }),
		numbered(map[string]string{"iso": "ISO", "shutter": "shutter", "stop": "stop"}[solved], "", func(l light.Row) string {
			return map[string]string{"iso": fmt.Sprintf("%.0f", float64(l.ISO)), "shutter": l.Shutter.Format(), "stop": l.Stop.Format()}[solved]
		}),
		mark("mark", func(l light.Row) optics.Exposure { return l.Exposure }),
		mark("faces", func(l light.Row) optics.Exposure { return l.Faces }),
		mark("darkest", func(l light.Row) optics.Exposure { return l.Dark }),
		mark("brightest", func(l light.Row) optics.Exposure { return l.Bright }),
		numbered("outside", "", func(l light.Row) string { return Percent(l.Extrapolated) }),
	}
}

// fromHole are the columns of what differs from hole to hole.
func fromHole(hole string) table.Fields[light.Row] {
	out := Light().Pick("zone", "distance_m", "framed_mm", "near_m", "far_m")
	out[0].Head, out[1].Head = "hole "+hole, "distance"
	return append(out, left("", "", func(l light.Row) string {
		var cannot []string
		switch {
		case l.OverISO:
			cannot = append(cannot, "over the ISO limit")
		case l.OverISOFaces:
			cannot = append(cannot, "faces over the ISO limit")
		}
		if l.PastStop {
			cannot = append(cannot, "wider than the lens")
		}
		return strings.Join(cannot, ", ")
	}))
}
