package desk

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"net/url"
	"reflect"
	"strings"
	"testing"

	"example.org/rinkpane/internal/decide/seat"
)

// exampleGames is a season at the demo arena; invented.
const exampleGames = `rinkpane: games 1
name: The Herons at home, November
note: Every name here is invented.
arena: ../quillhaven.yaml
holes: [B1, B2, B3, B4, A1, A2, A3, A4]
closing: 2 d
move-cost: 0.02
games:
  - {id: nov-07, series: league, date: 2026-11-07, start: "19:00", home: Herons, away: Otters, home-attacks: B, times: {practice: "10:30", warm-up: "18:25", period-1: "19:00", lock-up: "22:00"}}
  - {id: nov-14, series: league, date: 2026-11-14, start: "17:30", home: Herons, away: Gulls, home-attacks: A}
  - {id: nov-28, series: cup, date: 2026-11-28, start: "19:00", home: Herons, away: Kites, home-attacks: B}
people:
  - {id: ada, name: Ada Holm, outlet: Quillhaven Courier, follows: home, lenses: [24-70, 70-200], works: standing}
  - {id: ben, name: Ben Orr, follows: both, lenses: [70-200, 300-2.8]}
  - {id: cleo, name: Cleo Marsh, outlet: Herons club, follows: home, lenses: [16-35, 70-200]}
  - {id: dov, name: Dov Lind, follows: home-goalkeeper, lenses: [70-200], eye: left}
  - {id: tv, name: Corner camera, camera: broadcast, lenses: [70-200]}
reservations:
  - {holes: [A1, B1], for: broadcast, rule: "the invented league's agreement, part 4"}
closed:
  - {hole: B4, why: the inspection refused it, games: [nov-14]}
requests:
  - {who: ada, firm: must, asked: 2026-10-01}
  - {who: ben, asked: 2026-10-01}
  - {who: cleo, games: [nov-07, nov-28], asked: 2026-10-01}
  - {who: dov, games: league, asked: 2026-11-06}
  - {who: tv, games: nov-07, asked: 2026-09-01}
seats:
  - {game: nov-07, who: cleo, hole: B2, periods: [1]}
`

const (
	herons   = demoPage + "/games?season=the-herons-at-home-november"
	heronsDo = demoPage + "/games/change?season=the-herons-at-home-november"
)

// do sends a form that changes the season.
func (b seasonDesk) do(base int, fields ...string) (int, string) {
	b.t.Helper()
	q := url.Values{"base": {fmt.Sprint(base)}}
	for i := 0; i+1 < len(fields); i += 2 {
		q.Set(fields[i], fields[i+1])
	}
	w := ask(b.t, b.h, "POST", heronsDo, q.Encode())
	return w.Code, w.Body.String()
}

type seasonDesk struct {
	t *testing.T
	h http.Handler
}

func (b seasonDesk) page(path string, words ...string) {
	b.t.Helper()
	says(b.t, ask(b.t, b.h, "GET", demoPage+path, ""), http.StatusOK, words...)
}

