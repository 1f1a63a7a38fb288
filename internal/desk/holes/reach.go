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
// when it is not shown or no lens goes in.
func (v liveView) heat() *chart.Heat {
	if !v.Address.Heat || v.Picked == nil {
		return nil
	}
	dim := v.arena.Rink.Dimensions()
	cells := func(l unit.Length) int { return int(math.Ceil(float64(l/heatStep) - 1e-9)) }
	f, ok := v.lens()
	if !ok {
		return nil
	}
	q := url.Values{"hole": {v.Address.Hole}, "version": {strconv.Itoa(v.version)}, "lens": {f.Lens.ID}}
	return chart.HeatFrame(cells(dim.Length), cells(dim.Width), heatStep.Metres(),
		"/arena/"+v.Address.Slug+"/reach.png?"+q.Encode(), "Reach of "+v.Address.Hole+" by the "+f.Lens.Name+": the darker, the larger a player stands in the frame; striped grey is not seen")
}

// reachPicture answers with the reach map of a lens in a hole as a picture, of a version
// or with the hole at another place.
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
	lens, _ := b.Maker.Kit.Lens(q.Get("lens"))
	body := b.Maker.Kit.BodyOf(lens)
	var out bytes.Buffer
	if err := png.Encode(&out, reachImage(seen.Grid, plan.Sizes(seen, 0, q.Get("lens"), body))); err != nil {
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

// sizeBands are the shades of the reach map: how large a skater stands in the frame
// there, up to a share of its height. Their lightness falls steadily, so that they
// read in grey and to any eye; assets/plan.css has the same for the legend.
var sizeBands = []struct {
	Under  float64 // share of the frame's height
	Words  string
	Colour color.NRGBA
}{
	{1. / 8, "under 1/8 of the frame's height", color.NRGBA{0xe6, 0xf1, 0xf9, 255}},
	{1. / 4, "to 1/4", color.NRGBA{0xb2, 0xd2, 0xea, 255}},
	{1. / 2, "to 1/2", color.NRGBA{0x76, 0xac, 0xd4, 255}},
	{1, "to all of it", color.NRGBA{0x38, 0x7b, 0xb2, 255}},
	{math.Inf(1), "larger than the frame", color.NRGBA{0x12, 0x49, 0x75, 255}},
}

// What is not seen is grey with darker stripes: a tint that no size has.
var (
	unseenColour = color.NRGBA{0xb9, 0xc0, 0xc5, 255}
	unseenStripe = color.NRGBA{0x9d, 0xa6, 0xac, 255}
)

const unseenPeriod = 8 // cells from stripe to stripe

// Sizes are the reach map's shades for the legend, by their places in the style sheet.
func (p arenaPage) Sizes() []shell.Choice {
	var out []shell.Choice
	for i, b := range sizeBands {
		out = append(out, shell.Choice{Value: strconv.Itoa(i + 1), Name: b.Words})
	}
	return out
}

// reachImage paints how large a skater stands in the frame at each place of a grid,
// end B at the right, the box side at the top; see [plan.Sizes].
func reachImage(g *sight.Grid, sizes []float64) image.Image {
	shades := color.Palette{color.NRGBA{}, unseenColour, unseenStripe}
	for _, b := range sizeBands {
		shades = append(shades, b.Colour)
	}
	img := image.NewPaletted(image.Rect(0, 0, g.Columns, g.Rows), shades)
	for row := range g.Rows {
		first, last := g.Run(row)
		for column := first; column < last; column++ {
			img.SetColorIndex(column, g.Rows-1-row, shadeOf(sizes[g.Index(column, row)], column+row))
		}
	}
	return img
}

// shadeOf returns the place in the palette of a size; diagonal is the cell's.
func shadeOf(size float64, diagonal int) uint8 {
	if size == 0 {
		if diagonal%unseenPeriod < 2 {
			return 2
		}
		return 1
	}
	i := 0
	for size >= sizeBands[i].Under {
		i++
	}
	return uint8(3 + i)
}
