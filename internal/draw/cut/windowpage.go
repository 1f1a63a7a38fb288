package cut

import (
	"fmt"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/tell/table"
)

// LensPatch is the clear patch of one lens in a low window, over its focal range.
type LensPatch struct {
	Lens     kit.Lens
	Straight unit.Maybe[fit.Patch] // looking straight ahead
	Swung    unit.Maybe[fit.Patch] // turned and tilted as the window is for; unknown when the view is too wide for that
}

// WindowJob is what the drawing of a low window states.
type WindowJob struct {
	Window  glass.Window
	Panel   fit.Panel
	Aims    fit.Aims // that the window is for
	Patches []LensPatch
	// Clear is the patch that is drawn: the least rectangle that clears every lens
	// whose patch fits the window at all the aims; when none does, straight ahead;
	// unknown when that fits none either.
	Clear unit.Maybe[fit.Patch]
}

// WindowJob computes the clear patches of a low window for the lenses of a
// kit that are used at this rink, each with its own body, else the kit's first.
func (p ShopOrder) WindowJob(w glass.Window, k kit.Kit) (WindowJob, error) {
	if len(k.Bodies) == 0 {
		return WindowJob{}, fmt.Errorf("window %s: the kit has no body; its sensor decides the patch", w.ID)
	}
	lenses, err := k.InUse(p.Arena.Lenses)
	if err != nil {
		return WindowJob{}, err
	}
	job := WindowJob{Window: w, Aims: sight.WindowAims(w)}
	if job.Panel, err = fit.PanelOf(w); err != nil {
		return WindowJob{}, err
	}
	var ahead unit.Maybe[fit.Patch]
	for _, l := range lenses {
		lp := LensPatch{Lens: l}
		for _, of := range []struct {
			aims  fit.Aims
			patch *unit.Maybe[fit.Patch]
			all   *unit.Maybe[fit.Patch]
		}{{fit.Aims{}, &lp.Straight, &ahead}, {job.Aims, &lp.Swung, &job.Clear}} {
			if *of.patch, err = fit.WindowPatch(w, l, k.BodyOf(l), of.aims); err != nil {
				return WindowJob{}, err
			}
			if patch, known := of.patch.Get(); known && patch.Within(w.Size) {
				*of.all = unit.Known(of.all.Or(patch).With(patch))
			}
		}
		job.Patches = append(job.Patches, lp)
	}
	if job.Clear.IsZero() {
		job.Clear = ahead
	}
	return job, nil
}

// aimWords says which aims a patch was traced for.
func aimWords(a fit.Aims) string {
	if a == (fit.Aims{}) {
		return "straight ahead"
	}
	whole := func(q unit.Angle) string { return fmt.Sprintf("%.0f deg", q.Degrees()) }
	return fmt.Sprintf("turned up to %s to either side, tilted from %s down to %s up", whole(a.Pan), whole(a.Down), whole(a.Up))
}

// title says what the window's sheet is about: what is cut of it, if anything.
func (job WindowJob) title() string {
	switch w := job.Window; {
	case w.Open:
		return "what must stay free in the opening"
	case w.Printed:
		return "clear patch in the film"
	}
	return "what must stay clear of the panel"
}

func (p ShopOrder) windowPages(job WindowJob, paper sheet.Paper) []*sheet.Drawing {
	usual := 1
	if job.Window.Open {
		usual++
	}
	return p.document(paper, job.Window.ID, usual, func(s *set) {
		if job.Window.Open {
			s.part(func() { s.openingPage(job.Window) })
		}
		s.part(func() { s.windowPage(job) })
	})
}

