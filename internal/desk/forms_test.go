package desk

import (
	"io"
	"net/http/httptest"
	"strings"
	"testing"
)

// cutOff is a body whose sender went away.
type cutOff struct{ io.Reader }

func (c cutOff) Read(p []byte) (int, error) {
	n, err := c.Reader.Read(p)
	if err == io.EOF {
		err = io.ErrUnexpectedEOF
	}
	return n, err
}

// TestFormsMustArriveWhole sends forms by half and forms that are too long. Read
// as empty they would mean something: an arena put away would come back.
func TestFormsMustArriveWhole(t *testing.T) {
	muchComputed(t)
	h, d, _ := ownDesk(t, false)
	if w := ask(t, h, "POST", demoPage+"/away", "away=yes"); w.Code != 303 {
		t.Fatalf("putting away: %d", w.Code)
	}
	asked := 0
	for _, r := range d.table {
		method, path := methodAndPath(t, r)
		if method != "POST" {
			continue
		}
		asked++
		for status, body := range map[int]io.Reader{
			400: cutOff{strings.NewReader("base=1&act=off&hole=B1&theme=dim")},
			413: strings.NewReader("away=yes&rest=" + strings.Repeat("x", int(r.Most))),
		} {
			q := httptest.NewRequest("POST", "http://127.0.0.1:8417"+path, body)
			if q.Header.Set("Content-Type", "application/x-www-form-urlencoded"); strings.HasPrefix(path, "/api/") || strings.HasSuffix(path, "/live") {
				q.Header.Set("Content-Type", "application/json")
			}
			w := httptest.NewRecorder()
			h.ServeHTTP(w, q)
			says(t, w, status)
		}
	}
	if asked < 18 {
		t.Errorf("only %d forms were sent", asked)
	}
	if doc, err := d.shell.Shelf.Keeper().Document(t.Context(), "quillhaven"); err != nil || !doc.Away {
		t.Errorf("half a form brought the arena back: %+v, %v", doc, err)
	}
	says(t, ask(t, h, "POST", demoPage+"/away", ""), 400, "incomplete")
}
