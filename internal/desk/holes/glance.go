package holes

import (
	"html/template"
	"math"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/tell/words"
)

// glance is what a photographer at the glass needs of a hole, at a glance.
type glance struct {
	ID     string
	Status rules.Status
	Off    bool
	Where  string       // along the boards and above the ice, to the inch or centimetre
	Mend   []findingRow // findings on this hole that are broken or not known
	Tight  string       // the tightest of those kept
	Facts  []shell.Fact
}

func (v *liveView) glanceOf(m plan.SurveyedHole, sys unit.System) *glance {
	g := &glance{
		ID: m.ID, Status: m.Status, Off: m.State == glass.Off,
		Where: words.NearPlace(m.Place, sys) + ", " + words.Near(m.Height, sys) + " above the ice",
	}
	of := v.now.FindingsOf(m.ID)
	rows := viewFindings(of, m.ID, sys)
	g.Mend = rows.Open
	g.Tight = tightest(of, sys)
	g.Facts = []shell.Fact{
		{Name: "Pane", Value: m.Pane},
		{Name: "Station", Value: words.Near(m.Station, sys)},
		{Name: "Size", Value: m.Size.Format(sys)},
		{Name: "State", Value: string(m.State)},
	}
	if f, ok := v.lens(); ok {
		g.Facts = append(g.Facts,
			shell.Fact{Name: "Lens", Value: words.Lens(f)},
			shell.Fact{Name: "Clean corners to", Value: degrees(f.Pan.Clear) + " either side"},
			shell.Fact{Name: "Half the light at", Value: degrees(f.Pan.Usable)},
		)
	} else if v.now.Picked != nil {
		g.Facts = append(g.Facts, shell.Fact{Name: "Lens", Value: "none of the kit goes in"})
	}
	if v.now.Picked != nil {
		for _, l := range v.now.Picked.Light {
			if l.Zone == m.Slot {
				g.Facts = append(g.Facts, shell.Fact{Name: "ISO for faces at the slot", Value: words.FaceISO(l) + " (flat meter " + words.ISO(l) + ") at " + l.Shutter.Format() + ", " + l.Stop.Format()})
			}
		}
	}
	return g
}

// tightest says which kept rule has the least to spare, "" when none has a margin.
func tightest(findings []rules.Finding, sys unit.System) string {
	least, text := math.Inf(1), ""
	for _, f := range findings {
		m, ok := f.Margin.Get()
		if f.Status == rules.Pass && ok && m.Of == rules.AlongBoards && m.N < least {
			least, text = m.N, words.RuleTitle(f.Kind)+", "+f.Spare().In(sys)
		}
	}
	return text
}

// Size of the fit chart, in millimetres of the drawing.
const (
	fitChartWidth  = 150.0
	fitChartHeight = 72.0
)

// fitChart draws the light that the picked lens loses when it turns.
func fitChart(now plan.Now, hole string) template.HTML {
	at := now.Picked
	if at == nil || len(at.Loss) == 0 {
		return ""
	}
	f := at.Fit()
	c := chart.Fit{Hole: hole, Lens: words.Lens(f), Limits: f.Pan, Rows: at.Loss}
	return template.HTML(sheet.InlineSVG(chart.FitChart(c, fitChartWidth, fitChartHeight))) // the writer escapes every text in it
}
