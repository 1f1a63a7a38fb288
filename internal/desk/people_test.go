package desk

import (
	"crypto/rand"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/keep/people"
)

// TestLastPlannerStays lets a planner go only while another one is there: the
// others could let nobody in.
func TestLastPlannerStays(t *testing.T) {
	h, _, s := ownDesk(t, true)
	hash, err := people.Hash("long enough word", rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	for name, role := range map[string]people.Role{"Ada": people.Planner, "Bo": people.Planner, "Vi": people.Viewer} {
		if err := s.AddPerson(t.Context(), people.Person{Name: name, Role: role, Password: hash, Since: time.Now()}); err != nil {
			t.Fatal(err)
		}
	}
	in := ask(t, h, "POST", "/sign-in", "name=Ada&password=long+enough+word").Result().Cookies()
	if len(in) != 1 {
		t.Fatal("Ada cannot sign in")
	}
	for _, c := range []struct {
		name   string
		status int
	}{{"Nobody", 404}, {"Bo", 303}, {"Ada", 422}, {"Vi", 303}, {"Ada", 422}} {
		r := httptest.NewRequest("POST", "http://127.0.0.1:8417/people/remove", strings.NewReader(url.Values{"name": {c.name}}.Encode()))
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		r.AddCookie(in[0])
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		says(t, w, c.status)
		if c.status == 422 {
			says(t, w, 422, "last planner")
		}
	}
}
