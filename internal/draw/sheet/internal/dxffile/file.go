// Package dxffile writes the bones of an ASCII DXF file of release 2000
// (AC1015): header with millimetres as its unit, tables, blocks and objects
// around the entities. It knows no drawing. The frame is mathematical: y up.
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

// New returns an empty file for a drawing of a size in millimetres.
func New(w, h float64) *File { return &File{handle: firstHandle, w: w, h: h} }

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
	var p pairs
	p.str(999, "millimetres, y up")
	f.header(&p)
	p.section("CLASSES")
	p.str(0, "ENDSEC")
	f.tables(&p)
	f.blocks(&p)
	p.section("ENTITIES")
	p.b = append(p.b, f.entities.b...)
	p.str(0, "ENDSEC")
	f.objects(&p)
	p.str(0, "EOF")
	return p.b
}

func (f *File) header(p *pairs) {
	p.section("HEADER")
	p.str(9, "$ACADVER").str(1, "AC1015")
	p.str(9, "$DWGCODEPAGE").str(3, "ANSI_1252")
	p.str(9, "$HANDSEED").str(5, fmt.Sprintf("%X", f.handle+1))
	p.str(9, "$INSUNITS").int(70, insertMillimetres)
	p.str(9, "$MEASUREMENT").int(70, 1)
	p.str(9, "$LUNITS").int(70, 2)
	p.str(9, "$LTSCALE").num(40, 1)
	p.str(9, "$EXTMIN").xyz(0, 0, 0)
	p.str(9, "$EXTMAX").xyz(0, f.w, f.h)
	p.str(9, "$LIMMIN").xy(0, 0, 0)
	p.str(9, "$LIMMAX").xy(0, f.w, f.h)
	p.str(0, "ENDSEC")
}

// insertMillimetres is the value of $INSUNITS for millimetres (DXF reference, HEADER).
const insertMillimetres = 4
