package dxffile

// Handles of the fixed objects. Entities have numbers above firstHandle.
const (
	vportTable, ltypeTable, layerTable, styleTable  = "1", "2", "3", "4"
	viewTable, ucsTable, appidTable, dimstyleTable  = "5", "6", "7", "8"
	recordTable                                     = "9"
	activeVport, stdStyle, acadApp, stdDim          = "A", "B", "C", "D"
	byBlock, byLayer, continuous, layerZero         = "E", "F", "10", "11"
	modelRecord, paperRecord                        = "12", "13"
	modelBegin, modelEnd, paperBegin, paperEnd      = "14", "15", "16", "17"
	rootDict, groupDict, layoutDict, model, layout1 = "18", "19", "1A", "1B", "1C"
)

const textStyle = "Standard"

func (p *pairs) table(name, handle string, count int) *pairs {
	p.str(0, "TABLE").str(2, name)
	if p.r12 {
		return p.int(70, count)
	}
	return p.str(5, handle).str(330, "0").str(100, "AcDbSymbolTable").int(70, count)
}

func (p *pairs) record(kind, handle, owner, class, name string) *pairs {
	code := 5
	if kind == "DIMSTYLE" {
		code = 105
	}
	p.str(0, kind)
	if p.r12 {
		return p.str(2, name).int(70, 0)
	}
	return p.str(code, handle).str(330, owner).str(100, "AcDbSymbolTableRecord").
		str(100, class).str(2, name).int(70, 0)
}

func (f *File) tables(p *pairs) {
	p.section("TABLES")
	f.vport(p)
	f.lineTypes(p)
	f.layerTable(p)
	p.table("STYLE", styleTable, 1).record("STYLE", stdStyle, styleTable, "AcDbTextStyleTableRecord", textStyle).
		num(40, 0).num(41, 1).num(50, 0).int(71, 0).num(42, 2.5).str(3, "arial.ttf").str(4, "")
	p.str(0, "ENDTAB")
	if p.r12 {
		p.str(0, "ENDSEC")
		return
	}
	p.table("VIEW", viewTable, 0).str(0, "ENDTAB")
	p.table("UCS", ucsTable, 0).str(0, "ENDTAB")
	p.table("APPID", appidTable, 1).record("APPID", acadApp, appidTable, "AcDbRegAppTableRecord", "ACAD")
	p.str(0, "ENDTAB")
	p.table("DIMSTYLE", dimstyleTable, 1).str(100, "AcDbDimStyleTable")
	p.record("DIMSTYLE", stdDim, dimstyleTable, "AcDbDimStyleTableRecord", "Standard")
	p.str(0, "ENDTAB")
	p.table("BLOCK_RECORD", recordTable, 2)
	p.blockRecord(modelRecord, "*Model_Space", model)
	p.blockRecord(paperRecord, "*Paper_Space", layout1)
	p.str(0, "ENDTAB")
	p.str(0, "ENDSEC")
}

func (p *pairs) blockRecord(handle, name, layout string) {
	p.str(0, "BLOCK_RECORD").str(5, handle).str(330, recordTable).str(100, "AcDbSymbolTableRecord").
		str(100, "AcDbBlockTableRecord").str(2, name).str(340, layout)
}

// vport sets the first view so that the whole drawing shows.
func (f *File) vport(p *pairs) {
	aspect := 1.5
	height := max(f.h, f.w/aspect)
	p.table("VPORT", vportTable, 1).record("VPORT", activeVport, vportTable, "AcDbViewportTableRecord", "*Active").
		xy(0, 0, 0).xy(1, 1, 1).xy(2, f.x+f.w/2, f.y+f.h/2).xy(3, 0, 0).xy(4, 10, 10).xy(5, 10, 10)
	p.num(16, 0).num(26, 0).num(36, 1).num(17, 0).num(27, 0).num(37, 0)
	p.num(40, height).num(41, aspect).num(42, 50).num(43, 0).num(44, 0).num(50, 0).num(51, 0)
	p.int(71, 0).int(72, 100).int(73, 1).int(74, 3).int(75, 0).int(76, 0).int(77, 0).int(78, 0)
	p.str(0, "ENDTAB")
}

func (f *File) lineTypes(p *pairs) {
	p.table("LTYPE", ltypeTable, 3+len(f.ltypes))
	p.plainType(byBlock, "ByBlock")
	p.plainType(byLayer, "ByLayer")
	p.plainType(continuous, "Continuous")
	for _, t := range f.ltypes {
		p.record("LTYPE", f.next(), ltypeTable, "AcDbLinetypeTableRecord", t.name).str(3, "").int(72, 65)
		total := 0.0
		for _, v := range t.dash {
			total += v
		}
		p.int(73, len(t.dash)).num(40, total)
		for i, v := range t.dash {
			if i%2 == 1 {
				v = -v // an off stretch
			}
			if p.num(49, v); !p.r12 {
				p.int(74, 0)
			}
		}
	}
	p.str(0, "ENDTAB")
}

func (p *pairs) plainType(handle, name string) {
	p.record("LTYPE", handle, ltypeTable, "AcDbLinetypeTableRecord", name).str(3, "").int(72, 65).int(73, 0).num(40, 0)
}

func (f *File) layerTable(p *pairs) {
	p.table("LAYER", layerTable, 1+len(f.layers))
	p.layer(layerZero, Layer{Name: "0", Colour: 7, Weight: 25})
	for _, l := range f.layers {
		p.layer(f.next(), l)
	}
	p.str(0, "ENDTAB")
}

func (p *pairs) layer(handle string, l Layer) {
	p.record("LAYER", handle, layerTable, "AcDbLayerTableRecord", l.Name).
		int(62, l.Colour).str(6, "Continuous")
	if !p.r12 {
		p.int(370, l.Weight)
	}
}
