package rinkside

import (
	"errors"
	"io"
	"net/http"
	"slices"
	"strconv"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shell"
)

// incidentsPage is what broke or came through, and where the next is told.
type incidentsPage struct {
	servicePage
	Mishaps []custody.Mishap
	Holes   []string
	Spares  map[string]int // panes that lie ready, by hole
	Hole    string         // that the form is about
	Told    []incident     // the newest first
}

// incident is one that was told, with where the sheet for its replacement is.
type incident struct {
	custody.Entry
	custody.Incident
	Sheet string // "" when no pane broke
}

// mostTold is how many incidents the page shows.
const mostTold = 100

func (d area) incidentsPage(w http.ResponseWriter, r *http.Request) error {
	return d.showIncidents(w, r, http.StatusOK, "")
}

func (d area) showIncidents(w http.ResponseWriter, r *http.Request, status int, message string) error {
	base, err := d.service(r, "incidents")
	if err != nil {
		return err
	}
	base.Message = message
	page := incidentsPage{servicePage: base, Mishaps: custody.Mishaps(), Hole: r.FormValue("hole"), Spares: map[string]int{}}
	if page.Holes, err = base.holes(); err != nil {
		return err
	}
	for _, h := range custody.Fold(base.record.History, custody.DayOf(d.Now()), d.Now()).Holes {
		page.Spares[h.ID] = h.Panes
	}
	custody.Facts(base.record.History, func(e custody.Entry, f custody.Incident) {
		one := incident{Entry: e, Incident: f}
		if f.What == custody.BrokenPane && slices.Contains(page.Holes, f.Hole) {
			one.Sheet = base.Address.Beside("/replacement.pdf", "hole", f.Hole)
		}
		page.Told = append(page.Told, one)
	})
	slices.Reverse(page.Told)
	page.Told = page.Told[:min(len(page.Told), mostTold)]
	return d.Page(w, r, status, "incidents.tmpl", page)
}

// tellIncident answers POST /arena/{slug}/incidents.
func (d area) tellIncident(w http.ResponseWriter, r *http.Request) error {
	base, err := d.service(r, "incidents")
	if err != nil {
		return err
	}
	f := custody.Incident{
		What: custody.Mishap(r.PostFormValue("what")), Hole: r.PostFormValue("hole"),
		Words: r.PostFormValue("words"), Spare: r.PostFormValue("spare") == "yes",
	}
	a, err := base.book.Arena.Check()
	if err != nil {
		return err
	}
	if h, known := a.Hole(f.Hole); known {
		f.Pane = h.Pane
	}
	if text := r.PostFormValue("minute"); text != "" {
		if f.Minute, err = strconv.Atoi(text); err != nil {
			return d.showIncidents(w, r, http.StatusUnprocessableEntity, "The minute must be a whole number, such as 12.")
		}
	}
	key, err := d.photo(r, "photo")
	if key != "" {
		f.Photos = []string{key}
	}
	if err == nil {
		err = d.tell(r, said{custody.ID(r.PostFormValue("id")), f})
	}
	var no *shell.Refusal
	if errors.As(err, &no) {
		return d.showIncidents(w, r, no.Status, no.Cure)
	}
	if err != nil {
		return err
	}
	return d.Goto(w, r, base.Address.Beside("/incidents")+"#told")
}

// mostPhoto is how much a form with a photo may hold, in bytes: one of twice what is
// kept still arrives and is refused in words.
const mostPhoto = 2*custody.MaxPhoto + shell.Form

var hugePhoto = &shell.Refusal{Status: http.StatusRequestEntityTooLarge, What: "The photo is far too large.",
	Cure: "Nothing was saved. Go back, where what you typed still stands, and take a smaller one."}

// photo keeps the photo of a form's field and returns its key; "" when there is none.
func (d area) photo(r *http.Request, field string) (key string, err error) {
	file, _, err := r.FormFile(field)
	if errors.Is(err, http.ErrMissingFile) || errors.Is(err, http.ErrNotMultipart) {
		return "", nil
	}
	if err != nil {
		return "", err
	}
	defer file.Close()
	data, err := io.ReadAll(file)
	if err != nil || len(data) == 0 {
		return "", err
	}
	p, err := custody.PhotoOf(data)
	if err != nil {
		return "", shell.Because(http.StatusUnprocessableEntity, "The photo was not kept.", err)
	}
	return p.Key(), d.Keeper.KeepPhoto(r.Context(), d.Now(), r.PathValue("slug"), door.Who(r.Context()), p)
}

// showPhoto answers GET /arena/{slug}/photo?key=….
func (d area) showPhoto(w http.ResponseWriter, r *http.Request) error {
	p, err := d.Keeper.Photo(r.Context(), r.PathValue("slug"), r.FormValue("key"))
	if errors.Is(err, custody.ErrNoPhoto) {
		return shell.Refuse(http.StatusNotFound, "There is no such photo.", "Open the list of incidents and pick one.")
	}
	if err != nil {
		return err
	}
	w.Header().Set("Cache-Control", "private, max-age=31536000, immutable")
	shell.Send(w, r, http.StatusOK, p.Kind, p.Data, p.Data[:0]) // pictures are compressed already
	return nil
}
