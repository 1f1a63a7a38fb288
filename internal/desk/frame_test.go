package desk

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"net/url"
	"regexp"
	"strings"
	"testing"
)

const framePage = demoPage + "/frame"

// exampleMarks returns the marks that the page invents.
func exampleMarks(t *testing.T, h http.Handler) string {
	t.Helper()
	w := ask(t, h, "GET", framePage+"?hole=B1&example=1", "")
	found := regexp.MustCompile(`(?s)data-marks>(.*?)</textarea>`).FindStringSubmatch(w.Body.String())
	if found == nil || strings.Count(found[1], "\n") < 7 {
		t.Fatalf("no marks on the page: %d", w.Code)
	}
	return found[1]
}

func frameForm(text string, fields ...string) string {
	q := url.Values{"hole": {"B1"}, "text": {text}, "frame": {"invented.jpg"}, "wide": {"2400"}, "high": {"1600"}, "sensor": {"36"}, "base": {"1"}}
	for i := 0; i+1 < len(fields); i += 2 {
		q.Set(fields[i], fields[i+1])
	}
	return q.Encode()
}

// manyFrames returns marks again and again, each time in another frame.
func manyFrames(marks string, n int) string {
	head, lines, _ := strings.Cut(marks, "\n")
	out := head + "\n"
	for i := range n {
		out += strings.ReplaceAll(lines, "invented.jpg", fmt.Sprintf("invented-%d.jpg", i))
	}
	return out
}

// TestFrameAnswersBadMarksByCause sends what cannot be solved: each is told why, and what
// was typed still stands on the page.
func TestFrameAnswersBadMarksByCause(t *testing.T) {
	muchComputed(t)
	h := exampleDesk(t).Handler()
	good := exampleMarks(t, h)
	lines := strings.SplitAfter(good, "\n")
	mirrored := regexp.MustCompile(`(?m)^([^,]+),([0-9.]+),([0-9.]+)`).ReplaceAllString(good, "$1,$3,$2")
	for name, c := range map[string]struct {
		body, says string
		status     int
	}{
		"fewer than four":   {frameForm(strings.Join(lines[:4], "")), "3 marks tell no camera", 200},
		"no such landmark":  {frameForm(good + "B:post-left:foot,10,10,invented.jpg\n"), "this rink has none of that name", 422},
		"marked twice":      {frameForm(good + lines[1]), "is marked twice", 422},
		"off the picture":   {frameForm(good, "wide", "100"), "off the picture", 422},
		"no pixels":         {frameForm(good, "wide", ""), "size in pixels is missing", 422},
		"no focal length":   {frameForm(good, "know", "exact", "focal", "long"), "focal length is not known", 422},
		"no number":         {frameForm("landmark,x_px,y_px\ncentre-spot,a,b\n"), "Line 2 of the marks", 422},
		"turned about":      {frameForm(mirrored), `role="alert"`, 422},
		"no hole like that": {frameForm(good, "hole", "Z9"), "no hole of that name", 404},
		"too many frames":   {frameForm(manyFrames(good, 21)), "more than 20 frames", 422},
		"sound":             {frameForm(good), "Where the hole stands", 200},
	} {
		w := ask(t, h, "POST", framePage, c.body)
		if w.Code != c.status || !strings.Contains(w.Body.String(), c.says) {
			t.Errorf("%s: %d, expected %d and %q", name, w.Code, c.status, c.says)
		}
	}
}

// TestAFramesBytesDoNotStay: of a picture only the first bytes may be sent, to be told what
// they say; more is refused, and what is no picture says nothing.
func TestAFramesBytesDoNotStay(t *testing.T) {
	muchComputed(t)
	h := exampleDesk(t).Handler()
	send := func(body string) *httptest.ResponseRecorder {
		r := httptest.NewRequest("POST", "http://127.0.0.1:8417"+framePage+"/told", strings.NewReader(body))
		r.Header.Set("Accept", "application/json")
		r.Header.Set("Content-Type", "application/octet-stream")
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		return w
	}
	for _, body := range []string{"", "no picture", "\xff\xd8\xff\xe1\x00\x10Exif\x00\x00broken"} {
		if w := send(body); w.Code != http.StatusOK || !strings.Contains(w.Body.String(), "does not tell") {
			t.Errorf("%q: %d %s", body, w.Code, w.Body)
		}
	}
	if w := send(strings.Repeat("\xff", 600<<10)); w.Code != http.StatusRequestEntityTooLarge {
		t.Errorf("600 kB: %d, expected 413", w.Code)
	}
	picture := ask(t, h, "GET", framePage+"/example.jpg?hole=B1", "").Body.String()
	if w := send(picture[:1000]); w.Code != http.StatusOK {
		t.Errorf("a picture's head: %d %s", w.Code, w.Body)
	}
}

