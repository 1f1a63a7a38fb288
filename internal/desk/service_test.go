package desk

import (
	"bytes"
	"html"
	"image"
	"image/jpeg"
	"maps"
	"net/http"
	"regexp"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/decide/custody"
)

// inService is what the pages of holes in service show on the shared desk: a cover in
// each state, alarms, an incident, an inspection, a link.
func inService(now time.Time) (events []custody.Event) {
	tell := func(before time.Duration, f custody.Fact) {
		events = append(events, custody.Event{ID: custody.IDOf("00000000000000e0", uint64(len(events)+1)), Arena: "quillhaven", Told: now.Add(-before), Who: "Ines Marlow", Fact: f})
	}
	for i, hole := range []string{"A1", "A2", "A3", "A4", "B1", "B2"} {
		tell(3*time.Hour, custody.Issued{Cover: hole + "-1", Hole: hole})
		tell(2*time.Hour-time.Duration(i)*time.Minute, custody.Moved{Cover: hole + "-1", State: custody.States()[i]})
	}
	tell(time.Hour, custody.Began{Phase: custody.Play})
	tell(time.Hour, custody.Incident{What: custody.BrokenPane, Hole: "A2", Words: "Invented."})
	tell(time.Hour, custody.Inspected{Hole: "B1", Revision: strings.Repeat("0", 64), Verdict: custody.Unproved, Measured: []custody.Measured{{What: custody.Width, Value: 139.7, U: 1}}})
	tell(time.Hour, custody.LinkMade{Link: custody.LinkFor("l0", "quillhaven", "Gate 4", custody.DayOf(now))})
	return events
}

// photoOfSecrets is a photo with what a camera wrote about its owner.
func photoOfSecrets(t *testing.T) string {
	t.Helper()
	var b bytes.Buffer
	if err := jpeg.Encode(&b, image.NewGray(image.Rect(0, 0, 40, 30)), nil); err != nil {
		t.Fatal(err)
	}
	const about = "Exif\x00\x00II*\x00\x08\x00\x00\x00\x00\x00GPS SECRET"
	return b.String()[:2] + "\xff\xe1\x00" + string(rune(len(about)+2)) + about + b.String()[2:]
}

// hidden returns the value of a hidden field of a page.
func hidden(page, name string) string {
	m := regexp.MustCompile(`<input type="hidden" name="` + name + `" value="([^"]*)"`).FindStringSubmatch(page)
	if m == nil {
		return ""
	}
	return html.UnescapeString(m[1])
}

// TestIncidentsAreTold tells a broken pane with a photo: it is there once though the
// form is sent twice, the photo tells nothing of its owner and opens on its own
// arena's page only, the sheet for the new pane is one link away, a spare is gone.
func TestIncidentsAreTold(t *testing.T) {
	h, _, _ := ownDesk(t, false)
	labelled(t, h, "B1")
	p := telephone{device: "000000000000000a"}
	p.send(t, h, phonePath, p.line(time.Hour, "", custody.Stocked{Hole: "B1", Panes: 2}))
	const path = demoPage + "/incidents"
	id := hidden(ask(t, h, "GET", path+"?hole=B1", "").Body.String(), "id")
	form := map[string]string{"id": id, "what": "broken-pane", "hole": "B1", "minute": "12", "words": "Cracked <from> the corner.", "spare": "yes", "photo": photoOfSecrets(t)}
	for range 2 {
		says(t, fillIn(t, h, path, form), http.StatusSeeOther)
	}
	page := ask(t, h, "GET", path, "").Body.String()
	if n := strings.Count(page, `<div class="told">`); n != 1 || !strings.Contains(page, "minute 12") || !strings.Contains(page, "Cracked &lt;from&gt; the corner.") || !strings.Contains(page, "1 spare pane left") {
		t.Errorf("%d incidents told: %.3000s", n, page)
	}
	photo := regexp.MustCompile(`/arena/quillhaven(/photo\?key=[0-9a-f]{64})`).FindStringSubmatch(page)
	if photo == nil {
		t.Fatal("the page shows no photo")
	}
	w := ask(t, h, "GET", photo[0], "")
	if says(t, w, http.StatusOK); strings.Contains(w.Body.String(), "SECRET") || w.Header().Get("Content-Type") != "image/jpeg" {
		t.Errorf("the photo is %s, and tells what its camera wrote", w.Header().Get("Content-Type"))
	}
	says(t, ask(t, h, "GET", "/arena/brennholm"+photo[1], ""), http.StatusNotFound, "no such photo")
	says(t, ask(t, h, "GET", demoPage+"/replacement.pdf?hole=B1", ""), http.StatusOK, "%PDF-")
	says(t, ask(t, h, "GET", demoPage+"/replacement.pdf?hole=nobody", ""), http.StatusUnprocessableEntity, "no drawing")

	for name, c := range map[string]struct {
		field, value, says string
		status             int
	}{
		"10 MB":           {"photo", strings.Repeat("x", 10<<20), "10.0 MB; at most 8 MB are kept", 422},
		"far too large":   {"photo", strings.Repeat("x", 20<<20), "far too large", 413},
		"no picture":      {"photo", "#!/bin/sh", "send a JPEG or a PNG", 422},
		"a broken minute": {"minute", "soon", "whole number", 422},
		"no such mishap":  {"what", "fire", "write broken-pane", 422},
	} {
		bad := maps.Clone(form)
		bad["id"], bad[c.field] = "", c.value
		if w := fillIn(t, h, path, bad); w.Code != c.status || !strings.Contains(html.UnescapeString(w.Body.String()), c.says) {
			t.Errorf("%s: %d without %q: %.1500s", name, w.Code, c.says, w.Body)
		}
	}
	if n := strings.Count(ask(t, h, "GET", path, "").Body.String(), `<div class="told">`); n != 1 {
		t.Errorf("%d incidents after what was refused", n)
	}
}

