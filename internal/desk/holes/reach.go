package holes

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math"
	"net/http"
	"net/url"
	"strconv"

	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/measure/unit"
)

// heatStep is the side of a cell of the page's reach map: some pixels on a large screen, and quick enough for a hand that rests.
const heatStep = unit.Metre / 4

// heat returns the reach map's frame for the page to load the picture into, nil
// when it is not shown.
func (v liveView) heat() *chart.Heat {
	if !v.Address.Heat || v.Picked == nil {
		return nil
	}
	dim := v.arena.Rink.Dimensions()
	cells := func(l unit.Length) int { return int(math.Ceil(float64(l/heatStep) - 1e-9)) }
	q := url.Values{"hole": {v.Address.Hole}, "version": {strconv.Itoa(v.version)}}
	return chart.HeatFrame(cells(dim.Length), cells(dim.Width), heatStep.Metres(),
		"/arena/"+v.Address.Slug+"/reach.png?"+q.Encode(), "Reach of "+v.Address.Hole+": the stronger the colour, the more lenses can be aimed there with half of their light at the centre")
}

// reachPicture answers with the reach map of a hole as a picture, of a version or
// with the hole at another place.
func (d area) reachPicture(w http.ResponseWriter, r *http.Request) error {
	q := r.URL.Query()
	version, err := strconv.Atoi(q.Get("version"))
	if err != nil {
		version = 0
	}
	b, err := d.Book(r, r.PathValue("slug"), version)
	if err != nil {
		return err
	}
	doc := b.Arena
	if q.Get("station_m") != "" {
		to, err := placeEdits(q, q.Get("hole"))
		if err == nil {
			doc, _, err = d.Shelf.Edited(b, to)
		}
		if err != nil {
			return shell.Because(http.StatusUnprocessableEntity, "The hole cannot stand there.", err)
		}
	}
	seen, err := b.Live.Reach(r.Context(), doc, plan.ReachQuestion{Hole: q.Get("hole"), Step: heatStep})
	if err != nil {
		return shell.Because(http.StatusNotFound, "There is no reach map of this hole.", err)
	}
	var out bytes.Buffer
	if err := png.Encode(&out, reachImage(seen)); err != nil {
		return err
	}
	// A version never changes, and the address says which.
	if version > 0 {
		w.Header().Set("Cache-Control", "private, max-age=3600, immutable")
	} else {
		w.Header().Set("Cache-Control", "no-store")
	}
	shell.Send(w, r, http.StatusOK, "image/png", out.Bytes(), nil)
	return nil
}

// The reach map's colour stands over the ice of either theme: one blue, the more
// opaque the more lenses reach a place, so that it reads without colour, too.
var (
	reachColour = color.NRGBA{R: 0x2f, G: 0x7f, B: 0xc4}
	reachLeast  = 0.16 // opacity where one lens reaches, no unit
	reachMost   = 0.78 // where all do, no unit
)

// reachImage paints a reach map, end B at the right, the box side at the top.
func reachImage(r sight.Reach) image.Image {
	lenses, g := len(r.Lenses), r.Grid
	shades := make(color.Palette, 0, lenses+1)
	shades = append(shades, color.NRGBA{})
	for n := 1; n <= lenses; n++ {
		c := reachColour
		c.A = uint8(255*(reachLeast+(reachMost-reachLeast)*float64(n)/float64(lenses)) + 0.5)
		shades = append(shades, c)
	}
	img := image.NewPaletted(image.Rect(0, 0, g.Columns, g.Rows), shades)
	for row := range g.Rows {
		first, last := g.Run(row)
		for column := first; column < last; column++ {
			img.SetColorIndex(column, g.Rows-1-row, uint8(r.Layers[0].Count(g.Index(column, row))))
		}
	}
	return img
}
