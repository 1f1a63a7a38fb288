package desk

import (
	"context"
	"crypto/rand"
	"errors"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"os"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/league"
	"example.org/rinkpane/internal/desk/jobs"
	"example.org/rinkpane/internal/keep/people"
	"example.org/rinkpane/internal/keep/queue"
)

// jobDesk is a desk of the examples' own whose jobs a stand-in works: it tells that it is
// at 45 % of a stage, and answers once it may; of the sunk arena it fails.
func jobDesk(t *testing.T, may <-chan struct{}, workers int, sunk string) (http.Handler, *Desk, people.Register) {
	t.Helper()
	on, s := exampleShelf(t, t.TempDir())
	t.Cleanup(func() { s.Close() })
	folder := t.TempDir()
	stand := queue.Kind[league.Question, league.Answer]{Name: "choose", Limit: time.Minute,
		Do: func(ctx context.Context, q league.Question, b queue.Bench) (league.Answer, error) {
			if q.Arena.Name == sunk {
				return league.Answer{}, errors.New("this rink is under water")
			}
			b.Tell("scoring", 0.45)
			select {
			case <-may:
			case <-ctx.Done():
			}
			return league.Answer{Verdict: rules.Pass, Today: 0.25, Value: 0.5, Bound: 0.5}, ctx.Err()
		}}
	d, err := New(Options{Shelf: on, Register: s, Covers: s, Version: "test", Now: time.Now, Random: rand.Reader,
		Log: slog.New(slog.NewTextHandler(os.Stderr, nil)), Rules: []league.Document{{Name: rules.Default}},
		Jobs: &jobs.Backlog{Workers: workers, Kinds: []queue.Doer{stand}, Log: slog.New(slog.DiscardHandler), Open: func(ctx context.Context) (*queue.Queue, error) {
			return queue.OpenFolder(ctx, folder, queue.Options{Program: "test"})
		}}})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(d.backlog.Close)
	return d.Handler(), d, s
}

// TestJobsOnTheDesk asks about every arena, looks how far the jobs are, gives one up, and
// reads what they came to.
func TestJobsOnTheDesk(t *testing.T) {
	may := make(chan struct{})
	h, d, s := jobDesk(t, may, 1, "sorrel-flats.yaml")
	says(t, ask(t, h, "GET", "/jobs", ""), 200, "Nobody asked for a job yet", "Each of 3 arenas")
	as := signedIn(t, h, s, "Ada", "Bo")
	ada, bo := as["Ada"], as["Bo"]
	says(t, ada.form("/jobs", ""), 303)
	says(t, ada.form("/jobs", ""), 303) // asked once
	until := func(words ...string) string {
		t.Helper()
		for range 1000 {
			page := ada.get("/jobs").Body.String()
			all := true
			for _, w := range words {
				all = all && strings.Contains(page, w)
			}
			if all {
				return page
			}
			time.Sleep(20 * time.Millisecond)
		}
		t.Fatalf("the page never says all of %q: %s", words, ada.get("/jobs").Body)
		return ""
	}
	page := until("at work: scoring, 45 %", "<td>Ada</td>", "of 3 arenas not answered yet")
	if n := strings.Count(page, "best set of holes</td>"); n != 3 {
		t.Errorf("%d jobs are listed, expected 3", n)
	}
	if strings.Contains(bo.get("/jobs").Body.String(), "Give up best set") {
		t.Error("Bo may press what gives up Ada's jobs")
	}

	q, err := d.backlog.Queue(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	all, err := q.Listed(t.Context(), 10)
	if err != nil || len(all) != 3 || all[0].State != queue.AtWork {
		t.Fatalf("%+v, %v", all, err)
	}
	giveUp := "/jobs/" + all[0].ID + "/give-up"
	says(t, bo.form(giveUp, ""), 403, "somebody else")
	says(t, ada.form("/jobs/none/give-up", ""), 404, "no such job")
	says(t, ada.form(giveUp, ""), 303)
	until("Given up: 1")
	close(may)
	until("this rink is under water", "Done: 1", "Arenas, by common-practice", "0.500")
	now := ada.get("/jobs/now.json")
	says(t, now, 200, `"open":`, "best set of holes")

	d.backlog.Close()
	says(t, ada.get("/jobs"), 200, "not to be had on this desk now: The desk is closing")
	says(t, ada.form("/jobs", ""), 503)
}

// asPerson sends requests as somebody who is signed in.
type asPerson func(*http.Request) *httptest.ResponseRecorder

func (as asPerson) get(path string) *httptest.ResponseRecorder {
	return as(httptest.NewRequest("GET", "http://127.0.0.1:8417"+path, nil))
}

func (as asPerson) form(path, body string) *httptest.ResponseRecorder {
	r := httptest.NewRequest("POST", "http://127.0.0.1:8417"+path, strings.NewReader(body))
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	return as(r)
}

// signedIn lets planners in.
func signedIn(t *testing.T, h http.Handler, s people.Register, names ...string) map[string]asPerson {
	t.Helper()
	hash, err := people.Hash("long enough word", rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]asPerson{}
	for _, name := range names {
		if err := s.Alter(t.Context(), people.Adding(people.Person{Name: name, Role: people.Planner, Password: hash, Since: time.Now()}), people.Entry{}); err != nil {
			t.Fatal(err)
		}
		in := ask(t, h, "POST", "/sign-in", "name="+name+"&password=long+enough+word").Result().Cookies()
		if len(in) != 2 {
			t.Fatalf("%s cannot sign in", name)
		}
		out[name] = func(r *http.Request) *httptest.ResponseRecorder {
			r.AddCookie(in[1])
			w := httptest.NewRecorder()
			h.ServeHTTP(w, r)
			return w
		}
	}
	return out
}

// TestThePageOfJobsFollows leaves the page alone on a phone: it says how far a job is, and
// in the end what it came to.
func TestThePageOfJobsFollows(t *testing.T) {
	needsBrowser(t)
	may := make(chan struct{})
	_, d, _ := jobDesk(t, may, 3, "")
	v := visitAt(t, open(t, d), 390, 844, "light")
	v.open("/jobs")
	v.press("Choose for every arena")
	v.waitFor(`document.body.innerText.includes("at work: scoring, 45 %")`)
	v.checkWidth("/jobs")
	v.tabTo(`[aria-label^="Give up"]`)
	held := `document.activeElement?.getAttribute("aria-label")`
	before := eval[string](v, held)
	eval[string](v, `document.activeElement.dataset.old = "yes"`)
	v.waitFor(`!document.querySelector("[data-old]")`) // the list is another
	if after := eval[string](v, held); before == "" || after != before {
		t.Errorf("the keyboard was at %q, then at %q", before, after)
	}
	close(may)
	v.waitFor(`document.body.innerText.includes("Done: 3")`)
}