// TestAPlaceIsTakenOver moves the hole to where its frame says, as a version that says by
// how much; the place comes from the marks, not from the form.
func TestAPlaceIsTakenOver(t *testing.T) {
	muchComputed(t)
	h, _, _ := ownDesk(t, false)
	good := exampleMarks(t, h)
	w := ask(t, h, "POST", framePage+"/take", frameForm(good))
	if w.Code != http.StatusSeeOther {
		t.Fatalf("%d %.300s", w.Code, w.Body)
	}
	says(t, ask(t, h, "GET", demoPage+"/versions", ""), http.StatusOK, "hole B1 moved to where frames say", "9 marks in 1 frame")
	if w = ask(t, h, "POST", framePage+"/take", frameForm(good)); w.Code != http.StatusConflict {
		t.Errorf("made from an older version: %d, expected to be asked", w.Code)
	}
}

// TestAPlaceFromElsewhereIsAskedFirst: marks of a frame that was taken through another hole
// than the one picked, or through none of the plan, change nothing before somebody says
// that this is meant.
func TestAPlaceFromElsewhereIsAskedFirst(t *testing.T) {
	muchComputed(t)
	h, _, _ := ownDesk(t, false)
	good := exampleMarks(t, h)
	versions := func() string { return ask(t, h, "GET", demoPage+"/versions", "").Body.String() }
	was := versions()
	other := frameForm(good, "hole", "B4")
	w := ask(t, h, "POST", framePage+"/take", other)
	says(t, w, http.StatusUnprocessableEntity, "taken through hole B1, not B4", "Nothing is changed yet", `name="meant" value="B1"`)
	if w = ask(t, h, "POST", framePage+"/take", other+"&meant=new"); w.Code != http.StatusUnprocessableEntity || versions() != was {
		t.Errorf("%d, or a version was made before anybody said what is meant", w.Code)
	}
	if w = ask(t, h, "POST", framePage+"/take", other+"&meant=B1"); w.Code != http.StatusSeeOther {
		t.Errorf("said what is meant: %d %.300s", w.Code, w.Body)
	}

	if w = ask(t, h, "POST", demoPage+"/holes", "base=2&hole=B1&act=delete&back="); w.Code >= 400 {
		t.Fatalf("B1 stays: %d %.300s", w.Code, w.Body)
	}
	none := frameForm(good, "hole", "B4", "base", "3")
	says(t, ask(t, h, "POST", framePage+"/take", none), http.StatusUnprocessableEntity, "No hole of the plan stands within", "Nothing is changed yet", `name="meant" value="new"`)
	if w = ask(t, h, "POST", framePage+"/take", none+"&meant=new"); w.Code != http.StatusSeeOther {
		t.Errorf("a further hole was meant: %d %.300s", w.Code, w.Body)
	}
	says(t, ask(t, h, "GET", demoPage+"/versions", ""), http.StatusOK, "a hole where frames were taken, by 9 marks in 1 frame")
}

// TestThePageOfAFrameIsFound from the hole and from the survey, and states its limits.
func TestThePageOfAFrameIsFound(t *testing.T) {
	muchComputed(t)
	h := exampleDesk(t).Handler()
	says(t, ask(t, h, "GET", demoPage+"?hole=B2", ""), http.StatusOK, framePage+"?hole=B2")
	says(t, ask(t, h, "GET", demoPage+"/survey", ""), http.StatusOK, framePage)
	says(t, ask(t, h, "GET", framePage, ""), http.StatusOK, "4 to 200 marks in a frame", "up to 20 frames", "10 seconds")
}
