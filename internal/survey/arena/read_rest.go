package arena

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// ZoneKinds lists the uses of a stretch of boards.
func ZoneKinds() []string {
	return []string{"bench", "penalty-box", "scorekeeper", "gate", "broadcast", "keep-out"}
}

func (rd *reader) zones(n form.Node) {
	if !n.Present() {
		return
	}
	rd.fresh()
	for _, item := range n.List(MaxZones) {
		m := item.Map(zoneFields...)
		z := Zone{
			ID:   rd.id(m),
			Kind: form.Parse(m.At("kind"), form.Words(ZoneKinds()...)),
			From: rd.station(m.At("from")),
			To:   rd.station(m.At("to")),
			Note: form.Optional(m.At("note"), form.Line),
		}
		if m.OK() && z.From == z.To {
			m.At("to").Failf("zone %s ends where it starts; it runs along rising stations from one to the other", z.ID)
		}
		rd.source(m, zoneFields)
		rd.a.Zones = append(rd.a.Zones, z)
	}
	rd.a.NoZones = len(rd.a.Zones) == 0
}

// mostLight is brighter than any rink: full sun is some 100,000 lx.
const mostLight unit.Illuminance = 200_000

func (rd *reader) light(n form.Node) {
	if !n.Present() {
		return
	}
	m := n.Map(lightFields...)
	rd.a.Light.Mains = form.Maybe(m.At("mains"), mains)
	rd.source(m, lightFields)
	rd.a.Light.Upright = form.Maybe(m.At("upright-share"), uprightShare)
	rd.a.Light.Colour = form.Maybe(m.At("colour"), colour)
	list := m.At("readings")
	if !list.Present() {
		return
	}
	for _, item := range list.List(MaxReadings) {
		rd.a.Light.Readings = append(rd.a.Light.Readings, rd.reading(item.Map(readingFields...)))
	}
}

// uprightShare reads the light on upright faces over that on a flat meter.
func uprightShare(s string) (float64, error) {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || !(v >= 0.05 && v <= 2) {
		return 0, fmt.Errorf("%s: write a share from 0.05 to 2, as 0.6", form.Quote(s))
	}
	return v, nil
}

// The colour temperatures that lamps of halls have, in kelvin, with room about them.
const leastColour, mostColour = 1700, 15000

// colour reads a correlated colour temperature in kelvin.
func colour(s string) (float64, error) {
	v, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(s), "K")), 64)
	if err != nil || !(v >= leastColour && v <= mostColour) {
		return 0, fmt.Errorf("%s: write the lamps' colour temperature, %d to %d K, as 4000 K", form.Quote(s), leastColour, mostColour)
	}
	return v, nil
}

func (rd *reader) reading(m form.Map) Reading {
	r := Reading{
		At: geom.Vec2{
			X: form.Parse(m.At("x"), unit.ParseOffset).Metres(),
			Y: form.Parse(m.At("y"), unit.ParseOffset).Metres(),
		},
		Height: form.Optional(m.At("height"), form.Within(0, mostHeight)),
		Lux:    form.Parse(m.At("light"), illuminance),
		Facing: form.Optional(m.At("facing"), form.Words(Facings()...)),
		Colour: form.Maybe(m.At("colour"), colour),
	}
	if m.OK() && !rd.a.Rink.Contains(r.At) {
		m.At("x").Failf("the reading lies off the ice; x runs along the rink from centre ice toward end B, y across toward the penalty boxes")
	}
	rd.source(m, readingFields)
	return r
}

func illuminance(s string) (unit.Illuminance, error) {
	e, err := unit.ParseIlluminance(s)
	if err == nil && (e <= 0 || e > mostLight) {
		err = fmt.Errorf("%s is out of range; write a reading above 0 and up to %g lx", form.Quote(s), float64(mostLight))
	}
	return e, err
}

func mains(s string) (float64, error) {
	switch strings.ToLower(strings.TrimSpace(strings.TrimSuffix(strings.ToLower(s), "hz"))) {
	case "50":
		return 50, nil
	case "60":
		return 60, nil
	}
	return 0, fmt.Errorf("%s is no mains frequency; write 50 Hz or 60 Hz", form.Quote(s))
}

func (rd *reader) dispensations(n form.Node) {
	if !n.Present() {
		return
	}
	for _, item := range n.List(MaxDispensations) {
		m := item.Map(dispensationFields...)
		d := Dispensation{
			Rule:      form.Parse(m.At("rule"), form.Line),
			By:        form.Parse(m.At("by"), form.Line),
			Reference: form.Parse(m.At("reference"), form.Line),
			Date:      form.Parse(m.At("date"), date),
		}
		if v := m.At("until"); v.Present() {
			d.Until = form.Parse(v, date)
		}
		if v := m.At("holes"); v.Present() {
			for _, h := range v.List(MaxHoles) {
				d.Holes = append(d.Holes, rd.knownHole(h))
			}
			if len(d.Holes) == 0 && v.OK() {
				v.Failf("is empty; name the holes, or remove the line when every hole is meant")
			}
		}
		rd.a.Dispensations = append(rd.a.Dispensations, d)
	}
}

func (rd *reader) knownHole(n form.Node) string {
	id := form.Parse(n, form.ID)
	var ids []string
	for _, h := range rd.a.Holes {
		if h.ID == id {
			return id
		}
		ids = append(ids, h.ID)
	}
	n.Failf("no hole %s in this arena; write %s", form.Quote(id), form.Choices(ids))
	return id
}

func date(s string) (string, error) {
	if _, err := time.Parse(time.DateOnly, s); err != nil {
		return "", fmt.Errorf("%s is no date; write it as 2026-01-31", form.Quote(s))
	}
	return s, nil
}

// names reads a list of ids, each once.
func (rd *reader) names(n form.Node, what string) []string {
	if !n.Present() {
		return nil
	}
	var out []string
	for _, item := range n.List(MaxLenses) {
		id := form.Parse(item, form.ID)
		if slices.Contains(out, id) && item.OK() {
			item.Failf("%s %s is listed twice; keep one", what, form.Quote(id))
		}
		out = append(out, id)
	}
	return out
}
