// Package lookback answers: what does the report on a game's frames show? The tables of
// package words, and three plots: when each hole was shot through, its keepers with their
// intervals, and the light by end and part of the game.
package lookback

import (
	"context"
	"slices"

	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/words"
)

// Distances on the page, mm.
const (
	margin   = 16.0
	titleGap = 10.0
	plotHigh = 58.0
	rowHigh  = 7.0
	axisHigh = 18.0
)

// Report is what is printed, and for whom.
type Report struct {
	Answer  recap.Answer
	Units   unit.System
	Paper   sheet.Paper
	Creator string // program and release
}

// PDF returns the report. It ends with ctx.
func (r Report) PDF(ctx context.Context) ([]byte, error) {
	title := "What the frames gave"
	if r.Answer.Evening.Title != "" {
		title = r.Answer.Evening.Title
	}
	f := sheet.NewFlow(func() (*sheet.Drawing, sheet.Rect) {
		d := r.Paper.Portrait().Sheet("lookback", chart.Styles())
		d.Title = title
		d.Add(sheet.LayerText, "head", sheet.Text{At: sheet.Pt(margin, margin), S: title, VAlign: sheet.Top})
		return d, sheet.Rect{X: margin, Y: margin + titleGap, W: d.W - 2*margin, H: d.H - 2*margin - titleGap}
	})
	f.Notes(words.RecapCount(r.Answer)...)
	for _, p := range r.Plots(f.Room().W) {
		f.Need(p.H + 2)
		f.Heading(p.Title)
		f.Drawing(p)
	}
	for _, t := range words.RecapTables(r.Answer, r.Units) {
		if len(t.Rows) > 0 {
			f.Heading(t.Title)
			f.Table(t.Shown(), sheet.SizeSmall)
		}
	}
	f.Notes(words.RecapNotes(r.Answer)...)
	var pages []sheet.Page
	for _, d := range f.Sheets() {
		pages = append(pages, sheet.Page{Drawing: d})
	}
	return sheet.PDF(ctx, sheet.Info{Title: title, Subject: "What each hole gave, and the light by exposures", Creator: r.Creator}, pages...)
}

// Plots returns the report's plots at a width in millimetres: those for which there is
// something to show.
func (r Report) Plots(width float64) (out []*sheet.Drawing) {
	if p := r.timeline(); len(p.Series) > 0 {
		d := p.Draw(width, plotHigh)
		d.Title = "Frames of each hole over time"
		out = append(out, d)
	}
	for _, c := range []chart.Intervals{r.keepers(), r.light()} {
		if n := len(c.Rows); n > 0 {
			out = append(out, c.Draw(width, axisHigh+rowHigh*float64(n)))
		}
	}
	return out
}

// timeline counts the frames of each hole over the minutes from the first frame.
func (r Report) timeline() chart.Plot {
	p := chart.Plot{Name: "timeline", Desc: "The number of frames of each hole, over the minutes since the first.",
		X: chart.Axis{Name: "minutes since the first frame"}, Y: chart.Axis{Name: "frames", FromZero: true}}
	frames := r.Answer.Here()
	if len(frames) == 0 {
		return p
	}
	begin := frames[0].At
	for _, m := range frames {
		name := m.Hole
		if name == "" {
			name = "not known"
		}
		i := slices.IndexFunc(p.Series, func(s chart.Series) bool { return s.Name == name })
		if i < 0 {
			i, p.Series = len(p.Series), append(p.Series, chart.Series{Name: name, Steps: true, Points: []chart.XY{{}}})
		}
		s := &p.Series[i]
		s.Points = append(s.Points, chart.XY{X: m.At.Sub(begin).Minutes(), Y: s.Points[len(s.Points)-1].Y + 1})
	}
	slices.SortStableFunc(p.Series, func(a, b chart.Series) int { return len(b.Points) - len(a.Points) })
	p.Series = p.Series[:min(len(p.Series), 10)]
	for _, s := range r.Answer.Evening.Stages {
		if at := s.From.Sub(begin).Minutes(); s.Period > 0 && at >= 0 {
			p.Marks = append(p.Marks, chart.RefLine{Words: s.Name, At: at})
		}
	}
	return p
}

func (r Report) keepers() chart.Intervals {
	c := chart.Intervals{Name: "keepers", Title: "Keepers in an hour worked", Desc: "Keepers of each hole in an hour worked, with their 95 % intervals.", Axis: "keepers in an hour worked"}
	for _, u := range r.Answer.Uses {
		if v, ok := u.PerHour.Get(); ok && u.Stage == "" {
			c.Rows = append(c.Rows, chart.Interval{Name: u.Hole, Note: words.Kept(u), At: v.Rate, Low: v.Low, High: v.High})
		}
	}
	return c
}

// light shows ends in each period, and zones, in the reader's unit.
func (r Report) light() chart.Intervals {
	in := func(lux float64) float64 { return lux }
	c := chart.Intervals{Name: "light", Title: "Light by exposures, 80 of 100 frames", Desc: "The light that exposures were made for, by end and period, and by zone.", Axis: "lux"}
	if r.Units == unit.Imperial {
		in, c.Axis = func(lux float64) float64 { return unit.Illuminance(lux).FootCandles() }, "foot-candles"
	}
	for _, s := range r.Answer.Light {
		name := s.Zone
		if s.End != "" {
			name = "end " + s.End
		}
		if name != "" && (s.Stage == "" || s.Zone == "" && r.period(s.Stage)) {
			c.Rows = append(c.Rows, chart.Interval{Name: name, Note: s.Stage, At: in(s.Lux.Median), Low: in(s.Lux.Low), High: in(s.Lux.High)})
		}
	}
	return c
}

// period reports whether a stage is one of play.
func (r Report) period(stage string) bool {
	return slices.ContainsFunc(r.Answer.Evening.Stages, func(s recap.Stage) bool { return s.Name == stage && s.Period > 0 })
}