// TestASeasonByForms changes a season as a planner does: a seat by hand and for one period,
// a request, somebody who did not come, a hole that is closed, a date, a game called off.
// Each form is one version of the document, and what it does not concern stays as written.
func TestASeasonByForms(t *testing.T) {
	muchComputed(t)
	h, d, _ := ownDesk(t, false)
	b := seasonDesk{t, h}
	b.page("/games", "Herons – Otters", "Sat 7 Nov 2026", "B A B", "Every name here is invented")
	b.page("/game?game=nov-07", "Cleo Marsh</a> <span class=\"tag\">by hand", "Proved the best", "The next best", "goals of the team you follow")
	b.page("/game?game=nov-14", "closed: the inspection refused it")
	for i, c := range []struct {
		fields []string
		path   string
		words  []string
	}{
		{[]string{"do", "give", "game", "nov-07", "who", "ben", "hole", "A4"}, "/game?game=nov-07&who=ben", []string{"Leave their seat to the rule again", "They have it."}},
		{[]string{"do", "give", "game", "nov-07", "who", "ben", "hole", "A3", "period", "2"}, "/games/text", []string{"{game: nov-07, who: ben, hole: A3, periods: [2]}", "{game: nov-07, who: ben, hole: A4, periods: [1, 3]}"}},
		{[]string{"do", "free", "game", "nov-07", "who", "ben"}, "/game?game=nov-07", []string{"Ben Orr"}},
		{[]string{"do", "request", "who", "tv", "games", "nov-28", "firm", "must"}, "/game?game=nov-28", []string{"Corner camera", "late"}},
		{[]string{"do", "missed", "game", "nov-07", "who", "ada", "came", "no"}, "/game?game=nov-07", []string{"did not come"}},
		{[]string{"do", "close", "hole", "A2", "why", "its cover is lost", "games", "nov-28"}, "/game?game=nov-28", []string{"closed: its cover is lost"}},
		{[]string{"do", "day", "game", "nov-28", "date", "2026-11-29", "start", "15:00"}, "/games", []string{"Sun 29 Nov 2026", "15:00"}},
		{[]string{"do", "marks", "game", "nov-28", "marks", "televised, final"}, "/game?game=nov-28", []string{`<span class="tag">televised</span>`}},
		{[]string{"do", "marks", "game", "nov-28", "marks", ""}, "/game?game=nov-28", []string{`name="marks"`}},
		{[]string{"do", "off", "game", "nov-14", "off", "yes"}, "/game?game=nov-14", []string{"the game is called off"}},
		{[]string{"do", "person", "name", "Eda Frost", "camera", "stills", "follows", "away", "lenses", "70-200, 24-70", "cannot", "A1"}, "/requests", []string{"Eda Frost", "24-70, 70-200"}},
		{[]string{"do", "change-person", "who", "eda-frost", "outlet", "Lake Picture Desk", "camera", "stills", "follows", "home", "works", "sitting", "cannot", "A1, A2"}, "/requests?who=eda-frost", []string{"How Eda Frost works", `value="A1, A2"`, `value="sitting"`, "Lake Picture Desk"}},
		{[]string{"do", "reserve", "holes", "B3", "for", "remote", "rule", "the club's own", "games", "cup", "periods", "1, 3"}, "/requests", []string{"<strong>B3</strong> for remote", "period 1, 3: the club&#39;s own"}},
		{[]string{"do", "unreserve", "n", "2"}, "/requests", []string{"<strong>A1, B1</strong> for broadcast"}},
		{[]string{"do", "holes", "holes", "B1, B2, B3, B4, A1, A2, A4"}, "/requests", []string{`name="holes" value="A3"> A3`}},
		{[]string{"do", "withdraw", "n", "2", "withdrawn", "yes"}, "/requests?who=ben", []string{"taken back"}},
		{[]string{"do", "game", "home", "Herons", "away", "Terns", "date", "2026-12-05", "start", "19:30", "home-attacks", "A"}, "/games", []string{"Herons – Terns"}},
	} {
		if code, body := b.do(i+1, c.fields...); code != http.StatusSeeOther {
			t.Fatalf("%v: %d %.600s", c.fields, code, body)
		}
		if c.path != "" {
			b.page(c.path, c.words...)
		}
		seatedAsAfresh(t, d)
	}
	if page := ask(t, h, "GET", demoPage+"/requests?who=ada", "").Body.String(); strings.Contains(page, "/sign-out") {
		t.Error("who is shown is taken for who is signed in")
	}
	v, err := d.shell.Shelf.Keeper().Version(t.Context(), "the-herons-at-home-november", 0)
	if err != nil {
		t.Fatal(err)
	}
	for _, kept := range []string{"note: Every name here is invented.\n", "  - {who: ada, firm: must, asked: 2026-10-01}\n", "  - {game: nov-07, who: cleo, hole: B2, periods: [1]}\n"} {
		if !strings.Contains(v.Text, kept) {
			t.Errorf("the text no longer holds %q", kept)
		}
	}
}

