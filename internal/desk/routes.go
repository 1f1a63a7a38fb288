package desk

import (
	"bytes"
	"errors"
	"io"
	"net/http"
	"strings"

	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/keep/people"
)

// A route is an address of the desk: who may ask for it, how much may be sent
// to it, and what answers. Whoever adds an address adds it to [Desk.table];
// what is not there cannot be reached.
type route struct {
	pattern string // as of [http.ServeMux]
	need    people.Act
	most    int64 // bytes of a request's body
	answer  http.HandlerFunc
}

// How much may be sent, in bytes.
const (
	aForm     = 4 << 10 // a few words
	aDocument = 3 << 20 // a megabyte of text, every character escaped
	aCall     = 4 << 20 // each call of the API has its own, lower limit and says so
)

// table lists every address, pages first. The roles: package people.
func (d *Desk) table(apiCalls http.HandlerFunc) []route {
	return []route{
		{"GET /{$}", people.Read, aForm, d.firstPage},
		{"GET /arenas", people.Read, aForm, d.listPage},
		{"GET /arena/{slug}", people.Read, aForm, d.arenaPage},
		{"GET /arena/{slug}/choose", people.Read, aForm, d.showChoice},
		{"POST /arena/{slug}/choose", people.Plan, aForm, d.startChoice},
		{"GET /arena/{slug}/choose/{job}/events", people.Read, aForm, d.choiceEvents},
		{"POST /arena/{slug}/choose/{job}/cancel", people.Plan, aForm, d.cancelChoice},
		{"POST /arena/{slug}/choose/{job}/accept", people.Plan, aForm, d.acceptChoice},
		{"GET /arena/{slug}/picture", people.Read, aForm, d.picturePage},
		{"GET /arena/{slug}/picture.json", people.Read, aForm, d.pictureNumbers},
		{"GET /arena/{slug}/picture.png", people.Read, aForm, d.picture("png")},
		{"GET /arena/{slug}/picture.jpg", people.Read, aForm, d.picture("jpg")},
		{"GET /arena/{slug}/picture.svg", people.Read, aForm, d.picture("svg")},

		{"GET /arena/{slug}/versions", people.Read, aForm, d.versionsPage},
		{"POST /arena/{slug}/restore", people.Plan, aForm, d.restore},
		{"POST /arena/{slug}/away", people.Plan, aForm, d.putAway},
		{"GET /arena/{slug}/text", people.Plan, aForm, d.textPage},
		{"POST /arena/{slug}/text", people.Plan, aDocument, d.saveText},
		{"GET /import", people.Plan, aForm, d.importPage},
		{"POST /import", people.Plan, aDocument, d.importArena},
		{"GET /people", people.Plan, aForm, d.peoplePage},
		{"POST /people", people.Plan, aForm, d.addPerson},
		{"POST /people/remove", people.Plan, aForm, d.removePerson},
		{"GET /account", people.Read, aForm, d.accountPage},
		{"POST /account", people.Read, aForm, d.changePassword},
		{"POST /arena/{slug}/holes", people.Plan, aForm, d.handsOn},
		{"POST /arena/{slug}/live", people.Read, aForm, d.livePage},
		{"GET /arena/{slug}/reach.png", people.Read, aForm, d.reachPicture},
		{"GET /arena/{slug}/survey", people.Read, aForm, d.surveyPage},
		{"GET /arena/{slug}/survey/{part}", people.Read, aForm, d.surveyPage},
		{"POST /arena/{slug}/survey/{part}", people.Plan, aDocument, d.saveSurvey},
		{"GET /arena/{slug}/compare", people.Read, aForm, d.comparePage},
		{"GET /arena/{slug}/paper", people.Read, aForm, d.paperPage},
		{"POST /tour", people.Read, aForm, d.closeTour},

		{"GET /sign-in", door.Open, aForm, d.signInPage},
		{"POST /sign-in", door.Open, aForm, d.signIn},
		{"POST /sign-out", door.Open, aForm, d.signOut},
		{"POST /theme", door.Open, aForm, d.setTheme},
		{"GET /assets/{hash}/{name}", door.Open, aForm, d.asset},
		{"GET /favicon.ico", door.Open, aForm, d.icon},
		{"/", people.Read, aForm, d.nowhere},

		{"GET /api", people.Read, aForm, d.apiPage},
		{"GET /api/openapi.json", people.Read, aCall, apiCalls},
		{"GET /api/rules", people.Read, aCall, apiCalls},
		{"GET /api/kit", people.Read, aCall, apiCalls},
		{"GET /api/arenas", people.Read, aCall, apiCalls},
		{"POST /api/arenas", people.Plan, aCall, apiCalls},
		{"GET /api/arenas/{id}", people.Read, aCall, apiCalls},
		{"POST /api/arenas/{id}/away", people.Plan, aCall, apiCalls},
		{"GET /api/arenas/{id}/plan", people.Read, aCall, apiCalls},
		{"GET /api/arenas/{id}/text", people.Read, aCall, apiCalls},
		{"GET /api/arenas/{id}/versions", people.Read, aCall, apiCalls},
		{"GET /api/arenas/{id}/versions/{number}", people.Read, aCall, apiCalls},
		{"GET /api/arenas/{id}/diff", people.Read, aCall, apiCalls},
		{"POST /api/arenas/{id}/restore", people.Plan, aCall, apiCalls},
		{"POST /api/arenas/{id}/edits", people.Plan, aCall, apiCalls},
		{"POST /api/arenas/{id}/try", people.Read, aCall, apiCalls},
		{"GET /api/arenas/{id}/reach", people.Read, aCall, apiCalls},
		{"POST /api/arenas/{id}/reach", people.Read, aCall, apiCalls},
		{"GET /api/arenas/{id}/files", people.Read, aCall, apiCalls},
		{"GET /api/arenas/{id}/files/{kind}", people.Read, aCall, apiCalls},
	}
}

