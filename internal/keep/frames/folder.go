package frames

import (
	"cmp"
	"context"
	"os"
	"slices"
	"strings"

	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/measure/cores"
	"example.org/rinkpane/internal/measure/unit"
)

// Found is what folders hold.
type Found struct {
	Frames   []recap.Frame // in the order in which they were taken, then by name
	Troubles []Trouble     // by name
	Known    int           // shots that a journal knew and that were not read again
}

// Read reads all frames in folders and files, shared over the cores, and tells those who
// watch how far it is. It writes nothing but to the journal, which may be nil. A context
// that ends stops it between two files.
func Read(ctx context.Context, paths []string, j *Journal) (Found, error) {
	shots, troubles, err := list(ctx, paths)
	if err != nil {
		return Found{}, err
	}
	done := make([]entry, len(shots))
	err = cores.EachUntil(ctx, "reading frames", len(shots), func(i int) { done[i] = j.read(shots[i]) })
	out := Found{Troubles: troubles}
	for _, e := range done {
		if e.known {
			out.Known++
		}
		out.Troubles = append(out.Troubles, e.troubles...)
		if e.Frame != nil {
			out.Frames = append(out.Frames, *e.Frame)
		}
	}
	slices.SortStableFunc(out.Frames, func(a, b recap.Frame) int {
		return cmp.Or(a.Taken.Compare(b.Taken), strings.Compare(a.File, b.File))
	})
	slices.SortStableFunc(out.Troubles, func(a, b Trouble) int { return strings.Compare(a.File, b.File) })
	if err == nil {
		err = j.failure()
	}
	return out, err
}

// read reads the files of one shot: the first of its pictures that says when it was
// taken, with a rating from wherever one stands. A raw file's JPEG is read first.
func (s shot) read() entry {
	var e entry
	slices.SortStableFunc(s.pictures, func(a, b string) int { return cmp.Compare(rawness(a), rawness(b)) })
	for _, path := range s.pictures {
		f, trouble := ReadFile(path)
		switch {
		case trouble.Cause != "":
			e.troubles = append(e.troubles, trouble)
		case e.Frame == nil:
			e.Frame = &f
		case e.Frame.Rating.IsZero():
			e.Frame.Rating = f.Rating
		}
	}
	for _, path := range s.sidecars {
		if e.Frame == nil {
			break
		}
		r, err := sidecar(path)
		switch {
		case !r.IsZero(): // damage behind it does not matter
			e.Frame.Rating = r
		case err != nil:
			e.troubles = append(e.troubles, Trouble{path, Broken, err})
		}
	}
	return e
}

// rawness orders a shot's files: pictures before raw files.
func rawness(path string) int {
	for end := range rawKinds() {
		if strings.HasSuffix(strings.ToLower(path), end) {
			return 1
		}
	}
	return 0
}

// sidecar returns the rating in an XMP file.
func sidecar(path string) (rating unit.Maybe[int], err error) {
	f, err := os.Open(path)
	if err != nil {
		return rating, err
	}
	defer f.Close()
	t := tags{}
	err = t.rating(f)
	return t.frame(path).Rating, err
}