// windowPage draws a low window from the rink side with the clear patch.
func (s *set) windowPage(job WindowJob) {
	w := job.Window
	probe := s.probe(lying, marks{})
	wide := probe.area.W*detailShare - columnGap/2
	scale := s.scaleFor(w.Size.W, w.Size.H, wide-34, probe.area.H-headHeight-44, 1)
	fields := []sheet.Field{{Name: "Window", Value: probe.one(w.Size.W) + " x " + probe.one(w.Size.H)}, {Name: "Scale", Value: scaleText(scale)}}
	if !w.Open {
		fields = append(fields, sheet.Field{Name: "Panel", Value: fmt.Sprintf("%s, %s", w.Material, probe.one(w.Thick.Or(0)))})
	}
	g := s.page(lying, "window", "Low window "+w.ID+": "+job.title(), marks{}, append(fields, probe.governing())...)
	d := windowDrawing{page: g, job: job, scale: g.laid(scale)}
	d.front(sheet.Pt(g.area.X+20, g.area.Y+headHeight+16))
	d.words(s.ShopOrder, s.column(g, g.beside(wide), lying, marks{}))
}

type windowDrawing struct {
	page
	job   WindowJob
	scale float64
}

func (d windowDrawing) front(at sheet.Point) {
	t := d.group(sheet.LayerText)
	heading(t, d.area.X, d.area.Y, "From the rink side")
	w := d.job.Window
	ww, wh := w.Size.W.Millimetres()*d.scale, w.Size.H.Millimetres()*d.scale
	d.group(sheet.LayerDatum).Add("pane", sheet.RoundRect(sheet.Rect{X: at.X, Y: at.Y, W: ww, H: wh}, 0))
	c := sheet.Pt(at.X+ww/2, at.Y+wh/2)
	d.group(sheet.LayerDatum).CentreMark(c, ww, wh)
	g := d.group(sheet.LayerDim)
	dim(g, at, sheet.Pt(at.X+ww, at.Y), 8, w.Size.W, d.dims)
	dim(g, sheet.Pt(at.X, at.Y+wh), at, 9, w.Size.H, d.dims)
	p, ok := d.job.Clear.Get()
	if !ok {
		return
	}
	patch, class := rim(c, p.Size, d.scale), "cut"
	pw, ph := patch.W, patch.H
	if !w.Printed {
		class = "hidden-edge" // nothing is cut
	}
	d.group(sheet.LayerCut).Add(class, sheet.RoundRect(patch, p.Corner.Millimetres()*d.scale))
	dim(g, sheet.Pt(patch.X, patch.Y+ph), sheet.Pt(patch.X+pw, patch.Y+ph), -(at.Y + wh - patch.Y - ph + 9), p.Size.W, d.places)
	dim(g, sheet.Pt(patch.X+pw, patch.Y+ph), sheet.Pt(patch.X+pw, patch.Y), -(at.X + ww - patch.X - pw + 8), p.Size.H, d.places)
	t.Add("note", sheet.Text{At: sheet.Pt(at.X, at.Y+wh+22), S: "clears every lens that fits; corners R " + d.place(p.Corner), VAlign: sheet.Top})
	t.Add("note", sheet.Text{At: sheet.Pt(at.X, at.Y+wh+22+lineHeight), S: aimWords(p.Aims), VAlign: sheet.Top})
}

