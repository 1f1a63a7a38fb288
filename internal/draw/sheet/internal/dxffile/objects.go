package dxffile

func (f *File) blocks(p *pairs) {
	p.section("BLOCKS")
	p.block("*Model_Space", modelRecord, modelBegin, modelEnd)
	p.block("*Paper_Space", paperRecord, paperBegin, paperEnd)
	p.str(0, "ENDSEC")
}

func (p *pairs) block(name, record, begin, end string) {
	p.str(0, "BLOCK").str(5, begin).str(330, record).str(100, "AcDbEntity").str(8, "0").
		str(100, "AcDbBlockBegin").str(2, name).int(70, 0).xyz(0, 0, 0).str(3, name).str(1, "")
	p.str(0, "ENDBLK").str(5, end).str(330, record).str(100, "AcDbEntity").str(8, "0").str(100, "AcDbBlockEnd")
}

func (f *File) objects(p *pairs) {
	p.section("OBJECTS")
	p.dict(rootDict, "0").str(3, "ACAD_GROUP").str(350, groupDict).str(3, "ACAD_LAYOUT").str(350, layoutDict)
	p.dict(groupDict, rootDict)
	p.dict(layoutDict, rootDict).str(3, "Model").str(350, model).str(3, "Layout1").str(350, layout1)
	f.layout(p, model, "Model", modelRecord, modelTab, 0)
	f.layout(p, layout1, "Layout1", paperRecord, paperTab, 1)
	p.str(0, "ENDSEC")
}

// Plot flags of the two layouts as drawing programs write them: the model tab
// carries bit 1024 (DXF reference, PLOTSETTINGS, group 70).
const (
	modelTab = 1712
	paperTab = 688
)

func (p *pairs) dict(handle, owner string) *pairs {
	return p.str(0, "DICTIONARY").str(5, handle).str(330, owner).str(100, "AcDbDictionary").int(281, 1)
}

func (f *File) layout(p *pairs, handle, name, record string, flags, order int) {
	p.str(0, "LAYOUT").str(5, handle).str(330, layoutDict).str(100, "AcDbPlotSettings").
		str(1, "").str(2, "none_device").str(4, "").str(6, "")
	for _, code := range []int{40, 41, 42, 43} {
		p.num(code, 0)
	}
	p.num(44, f.w).num(45, f.h)
	for _, code := range []int{46, 47, 48, 49, 140, 141} {
		p.num(code, 0)
	}
	p.num(142, 1).num(143, 1).int(70, flags).int(72, 1).int(73, 0).int(74, 5).str(7, "").int(75, 16)
	p.num(147, 1).num(148, 0).num(149, 0)
	p.str(100, "AcDbLayout").str(1, name).int(70, 1).int(71, order).
		xy(0, 0, 0).xy(1, f.w, f.h).xyz(2, 0, 0).xyz(4, 0, 0).xyz(5, f.w, f.h).num(146, 0).
		xyz(3, 0, 0).num(16, 1).num(26, 0).num(36, 0).num(17, 0).num(27, 1).num(37, 0).int(76, 0)
	p.str(330, record)
}
