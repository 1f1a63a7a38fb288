package picture

import (
	"net/http"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/play"
)

// fill adds what can be chosen and where the links lead.
func (p *picturePage) fill(r *http.Request, s sitting, k kit.Kit) {
	q := s.query(r)
	p.Image = p.link(q, "picture.png", "of", s.book.Revision)
	p.PNG = p.link(q, "picture.png", "save", "1", "side", strconv.Itoa(mostSide))
	p.SVG = p.link(q, "picture.svg", "save", "1")
	p.controls(s.system)
	for _, id := range s.arena.Openings() {
		p.Holes = append(p.Holes, shell.Choice{Value: id, Name: id, Chosen: id == p.State.Hole})
	}
	for _, l := range k.Lenses {
		p.Lenses = append(p.Lenses, shell.Choice{Value: l.ID, Name: l.Name, Chosen: l.ID == p.State.Lens.ID})
	}
	for _, b := range k.Bodies {
		if own := p.State.Lens.Body; own != "" && own != b.ID {
			continue // the lens cannot be taken off its own
		}
		p.Bodies = append(p.Bodies, shell.Choice{Value: b.ID, Name: b.Name, Chosen: b.ID == p.State.Body.ID})
	}
	p.shutters()
	// A new moment is aimed at anew.
	step := func(to int) string {
		return p.link(q, "picture", "moment", strconv.Itoa(to), "pan", "", "tilt", "", "focus", "")
	}
	n := Moments
	p.Previous, p.Next = step((p.State.Moment+n-1)%n), step((p.State.Moment+1)%n)
	p.Aimed = step(p.State.Moment)
	now := s.moments.Phase[p.State.Moment]
	p.Phase = phaseName(now)
	for _, ph := range play.Phases() {
		if i, ok := NextOf(s.moments, ph, p.State.Moment); ok {
			p.Phases = append(p.Phases, shell.Option{Name: phaseName(ph), URL: step(i), Chosen: ph == now})
		}
	}
	for _, sys := range []unit.System{unit.Metric, unit.Imperial} {
		p.Systems = append(p.Systems, shell.Option{Name: sys.String(), URL: p.link(q, "picture", "units", sys.String()), Chosen: sys == s.system})
	}
}

func (p *picturePage) shutters() {
	found := false
	for _, t := range Shutters() {
		chosen := t == p.State.Shutter
		found = found || chosen
		p.Shutters = append(p.Shutters, shell.Choice{Value: shutterValue(t), Name: t.Format(), Chosen: chosen})
	}
	if !found {
		p.Shutters = append(p.Shutters, shell.Choice{Value: shutterValue(p.State.Shutter), Name: p.State.Shutter.Format(), Chosen: true})
	}
}

func shutterValue(t unit.Shutter) string { return strings.TrimSuffix(t.Format(), " s") }
