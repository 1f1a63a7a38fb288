package picture

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"strconv"

	pic "example.org/rinkpane/internal/answer/frame"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/play"
)

// sitting is what a request for a picture is about.
type sitting struct {
	book    shelf.Book
	arena   arena.Arena
	moments *play.Set
	state   State
	system  unit.System
}

// cannot tells a visitor what was asked for wrongly.
func cannot(err error) error {
	return shell.Refuse(http.StatusUnprocessableEntity, "This picture cannot be taken.", shell.SentenceOf(err))
}

// sit opens the arena of a request and reads the picture it asks for.
func (d area) sit(r *http.Request) (sitting, error) {
	var s sitting
	var err error
	if s.book, err = d.Shelf.Open(r.Context(), r.PathValue("slug"), 0); err != nil {
		return s, err
	}
	if s.arena, err = s.book.Arena.Check(); err != nil {
		return s, err
	}
	s.system = s.arena.Units
	if units := r.FormValue("units"); units != "" {
		if s.system, err = unit.ParseSystem(units); err != nil {
			return s, cannot(err)
		}
	}
	if s.moments, err = Sample(r.Context(), s.arena); err != nil {
		return s, cannot(err)
	}
	if s.state, err = Read(r.URL.Query(), s.arena, s.book.Maker.Kit); err != nil {
		return s, cannot(err)
	}
	if r.FormValue("moment") == "" {
		s.state.Moment = pic.BestMoment(s.arena, s.moments, s.state.Hole, nil)
	}
	return s, nil
}

// shot sets the camera up; what cannot be taken is the visitor's to know.
func (s sitting) shot() (*pic.Shot, error) {
	shot, err := s.state.Shot(s.arena, s.moments)
	if err != nil {
		return nil, cannot(err)
	}
	return shot, nil
}

// query is the state with the units, as a link carries it.
func (s sitting) query(r *http.Request) url.Values {
	q := s.state.Query()
	if units := r.FormValue("units"); units != "" {
		q.Set("units", units)
	}
	return q
}

// Pixels of a picture's longer side.
const (
	pictureSide = 1200
	leastSide   = 120
	mostSide    = 2400
)

// size returns the picture's pixels for a longer side.
func size(shot *pic.Shot, side int) (w, h int) {
	long := max(shot.Case.TanX, shot.Case.TanY)
	return int(float64(side)*shot.Case.TanX/long + 0.5), int(float64(side)*shot.Case.TanY/long + 0.5)
}

func sideOf(r *http.Request) (int, error) {
	v := r.FormValue("side")
	if v == "" {
		return pictureSide, nil
	}
	n, err := strconv.Atoi(v)
	if err != nil || n < leastSide || n > mostSide {
		return 0, cannot(fmt.Errorf("side: write a number of pixels from %d to %d", leastSide, mostSide))
	}
	return n, nil
}

// picture answers GET /arena/{slug}/picture.png, .jpg and .svg.
func (d area) picture(kind string) shell.Answer {
	media := map[string]string{"png": "image/png", "jpg": "image/jpeg", "svg": "image/svg+xml"}[kind]
	return func(w http.ResponseWriter, r *http.Request) error {
		s, err := d.sit(r)
		if err != nil {
			return err
		}
		side, err := sideOf(r)
		if err != nil || s.cached(w, r, d.version, kind, side) {
			return err
		}
		data, err := d.develop(r.Context(), s, kind, side)
		if err != nil {
			w.Header().Del("Cache-Control")
			w.Header().Del("ETag")
			return err
		}
		if kind == "svg" { // its light lies in small pictures of its own
			w.Header().Set("Content-Security-Policy", "default-src 'none'; img-src data:; frame-ancestors 'none'")
		}
		if r.FormValue("save") == "1" {
			w.Header().Set("Content-Disposition", fmt.Sprintf("attachment; filename=%q", fileName(s, kind)))
		}
		shell.Send(w, r, http.StatusOK, media, data, nil)
		return nil
	}
}

// cached sets the headers that let a browser keep the picture, and answers when
// it has it already. A picture follows from the arena's text, the state and the
// program; an address that names the text's revision never means another one.
func (s sitting) cached(w http.ResponseWriter, r *http.Request, version, kind string, side int) bool {
	sum := sha256.Sum256([]byte(fmt.Sprint(version, kind, side, s.book.Revision, s.book.Key, s.state.Query().Encode())))
	tag := `"` + hex.EncodeToString(sum[:]) + `"`
	w.Header().Set("ETag", tag)
	w.Header().Set("Cache-Control", "private, no-cache")
	if r.FormValue("of") == s.book.Revision && s.book.Key == "" {
		w.Header().Set("Cache-Control", "private, max-age=86400, immutable")
	}
	if r.Header.Get("If-None-Match") != tag {
		return false
	}
	w.WriteHeader(http.StatusNotModified)
	return true
}

// develop draws a picture when it is its turn.
func (d area) develop(ctx context.Context, s sitting, kind string, side int) (data []byte, err error) {
	err = d.darkroom.draw(ctx, func() error {
		shot, err := s.shot()
		if err != nil {
			return err
		}
		w, h := size(shot, side)
		if kind == "svg" {
			var out bytes.Buffer
			if err := shot.WriteSVG(&out, w, h); err != nil {
				return cannot(err)
			}
			data = out.Bytes()
			return nil
		}
		data, err = encode(shot, shot.Picture(w, h), kind)
		return err
	})
	return data, err
}

func fileName(s sitting, kind string) string {
	return fmt.Sprintf("%s-%s-%.0fmm-moment%d.%s", s.book.Document.ID, s.state.Hole, s.state.Focal, s.state.Moment, kind)
}

// pictureNumbers answers GET /arena/{slug}/picture.json: what stands beside it.
func (d area) pictureNumbers(w http.ResponseWriter, r *http.Request) error {
	n, err := d.numbers(r)
	var say *shell.Refusal
	switch {
	case errors.As(err, &say) && say.Status == http.StatusUnprocessableEntity:
		return d.JSON(w, r, say.Status, map[string]string{"problem": say.Cure})
	case err != nil:
		return err
	}
	return d.JSON(w, r, http.StatusOK, n)
}

func (d area) numbers(r *http.Request) (Numbers, error) {
	s, err := d.sit(r)
	if err != nil {
		return Numbers{}, err
	}
	shot, err := s.shot()
	if err != nil {
		return Numbers{}, err
	}
	return s.state.Numbers(shot, s.arena, s.system)
}