// routes builds the table's addresses, each behind its need.
func (d *Desk) routes() http.Handler {
	mux := http.NewServeMux()
	for _, r := range d.table(squeezed(d.calls.ServeHTTP)) {
		answer := r.answer
		switch {
		case strings.HasPrefix(r.pattern, "POST /api/"):
			answer = d.wholeCall(answer)
		case strings.HasPrefix(r.pattern, "POST /"):
			answer = d.whole(answer)
		}
		mux.Handle(r.pattern, d.door.Need(r.need, http.MaxBytesHandler(answer, r.most)))
	}
	return mux
}

// whole lets a form through that arrived whole. Of one that did not, a handler
// would read nothing, and an empty answer may mean something.
func (d *Desk) whole(next http.HandlerFunc) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		err := r.ParseForm()
		if err == nil {
			err = r.ParseMultipartForm(aDocument)
		}
		if err != nil && !errors.Is(err, http.ErrNotMultipart) {
			d.badForm(w, r, err)
			return
		}
		next(w, r)
	}
}

// wholeCall does the same for a call of the API.
func (d *Desk) wholeCall(next http.HandlerFunc) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		body, err := io.ReadAll(r.Body)
		var large *http.MaxBytesError
		switch {
		case errors.As(err, &large):
			d.problem(w, r, http.StatusRequestEntityTooLarge, "this is more than an arena document may hold")
		case err != nil:
			d.problem(w, r, http.StatusBadRequest, "the body did not arrive whole, nothing was done: send it again")
		default:
			r.Body = io.NopCloser(bytes.NewReader(body))
			next(w, r)
		}
	}
}

// badForm answers a form that did not arrive whole.
func (d *Desk) badForm(w http.ResponseWriter, r *http.Request, err error) {
	var large *http.MaxBytesError
	switch {
	case errors.As(err, &large) && large.Limit == aDocument:
		d.fail(w, r, http.StatusRequestEntityTooLarge, "This is more than an arena document may hold.", "It may have a megabyte; is it the right file?")
	case errors.As(err, &large):
		d.fail(w, r, http.StatusRequestEntityTooLarge, "This is more than the form may hold.", "Nothing was saved. Go back, where what you typed still stands, and shorten it.")
	default:
		d.fail(w, r, http.StatusBadRequest, "The form did not arrive whole.", "Nothing was saved. Go back, where what you typed still stands, and send it again.")
	}
}

// Handler returns the desk behind its door.
func (d *Desk) Handler() http.Handler { return d.door.Guard(d.routes()) }
