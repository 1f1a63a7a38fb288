package survey

import (
	"encoding/json"
	"fmt"
	"html/template"
	"net/http"

	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// mapPage marks zones and light readings on the map: a tap, or the keyboard's cross,
// fills in the places of two forms, which are saved as every other edit.
type mapPage struct {
	shell.Frame
	Way      string
	Address  shell.Address
	Name     string
	Base     int
	Parts    []shell.Option
	Map      template.HTML
	At       chart.MapFrame
	Ice      float64 // length of the ice, its width, and the corners' radius, metres
	Wide     float64
	Radius   float64
	Imperial bool
	Readings string // where light was read, as JSON: [[x, y, lux], ...]
	Kinds    []Option
	NextID   string
	Zones    []arena.Zone
	Count    int // of readings
}

func (d area) mapPage(w http.ResponseWriter, r *http.Request) error {
	b, a, at, err := d.NewestArena(r)
	if err != nil {
		return err
	}
	parts, err := d.parts(r, b, at, onMap)
	if err != nil {
		return err
	}
	content := chart.Content{Arena: a, Bare: true}
	dim := a.Rink.Dimensions()
	page := mapPage{Frame: d.Frame(r, "Mark on the map of "+b.Document.Name), Way: "survey", Address: at, Name: b.Document.Name, Base: b.Version.Number, Parts: parts,
		Map: shell.Still(a), At: content.MapFrame(shell.MapWidth), Ice: dim.Length.Metres(), Wide: dim.Width.Metres(), Radius: dim.CornerRadius.Metres(),
		Imperial: at.Units(a.Units) == unit.Imperial, Kinds: alike(arena.ZoneKinds()...), NextID: nextZone(a), Zones: a.Zones, Count: len(a.Light.Readings)}
	places := [][3]float64{}
	for _, r := range a.Light.Readings {
		places = append(places, [3]float64{r.At.X, r.At.Y, float64(r.Lux)})
	}
	data, err := json.Marshal(places)
	if err != nil {
		return err
	}
	page.Readings = string(data)
	return d.Page(w, r, http.StatusOK, "map.tmpl", page)
}

// nextZone is the first free name of a zone: zone-1, zone-2 ...
func nextZone(a arena.Arena) string {
	taken := map[string]bool{}
	for _, z := range a.Zones {
		taken[z.ID] = true
	}
	for n := 1; ; n++ {
		if id := fmt.Sprintf("zone-%d", n); !taken[id] {
			return id
		}
	}
}
