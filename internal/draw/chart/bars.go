package chart

import "example.org/rinkpane/internal/draw/sheet"

// Bar is a named amount, in the unit that the chart's axis names.
type Bar struct {
	Name   string
	Value  float64 // in the axis' own unit
	Words  string  // beside the bar; empty prints the value as a tick would
	Picked bool
}

// Bar chart distances in millimetres.
const (
	barPitch = 5.6
	barHigh  = 3.6
)

// Bars draws named amounts as bars from zero, one below the other, at a width in
// millimetres; the height follows. axis names the amount and its unit.
func Bars(name, title, axis string, bars []Bar, width float64) *sheet.Drawing {
	width = max(width, leastPlot)
	h := plotTop + barPitch*float64(max(len(bars), 1)) + plotFoot
	f := &field{Plot: Plot{Name: name, Title: title, X: Axis{Name: axis, FromZero: true}}, d: sheet.New(name, width, h, Styles())}
	f.d.Title, f.d.Desc = title, "Bars: "+axis+"."
	left, right := 4.0, plotRight
	for _, b := range bars {
		left = max(left, 5+sheet.Regular.Width(b.Name, sheet.SizeText))
		right = max(right, 3+sheet.Regular.Width(b.Words, sheet.SizeSmall))
		f.Series = append(f.Series, Series{Points: []XY{{b.Value, 0}}})
	}
	left, right = min(left, width/2), min(right, width/4)
	f.box = sheet.Rect{X: left, Y: plotTop, W: width - left - right, H: barPitch * float64(max(len(bars), 1))}
	f.xt = f.X.ticks(f.span(func(p XY) float64 { return p.X }, false), int(f.box.W/tickSpace))
	f.yt = []float64{0, 1}
	f.barAxes()
	for i, b := range bars {
		f.bar(b, f.box.Y+barPitch*(float64(i)+0.5))
	}
	return f.d
}

func (f *field) barAxes() {
	g, _ := f.d.Group("axes", "")
	if f.Title != "" {
		g.Add("head", sheet.Text{At: sheet.Pt(3, 2.2), S: sheet.Bold.Shorten(f.Title, sheet.SizeHead, f.d.W-6), VAlign: sheet.Top})
	}
	b := f.box
	for _, v := range f.xt {
		x := f.x(v)
		g.Add("grid", sheet.Line{A: sheet.Pt(x, b.Y), B: sheet.Pt(x, b.Y+b.H)})
		g.Add("tick-text", sheet.Text{At: sheet.Pt(x, b.Y+b.H+tickLength+tickGap), S: tickName(v, f.xt[1]-f.xt[0]), Anchor: sheet.Middle, VAlign: sheet.Top})
	}
	g.Add("axis", sheet.Line{A: sheet.Pt(f.x(0), b.Y), B: sheet.Pt(f.x(0), b.Y+b.H)})
	g.Add("axis-text", sheet.Text{At: sheet.Pt(b.X+b.W/2, f.d.H-2.2), S: f.X.Name, Anchor: sheet.Middle})
}

func (f *field) bar(b Bar, y float64) {
	g, e := f.d.Group("bars", "")
	e.With("bar", b.Name).Titled(b.Name + ": " + f.barWords(b))
	class := "bar"
	if b.Picked {
		class += " bar-picked"
	}
	x0, x1 := min(f.x(0), f.x(b.Value)), max(f.x(0), f.x(b.Value))
	g.Add(class, sheet.RoundRect(sheet.Rect{X: x0, Y: y - barHigh/2, W: x1 - x0, H: barHigh}, 0))
	name := sheet.Regular.Shorten(b.Name, sheet.SizeText, f.box.X-5+1e-6)
	g.Add("value", sheet.Text{At: sheet.Pt(f.box.X-2, y), S: name, Anchor: sheet.End, VAlign: sheet.Centre})
	g.Add("tick-text", sheet.Text{At: sheet.Pt(x1+1.2, y), S: f.barWords(b), VAlign: sheet.Centre})
}

func (f *field) barWords(b Bar) string {
	if b.Words != "" {
		return b.Words
	}
	return tickName(b.Value, (f.xt[1]-f.xt[0])/10)
}
