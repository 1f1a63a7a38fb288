package arena

import (
	"slices"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
)

// Check proves the document sound and returns the arena. The error is a
// [*form.Problem]: the first thing wrong, with file, line, column and field. Each call
// returns slices of its own.
func (d *Document) Check() (Arena, error) {
	a, err := d.check()
	a.Panes, a.Holes, a.Windows = slices.Clone(a.Panes), slices.Clone(a.Holes), slices.Clone(a.Windows)
	a.Zones, a.Dispensations, a.Light.Readings = slices.Clone(a.Zones), slices.Clone(a.Dispensations), slices.Clone(a.Light.Readings)
	return a, err
}

func check(d *form.Document, day string) (Arena, error) {
	f := d.Afresh()
	var rd reader
	rd.arena(f.Root().Map(arenaFields...))
	if err := f.Err(); err != nil {
		return Arena{}, err
	}
	rd.a.Day = day
	return rd.a, nil
}

// reader fills an arena group by group. Each step relies on those before it:
// places need the rink, panes the boards, holes the panes. After the form's
// first problem every value reads as zero and further problems are not heard.
type reader struct {
	a   Arena
	ids map[string]bool // ids of holes, windows and zones, each list by itself
}

func (rd *reader) arena(m form.Map) {
	form.Parse(m.At("rinkpane"), form.Words(Kind))
	rd.a.Name = form.Parse(m.At("name"), form.Line)
	rd.a.Place = form.Optional(m.At("place"), form.Line)
	rd.a.Note = form.Optional(m.At("note"), form.Line)
	rd.a.Units = form.Parse(m.At("units"), unit.ParseSystem)
	rd.source(m, []string{"source"})
	rd.rink(m.At("rink").Map(rinkFields...))
	if !m.OK() {
		return
	}
	rd.boards(m.At("boards").Map(boardsFields...))
	rd.panes(m.At("panes"), rd.paneDefaults(m.At("glass")))
	if !m.OK() {
		return
	}
	rd.holes(m.At("holes"))
	rd.windows(m.At("low-windows"))
	rd.zones(m.At("zones"))
	rd.light(m.At("light"))
	rd.game(m.At("game"))
	rd.dispensations(m.At("dispensations"))
	rd.a.Lenses = rd.names(m.At("lenses"), "lens")
	rd.a.Kit = form.Optional(m.At("kit"), form.ID)
	rd.a.RuleSets = rd.names(m.At("rules"), "rule set")
}

// fresh begins a list whose ids must differ.
func (rd *reader) fresh() { rd.ids = make(map[string]bool) }

// id reads an id that no earlier item of the list has.
func (rd *reader) id(m form.Map) string {
	id := form.Parse(m.At("id"), form.ID)
	rd.taken(m, id)
	return id
}

// taken notes an id of the list's item m.
func (rd *reader) taken(m form.Map, id string) {
	if rd.ids[id] && id != "" {
		m.At("id").Failf("%s is the id of an earlier one in this list; give each its own", form.Quote(id))
	}
	rd.ids[id] = true
}
