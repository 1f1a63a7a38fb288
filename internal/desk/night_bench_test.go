package desk

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
	"time"
)

// longGames is a season of so many games, two days apart up to today, with fourteen people
// of whom twelve ask for all of them; invented.
func longGames(games int) string {
	head, tail, _ := strings.Cut(exampleGames, "games:\n")
	_, tail, _ = strings.Cut(tail, "people:\n")
	tail, _, _ = strings.Cut(tail, "closed:\n")
	var b strings.Builder
	b.WriteString(head + "games:\n")
	for k := range games {
		fmt.Fprintf(&b, "  - {id: g%04d, date: %s, start: \"19:00\", home: Herons, away: %s, home-attacks: %s, times: {warm-up: \"18:25\", period-1: \"19:00\", period-2: \"19:45\", period-3: \"20:30\"}}\n",
			k+1, time.Now().AddDate(0, 0, 2*(k+1-games)).Format(time.DateOnly), []string{"Otters", "Gulls", "Terns"}[k%3], []string{"A", "B"}[k%2])
	}
	b.WriteString("people:\n" + strings.Replace(tail, "reservations:\n", func() (more string) {
		for k, follows := range []string{"away", "both", "home", "away-goalkeeper", "both", "away", "home", "both", "end-B"} {
			more += fmt.Sprintf("  - {id: p%d, follows: %s, lenses: [%s]}\n", k+1, follows, []string{"70-200", "24-70, 70-200", "300-2.8"}[k%3])
		}
		return more + "reservations:\n"
	}(), 1))
	b.WriteString("requests:\n  - {who: tv, games: [g0001], firm: must}\n")
	for _, who := range strings.Fields("ada ben cleo dov p1 p2 p3 p4 p5 p6 p7 p8 p9") {
		fmt.Fprintf(&b, "  - {who: %s, asked: 2015-01-01}\n", who)
	}
	return strings.Replace(b.String(), "The Herons at home, November", "Long", 1)
}

// BenchmarkLongSeason changes the last game of a season of 1,312 games and shows it: a seat
// by hand, a late request, somebody who did not come, and the pages of the season.
func BenchmarkLongSeason(b *testing.B) {
	h, _, _ := ownDesk(b, false)
	send := func(method, target, body string, want int) string {
		r := httptest.NewRequest(method, "http://127.0.0.1:8417"+target, strings.NewReader(body))
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		w := httptest.NewRecorder()
		if h.ServeHTTP(w, r); w.Code != want {
			b.Fatalf("%s: %d: %.500s", target, w.Code, w.Body)
		}
		return w.Header().Get("Location")
	}
	const games = 1312
	last := fmt.Sprintf("g%04d", games)
	send("POST", herons, url.Values{"text": {longGames(games)}}.Encode(), http.StatusSeeOther)
	start := time.Now()
	send("GET", demoPage+"/game?season=long&game="+last, "", http.StatusOK)
	b.Logf("first page after a start: %v", time.Since(start))
	version := 1
	for _, c := range []struct {
		name   string
		fields []string
	}{
		{"FixASeat", []string{"do", "give", "game", last, "who", "ada", "hole", "A4"}},
		{"LateRequest", []string{"do", "request", "who", "tv", "games", last}},
		{"NoShow", []string{"do", "missed", "game", last, "who", "ada", "came", "no"}},
	} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				q := url.Values{"base": {fmt.Sprint(version)}}
				for i := 0; i+1 < len(c.fields); i += 2 {
					q.Set(c.fields[i], c.fields[i+1])
				}
				send("GET", send("POST", demoPage+"/games/change?season=long", q.Encode(), http.StatusSeeOther), "", http.StatusOK)
				version++
			}
		})
	}
	for _, page := range []string{"/games", "/game?game=" + last, "/game?who=ada&game=" + last, "/requests", "/ledger", "/games.ics?who=ada"} {
		b.Run("Page"+strings.ReplaceAll(page, "/", "_"), func(b *testing.B) {
			at := demoPage + page + "?season=long"
			if strings.Contains(page, "?") {
				at = demoPage + page + "&season=long"
			}
			for b.Loop() {
				send("GET", at, "", http.StatusOK)
			}
		})
	}
}