// seatedAsAfresh compares the desk's seats, of which it works out no more than a change
// stirs, with the whole season worked out anew.
func seatedAsAfresh(t *testing.T, d *Desk) {
	t.Helper()
	on := d.shell.Shelf
	games, err := on.OpenGames(t.Context(), "the-herons-at-home-november")
	if err != nil {
		t.Fatal(err)
	}
	got, err := on.Seatings(t.Context(), games)
	if err != nil {
		t.Fatal(err)
	}
	table, err := on.Score(t.Context(), games)
	if err != nil {
		t.Fatal(err)
	}
	want, err := seat.Solve(t.Context(), games.Season.Nights(table), seat.Question{})
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(got, want.Season.Nights) {
		t.Errorf("version %d: the desk seats\n%+v\nafresh\n%+v", games.Version.Number, got, want.Season.Nights)
	}
}

// TestSeatsThatCannotBeAreRefused: each wrong form is answered in words, and nothing is saved.
func TestSeatsThatCannotBeAreRefused(t *testing.T) {
	muchComputed(t)
	h, d, _ := ownDesk(t, false)
	b := seasonDesk{t, h}
	for _, c := range []struct {
		status int
		says   string
		fields []string
	}{
		{422, "B2 is given to cleo already", []string{"do", "give", "game", "nov-07", "who", "ada", "hole", "B2"}},
		{422, "did you mean B2", []string{"do", "give", "game", "nov-07", "who", "ada", "hole", "B22"}},
		{422, "B4 is closed", []string{"do", "give", "game", "nov-14", "who", "ada", "hole", "B4"}},
		{422, "no person is called", []string{"do", "give", "game", "nov-07", "who", "adda", "hole", "A4"}},
		{404, "no such game", []string{"do", "give", "game", "nov-99", "who", "ada", "hole", "A4"}},
		{422, "no date", []string{"do", "day", "game", "nov-07", "date", "7.11.", "start", "19:00"}},
		{400, "incomplete", []string{"do", "dance"}},
		{409, "no longer there", []string{"do", "withdraw", "n", "99", "withdrawn", "yes"}},
	} {
		if code, body := b.do(1, c.fields...); code != c.status || !strings.Contains(body, c.says) {
			t.Errorf("%v: %d, expected %d and %q: %.700s", c.fields, code, c.status, c.says, body)
		}
	}
	if doc, err := d.shell.Shelf.Keeper().Document(t.Context(), "the-herons-at-home-november"); err != nil || doc.Head != 1 {
		t.Errorf("version %d, %v", doc.Head, err)
	}
}

// TestTwoPlannersOfOneSeason: what they change apart is joined, what both change is asked.
func TestTwoPlannersOfOneSeason(t *testing.T) {
	muchComputed(t)
	h, _, _ := ownDesk(t, false)
	b := seasonDesk{t, h}
	for _, fields := range [][]string{
		{"do", "give", "game", "nov-07", "who", "ada", "hole", "A4"},
		{"do", "request", "who", "tv", "games", "nov-28"},
		{"do", "day", "game", "nov-28", "date", "2026-11-29", "start", "15:00"},
	} {
		if code, body := b.do(1, fields...); code != http.StatusSeeOther {
			t.Fatalf("%v: %d %.600s", fields, code, body)
		}
	}
	code, body := b.do(1, "do", "day", "game", "nov-28", "date", "2026-11-30", "start", "15:00")
	if code != http.StatusConflict || !strings.Contains(body, "You both changed the same") || !strings.Contains(body, `name="base" value="4"`) {
		t.Errorf("%d %.900s", code, body)
	}
	b.page("/games", "Sun 29 Nov 2026")
}

