package league

import (
	"context"
	"fmt"
	"strings"

	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/measure/unit"
)

// Look asks what the frames of one game of a season said.
type Look struct {
	Season
	Readings Document // as command recap writes them
	Game     string   // its id
}

// Looked is what they said.
type Looked struct {
	Season, Game, Title string
	Frames              int
	Sure                map[recap.Sure]int // frames by how surely they are matched
	recap.Taken                            // pictures in all
	Holes               []Used
	Lux                 recap.Spread // light by exposures, lx
}

// Used is what was used and kept at one hole over the game's day; "" for Hole is all
// frames whose hole is not known.
type Used struct {
	Hole   string
	Frames int
	recap.Taken
	PerHour unit.Maybe[recap.Rated] // keepers of periods in an hour worked
}

// Ask answers. Progress is told by [cores.Tell]. Errors are those of Open, of reading the
// readings, and of [recap.Ask].
func (q Look) Ask(ctx context.Context) (Looked, error) {
	s, err := q.Open()
	if err != nil {
		return Looked{}, err
	}
	g, ok := s.Game(q.Game)
	if !ok {
		return Looked{}, fmt.Errorf("%s has no game %s", q.Games.Name, q.Game)
	}
	read, err := recap.ReadReadings(q.Readings.Name, strings.NewReader(q.Readings.Text))
	if err != nil {
		return Looked{}, err
	}
	about, err := recap.Seated(ctx, s, g)
	if err != nil {
		return Looked{}, err
	}
	about.Frames = read.Frames
	a, err := recap.Ask(ctx, about)
	if err != nil {
		return Looked{}, fmt.Errorf("%s: %w", q.Readings.Name, err)
	}
	out := Looked{Season: s.Name, Game: g.ID, Title: a.Evening.Title, Frames: len(a.Frames), Sure: map[recap.Sure]int{}, Lux: a.Lux()}
	for _, f := range a.Frames {
		out.Sure[f.Sure]++
	}
	for _, u := range a.Uses {
		if u.Stage == "" {
			out.Bursts, out.Kept = out.Bursts+u.Bursts, out.Kept+u.Kept
			out.Holes = append(out.Holes, Used{u.Hole, u.Frames, u.Taken, u.PerHour})
		}
	}
	return out, nil
}
