package picture

import (
	"embed"

	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/people"
)

//go:embed *.tmpl
var templates embed.FS

type area struct {
	*shell.Shell
	darkroom *darkroom
	version  string // of the program: another may draw another picture
}

// New returns the area.
func New(s *shell.Shell, version string) shell.Area {
	d := area{s, newDarkroom(), version}
	const at = "/arena/" + shell.SampleArena + "/picture"
	row := func(pattern string, answer shell.Answer, samples ...string) shell.Route {
		return shell.Route{Pattern: "GET /arena/{slug}/" + pattern, Need: people.Read, Most: shell.Form, Answer: answer, Samples: samples}
	}
	large := func(r shell.Route) shell.Route { r.Heavy = true; return r }
	return shell.Area{Templates: templates, Routes: []shell.Route{
		row("picture", d.picturePage, at+"?hole=B1"),
		row("picture.json", d.pictureNumbers),
		large(row("picture.png", d.picture("png"))),
		row("picture.jpg", d.picture("jpg")),
		large(row("picture.svg", d.picture("svg"))),
	}}
}