// TestSeasonsAndSchedulesComeIn brings a document that is wrong, one for another arena, and
// schedules: what is wrong is named by its place, ids stay.
func TestSeasonsAndSchedulesComeIn(t *testing.T) {
	muchComputed(t)
	h, _, _ := ownDesk(t, false)
	b := seasonDesk{t, h}
	post := func(text string) (int, string) {
		w := fillIn(t, h, herons, map[string]string{"text": text})
		return w.Code, w.Body.String()
	}
	for _, c := range []struct {
		status     int
		text, says string
	}{
		{422, strings.Replace(exampleGames, "who: ben,", "who: bean,", 1), `did you mean ben?`},
		{422, strings.Replace(exampleGames, "quillhaven", "brennholm", 1), "holes[#1]"},
		{422, strings.Replace(exampleGames, "../quillhaven.yaml", "nowhere", 1), "this desk keeps none of that name"},
		{409, exampleGames, "there already"},
		{422, "id,date,start,home,away\nx1,2026-12-05,25:00,Herons,Terns\nx2,soon,19:00,Herons,Gulls\n", "2 rows cannot be read"},
		{303, "id,date,start,home,away,home-attacks\nnov-28,2026-11-30,18:00,Herons,Kites,A\nx1,2026-12-05,19:00,Herons,Terns,B\n", ""},
		{303, "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//test//EN\r\nBEGIN:VEVENT\r\nUID:x2\r\nDTSTAMP:20261101T000000Z\r\nDTSTART:20261212T190000\r\nSUMMARY:Herons v Loons\r\nX-HOME-ATTACKS:B\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n", ""},
	} {
		if code, body := post(c.text); code != c.status || !strings.Contains(body, c.says) {
			t.Errorf("%.40q: %d, expected %d and %q: %.900s", c.text, code, c.status, c.says, body)
		}
	}
	b.page("/games", "Mon 30 Nov 2026", "Herons – Terns", "Herons – Loons")
	w := ask(t, h, "POST", "/arena/brennholm/games", url.Values{"do": {"begin"}, "name": {"Winter"}, "date": {"2026-12-01"}, "start": {"19:00"}, "home": {"Larks"}, "away": {"Swifts"}, "home-attacks": {"B"}}.Encode())
	says(t, w, http.StatusSeeOther)
	says(t, ask(t, h, "GET", "/arena/brennholm/games", ""), 200, "Winter", "Larks – Swifts")
}

// BenchmarkFixASeat gives a seat by hand and shows the game: what one change on the desk takes.
func BenchmarkFixASeat(b *testing.B) {
	h, _, _ := ownDesk(b, false)
	send := func(method, target, body string, want int) string {
		r := httptest.NewRequest(method, "http://127.0.0.1:8417"+target, strings.NewReader(body))
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		w := httptest.NewRecorder()
		if h.ServeHTTP(w, r); w.Code != want {
			b.Fatalf("%d: %.500s", w.Code, w.Body)
		}
		return w.Header().Get("Location")
	}
	send("GET", demoPage+"/game?game=nov-28", "", http.StatusOK) // the holes' scores are made once
	for n := 1; b.Loop(); n++ {
		q := url.Values{"base": {fmt.Sprint(n)}, "do": {"give"}, "game": {"nov-28"}, "who": {"ada"}, "hole": {[]string{"A4", "B3"}[n%2]}}
		send("GET", send("POST", heronsDo, q.Encode(), http.StatusSeeOther), "", http.StatusOK)
	}
}

// TestAPlanThatChangedUnderSeats: a hole with a seat is moved, then turned off: both are
// listed, nothing moves by itself, and the season is put right by a form.
func TestAPlanThatChangedUnderSeats(t *testing.T) {
	muchComputed(t)
	h, _, _ := ownDesk(t, false)
	b := seasonDesk{t, h}
	edit := func(base int, edits string) {
		t.Helper()
		r := httptest.NewRequest("POST", "http://127.0.0.1:8417/api/arenas/quillhaven/edits", strings.NewReader(fmt.Sprintf(`{"base": %d, "edits": [%s]}`, base, edits)))
		r.Header.Set("Content-Type", "application/json")
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		says(t, w, http.StatusOK)
	}
	edit(1, `{"do": "move", "hole": "B2", "to": {"height_m": 1.9}}`)
	b.page("/game?game=nov-07", "to be done again", "Cleo Marsh</strong> at B2, period 1: the hole moved by")
	edit(2, `{"do": "turn", "hole": "B2", "state": "off"}`)
	b.page("/game?game=nov-07", "is turned off", "no longer fit the newest plan of the arena", "with version 2 of the arena", "Cleo Marsh</a> <span class=\"tag\">by hand")
	if code, body := b.do(1, "do", "free", "game", "nov-07", "who", "cleo"); code != http.StatusSeeOther {
		t.Fatalf("%d %.600s", code, body)
	}
	b.page("/games/text", "no longer fit the newest plan")
}
