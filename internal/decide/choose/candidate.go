package choose

import (
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/rink"
)

// Candidate is one hole that may be chosen: one of the arena's, or the standard
// hole of the rule sets at a place where it could be made.
//
// A new candidate's Hole.ID is for programs: it stays the same from run to run
// and from version to version, whatever the landmarks and the arena's units
// ("P017+460" is 460 mm along pane P017 from its lower edge, "@1473" 1473 mm
// above the ice where several heights were asked for). People are told its
// place: [Candidate.Say].
type Candidate struct {
	Hole   glass.Hole // the very hole: size, corner, rounding, height, cover
	Place  arena.Place
	New    bool // not in the arena's document
	Lifted bool // its height tells it from others at the same place

	corner  rink.Corner
	at      geom.Vec2
	against []string // rules on single holes that it fails, or that the survey cannot answer
}

// Corner returns the rink's corner, "" between the blue lines and on a rink
// without markings.
func (c Candidate) Corner() string { return c.corner.String() }

// At returns its point on the boards' rink face in metres, in the rink's frame.
func (c Candidate) At() geom.Vec2 { return c.at }

// IsCut reports that the hole is there already, so that choosing it cuts no pane.
func (c Candidate) IsCut() bool { return !c.New && c.Hole.State == glass.Cut }

// State says what there is of the hole: "cut", "planned" or "new".
func (c Candidate) State() string {
	switch {
	case c.New:
		return "new"
	case c.IsCut():
		return string(glass.Cut)
	}
	return string(glass.Planned)
}

// Say names the candidate for people: a drawn hole by its id, a new one by its
// place.
func (c Candidate) Say(sys unit.System) string {
	if !c.New {
		return c.Hole.ID
	}
	name := c.Place.Name(sys)
	if c.Lifted {
		name += " at " + c.Hole.Height.Format(sys)
	}
	return name
}

// Words names the candidate as people speak: a drawn hole by its id, a new one by
// its place, "B-bench goal line, 42 in back".
func (c Candidate) Words(sys unit.System) string {
	if !c.New {
		return c.Hole.ID
	}
	name := c.Place.Say(sys)
	if c.Lifted {
		name += ", at " + c.Hole.Height.Format(sys)
	}
	return name
}

// spoken is a candidate in a sentence for people.
type spoken struct{ Candidate }

// Say returns the candidate's words.
func (c spoken) Say(sys unit.System) string { return c.Words(sys) }

// Is reports whether people or programs mean the candidate by a name: its id,
// or what either unit system calls its place.
func (c Candidate) Is(name string) bool {
	return c.Hole.ID == name || c.New && (c.Say(unit.Imperial) == name || c.Say(unit.Metric) == name)
}
