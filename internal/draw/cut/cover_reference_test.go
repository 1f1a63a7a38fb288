package cut

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

const mm = unit.Millimetre

// job returns the common hole in a pane of a material, with a cover of a material.
func job(m, cover glass.Material) *Job {
	props, err := m.Properties()
	if err != nil {
		panic(err)
	}
	return &Job{
		Material: props, Thick: 12.7 * mm, Corner: 12.7 * mm, Rounding: 3 * mm,
		Hole: glass.Hole{ID: "h", Size: unit.Size{W: 139.7 * mm, H: 114.3 * mm}, Cover: unit.Known(glass.Cover{Present: true, Material: cover})},
	}
}

// designed settles a job's cover, with what is refused before.
func designed(j *Job, o CoverOptions) error {
	if err := o.check(); err != nil {
		return err
	}
	why := j.stand()
	if len(why) == 0 {
		why = j.cover(o)
	}
	if len(why) > 0 {
		return errors.New(joined(why, unit.Metric))
	}
	return nil
}

// Worked by hand with the handbook's expansions: hole 139.7 mm in tempered
// glass (0.9e-5 per K), plug 137.7 mm of polycarbonate (6.5e-5 per K), made at
// 20 deg C. Pane at -5: 139.7 (1 - 0.9e-5 x 25) = 139.668568; plug at 35:
// 137.7 (1 + 6.5e-5 x 15) = 137.834258; play 1.834310 mm. Tolerances 0.5 and
// 0.25: worst 1.084310 to 2.584310; root-sum-square 0.559017: 1.275293 to 2.393327.
func TestPlayByHand(t *testing.T) {
	j := job(glass.Tempered, glass.Polycarbonate)
	if err := designed(j, DefaultCoverOptions()); err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, f := range j.Cover.Fits {
		if f.State != "pane cold, cover warm" || f.Along != "width" {
			continue
		}
		seen++
		for _, c := range []struct {
			name string
			got  unit.Length
			want float64
		}{
			{"nominal", f.Nominal, 1.8343100},
			{"low", f.Low, 1.0843100},
			{"high", f.High, 2.5843100},
			{"low rss", f.LowRSS, 1.8343100 - math.Sqrt(0.3125)},
			{"high rss", f.High - (0.75-unit.Length(math.Sqrt(0.3125)))*mm, 1.8343100 + math.Sqrt(0.3125)},
		} {
			if math.Abs(c.got.Millimetres()-c.want) > 1e-6 {
				t.Errorf("%s %.7f mm, by hand %.7f", c.name, c.got.Millimetres(), c.want)
			}
		}
	}
	if seen != 1 || len(j.Cover.Fits) != 8 {
		t.Fatalf("%d states seen of %d", seen, len(j.Cover.Fits))
	}
}

// Equal materials at one temperature keep their play but for its own growth.
func TestEqualMaterialsKeepThePlay(t *testing.T) {
	j := job(glass.Acrylic, glass.Acrylic)
	if err := designed(j, DefaultCoverOptions()); err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, f := range j.Cover.Fits {
		if f.PaneC == f.CoverC {
			n++
			if math.Abs(f.Nominal.Millimetres()-2) > 0.01 {
				t.Errorf("%s %s: play %.4f mm, want 2", f.State, f.Along, f.Nominal.Millimetres())
			}
		}
	}
	if n != 4 {
		t.Fatalf("%d states", n)
	}
}

// The plug ends behind the rink face in the thinnest sheet that the pane may
// be. By hand: acrylic of 12 mm is +-1.6 mm (ISO 7823-1), so 10.4 mm at least,
// less 1 mm: 9.4 mm; tempered 12.7 mm is +-0.3 mm: 11.4 mm.
func TestPlugEndsBehindTheRinkFace(t *testing.T) {
	for _, c := range []struct {
		m          glass.Material
		thick, max float64
	}{{glass.Acrylic, 12, 9.4}, {glass.Tempered, 12.7, 11.4}} {
		j := job(c.m, glass.Acrylic)
		j.Thick = unit.Length(c.thick) * mm
		if err := designed(j, DefaultCoverOptions()); err != nil {
			t.Fatal(err)
		}
		if got := j.Cover.PlugDepth.Millimetres(); math.Abs(got-c.max) > 1e-9 {
			t.Errorf("%s %g mm: plug %.3f mm deep, at most %.1f", c.m, c.thick, got, c.max)
		}
	}
}

// At a corner of the hole that is cut too round by its whole tolerance the plug
// has its clearance still. Along the diagonal from the hole's square corner an
// arc of radius r begins at r (sqrt 2 - 1), the plug's square corner at
// sqrt 2 times the clearance. A plug's corner is never rounder than its sides allow.
func TestPlugIsFreeAtTheCorners(t *testing.T) {
	for _, corner := range []float64{6.5, 12.7, 40, 57.15} {
		j := job(glass.Acrylic, glass.Acrylic)
		j.Corner = unit.Length(corner) * mm
		if err := designed(j, DefaultCoverOptions()); err != nil {
			t.Fatal(err)
		}
		c := j.Cover
		hole := min((j.Corner + radiusTolerance), j.Hole.Size.H/2)
		gap := math.Sqrt2*float64(c.Clearance) + float64(c.PlugCorner-hole)*(math.Sqrt2-1)
		if gap < float64(c.Clearance)-1e-9 || c.PlugCorner > c.Plug.H/2 {
			t.Errorf("R %g: plug's corner %.2f mm, gap on the diagonal %.3f mm", corner, c.PlugCorner.Millimetres(), 1000*gap)
		}
	}
}

func TestCoverIsRefused(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*Job, *CoverOptions)
		words  string
	}{
		{"tight", func(_ *Job, o *CoverOptions) { o.Clearance = 0.3 * mm }, "jams: "},
		{"just jams when warm", func(_ *Job, o *CoverOptions) { o.Clearance, o.Warm = 0.6*mm, 60 }, "pane cold, cover warm"},
		{"loose", func(_ *Job, o *CoverOptions) { o.Clearance = 3 * mm }, "is loose"},
		{"too small", func(_ *Job, o *CoverOptions) { o.Clearance = 13 * mm }, "falls through"},
		{"of glass", func(j *Job, _ *CoverOptions) {
			j.Hole.Cover = unit.Known(glass.Cover{Present: true, Material: glass.Tempered})
		}, "cover of tempered"},
		{"none", func(j *Job, _ *CoverOptions) { j.Hole.Cover = unit.Known(glass.Cover{}) }, "no hole is drawn without one"},
		{"thin pane", func(j *Job, _ *CoverOptions) { j.Thick = 4 * mm }, "too thin for a plug"},
		{"upside down", func(_ *Job, o *CoverOptions) { o.Cold = 40 }, "cold below warm"},
		{"negative", func(_ *Job, o *CoverOptions) { o.Clearance = -1 * mm }, "clearance"},
		{"wild tolerance", func(_ *Job, o *CoverOptions) { o.PlugTolerance = -1 * mm }, "tolerances"},
	} {
		j, o := job(glass.Acrylic, glass.Acrylic), DefaultCoverOptions()
		c.change(j, &o)
		if err := designed(j, o); err == nil || !strings.Contains(err.Error(), c.words) {
			t.Errorf("%s: error %v, want %q", c.name, err, c.words)
		}
	}
}
