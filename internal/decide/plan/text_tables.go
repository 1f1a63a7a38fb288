package plan

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/measure/unit"
)

// FindingsText is every rule over the whole arena, then what is to be mended.
func (p Plan) FindingsText(sys unit.System) string {
	t := newTable("rule", "answer", "margin", "rule set")
	for _, s := range ByRule(p.Findings) {
		t.row(s.Rule, string(s.Status), s.Words(sys), s.Set)
	}
	out := p.heading("Findings") + t.String()
	if p.toMend() > 0 {
		out += "\n" + p.mendText(sys)
	}
	for _, n := range p.Notes {
		out += "\n" + wrap("Note: "+n, "  ")
	}
	return out
}

// FitText is the fit table of every hole: each lens at each end of its range.
func (p Plan) FitText(sys unit.System) string {
	var b strings.Builder
	b.WriteString(p.heading("Which lens works in which hole"))
	b.WriteString(wrap("Degrees from straight ahead, to either side. clean: no corner of the picture loses more than a twentieth of "+
		"its light. half: the middle of the picture keeps half. touch: the barrel meets the glass. -: not even straight ahead.", ""))
	for _, alike := range p.alike() {
		h := alike[0]
		b.WriteString("\n" + wrap(fmt.Sprintf("%s: %s, %s pane", holeNames(alike), h.Size().Format(sys),
			(unit.Length(h.Thick)*unit.Millimetre).Format(sys)), "  "))
		b.WriteString(h.fitTable().String())
	}
	return b.String()
}

// alike groups holes whose fit tables are the same, in the order of the first of each.
func (p Plan) alike() [][]Hole {
	var out [][]Hole
	at := map[string]int{}
	for _, h := range p.Holes {
		key := fmt.Sprint(h.Size(), h.Thick) + h.fitTable().String()
		i, met := at[key]
		if !met {
			i = len(out)
			at[key] = i
			out = append(out, nil)
		}
		out[i] = append(out[i], h)
	}
	return out
}

func holeNames(holes []Hole) string {
	names := make([]string, len(holes))
	for i, h := range holes {
		names[i] = h.ID
	}
	if len(names) == 1 {
		return "Hole " + names[0]
	}
	return "Holes " + strings.Join(names, ", ")
}

func (h Hole) fitTable() *table {
	t := newTable("lens", ">mm", ">turn: clean", ">half", ">touch", ">tilt: clean", ">half", ">touch", "")
	for _, f := range h.Fits {
		mark := ""
		if f.Lens == h.Best && f.Focal == h.BestFocal {
			mark = "best"
		}
		mm := millimetres(f.Focal)
		if !f.Fits {
			t.row(f.Lens, mm, "", "", "", "", "", "", "too wide for the hole")
			continue
		}
		t.row(f.Lens, mm, bare(f.PanClear), bare(f.PanUsable), bare(f.PanBody), bare(f.TiltClear), bare(f.TiltUsable), bare(f.TiltBody), mark)
	}
	return t
}

func bare(v *float64) string {
	if v == nil {
		return "-"
	}
	return strconv.FormatFloat(*v, 'f', 1, 64)
}

// LightText is the light table of every hole.
func (p Plan) LightText(sys unit.System) string {
	var b strings.Builder
	b.WriteString(p.heading("Light and ISO"))
	if p.Survey.Readings == 0 {
		b.WriteString(wrap("The survey has no light reading: add lux readings to the arena's file under light.", ""))
		return b.String()
	}
	b.WriteString(guessNote + " " + overNote + "\n")
	for _, h := range p.Holes {
		lens := ""
		if f, ok := h.BestFit(); ok {
			lens = ", " + f.Short()
		}
		fmt.Fprintf(&b, "\nHole %s%s\n", h.ID, lens)
		t := newTable("part of the ice", ">light", ">EV", ">shutter", ">stop", ">ISO", ">away", ">framed at", ">sharp from", ">to")
		for _, l := range h.Light {
			t.row(lightCells(l, sys)...)
		}
		b.WriteString(t.String())
	}
	return b.String()
}

