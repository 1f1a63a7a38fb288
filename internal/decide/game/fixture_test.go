package game

import (
	"errors"
	"io"
	"io/fs"
	"strings"
	"testing"

	"example.org/rinkpane/examples"
)

// files opens the example arenas, and the texts given by their names.
func files(texts map[string]string) Files {
	return func(path string) (io.ReadCloser, error) {
		if text, ok := texts[path]; ok {
			return io.NopCloser(strings.NewReader(text)), nil
		}
		f, err := examples.Files.Open(path)
		if errors.Is(err, fs.ErrNotExist) {
			return nil, fs.ErrNotExist
		}
		return f, err
	}
}

// small is a sound document; invented.
const small = `rinkpane: games 1
name: A small season
arena: quillhaven.yaml
closing: 2 d
move-cost: 0.02
people:
  - {id: ann, name: Ann, lenses: [70-200, 24-70], follows: home, works: standing}
  - {id: bo, lenses: [300-2.8], follows: away-goalkeeper, cannot: [A1]}
  - {id: tv, name: Corner camera, camera: broadcast, lenses: [70-200]}
reservations:
  - {holes: [A1, B1], for: broadcast, rule: "broadcast agreement, part 4"}
closed:
  - {hole: A3, why: the inspection refused it, games: g2}
games:
  - {id: g1, series: cup, date: 2026-11-28, start: "19:00", home: Herons, away: Otters, home-attacks: B, times: {practice: "10:30", warm-up: "18:30", period-1: "19:00", lock-up: "00:10"}}
  - {id: g2, date: 2026-12-05, start: "19:00", home: Herons, away: Gulls, home-attacks: [A, A, B]}
requests:
  - {who: ann, firm: must, asked: 2026-11-01}
  - {who: bo, games: cup, asked: 2026-11-27 12:00}
  - {who: tv, games: [g1], periods: [1, 2]}
seats:
  - {game: g2, who: bo, hole: B3}
`

func read(t testing.TB, text string, more map[string]string) Season {
	t.Helper()
	s, err := Read("games.yaml", strings.NewReader(text), files(more))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func readAll(t testing.TB, in io.ReadCloser) string {
	t.Helper()
	defer in.Close()
	text, err := io.ReadAll(in)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}
