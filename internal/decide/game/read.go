package game

import (
	"fmt"
	"io"
	"iter"
	"slices"
	"strings"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

// Limits of what a games document may hold.
const (
	MaxBytes        = 4 << 20
	MaxGames        = 5000
	MaxPeople       = 1000
	MaxRequests     = 20_000
	MaxReservations = 200
	MaxClosed       = 1000
	MaxFixed        = 50_000
	MaxMarks        = 20
	MaxRevoked      = 10_000
)

// Kind is the format marker of a games document: its first line reads
// "rinkpane: games 1".
const Kind = "games 1"

// Files opens what a games document names, by the path or id that stands in it.
type Files func(path string) (io.ReadCloser, error)

var (
	seasonFields = []string{"rinkpane", "name", "note", "arena", "kit", "holes", "closing", "move-cost", "whole-game",
		"schedule", "games", "people", "reservations", "closed", "requests", "seats", "revoked", "bodies", "clocks"}
	gameFields        = []string{"id", "series", "marks", "date", "start", "home", "away", "home-attacks", "periods", "times", "off"}
	personFields      = []string{"id", "name", "outlet", "camera", "follows", "lenses", "works", "eye", "elbow", "cannot"}
	reservationFields = []string{"holes", "for", "rule", "games", "periods"}
	closedFields      = []string{"hole", "why", "games"}
	requestFields     = []string{"who", "games", "periods", "follows", "firm", "asked", "withdrawn", "came"}
	seatFields        = []string{"game", "who", "hole", "periods"}
	revokedFields     = []string{"game", "who", "links"}
	bodyFields        = []string{"body", "who", "hole"}
	clockFields       = []string{"game", "frame", "shows"}
)

// reader gathers a season; what is wrong sticks to the document.
type reader struct {
	Season
	ids   struct{ holes, lenses, people, games, series []string }
	place map[string]int  // of a game among the games, by id
	named map[string]bool // ids of games
}

// Read reads and checks a games document with all that it names; name stands for it in
// messages. Errors are [*form.Problem] with file, line, column and field, or those of
// reading.
func Read(name string, in io.Reader, open Files) (Season, error) {
	doc, err := form.Read(name, in, MaxBytes)
	if err != nil {
		return Season{}, err
	}
	return From(doc, open)
}

// From is [Read] of a document that was parsed and has met no problem yet.
func From(doc *form.Document, open Files) (Season, error) {
	m := doc.Root().Map(seasonFields...)
	form.Parse(m.At("rinkpane"), marker)
	rd := &reader{}
	rd.Name, rd.Note = form.Optional(m.At("name"), form.Line), form.Optional(m.At("note"), form.Line)
	if err := rd.grounds(m, open); err != nil {
		return Season{}, err
	}
	rd.holes(m.At("holes"))
	rd.Closing = form.Optional(m.At("closing"), parseSpan)
	if move := m.At("move-cost"); move.Present() {
		rd.MoveCost = move.Float(0, 1)
	}
	rd.WholeGame = form.Optional(m.At("whole-game"), form.YesNo)
	if err := rd.games(m, open); err != nil {
		return Season{}, err
	}
	rd.people(m.At("people"))
	rd.reservations(m.At("reservations"))
	rd.closed(m.At("closed"))
	rd.requests(m.At("requests"))
	rd.seats(m.At("seats"))
	rd.revoked(m.At("revoked"))
	rd.bodies(m.At("bodies"))
	rd.clocks(m.At("clocks"))
	if err := doc.Err(); err != nil {
		return Season{}, err
	}
	return rd.Season, nil
}

func marker(s string) (string, error) {
	if s != Kind {
		return "", fmt.Errorf("%s; a games document says rinkpane: %s", form.Quote(s), Kind)
	}
	return s, nil
}

// grounds reads the arena and the kit that the document names.
func (rd *reader) grounds(m form.Map, open Files) (err error) {
	path := form.Parse(m.At("arena"), form.Line)
	rd.ArenaFile = path
	rd.Kit, err = kit.Default()
	if kitPath := form.Optional(m.At("kit"), form.Line); kitPath != "" && m.OK() {
		err = opened(m.At("kit"), open, func(in io.Reader) (err error) { rd.Kit, err = kit.Read(kitPath, in); return err })
	}
	if err != nil || !m.OK() {
		return err
	}
	err = opened(m.At("arena"), open, func(in io.Reader) error {
		doc, err := arena.Read(path, in)
		if err == nil {
			rd.Arena, err = doc.Check()
		}
		return err
	})
	rd.ids.lenses = rd.Kit.LensIDs()
	for _, h := range rd.Arena.Holes {
		rd.ids.holes = append(rd.ids.holes, h.ID)
	}
	return err
}

// entries are the groups of fields of a list, none where the list is left out.
func entries(n form.Node, most int, fields []string) iter.Seq[form.Map] {
	return func(yield func(form.Map) bool) {
		if !n.Present() {
			return
		}
		for _, item := range n.List(most) {
			if !yield(item.Map(fields...)) {
				return
			}
		}
	}
}

// opened reads the file that a value names; one that cannot be opened is a problem of the
// value.
func opened(n form.Node, open Files, read func(io.Reader) error) error {
	file, err := open(n.Value())
	if err != nil {
		n.Failf("%s cannot be opened: %v", form.Quote(n.Value()), err)
		return nil
	}
	defer file.Close()
	return read(file)
}

// holes reads which of the arena's holes are given; those that are cut where nobody says.
func (rd *reader) holes(n form.Node) {
	if !n.Present() {
		if rd.Holes, rd.Planned = given(rd.Arena); len(rd.Holes) == 0 && n.OK() {
			n.Failf("is missing, and %s has no hole that is cut or planned", form.Quote(rd.Arena.Name))
		}
		return
	}
	asked := map[string]bool{}
	for _, item := range n.List(arena.MaxHoles) {
		asked[rd.hole(item)] = true
	}
	for _, h := range rd.Arena.Holes {
		if asked[h.ID] {
			rd.Holes = append(rd.Holes, h.ID)
		}
	}
	if len(rd.Holes) == 0 && n.OK() {
		n.Failf("names no hole; leave it out for those that are cut")
	}
}

// hole reads the id of a hole that can be worked.
func (rd *reader) hole(n form.Node) string {
	id := known(n, "hole", rd.ids.holes)
	if !n.OK() {
		return id
	}
	if _, err := rd.Arena.Opening(id); err != nil {
		n.Failf("%s is turned off in the arena; name another, or turn it on there", form.Quote(id))
	}
	return id
}

// given reads the id of a hole that is given in this season.
func (rd *reader) given(n form.Node) string {
	id := rd.hole(n)
	if n.OK() && !slices.Contains(rd.Holes, id) {
		n.Failf("%s is not among the holes that are given: %s; add it to holes", form.Quote(id), strings.Join(rd.Holes, ", "))
	}
	return id
}

// known reads an id that must be one of those there are, and names the nearest otherwise.
func known(n form.Node, what string, ids []string) string {
	id := form.Parse(n, form.Line)
	if !n.OK() {
		return id
	}
	if err := form.Known(what, id, ids); err != nil {
		n.Failf("%v", err)
		return ""
	}
	return id
}