func lightCells(l light.Row, sys unit.System) []string {
	cells := []string{
		l.Zone, unit.Illuminance(l.MedianLx).Format(sys), strconv.FormatFloat(l.EV100, 'f', 1, 64),
		unit.Shutter(l.ShutterS).Format(), unit.Stop(l.Stop).Format(), ISOWords(l), Far(l.DistanceM, sys),
	}
	if l.Depth == nil {
		return append(cells, "", "", "")
	}
	far := "any"
	if l.Depth.FarM != nil {
		far = Far(*l.Depth.FarM, sys)
	}
	return append(cells, strconv.FormatFloat(l.Depth.FocalMM, 'f', 0, 64)+" mm", Far(l.Depth.NearM, sys), far)
}

// guessShare is the share of a zone outside the readings from which its light is
// called a guess. Own choice.
const guessShare = 0.5

// ISOWords prints a row's ISO as a camera is set, with ? where the light is
// mostly a guess and ! where the body's limit is passed.
func ISOWords(l light.Row) string {
	out := strconv.FormatFloat(l.ISONominal, 'f', 0, 64)
	if l.OverISO {
		out += "!"
	}
	if l.Extrapolated > guessShare {
		out += "?"
	}
	return out
}

// What the signs behind an ISO mean.
const (
	guessNote = "?: mostly outside the readings, a guess."
	overNote  = "!: above the ISO that the body's user accepts."
)

// ISONotes tells what the signs that [ISOWords] puts behind the rows' ISO mean:
// nothing when no row has one.
func ISONotes(rows []light.Row) []string {
	var out []string
	if slices.ContainsFunc(rows, func(l light.Row) bool { return l.Extrapolated > guessShare }) {
		out = append(out, guessNote)
	}
	if slices.ContainsFunc(rows, func(l light.Row) bool { return l.OverISO }) {
		out = append(out, overNote)
	}
	return out
}

// HolesText is each hole's place and size, then what it sees.
func (p Plan) HolesText(sys unit.System) string {
	places := newTable("hole", "pane", "where", ">station", ">height", "size")
	reach := newTable("hole", ">puck height", ">face height", ">blind strip", ">mean", "state", "assumed")
	for _, h := range p.Holes {
		places.row(h.ID, h.Pane, h.brief(sys), unit.Length(h.Station).Format(sys), unit.Length(h.Height).Format(sys), h.Size().Format(sys))
		assumed := ""
		if n := len(h.Reach.Assumed); n > 0 {
			assumed = Count(n, "number")
		}
		reach.row(h.ID, percent(h.Reach.Share), percent(h.Reach.FaceShare), unit.Length(h.Reach.Blind).Format(sys), unit.Length(h.Reach.BlindMean).Format(sys), h.State, assumed)
	}
	return p.heading("Holes") + places.String() +
		"\nShare of the ice that some lens can be aimed at with half of its light, and the width of\n" +
		"the strip along the near boards that none can: straight ahead, and its mean.\n" + reach.String() + p.assumedText()
}

// assumedText lists what stood in for numbers that the survey lacks.
func (p Plan) assumedText() string {
	var b strings.Builder
	for _, h := range p.Holes {
		for _, a := range h.Reach.Assumed {
			b.WriteString(wrap(h.ID+": "+a, "  "))
		}
	}
	if b.Len() == 0 {
		return ""
	}
	return "\nAssumed, since the survey does not say:\n" + b.String()
}

// heading stands above every text of the folder.
func (p Proof) heading(title string) string {
	return fmt.Sprintf("%s: %s\nrevision %s\n\n", p.Survey.Name, title, p.Revision[:shortRevision])
}

// shortRevision is how many figures of a revision people read.
const shortRevision = 12
