package book

import (
	"bytes"
	"math"
	"runtime"
	"strings"
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// Each hole of the three example arenas has a spread of its own, two pages and no
// more, whatever the paper; no other chapter leaves a page nearly empty.
func TestASpreadForEachHole(t *testing.T) {
	spreads := 0
	for name, papers := range map[string][]string{"brennholm": {"a4", "a3"}, "quillhaven": {"letter", "tabloid"}, "sorrel-flats": {"a4", "letter", "tabloid"}} {
		sys := unit.Imperial
		if name == "brennholm" {
			sys = unit.Metric
		}
		for _, paper := range papers {
			c := content(t, example(t, name), paper, sys)
			for _, ch := range chaptersOf(t, c) {
				if ch.level == 1 {
					spreads++
					if len(ch.pages) != 2 {
						t.Errorf("%s on %s: %s has %d pages", name, paper, ch.title, len(ch.pages))
					}
					continue
				}
				if len(ch.pages) > 2 {
					t.Errorf("%s on %s: %s runs over %d pages", name, paper, ch.title, len(ch.pages))
				}
				if ch.id == "plan" || ch.id == "boards" {
					keepsItsScale(t, name+" on "+paper, ch.pages[0].Items[0].Shape.(*sheet.Group))
					namesMostPanes(t, name+" on "+paper+", "+ch.id, ch.pages[0], c.Arena)
				}
			}
		}
	}
	if spreads != 2*6+2*8+3*3 {
		t.Fatalf("%d spreads met", spreads)
	}
}

// namesMostPanes refuses a drawing that leaves the names of more than a few panes out:
// those too narrow for one.
func namesMostPanes(t *testing.T, what string, page *sheet.Drawing, a arena.Arena) {
	t.Helper()
	said := map[string]bool{}
	for _, b := range page.TextBoxes() {
		said[b.S] = true
	}
	named := 0
	for _, p := range a.Panes {
		if said[p.ID] {
			named++
		}
	}
	if 10*named < 8*len(a.Panes) {
		t.Errorf("%s: %d of %d panes have their names", what, named, len(a.Panes))
	}
}

// keepsItsScale refuses a drawing that is set smaller or larger than the page around it:
// it would not have the scale that it says.
func keepsItsScale(t *testing.T, what string, page *sheet.Group) {
	t.Helper()
	for _, e := range page.Items {
		if g, ok := e.Shape.(*sheet.Group); ok {
			if g.Scale != 0 && g.Scale != 1 {
				t.Errorf("%s: a drawing is set at %.3f of its scale", what, g.Scale)
			}
			keepsItsScale(t, what, g)
		}
	}
}

// Margins, columns and type follow the paper: A3 is A4 enlarged by the root of the
// factor between them, Letter is set as A4 is.
func TestTheGridFollowsThePaper(t *testing.T) {
	for name, want := range map[string]float64{"a4": 1, "letter": 1, "a3": math.Sqrt(math.Sqrt2), "tabloid": 1.189} {
		p, err := sheet.ParsePaper(name)
		if err != nil {
			t.Fatal(err)
		}
		g := gridOf(p)
		if math.Abs(g.zoom-want) > 0.003 {
			t.Errorf("%s: zoom %.4f, want %.3f", name, g.zoom, want)
		}
		p = p.Landscape()
		if w, h := g.w*g.zoom, g.h*g.zoom; math.Abs(w-p.W) > 1e-9 || math.Abs(h-p.H) > 1e-9 {
			t.Errorf("%s: a page of %g x %g mm", name, w, h)
		}
		if left, right := g.area.X, g.w-g.area.X-g.area.W; math.Abs(left-right) > 1e-9 || math.Abs(left*g.zoom/p.W-marginShare) > 1e-9 {
			t.Errorf("%s: margins %g and %g", name, left, right)
		}
	}
}

// A hole is shown by its recommended lens first, then by others, each once, all of
// one moment; the pictures are the same on one core and on four.
func TestPicturesThroughTheHoles(t *testing.T) {
	c := content(t, example(t, "sorrel-flats"), "letter", unit.Imperial)
	for _, h := range c.Plan.Holes {
		views := c.Views[h.ID]
		if len(views) != 3 {
			t.Fatalf("%s: %d pictures", h.ID, len(views))
		}
		best, _ := h.BestFit()
		if !strings.HasPrefix(views[0].caption, best.Lens.ID+" at ") {
			t.Errorf("%s: the first picture is by %q, the lens for it is %s", h.ID, views[0].caption, best.Lens.ID)
		}
		seen := map[string]bool{}
		for _, v := range views {
			if seen[v.caption] || !strings.Contains(v.alt, "hole "+h.ID) || len(v.photo.JPEG) < 5000 {
				t.Errorf("%s: %q, %q, %d bytes", h.ID, v.caption, v.alt, len(v.photo.JPEG))
			}
			seen[v.caption] = true
		}
	}
	if v, ok := c.Cover.Get(); !ok || v.photo.Img.Bounds().Dx() != coverAcross {
		t.Error("the cover has no picture")
	}
	was := runtime.GOMAXPROCS(1)
	defer runtime.GOMAXPROCS(was)
	small := content(t, smallArena, "a4", unit.Metric)
	one := small
	if err := one.takePictures(t.Context()); err != nil {
		t.Fatal(err)
	}
	runtime.GOMAXPROCS(4)
	four := small
	if err := four.takePictures(t.Context()); err != nil {
		t.Fatal(err)
	}
	if a, b := one.Views["H1"], four.Views["H1"]; len(a) == 0 || len(a) != len(b) || !bytes.Equal(a[0].photo.JPEG, b[0].photo.JPEG) {
		t.Error("one core and four take different pictures")
	}
}

// A hole that no lens fits has a spread without a picture, and a book without any
// picture has a map on its cover.
func TestABookWithoutPictures(t *testing.T) {
	none := strings.NewReplacer("size: 140 mm x 115 mm", "size: 10 mm x 10 mm", "size: 90 mm x 60 mm", "size: 10 mm x 10 mm",
		"corner-radius: 12 mm", "corner-radius: 2 mm")
	c := content(t, none.Replace(smallArena), "a4", unit.Metric)
	if _, ok := c.Cover.Get(); ok || len(c.Views["H1"]) > 0 {
		t.Fatal("a picture through a hole that no lens fits")
	}
	if n := len(chaptersOf(t, c)); n < 9 {
		t.Errorf("%d chapters", n)
	}
	if html := string(c.HTML()); strings.Contains(html, "<img") || !strings.Contains(html, "No lens of the kit takes a picture") {
		t.Error("the page does not say that there is no picture")
	}
}

// The book, the pictures and the moments agree on how tall a player stands.
func TestAPlayersHeightIsSaidOnce(t *testing.T) {
	c := content(t, smallArena, "a4", unit.Metric)
	h, _ := c.Plan.Hole("H1")
	best, _ := h.BestFit()
	heat, o := c.Reaches["H1"], c.Arena.Rink.Point(h.Station)
	checked := 0
	for i, v := range heat.Values {
		if math.IsNaN(v) {
			continue
		}
		col, row := float64(i%heat.Cols)+0.5, float64(i/heat.Cols)+0.5
		away := math.Hypot(heat.Corner.X+col*heat.Step-o.X, heat.Corner.Y+row*heat.Step-o.Y)
		tall := v * 2 * away * best.Case.TanY
		if want := c.Arena.Playing().Standing(); away > 10 && math.Abs(tall-want) > 0.02*want {
			t.Fatalf("%.1f m away a player is %.3f m tall, want %.3f", away, tall, want)
		}
		checked++
	}
	if checked < 1000 {
		t.Fatalf("%d places", checked)
	}
}

// A date stands as it was given, and none is taken from a clock.
func TestTheDateIsAsGiven(t *testing.T) {
	c := content(t, smallArena, "a4", unit.Metric)
	for date, want := range map[string]bool{"2027-01-09": true, "9 January, the third try": false, "": false} {
		c.Options.Date = date
		if c.dated().IsZero() == want {
			t.Errorf("%q: %v", date, c.dated())
		}
		found := date == ""
		for _, b := range chaptersOf(t, c)[0].pages[0].TextBoxes() {
			found = found || b.S == date
		}
		if !found || !strings.Contains(string(c.HTML()), date) {
			t.Errorf("%q does not stand on the cover", date)
		}
	}
}
