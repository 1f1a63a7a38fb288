// Package dxffile writes the bones of an ASCII DXF file of release 2000
// (AC1015) or 12 (AC1009): header with millimetres as its unit, tables, blocks
// and objects around the entities. It knows no drawing. The frame is
// mathematical: y up.
//
// Release 12 knows no handles, no subclasses, no light-weight polylines, no
// objects and no unit of the drawing (DXF reference, release 12).
package dxffile

import (
	"fmt"
	"strconv"
)

// File gathers layers, line types and entities. Make one with New.
type File struct {
	entities pairs
	layers   []Layer
	ltypes   []ltype
	handle   int
	x, y     float64 // of the lower left corner
	w, h     float64
}

// Layer is a layer with its colour number and line weight.
type Layer struct {
	Name   string
	Colour int // AutoCAD colour index: 1 red, 3 green, 5 blue, 7 black or white
	Weight int // hundredths of a millimetre
}

type ltype struct {
	name string
	dash []float64
}

// firstHandle leaves the numbers below for the fixed objects.
const firstHandle = 0x100

// Release is a release of the format.
type Release int

// The releases that are written.
const (
	R2000 Release = iota
	R12
)

// New returns an empty file for a drawing with its lower left corner at (x, y) and
// a size, in millimetres.
func New(r Release, x, y, w, h float64) *File {
	return &File{entities: pairs{r12: r == R12}, handle: firstHandle, x: x, y: y, w: w, h: h}
}

// AddLayer declares a layer once.
func (f *File) AddLayer(l Layer) {
	for _, have := range f.layers {
		if have.Name == l.Name {
			return
		}
	}
	f.layers = append(f.layers, l)
}

// Dash declares a dash pattern (lengths on and off in millimetres) and returns
// its line type's name; an empty pattern is continuous.
func (f *File) Dash(dash []float64) string {
	if len(dash) == 0 {
		return ""
	}
	for _, t := range f.ltypes {
		if fmt.Sprint(t.dash) == fmt.Sprint(dash) {
			return t.name
		}
	}
	name := "DASH" + strconv.Itoa(len(f.ltypes)+1)
	f.ltypes = append(f.ltypes, ltype{name, dash})
	return name
}

func (f *File) next() string {
	f.handle++
	return fmt.Sprintf("%X", f.handle)
}

// Bytes returns the whole file.
func (f *File) Bytes() []byte {
	p := pairs{r12: f.entities.r12}
	p.str(999, "millimetres, y up")
	f.header(&p)
	if !p.r12 {
		p.section("CLASSES")
		p.str(0, "ENDSEC")
	}
	f.tables(&p)
	if !p.r12 {
		f.blocks(&p)
	}
	p.section("ENTITIES")
	p.b = append(p.b, f.entities.b...)
	p.str(0, "ENDSEC")
	if !p.r12 {
		f.objects(&p)
	}
	p.str(0, "EOF")
	return p.b
}

func (f *File) header(p *pairs) {
	p.section("HEADER")
	version := "AC1015"
	if p.r12 {
		version = "AC1009"
	}
	p.str(9, "$ACADVER").str(1, version)
	p.str(9, "$DWGCODEPAGE").str(3, "ANSI_1252")
	if !p.r12 {
		p.str(9, "$HANDSEED").str(5, fmt.Sprintf("%X", f.handle+1))
		p.str(9, "$INSUNITS").int(70, insertMillimetres)
		p.str(9, "$MEASUREMENT").int(70, 1)
	}
	p.str(9, "$LUNITS").int(70, 2)
	p.str(9, "$LTSCALE").num(40, 1)
	p.str(9, "$EXTMIN").xyz(0, f.x, f.y)
	p.str(9, "$EXTMAX").xyz(0, f.x+f.w, f.y+f.h)
	p.str(9, "$LIMMIN").xy(0, f.x, f.y)
	p.str(9, "$LIMMAX").xy(0, f.x+f.w, f.y+f.h)
	p.str(0, "ENDSEC")
}

// insertMillimetres is the value of $INSUNITS for millimetres (DXF reference, HEADER).
const insertMillimetres = 4
