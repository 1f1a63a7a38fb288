package sheet_test

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/draw"
	"image/png"
	"math"
	"slices"
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
)

func TestPNGSizeAndDensity(t *testing.T) {
	data, err := sheet.PNG(sample(), 254)
	if err != nil {
		t.Fatal(err)
	}
	img, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	if got := img.Bounds(); got != image.Rect(0, 0, 2000, 1200) {
		t.Errorf("picture %v, want 2000 x 1200", got)
	}
	at := bytes.Index(data, []byte("pHYs"))
	if at < 0 || binary.BigEndian.Uint32(data[at+4:]) != 10000 {
		t.Error("the file does not say 10000 pixels to the metre")
	}
}

// The line drawn at 0.5 mm between (10, 10) and (40, 10) at 10 dots to the mm
// covers the pixels 98 to 102 across, and stops at 400 with square ends.
func TestPNGLineWhereDrawn(t *testing.T) {
	d := sheet.New("line", 50, 20, sheet.Stylesheet{{"l", sheet.Style{Stroke: sheet.RGB(0, 0, 0), Width: 0.5}}})
	d.Add("", "l", sheet.Line{A: sheet.Pt(10, 10.05), B: sheet.Pt(40, 10.05)})
	img, err := sheet.Raster(d, 254)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		x, y  int
		black bool
	}{{250, 98, true}, {250, 102, true}, {250, 97, false}, {250, 103, false}, {100, 100, true}, {99, 100, false}, {399, 100, true}, {400, 100, false}} {
		if got := img.RGBAAt(c.x, c.y).R < 128; got != c.black {
			t.Errorf("pixel (%d, %d) black: %v", c.x, c.y, got)
		}
	}
}

func TestPNGHoleInAShape(t *testing.T) {
	for name, inner := range map[string]sheet.Polyline{
		"same way":  sheet.RoundRect(sheet.Rect{X: 5, Y: 5, W: 10, H: 10}, 0),
		"other way": sheet.Polygon(sheet.Pt(5, 5), sheet.Pt(5, 15), sheet.Pt(15, 15), sheet.Pt(15, 5)),
	} {
		var p sheet.Path
		p.Add(sheet.RoundRect(sheet.Rect{X: 0, Y: 0, W: 20, H: 20}, 0))
		p.Add(inner)
		d := sheet.New("ring", 20, 20, sheet.Stylesheet{{"f", sheet.Style{Fill: sheet.RGB(0, 0, 0)}}})
		d.Add("", "f", p)
		img, err := sheet.Raster(d, 25.4)
		if err != nil {
			t.Fatal(err)
		}
		if img.RGBAAt(2, 10).R != 0 || img.RGBAAt(10, 10).R != 255 {
			t.Errorf("%s: rim %v, hole %v", name, img.RGBAAt(2, 10), img.RGBAAt(10, 10))
		}
	}
}

func TestPNGRefusesAbsurdSizes(t *testing.T) {
	for _, dpi := range []float64{0, -1, 1e6, math.NaN()} {
		if _, err := sheet.PNG(sample(), dpi); err == nil {
			t.Errorf("no error at %g dots per inch", dpi)
		}
	}
}

// Poppler paints the PDF, we paint the PNG: both must show the same, but for the
// softening of edges.
func TestPopplerPaintsTheSame(t *testing.T) {
	for name, d := range map[string]*sheet.Drawing{"sample": sample(), "parts": parts()} {
		pdf, err := sheet.PDF(t.Context(), sheet.Info{}, sheet.Page{Drawing: d})
		if err != nil {
			t.Fatal(err)
		}
		theirs, err := png.Decode(bytes.NewReader([]byte(tool(t, "poppler-utils", "s.pdf", pdf, "pdftoppm", "-r", "200", "-png", "FILE"))))
		if err != nil {
			t.Fatal(err)
		}
		ours, err := sheet.Raster(d, 200)
		if err != nil {
			t.Fatal(err)
		}
		dark, off := compare(ours, theirs)
		if dark < 20000 {
			t.Fatalf("%s: only %d dark pixels", name, dark)
		}
		if 100*off > dark {
			t.Errorf("%s: %d of %d dark pixels differ", name, off, dark)
		}
	}
}

// grey is a picture's lightness, 0 to 255, row by row.
type grey struct {
	w, h int
	pix  []uint8
}

func toGrey(m image.Image) grey {
	g := image.NewGray(m.Bounds())
	draw.Draw(g, g.Bounds(), m, m.Bounds().Min, draw.Src)
	return grey{g.Rect.Dx(), g.Rect.Dy(), g.Pix}
}

// compare counts the dark pixels of two pictures and those where one is clearly
// dark and the other is clearly not, anywhere within a pixel.
func compare(ours, theirs image.Image) (dark, off int) {
	a, b := toGrey(ours), toGrey(theirs)
	for y := 1; y < min(a.h, b.h)-1; y++ {
		for x := 1; x < min(a.w, b.w)-1; x++ {
			inA, inB := a.pix[y*a.w+x] < 100, b.pix[y*b.w+x] < 100
			if inA {
				dark++
			}
			if inA && b.darkestNear(x, y) > 180 || inB && a.darkestNear(x, y) > 180 {
				off++
			}
		}
	}
	return dark, off
}

// darkestNear returns the darkest of a pixel and its neighbours.
func (g grey) darkestNear(x, y int) uint8 {
	best := uint8(255)
	for dy := -1; dy <= 1; dy++ {
		row := (y + dy) * g.w
		best = min(best, slices.Min(g.pix[row+x-1:row+x+2]))
	}
	return best
}