// TestInspectionOnTheDesk writes measurements down, reads the verdict and the
// certificate, and takes the numbers over into the survey.
func TestInspectionOnTheDesk(t *testing.T) {
	h, d, _ := ownDesk(t, false)
	const path = demoPage + "/inspections"
	page := ask(t, h, "GET", path+"?hole=B1", "").Body.String()
	if !strings.Contains(page, "never inspected") || !strings.Contains(page, "5.480 in to 5.520 in") {
		t.Fatalf("%.2000s", page)
	}
	says(t, ask(t, h, "GET", demoPage+"/certificate.pdf?hole=B1", ""), http.StatusNotFound, "never inspected")
	says(t, fillIn(t, h, path, map[string]string{"hole": "B1"}), 422, "at least one line")
	says(t, fillIn(t, h, path, map[string]string{"hole": "B1", "mm-width": "wide", "u-width": "1"}), 422, "write a number of millimetres")
	says(t, fillIn(t, h, path, map[string]string{"hole": "B1", "mm-width": "139.7", "u-width": "0"}), 422, "ncertainty of width is 0 mm")
	form := map[string]string{"id": hidden(page, "id"), "hole": "B1", "mm-width": "139,75", "u-width": "0.05", "mm-height": "114.6", "u-height": "0.5", "is-snug": "yes", "photo": photoOfSecrets(t), "of": "snug"}
	for range 2 {
		says(t, fillIn(t, h, path, form), http.StatusSeeOther)
	}
	says(t, ask(t, h, "GET", path+"?hole=B1", ""), http.StatusOK, "not proved by these instruments", "caliper", "The cover sits fast.", "Photo of a finding")
	says(t, ask(t, h, "GET", demoPage+"/certificate.pdf?hole=B1", ""), http.StatusOK, "%PDF-")
	says(t, ask(t, h, "POST", path+"/take-over", "hole=B1&base=1"), http.StatusSeeOther)
	if text, n := headText(t, d, "quillhaven"); n != 2 || !strings.Contains(text, "139.75 mm x 114.6 mm") {
		t.Errorf("version %d does not hold the measured size", n)
	}
	says(t, ask(t, h, "POST", path+"/take-over", "hole=B2&base=2"), 422, "nothing to take over")
}

