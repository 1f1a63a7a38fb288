package desk

import (
	"errors"
	"io"
	"net/http"
	"strings"

	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/measure/form"
)

// importPage takes a document, and keeps what was typed when it is wrong.
type importPage struct {
	frame
	Text    string
	Problem *problemView
}

// problemView is what is wrong with a document that somebody sent.
type problemView struct {
	Line  int // 0 when the place is not known
	Field string
	Text  string
	Near  []nearLine // the lines around it
}

type nearLine struct {
	Number int
	Text   string
	Here   bool
}

// longestNear is how much of such a line is shown, in characters: a file that is
// no document may be one line.
const longestNear = 300

// nearMost is how many lines are shown before and after the one that is wrong.
const nearMost = 2

// problemOf shows an error of a document with its lines; ok is false for an
// error that is not about a document.
func problemOf(err error, text string) (p *problemView, ok bool) {
	var at *form.Problem
	if !errors.As(err, &at) {
		return nil, false
	}
	p = &problemView{Line: at.Line, Field: at.Field, Text: at.Text}
	lines := strings.Split(text, "\n")
	for n := max(1, at.Line-nearMost); at.Line > 0 && n <= min(len(lines), at.Line+nearMost); n++ {
		p.Near = append(p.Near, nearLine{n, cutShort(strings.TrimRight(lines[n-1], "\r"), longestNear), n == at.Line})
	}
	return p, true
}

func (d *Desk) importPage(w http.ResponseWriter, r *http.Request) {
	d.show(w, r, http.StatusOK, "import.tmpl", importPage{frame: d.frame(r, "Import")})
}

func (d *Desk) importArena(w http.ResponseWriter, r *http.Request) {
	text, err := sentDocument(r)
	if err != nil {
		d.badForm(w, r, err)
		return
	}
	doc, err := d.shelf.Read("arena", text)
	if err == nil {
		v, addErr := d.shelf.Add(r.Context(), "", doc, door.Who(r.Context()), "import")
		if addErr == nil {
			http.Redirect(w, r, "/arena/"+v.Document, http.StatusSeeOther)
			return
		}
		err = addErr
	}
	page := importPage{frame: d.frame(r, "Import"), Text: text}
	d.keepTyped(w, r, err, text, func(p *problemView, status int) {
		page.Problem = p
		d.show(w, r, status, "import.tmpl", page)
	})
}

// sentDocument returns the document of a form: the file, else the text typed.
// A browser sends the text's lines with CRLF, whatever they were.
func sentDocument(r *http.Request) (string, error) {
	f, _, err := r.FormFile("file")
	if err == nil {
		defer f.Close()
		data, err := io.ReadAll(f)
		if err != nil || len(data) > 0 {
			return string(data), err
		}
	}
	return strings.ReplaceAll(r.PostFormValue("text"), "\r\n", "\n"), nil
}
