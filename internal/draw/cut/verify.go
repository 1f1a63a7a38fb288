package cut

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
)

// stampLead is what stands before the mark on every drawing; no spaces, so
// that no writer of PDF, SVG or DXF breaks it.
const stampLead = "rinkpane-plan-"

// Stamp returns the text by which a drawing carries its plan's revision for
// programs, whole: a short form may be met by another text made for it.
func (p ShopOrder) Stamp() string { return stampLead + p.Revision }

var (
	stamp = regexp.MustCompile(stampLead + `([0-9a-f]{64})\b`)
	short = regexp.MustCompile(stampLead + `[0-9a-f]{12}\b`)
)

// Format is a drawing's file format.
type Format string

// The formats that Verify reads.
const (
	PDF Format = "PDF"
	SVG Format = "SVG"
	DXF Format = "DXF"
)

// MaxDrawing is the largest drawing that is read, in bytes.
const MaxDrawing = 64 << 20

// The answers of Verify that are errors.
var (
	ErrNoDrawing = errors.New("not a PDF, SVG or DXF; give a drawing that rinkpane wrote")
	ErrShort     = errors.New("the drawing carries only the short form of its plan's revision, which proves nothing; draw it anew")
	ErrNoStamp   = errors.New("the drawing carries no plan revision; rinkpane did not write it, or another program rewrote it")
)

// Verify reads the plan's revision from a drawing. It tells which document the
// drawing was made from, not whether somebody changed the drawing since. The
// error is ErrNoDrawing, ErrNoStamp, ErrShort, or says that the drawing names several plans.
func Verify(drawing []byte) (mark string, f Format, err error) {
	f, err = formatOf(drawing)
	if err != nil {
		return "", "", err
	}
	for _, m := range stamp.FindAllSubmatch(drawing, -1) {
		if mark != "" && mark != string(m[1]) {
			return "", f, fmt.Errorf("the drawing names two plans, %s and %s; sheets of different plans were joined", mark, m[1])
		}
		mark = string(m[1])
	}
	if mark == "" && short.Match(drawing) {
		return "", f, ErrShort
	}
	if mark == "" {
		return "", f, ErrNoStamp
	}
	return mark, f, nil
}

// headBytes is how much of a file tells its format.
const headBytes = 1024

func formatOf(b []byte) (Format, error) {
	head := b[:min(len(b), headBytes)]
	switch {
	case bytes.HasPrefix(head, []byte("%PDF-")):
		return PDF, nil
	case bytes.Contains(head, []byte("<svg")):
		return SVG, nil
	case bytes.Contains(head, []byte("SECTION")) && bytes.Contains(head, []byte("HEADER")):
		return DXF, nil
	}
	return "", ErrNoDrawing
}
