package desk

import (
	"net/http"
	"net/http/httptest"
	"regexp"
	"sync/atomic"
	"testing"
	"time"
)

// cardLink finds the link of somebody's card on the page of a game that is still to come.
func cardLink(t *testing.T, h http.Handler, who string) string {
	t.Helper()
	if code, body := (seasonDesk{t, h}).do(1, "do", "day", "game", "nov-28", "date", time.Now().Format(time.DateOnly), "start", "19:00"); code != http.StatusSeeOther {
		t.Fatalf("%d %.500s", code, body)
	}
	page := ask(t, h, "GET", demoPage+"/game?game=nov-28&who="+who, "").Body.String()
	link := regexp.MustCompile(`href="(/card/[^"]+)" data-whole-link`).FindStringSubmatch(page)
	if link == nil {
		t.Fatalf("no link of a card on the page of the game")
	}
	return link[1]
}

// TestCardsOpenByLinkOnly: a link shows its card to a stranger and nothing else; a forged
// one, or one of a day that is over, shows nothing.
func TestCardsOpenByLinkOnly(t *testing.T) {
	muchComputed(t)
	h, d, _ := ownDesk(t, false)
	to := cardLink(t, h, "ada")
	says(t, ask(t, h, "GET", to, ""), http.StatusOK, "Ada Holm", "Herons", "attack here", "70-200", "What to set", "Keep clear behind", "Cover", "End A")
	says(t, ask(t, h, "GET", to+"/card.pdf", ""), http.StatusOK, "%PDF-")
	says(t, ask(t, h, "GET", to+"/game.ics", ""), http.StatusOK, "BEGIN:VCALENDAR", "Herons v Kites")
	says(t, ask(t, h, "GET", to[:len(to)-2]+"AA", ""), http.StatusForbidden, "opens nothing")
	says(t, ask(t, h, "GET", "/card/x", ""), http.StatusForbidden, "opens nothing")
	says(t, ask(t, h, "GET", demoPage+"/game?game=nov-07", ""), http.StatusOK, "Ada Holm")
	for _, file := range []string{"/seats.pdf?game=nov-28", "/seats.csv?game=nov-28", "/cards.pdf?game=nov-28", "/games.ics?who=ada"} {
		says(t, ask(t, h, "GET", demoPage+file, ""), http.StatusOK)
	}
	if old := ask(t, h, "GET", demoPage+"/game?game=nov-07&who=ada", "").Body.String(); regexp.MustCompile(`/card/`).MatchString(old) {
		t.Error("a game that is over has links of cards")
	}
	if d == nil {
		t.Fatal("no desk")
	}
}

// TestOneLinkIsRevokedAlone: the revoked link of a card opens nothing, nor its files; the new
// one and everybody else's do, and a second revocation ends the new one, too.
func TestOneLinkIsRevokedAlone(t *testing.T) {
	muchComputed(t)
	h, _, _ := ownDesk(t, false)
	old, bens := cardLink(t, h, "ada"), ""
	link := func(who string) string {
		page := ask(t, h, "GET", demoPage+"/game?game=nov-28&who="+who, "").Body.String()
		found := regexp.MustCompile(`href="(/card/[^"]+)" data-whole-link`).FindStringSubmatch(page)
		if found == nil {
			t.Fatalf("%s has no link", who)
		}
		return found[1]
	}
	bens = link("ben")
	for base := 2; base < 4; base++ {
		if code, body := (seasonDesk{t, h}).do(base, "do", "revoke", "game", "nov-28", "who", "ada"); code != http.StatusSeeOther {
			t.Fatalf("%d %.500s", code, body)
		}
		for _, file := range []string{"", "/card.pdf", "/game.ics"} {
			says(t, ask(t, h, "GET", old+file, ""), http.StatusForbidden, "opens nothing", "was revoked")
		}
		if old = link("ada"); old == bens {
			t.Fatal("two people have one link")
		}
		says(t, ask(t, h, "GET", old, ""), http.StatusOK, "Ada Holm")
		says(t, ask(t, h, "GET", bens, ""), http.StatusOK, "Ben Orr")
	}
}

// TestCardOpensWithoutNetwork: the card is on the phone once it was opened, passes the rules
// for pages in the dark, and says its hole in letters that are read at arm's length.
func TestCardOpensWithoutNetwork(t *testing.T) {
	t.Parallel()
	needsBrowser(t)
	h, _, _ := ownDesk(t, false)
	to := cardLink(t, h, "ada")
	var away atomic.Bool
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if away.Load() {
			panic(http.ErrAbortHandler)
		}
		h.ServeHTTP(w, r)
	}))
	t.Cleanup(func() { server.CloseClientConnections(); server.Close() })
	v := ownPhone(t, t.TempDir(), server.URL)
	v.open(to)
	v.checkWidth(to)
	v.checkFingers(to)
	v.checkRules(to, axe(t))
	if size := eval[float64](v, `parseFloat(getComputedStyle(document.querySelector(".hole")).fontSize)`); size < 44 {
		t.Errorf("the hole is %.0f px high", size)
	}
	if low := eval[float64](v, `document.querySelector(".turns").getBoundingClientRect().bottom`); low > 500 {
		t.Errorf("what matters ends %.0f px down a phone", low)
	}
	v.waitFor(`!!navigator.serviceWorker.controller`)
	kept := `caches.open("glass pages").then((c) => c.keys()).then((k) => k.map((r) => new URL(r.url).pathname))`
	for end := time.Now().Add(patience); len(awaited(v, kept)) == 0 && time.Now().Before(end); {
		time.Sleep(waitStep)
	}
	away.Store(true)
	v.cut(true)
	v.open(to)
	v.waitFor(`document.querySelector(".hole")?.textContent.length > 1 && getComputedStyle(document.querySelector(".hole")).fontWeight === "800"`)
	v.shut()
}
