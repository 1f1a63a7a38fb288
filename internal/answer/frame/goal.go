package frame

import (
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/survey/rink"
)

// The net's mesh is drawn every 0.12 m, coarser than the real one so that it reads as a net.
const (
	meshStep   = 0.12
	meshRadius = 0.003
)

// goal draws a goal frame with its net.
func (st stage) goal(g rink.Goal) layer {
	up := func(p geom.Vec2, z float64) geom.Vec3 { return geom.Vec3{X: p.X, Y: p.Y, Z: z} }
	mid := g.Posts[0].Add(g.Back[1]).Scale(0.5)
	l := layer{name: "goal", depth: st.cam.View(up(mid, g.Height/2)).Z}

	// The net falls from the crossbar to the back of the frame: each side panel
	// is drawn as a mesh between two edges.
	topBack := [2]geom.Vec2{g.Posts[0].Add(g.Back[0]).Scale(0.5), g.Posts[1].Add(g.Back[1]).Scale(0.5)}
	panels := [4][4]geom.Vec3{
		{up(topBack[0], g.Height), up(topBack[1], g.Height), up(g.Back[1], 0), up(g.Back[0], 0)},
		{up(g.Posts[0], g.Height), up(g.Posts[1], g.Height), up(topBack[1], g.Height), up(topBack[0], g.Height)},
		{up(g.Posts[0], g.Height), up(topBack[0], g.Height), up(g.Back[0], 0), up(g.Posts[0], 0)},
		{up(g.Posts[1], g.Height), up(topBack[1], g.Height), up(g.Back[1], 0), up(g.Posts[1], 0)},
	}
	for _, p := range panels {
		l.shapes = append(l.shapes, st.mesh(p)...)
	}
	// Pipes are drawn about their middles: posts outside the clear width, the bar below the
	// height of the goal's upper edge.
	const postRadius = float64(rink.PostRadius)
	post, bar := g.PostMiddles(), g.Height-postRadius
	bars := []rod{
		{a: up(post[0], 0), b: up(post[0], bar)},
		{a: up(post[1], 0), b: up(post[1], bar)},
		{a: up(post[0], bar), b: up(post[1], bar)},
		{a: up(post[0], postRadius), b: up(g.Back[0], postRadius)},
		{a: up(post[1], postRadius), b: up(g.Back[1], postRadius)},
		{a: up(g.Back[0], postRadius), b: up(g.Back[1], postRadius)},
	}
	for i := range bars {
		bars[i].ra, bars[i].rb, bars[i].paint = postRadius, postRadius, redPaint
	}
	l.shapes = append(l.shapes, st.rods(bars)...)
	return l
}

// mesh draws strings both ways across a four-cornered panel.
func (st stage) mesh(p [4]geom.Vec3) []shape {
	var out []shape
	line := func(a, b geom.Vec3) {
		if o := st.screen.rod(st.cam, rod{a: a, b: b, ra: meshRadius, rb: meshRadius}); o != nil {
			out = append(out, newShape(o, netPaint))
		}
	}
	across := int(p[1].Sub(p[0]).Len()/meshStep) + 1
	for i := range across + 1 {
		t := float64(i) / float64(across)
		line(between(p[0], p[1], t), between(p[3], p[2], t))
	}
	down := int(p[3].Sub(p[0]).Len()/meshStep) + 1
	for i := range down + 1 {
		t := float64(i) / float64(down)
		line(between(p[0], p[3], t), between(p[1], p[2], t))
	}
	return out
}

func between(a, b geom.Vec3, t float64) geom.Vec3 { return a.Add(b.Sub(a).Scale(t)) }