// words says what the patch is, of an opening, of a clear panel, or of a film.
func (d windowDrawing) words(p ShopOrder, f *sheet.Flow) {
	w := d.job.Window
	f.Heading(map[bool]string{true: "What each lens needs free, all focal lengths, widest stop", false: "Clear patch by lens, all focal lengths, widest stop"}[w.Open])
	f.Table(patchFields(w).Of("", d.job.Patches, d.sys), sheet.SizeTable)
	where := fmt.Sprintf("Where: station %s, centre %s above the ice.", along(p.Arena.Rink.Wrap(w.Station), p.Arena.Units), d.one(w.Height))
	aims := aimWords(d.job.Aims) + fmt.Sprintf(": from a puck to a face at %s", along(w.Nearest.Or(sight.WindowNearest), p.Arena.Units))
	rays := "The patch is where rays of the whole frame, traced from all of the pupil through the panel, cross the film."
	posture := "The pupil stands opposite the patch's middle, the bare nose's foremost point 5 mm behind the panel; the second patch is for a camera " + aims + "."
	none := d.job.Clear.IsZero()
	switch {
	case w.Open:
		f.Notes(
			"The window is an opening in the boards: NOTHING IS CUT of it here. The dashed patch says what of it must stay free before the lens.",
			"It is where rays of the whole frame, traced from all of the pupil, cross the boards' rink face.",
			"The pupil stands opposite the patch's middle, the bare nose's foremost point 5 mm behind the boards' rink face, never past it; the second patch is for a camera "+aims+".", where)
		if none {
			f.Notes("NO LENS SEES ITS WHOLE FRAME through this opening: take a longer lens.")
		}
	case !w.Printed:
		f.Notes("The plan has no printed film here: NOTHING IS CUT. The dashed patch says what must stay free, clean and unscratched before the lens.", rays, posture, where)
	case none:
		f.Notes("The film is taken to lie on the panel's rink face.", rays, posture, where,
			"NO LENS'S PATCH FITS in this window, so none is drawn and NOTHING IS CUT: take another lens, or have a larger window made.")
	default:
		f.Notes("The film is taken to lie on the panel's rink face.", rays, posture, where,
			"Cut the film only, with a blade that does not score the panel; round the patch's corners. The panel itself is the rink's.",
			"Centre the patch on the lens as it will stand, not on the window by eye.")
	}
	if !w.Open {
		f.Notes(fmt.Sprintf("Index of the panel taken as %.4g.", d.job.Panel.Index))
	}
}

// patchFields are the columns of a window's patches by lens.
func patchFields(w glass.Window) table.Fields[LensPatch] {
	type row = LensPatch
	fits := "fits"
	if w.Open {
		fits = "sees all"
	}
	size := func(m unit.Maybe[fit.Patch], sys unit.System) table.Cell {
		if m.IsZero() {
			return table.Words("too wide")
		}
		return table.Words(m.Or(fit.Patch{}).Size.FormatFine(sys))
	}
	straight := func(l row) fit.Patch { return l.Straight.Or(fit.Patch{}) }
	swung := func(l row) fit.Patch { return l.Swung.Or(fit.Patch{}) }
	return table.Fields[row]{
		texts("lens", "lens", func(l row) string { return l.Lens.ID }),
		numbers("straight ahead", "", func(l row, sys unit.System) table.Cell { return size(l.Straight, sys) }),
		lengths("", "straight_width_mm", func(l row) unit.Length { return straight(l).Size.W }),
		lengths("", "straight_height_mm", func(l row) unit.Length { return straight(l).Size.H }),
		numbers("turned and tilted", "", func(l row, sys unit.System) table.Cell { return size(l.Swung, sys) }),
		lengths("", "turned_width_mm", func(l row) unit.Length { return swung(l).Size.W }),
		lengths("", "turned_height_mm", func(l row) unit.Length { return swung(l).Size.H }),
		texts(fits, "fits", func(l row) string {
			switch {
			case !l.Swung.IsZero() && swung(l).Within(w.Size):
				return "yes"
			case !l.Straight.IsZero() && straight(l).Within(w.Size):
				return "straight ahead"
			}
			return "no"
		}),
	}
}

// WindowOutline is the clear patch at full size for a plotter, on layer CUT,
// in the window's outline on DATUM.
func (p ShopOrder) WindowOutline(job WindowJob) *sheet.Drawing {
	w := job.Window
	ww, wh := w.Size.W.Millimetres(), w.Size.H.Millimetres()
	title := "Low window " + w.ID + ": clear patch, full size"
	g := p.machineSheet(ww, wh, about{name: "window-outline", title: title,
		lines: []string{title, p.subject() + ": cut the film only; from the rink side"}})
	g.group(sheet.LayerDatum).Add("edge", sheet.RoundRect(g.area, 0))
	if s, ok := job.Clear.Get(); ok {
		patch := rim(sheet.Pt(g.area.X+ww/2, g.area.Y+wh/2), s.Size, 1)
		g.group(sheet.LayerCut).Add("cut-line", roundHole(patch, s.Corner))
	}
	return g.d
}
