package frame

import (
	"bytes"
	"image/png"
	"os/exec"
	"slices"
	"strconv"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
)

// TestSVGLooksLikeThePicture draws an SVG by librsvg (rsvg-convert, Debian's librsvg2-bin) and
// holds it against the pixels of the same shot, both with the looks that both draw: within 2 of
// 255 at the 99th percentile of all channels, where the hole cuts deep too, and no row of pixels that stands out as a seam.
func TestSVGLooksLikeThePicture(t *testing.T) {
	program, err := exec.LookPath("rsvg-convert")
	if err != nil {
		t.Fatalf("%v: this test needs Debian's package librsvg2-bin; scripts/need installs it", err)
	}
	const w, h = 600, 400
	for _, c := range []struct {
		name string
		pan  unit.Angle
		most int // levels at the 99th percentile
	}{
		{"straight", 0.1, 2},
		{"hole and ledge cut in", 0.75, 2},
	} {
		s := shot(t, func(q *Request) {
			q.Use.Focal, q.Lens.FocalMin, q.Use.Stop = 35*unit.Millimetre, 35*unit.Millimetre, 16
			q.Focus, q.Speed = unit.Known(20*unit.Metre), 0
			q.Turn = unit.Known(Aim{Pan: c.pan, Tilt: -0.05, Distance: 12})
		})
		s.plain = true
		var b bytes.Buffer
		if err := s.WriteSVG(&b, w, h); err != nil {
			t.Fatal(err)
		}
		run := exec.Command(program, "-w", strconv.Itoa(w), "-h", strconv.Itoa(h))
		run.Stdin = bytes.NewReader(b.Bytes())
		out, err := run.Output()
		if err != nil {
			t.Fatal(err)
		}
		theirs, err := png.Decode(bytes.NewReader(out))
		if err != nil {
			t.Fatal(err)
		}
		ours := s.Picture(w, h)
		var off []int
		worstRow := 0.0
		for y := range h {
			sum := 0.0
			for x := range w {
				r, g, bl, _ := theirs.At(x, y).RGBA()
				for ch, v := range [3]uint32{r, g, bl} {
					d := int(v>>8) - int(ours.Pix[ours.PixOffset(x, y)+ch])
					off = append(off, max(d, -d))
					sum += float64(max(d, -d))
				}
			}
			worstRow = max(worstRow, sum/(3*w))
		}
		slices.Sort(off)
		if p99 := off[len(off)*99/100]; p99 > c.most || worstRow > 3 {
			t.Errorf("%s: 99 %% of channels within %d levels, want %d; the worst row is off by %.1f on average", c.name, p99, c.most, worstRow)
		}
	}
}
