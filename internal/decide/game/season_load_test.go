package game

import (
	"fmt"
	"strings"
	"testing"
	"time"
)

// long is a season of 1,312 games with 14 people who all ask for all of them.
func long() string {
	var b strings.Builder
	b.WriteString("rinkpane: games 1\narena: quillhaven.yaml\nholes: [B1, B2, B3, B4, A1, A2, A3, A4]\ngames:\n")
	day := time.Date(2026, 10, 1, 0, 0, 0, 0, time.UTC)
	for k := range 1312 {
		fmt.Fprintf(&b, "  - {id: g%04d, date: %s, start: \"%02d:00\", home: Herons, away: Otters, home-attacks: %s}\n",
			k, day.AddDate(0, 0, k/6).Format(dayLayout), 10+2*(k%6), []string{"A", "B"}[k%2])
	}
	b.WriteString("people:\n")
	for k := range 14 {
		fmt.Fprintf(&b, "  - {id: p%02d, follows: %s, lenses: [%s]}\n", k, Follows()[k%len(Follows())], []string{"70-200", "24-70, 70-200", "300-2.8"}[k%3])
	}
	b.WriteString("requests:\n")
	for k := range 14 {
		fmt.Fprintf(&b, "  - {who: p%02d}\n", k)
	}
	for k := range 1000 {
		fmt.Fprintf(&b, "  - {who: p%02d, games: g%04d, firm: must, asked: 2026-09-01}\n", k%14, k)
	}
	return b.String()
}

// A season of 1,312 games, eight holes, fourteen people and a thousand requests of their
// own is read, scored and laid out in a small part of the five seconds that the whole may
// take.
func TestLongSeasonIsLaidOut(t *testing.T) {
	start := time.Now()
	s := read(t, long(), nil)
	was := time.Now()
	table, err := s.Score(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	scored := time.Now()
	must := 0
	for _, g := range s.Games {
		n := s.Night(table, g)
		if len(n.Asks) != 14 || len(n.Worth) != 3 {
			t.Fatalf("game %s: %d asks, %d periods", g.ID, len(n.Asks), len(n.Worth))
		}
		for _, a := range n.Asks {
			if a.Must {
				must++
			}
		}
	}
	if must != 1000 {
		t.Errorf("%d firm requests, want a thousand", must)
	}
	t.Logf("read %v, scored %v, laid out %v", was.Sub(start), scored.Sub(was), time.Since(scored))
}
