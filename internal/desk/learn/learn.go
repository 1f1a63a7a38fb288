// Package learn answers on the desk: where does a hole truly stand, by frames that were
// taken through it? By places of the rink that somebody marks in them.
//
//	marks --> resect --> where the hole stands --press--> a version of the arena
//
// The model: no picture is kept, and none need be sent. The browser shows a frame from its
// own file; what comes here are marks, the size in pixels, and the file's first bytes, of
// which the focal length is read before they are dropped.
package learn

import (
	"embed"

	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/people"
)

//go:embed *.tmpl
var templates embed.FS

type area struct {
	*shell.Shell
}

// headBytes is how much of a frame's file is read to tell how it was taken: cameras write
// that before the picture, within some tens of kilobytes.
const headBytes = 512 << 10

// New returns the area.
func New(s *shell.Shell) shell.Area {
	d := area{s}
	const arena, demo = "/arena/{slug}", "/arena/" + shell.SampleArena
	row := func(pattern string, need people.Act, most int64, answer shell.Answer, samples ...string) shell.Route {
		return shell.Route{Pattern: pattern, Need: need, Most: most, Answer: answer, Samples: samples}
	}
	heavy := func(r shell.Route) shell.Route { r.Heavy = true; return r }
	return shell.Area{Templates: templates, Routes: []shell.Route{
		row("GET "+arena+"/frame", people.Read, shell.Form, d.framePage, demo+"/frame?hole=B1", demo+"/frame?hole=B1&example=1"),
		heavy(row("POST "+arena+"/frame", people.Read, shell.Document, d.solve)),
		row("POST "+arena+"/frame/told", people.Read, headBytes, d.told),
		heavy(row("POST "+arena+"/frame/take", people.Plan, shell.Document, d.takeOver)),
		heavy(row("GET "+arena+"/frame/example.jpg", people.Read, shell.Form, d.examplePicture)),
	}}
}