// TestApprovalsOnTheDesk puts a version to approvers; only who was asked may answer,
// a refusal says why, and a later version says what changed since.
func TestApprovalsOnTheDesk(t *testing.T) {
	h, _, _ := ownDesk(t, false)
	const path = demoPage + "/approvals"
	says(t, ask(t, h, "GET", path, ""), http.StatusOK, "not approved: no record")
	says(t, ask(t, h, "POST", path, "version=1"), 422, "Nobody is asked")
	says(t, ask(t, h, "POST", path, "version=7&name-operator=desk"), 409, "newer version")
	says(t, ask(t, h, "POST", path, "version=1&name-operator=desk&name-contractor=Bram"), http.StatusSeeOther)
	page := ask(t, h, "GET", path, "").Body.String()
	answer := "revision=" + hidden(page, "revision")
	says(t, ask(t, h, "POST", path+"/answer", answer+"&party=contractor&accept=yes"), 403, "not put to you")
	says(t, ask(t, h, "POST", path+"/answer", answer+"&party=operator&accept=no"), 422, "needs a remark")
	says(t, ask(t, h, "POST", path+"/answer", answer+"&party=operator&accept=no&remark=too+high"), http.StatusSeeOther)
	says(t, ask(t, h, "GET", path, ""), http.StatusOK, "refused by desk (operator)", "too high")
	says(t, ask(t, h, "POST", path, "version=1&name-operator=desk"), http.StatusSeeOther)
	says(t, ask(t, h, "POST", path+"/answer", answer+"&party=operator&accept=yes"), http.StatusSeeOther)
	says(t, ask(t, h, "GET", path, ""), http.StatusOK, "approved by desk (operator) on")
	says(t, move(t, h, 1, "B2", "1.6", ""), http.StatusSeeOther)
	says(t, ask(t, h, "GET", path, ""), http.StatusOK, "Version 2 is not approved: no record", "What changed since version 1, which was approved", `class="come"`)
}

// TestLinksAreGivenAndRevoked makes a day link on the page, opens it, and takes it back.
func TestLinksAreGivenAndRevoked(t *testing.T) {
	h, _, _ := ownDesk(t, false)
	labelled(t, h, "B1")
	says(t, ask(t, h, "POST", demoPage+"/links", "name=Gate&day=tomorrow"), 422, "Write the day as")
	says(t, ask(t, h, "POST", demoPage+"/links", "name=Gate&day=2020-01-01"), 422, "day is over")
	says(t, ask(t, h, "POST", demoPage+"/links", "name=Gate+4&day="+custody.DayOf(time.Now()).Date()), http.StatusSeeOther)
	page := ask(t, h, "GET", demoPage+"/covers", "").Body.String()
	path := regexp.MustCompile(`/day/[^"]+`).FindString(page)
	says(t, ask(t, h, "GET", path, ""), http.StatusOK, "Gate 4")
	id := regexp.MustCompile(`name="link" value="([^"]+)"`).FindStringSubmatch(page)
	if id == nil {
		t.Fatal("the page has no way to revoke the link")
	}
	says(t, ask(t, h, "POST", demoPage+"/links/revoke", "link="+id[1]), http.StatusSeeOther)
	says(t, ask(t, h, "GET", path, ""), http.StatusForbidden, "was revoked")
	if strings.Contains(ask(t, h, "GET", demoPage+"/covers", "").Body.String(), "/day/") {
		t.Error("the page still shows the link")
	}
}

// TestCoversAreMarkedOnTheDesk labels the holes without a cover and marks one, without
// a script.
func TestCoversAreMarkedOnTheDesk(t *testing.T) {
	h, _, _ := ownDesk(t, false)
	labelled(t, h, "B1")
	const path = demoPage + "/covers"
	says(t, ask(t, h, "POST", path, "do=label"), http.StatusSeeOther)
	if got := covers(t, h, phonePath); len(got) != 8 || got["A1-1"] != "stored" {
		t.Errorf("after labels: %v", got)
	}
	says(t, ask(t, h, "GET", demoPage+"/labels.pdf?paper=a4-24", ""), http.StatusOK, "%PDF-")
	says(t, ask(t, h, "GET", demoPage+"/labels.pdf?paper=a9", ""), http.StatusBadRequest, "write a4-24")
	says(t, ask(t, h, "POST", path, "do=cover&cover=B1-1&state=out"), http.StatusSeeOther)
	says(t, ask(t, h, "POST", path, "do=phase&phase=play"), http.StatusSeeOther)
	says(t, ask(t, h, "GET", path, ""), http.StatusOK, "play", "open: put the cover in")
	says(t, ask(t, h, "POST", path, "do=cover&cover=B1-1&state=gone"), 422, "write in")
	says(t, ask(t, h, "POST", path, "do=nothing"), 400, "incomplete")
	says(t, ask(t, h, "GET", demoPage+"/audit?who=desk", ""), http.StatusOK, "cover B1-1 out", "play began")
	says(t, ask(t, h, "GET", demoPage+"/season", ""), http.StatusOK, "<svg", "No hole sees more")
}
