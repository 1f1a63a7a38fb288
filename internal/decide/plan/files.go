package plan

import (
	"example.org/rinkpane/internal/measure/unit"
)

// File is one file of the folder that a plan is written to.
type File struct {
	Name string
	Data []byte
}

// Files returns the folder but for plan.json, the same to the byte for the same document, kit,
// rules and units: what to look at first comes first.
func (p Plan) Files(sys unit.System) []File {
	return append(p.drawings(sys), []File{
		{"summary.txt", []byte(p.Summary(sys) + "\n" + p.cautionText())},
		{"holes.txt", []byte(p.HolesText(sys))},
		{"findings.txt", []byte(p.FindingsText(sys))},
		{"fit.txt", []byte(p.FitText(sys))},
		{"light.txt", []byte(p.LightText(sys))},
	}...)
}

func (p Plan) cautionText() string {
	text := "Cautions\n"
	for _, c := range p.Cautions {
		text += wrap("- "+c, "  ")
	}
	return text
}

// LookFirst says which files of the folder to open first.
func LookFirst() string {
	return "Look first at plan-map.svg (open it in a browser), then at boards-strip.svg and summary.txt.\n"
}
