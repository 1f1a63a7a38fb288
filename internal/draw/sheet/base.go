package sheet

// The palette of our prints: graphite and ice blue on white, and three accents
// whose meaning always shows in a shape, a dash or a word as well. The names are
// CSS variables on web pages ("--sheet-ink").
var (
	Ink   = RGB(0x1c, 0x27, 0x30).Named("ink")   // text and main lines
	Slate = RGB(0x55, 0x66, 0x73).Named("slate") // second lines, captions
	Mist  = RGB(0xb4, 0xc2, 0xcc).Named("mist")  // grids, rules
	White = RGB(0xff, 0xff, 0xff).Named("paper")
	Ice   = RGB(0xec, 0xf4, 0xf8).Named("ice")   // the ice, table heads
	Frost = RGB(0xc9, 0xdf, 0xea).Named("frost") // glass
	Deep  = RGB(0x1f, 0x5f, 0x8b).Named("deep")  // emphasis, first series
	Good  = RGB(0x2c, 0x7a, 0x57).Named("good")
	Bad   = RGB(0xb3, 0x3a, 0x2b).Named("bad")
	Doubt = RGB(0xa8, 0x6f, 0x12).Named("doubt")
)

// Type sizes (em) in millimetres: the capitals stand 2.5, 1.8 and so on high.
const (
	SizeTitle = 5.0 // mm: names of sheets
	SizeHead  = 3.6 // mm: headings
	SizeDim   = 3.5 // mm: dimensions, whose capitals are 2.5 high as ISO 3098-1 has it (from memory)
	SizeText  = 2.9 // mm: notes
	SizeTable = 2.6 // mm: tables beside drawings and text
	SizeSmall = 2.3 // mm: captions
)

// Base returns the classes that this package's own parts use: frame and title
// block, dimensions, notes, hatches and tables. Colours can be told apart in
// grey, too.
func Base() Stylesheet {
	return Stylesheet{
		{"paper", Style{Fill: White}},
		{"frame", Style{Stroke: Ink, Width: W70}},
		{"rule", Style{Stroke: Ink, Width: W25}},
		{"rule-thin", Style{Stroke: Mist, Width: W18}},
		{"text", Style{Fill: Ink, Face: Regular}},
		{"title", Style{Fill: Ink, Face: Bold, Size: SizeTitle}},
		{"head", Style{Fill: Ink, Face: Bold, Size: SizeHead}},
		{"value", Style{Fill: Ink, Face: Regular, Size: SizeText}},
		{"caption", Style{Fill: Slate, Face: Regular, Size: SizeSmall}},
		{"caution", Style{Fill: Ink, Face: Italic, Size: SizeSmall}},
		{"strong", Style{Face: Bold}},
		{"outline", Style{Stroke: Ink, Width: W50}},
		{"edge", Style{Stroke: Ink, Width: W35}},
		{"hidden-edge", Style{Stroke: Slate, Width: W25, Dash: []float64{2, 1}}},
		{"centre-line", Style{Stroke: Slate, Width: W18, Dash: []float64{6, 1, 1, 1}}},
		{"hatch", Style{Stroke: Slate, Width: W13}},
		{"dim", Style{Stroke: Slate, Width: W18}},
		{"dim-arrow", Style{Fill: Slate}},
		{"dim-text", Style{Fill: Ink, Face: Regular, Size: SizeDim}},
		{"leader", Style{Stroke: Slate, Width: W18}},
		{"note", Style{Fill: Ink, Face: Regular, Size: SizeText}},
		{"register", Style{Stroke: Ink, Width: W13}},
		{"check", Style{Stroke: Ink, Width: W13}},
		{"check-dark", Style{Fill: Ink}},
		{"table-head", Style{Fill: Ice}},
		{"table-mark", Style{Fill: Ice}},
	}
}
