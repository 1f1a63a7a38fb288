package arena

import (
	"strings"

	"example.org/rinkpane/internal/measure/form"
)

// Source says where a number of the survey comes from. "" is not said.
type Source string

// The sources, the surest first.
const (
	Measured Source = "measured" // by somebody at the rink
	Drawing  Source = "drawing"  // from a plan, a contractor's list or a rule book
	Frames   Source = "frames"   // worked out from frames of a game
	Guess    Source = "guess"    // a usual number, or an estimate by eye
)

// Sources lists the sources, the surest first.
func Sources() []Source { return []Source{Measured, Drawing, Frames, Guess} }

// source reads where the numbers of a group come from: a word for all of them, or
// fields of the group with a word each. What a path is called in messages is what
// [Arena.Source] knows it by.
func (rd *reader) source(m form.Map, fields []string) {
	n := m.At("source")
	if !n.Present() {
		return
	}
	if !n.IsMap() {
		rd.from(m.Path(), form.Parse(n, form.Words(Sources()...)))
		return
	}
	fields = fields[:len(fields)-1] // source itself comes last
	of := n.Map(fields...)
	for _, f := range fields {
		if word := of.At(f); word.Present() {
			rd.from(m.Path()+"."+f, form.Parse(word, form.Words(Sources()...)))
		}
	}
}

func (rd *reader) from(path string, s Source) {
	if rd.a.sources == nil {
		rd.a.sources = map[string]Source{}
	}
	rd.a.sources[path] = s
}

// as gives a pane of a row the sources of its line, which has the first pane's name.
func (rd *reader) as(first, id string) {
	if first == id {
		return
	}
	line := "panes[" + first + "]"
	for path, s := range rd.a.sources {
		if rest, of := strings.CutPrefix(path, line); of {
			rd.a.sources["panes["+id+"]"+rest] = s
		}
	}
}

// Source returns where the number at a path comes from: what is said of it, else of
// the group it stands in, else of the whole file. Paths are those of messages:
// "boards.ledge", "panes[P7].width", "light.readings[#3]".
func (a Arena) Source(path string) Source {
	for {
		if s, said := a.sources[path]; said || path == "" {
			return s
		}
		path = path[:max(strings.LastIndexAny(path, ".["), 0)]
	}
}
