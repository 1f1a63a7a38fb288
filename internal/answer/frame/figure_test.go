package frame

import (
	"image/color"
	"math"
	"testing"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/survey/play"
)

// TestNumbersShowFromBehindOnly walks around a skater: from behind every stroke
// of the number shows, from the front none, and the count falls in between.
func TestNumbersShowFromBehindOnly(t *testing.T) {
	b := newBody(play.Person{Heading: 0, Height: modelHeight})
	b.skater(home, 38, playing)
	shown := func(deg float64) (n, of int) {
		sin, cos := math.Sincos(deg * math.Pi / 180)
		eye := geom.Vec3{X: 10 * cos, Y: 10 * sin, Z: 1.4}
		for _, r := range b.rods {
			for _, p := range r.on {
				if p.edges[0][0].Z < 1 {
					continue // the hem's and the socks' bands go all around
				}
				of++
				if p.facing(eye) != nil {
					n++
				}
			}
		}
		return n, of
	}
	behind, all := shown(180)
	front, _ := shown(0)
	side, _ := shown(90)
	if all < 10 || behind != all || front != 0 || side <= 0 || side >= all {
		t.Errorf("of %d strokes %d show from behind, %d from the side, %d from the front", all, behind, side, front)
	}
}

// TestFiguresStandOnTheIce: no rod reaches below the ice, and the helmet's top
// is as high as the person.
func TestFiguresStandOnTheIce(t *testing.T) {
	for name, build := range map[string]func(*body){
		"skater":     func(b *body) { b.skater(home, 9, playing) },
		"official":   func(b *body) { b.skater(official, 9, watching) },
		"goalkeeper": func(b *body) { b.goalkeeper(away, 30) },
	} {
		b := newBody(play.Person{Height: 2})
		build(b)
		low, high := math.Inf(1), 0.0
		for _, r := range b.rods {
			low = min(low, r.a.Z-r.ra, r.b.Z-r.rb)
			high = max(high, r.a.Z+r.ra, r.b.Z+r.rb)
		}
		if low < -0.03 || low > 0.03 || math.Abs(high-2) > 0.06 {
			t.Errorf("%s: from %.3f to %.3f m, want 0 to 2", name, low, high)
		}
	}
}

// People are told apart by more than colour: a skater has a visor before the eyes, a strap,
// gloves with cuffs and blades below the boots; a goalkeeper a cage instead; an official stripes
// on body and sleeves.
func TestWhatPeopleWear(t *testing.T) {
	parts := func(build func(*body)) (count map[color.NRGBA]int, stripes int) {
		b, count := newBody(play.Person{Height: modelHeight}), map[color.NRGBA]int{}
		build(b)
		for _, r := range b.rods {
			count[r.paint]++
			for _, p := range r.on {
				if p.paint == stripePaint {
					stripes++
				}
			}
		}
		return count, stripes
	}
	skater, none := parts(func(b *body) { b.skater(home, 17, playing) })
	if skater[visorPaint] != 1 || skater[eyePaint] != 2 || skater[strapPaint] != 2 || skater[home.glove] != 4 ||
		skater[scaled(home.glove, cuffShade)] != 2 || skater[bladePaint] != 2 || none != 0 {
		t.Errorf("a skater: %v, %d stripes", skater, none)
	}
	keeper, _ := parts(func(b *body) { b.goalkeeper(away, 35) })
	if keeper[visorPaint] != 0 || keeper[eyePaint] != 2 || keeper[bladePaint] != 2+4*5 || keeper[padPaint] < 4 {
		t.Errorf("a goalkeeper: %v", keeper)
	}
	if _, stripes := parts(func(b *body) { b.skater(official, 11, watching) }); stripes != stripeCount+2*2*stripeCount {
		t.Errorf("an official has %d pieces of stripes", stripes)
	}
}
