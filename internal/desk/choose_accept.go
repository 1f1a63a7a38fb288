package desk

import (
	"errors"
	"fmt"
	"net/http"
	"strconv"

	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/survey/edit"
)

// acceptChoice answers POST /arena/{slug}/choose/{job}/accept: the ticked places
// become planned holes of a new version, and those left out are turned off when
// that was asked for.
func (d *Desk) acceptChoice(w http.ResponseWriter, r *http.Request) {
	j, ok := d.choices.get(r.PathValue("job"), r.PathValue("slug"))
	if !ok || !j.Ended() {
		d.nowhere(w, r)
		return
	}
	c, err := j.Outcome()
	if err != nil {
		d.nowhere(w, r)
		return
	}
	shown, err := strconv.Atoi(r.PostFormValue("set"))
	if err != nil || shown < 0 || shown > len(c.Alternatives) {
		d.fail(w, r, http.StatusBadRequest, "There is no such set.", "Go back and pick one of those shown.")
		return
	}
	edits := c.Accept(shown, r.PostForm["take"], r.PostFormValue("rest") == "off")
	if len(edits) == 0 {
		d.fail(w, r, http.StatusBadRequest, "Nothing is ticked.", "Go back and tick the holes to take over.")
		return
	}
	d.saveChoice(w, r, j, edits, fmt.Sprintf("chosen on the desk: %d edits", len(edits)))
}

// saveChoice saves edits on top of the version that the choice was made for.
func (d *Desk) saveChoice(w http.ResponseWriter, r *http.Request, j *choiceJob, edits []edit.Edit, what string) {
	b, err := d.shelf.Open(r.Context(), j.arena, j.version)
	if err != nil {
		d.refusePicture(w, r, err)
		return
	}
	doc, _, err := d.shelf.Edited(b, edits)
	if err != nil {
		d.fail(w, r, http.StatusUnprocessableEntity, "The set cannot be taken over.", err.Error())
		return
	}
	_, err = d.shelf.Save(r.Context(), j.arena, j.version, doc, door.Who(r.Context()), what)
	var stale *revision.Stale
	switch {
	case errors.As(err, &stale):
		d.fail(w, r, http.StatusConflict, "Somebody saved this arena since the choice was made.", "Nothing was changed. Open the arena and choose again.")
	case err != nil:
		d.broken(w, r, err)
	default:
		http.Redirect(w, r, sharedOf(j.arena, r.URL.Query()).URL(), http.StatusSeeOther)
	}
}
