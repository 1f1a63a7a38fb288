package rinkpane

// houseRooms is the house, floor by floor. CONTRIBUTING.md shows the same as a
// map for people; a test compares the two.
var houseRooms = []room{
	{name: "unit", floor: 1, needs: []arrow{
		{"go.yaml.in/yaml/v3", "quantities read themselves and name the line when they cannot"},
	}},
	{name: "geom", floor: 1},
	{name: "chance", floor: 1, needs: []arrow{
		{"gonum.org/v1/gonum", "the incomplete gamma function"},
	}},

	{name: "examples", floor: 1},

	{name: "form", floor: 2, uses: []arrow{
		{"unit", "fields are quantities"},
	}, needs: []arrow{
		{"go.yaml.in/yaml/v3", "the nodes with their places"},
	}},
	{name: "rink", floor: 2, uses: []arrow{
		{"unit", "dimensions and stations are lengths"},
		{"geom", "points and normals in the rink's frame"},
	}},
	{name: "optics", floor: 2, uses: []arrow{
		{"unit", "focal lengths, stops, shutter times, light"},
	}},

	{name: "glass", floor: 3, uses: []arrow{
		{"unit", "sizes, thicknesses, tolerances"},
	}},
	{name: "play", floor: 3, uses: []arrow{
		{"form", "reads the user's assumptions strictly"},
		{"unit", "dimensions are lengths"},
		{"rink", "where the boards, goals and spots are"},
	}},

	{name: "arena", floor: 4, uses: []arrow{
		{"examples", "the demo arena that the program carries"},
		{"form", "reads the document strictly"},
		{"unit", "what a survey writes down"},
		{"geom", "places of light readings"},
		{"rink", "stations, corners and landmarks"},
		{"glass", "panes, holes, windows, covers"},
	}},
	{name: "kit", floor: 4, uses: []arrow{
		{"form", "reads the document strictly"},
		{"unit", "sizes, focal lengths, stops"},
	}},

	{name: "survey", floor: 5, uses: []arrow{
		{"unit", "lengths on the grid they are written in"},
		{"rink", "the boards to lay panes along, and the landmarks"},
		{"arena", "the document begun, and the arena that lacks something"},
	}},
	{name: "rules", floor: 5, uses: []arrow{
		{"form", "reads the document strictly"},
		{"unit", "limits and margins"},
		{"rink", "stretches between landmarks"},
		{"glass", "holes, panes, materials"},
		{"arena", "what is proved"},
	}},
	{name: "fit", floor: 5, uses: []arrow{
		{"unit", "lens and hole sizes, angles"},
		{"geom", "clipping the pupil by the hole's outlines"},
		{"glass", "the hole"},
		{"kit", "lens and body"},
	}},
	{name: "light", floor: 5, uses: []arrow{
		{"unit", "lux, shutter, stop"},
		{"geom", "places on the ice"},
		{"rink", "zones of the ice"},
		{"glass", "where the hole is"},
		{"arena", "the light survey"},
		{"kit", "widest stops, highest ISO"},
		{"optics", "exposure"},
	}},

	{name: "edit", floor: 5, uses: []arrow{
		{"unit", "numbers rounded to what people measure"},
		{"form", "entries to write into the document"},
		{"rink", "corners and landmarks"},
		{"glass", "the hole that is added"},
		{"arena", "the document that is edited"},
	}},
	{name: "puck", floor: 5, uses: []arrow{
		{"unit", "sizes, angles, speeds"},
		{"geom", "axes of a tumbling puck, places of shots"},
		{"rink", "where the boards stand, where the goals are"},
		{"glass", "holes and panes"},
		{"play", "where shots are taken"},
		{"arena", "what is guarded"},
	}},

	{name: "sight", floor: 6, uses: []arrow{
		{"unit", "heights, grid step"},
		{"geom", "sight lines"},
		{"rink", "the ice that is mapped"},
		{"glass", "hole and ledge"},
		{"arena", "panes, boards, holes"},
		{"kit", "the lenses that may be aimed"},
		{"fit", "how far each lens may be aimed"},
		{"play", "moments to score"},
	}},
	{name: "choose", floor: 7, uses: []arrow{
		{"form", "the nearest name to one that is unknown"},
		{"unit", "step, heights, edges"},
		{"rink", "stations and corners"},
		{"glass", "panes and holes"},
		{"play", "moments of a game"},
		{"arena", "where holes may go"},
		{"kit", "the lenses at hand"},
		{"rules", "what a legal set is"},
		{"sight", "scores"},
	}, needs: []arrow{
		{"gonum.org/v1/gonum", "fast sums of rows in the simplex"},
	}},

	{name: "revision", floor: 9, needs: []arrow{
		{"github.com/pmezard/go-difflib", "differences between texts, line by line"},
	}},
	{name: "people", floor: 9, needs: []arrow{
		{"golang.org/x/crypto", "Argon2id"},
	}},
	{name: "store", floor: 10, uses: []arrow{
		{"revision", "documents and versions to keep"},
		{"people", "people and sessions to keep"},
	}, needs: []arrow{
		{"modernc.org/sqlite", "the built-in store"},
		{"github.com/jackc/pgx/v5", "the shared store"},
		{"github.com/pressly/goose/v3", "migrations"},
	}},

	{name: "store/cluster", floor: 10, needs: []arrow{
		{"github.com/jackc/pgx/v5", "makes databases for tests"},
	}},

	{name: "sheet/internal/typeface", floor: 8, needs: []arrow{
		{"golang.org/x/image", "the Go fonts, and the reader of their widths and outlines"},
	}},
	{name: "sheet/internal/dxffile", floor: 8},
	{name: "sheet/internal/pdffile", floor: 8.1, uses: []arrow{
		{"sheet/internal/typeface", "fonts to embed"},
	}},
	{name: "sheet", floor: 8.2, uses: []arrow{
		{"unit", "measures on dimensions, in both systems"},
		{"sheet/internal/typeface", "room that text takes, outlines of letters, fonts to embed"},
		{"sheet/internal/dxffile", "writes DXF"},
		{"sheet/internal/pdffile", "writes PDF"},
	}, needs: []arrow{
		{"golang.org/x/image", "fills outlines on pictures"},
	}},
	{name: "chart", floor: 8.3, uses: []arrow{
		{"unit", "lengths and angles in words, in the arena's units"},
		{"geom", "points of the rink's frame"},
		{"rink", "boards, markings, corners and landmarks to draw"},
		{"play", "a moment's people to draw"},
		{"glass", "panes, holes and windows to draw"},
		{"arena", "what is drawn"},
		{"rules", "verdicts and permitted stretches"},
		{"fit", "limits and losses of a lens in a hole"},
		{"sheet", "draws"},
	}},

	{name: "cut", floor: 8.4, uses: []arrow{
		{"unit", "lengths on drawings, in both systems"},
		{"geom", "places on a flat pane in a corner"},
		{"chance", "spares by exact Poisson"},
		{"rink", "which corner a hole stands in"},
		{"optics", "refraction in a low window's panel, angle of view"},
		{"glass", "panes, holes, covers, windows, materials"},
		{"arena", "what is drawn"},
		{"kit", "the lenses behind a low window"},
		{"sheet", "draws and writes PDF, SVG, DXF"},
	}},

	{name: "plan", floor: 9.1, uses: []arrow{
		{"unit", "words for people print in their units"},
		{"rink", "the landmark nearest to a hole"},
		{"glass", "holes and panes"},
		{"arena", "what is planned"},
		{"kit", "the lenses tried"},
		{"rules", "findings and verdict"},
		{"fit", "limits of every lens in every hole"},
		{"light", "the light table"},
		{"sight", "reach"},
		{"choose", "the best legal set of holes"},
		{"chart", "plan map and boards strip"},
		{"optics", "the exposure asked for"},
		{"sheet", "writes the drawings as SVG"},
	}},

	{name: "desk/shelf", floor: 10.1, uses: []arrow{
		{"arena", "the documents on the shelf"},
		{"edit", "changes to them"},
		{"plan", "what follows from a document"},
		{"revision", "versions, in a keeper that it does not know"},
	}},
	{name: "desk/parcel", floor: 10.15, uses: []arrow{
		{"unit", "files in the visitor's units"},
		{"sheet", "paper sizes, DXF"},
		{"puck", "the book's guard"},
		{"cut", "the cut folder"},
		{"plan", "the plan's folder"},
		{"book", "the book"},
		{"desk/shelf", "the version that is packed"},
	}},
	{name: "desk/door", floor: 10.1, uses: []arrow{
		{"people", "roles, passwords, and sessions in a register that it does not know"},
	}},
	{name: "desk/api", floor: 10.2, uses: []arrow{
		{"form", "places of what is wrong"},
		{"rink", "landmarks to snap to"},
		{"arena", "the layout of boards and panes"},
		{"kit", "the lenses in the catalogue"},
		{"rules", "the rule sets in the catalogue"},
		{"edit", "what a request asks for"},
		{"plan", "what is answered"},
		{"revision", "versions and merges"},
		{"desk/shelf", "the arenas"},
		{"desk/parcel", "files to take away"},
	}, needs: []arrow{
		{"github.com/danielgtaylor/huma/v2", "the OpenAPI description, made from the types"},
	}},

	{name: "book", floor: 9.3, uses: []arrow{
		{"unit", "lengths and angles in words"},
		{"geom", "the corner of a reach map"},
		{"glass", "the cautions, what stands on the boards"},
		{"arena", "what the book is about"},
		{"kit", "the kit table"},
		{"rules", "a finding's answer"},
		{"fit", "the loss table of the best lens"},
		{"light", "rows of the light table"},
		{"puck", "the guard of every hole"},
		{"sight", "the reach map of every hole"},
		{"chart", "plan map, boards strip, fit chart, guard map"},
		{"sheet", "sets the pages, writes the PDF"},
		{"cut", "covers, cut list, the plan's revision"},
		{"plan", "everything else about the arena"},
	}},

	{name: "compare", floor: 9.2, uses: []arrow{
		{"unit", "words for people print in their units"},
		{"rules", "the answers before and after"},
		{"plan", "the two plans"},
	}},

	{name: "desk/bench", floor: 10.1},
	{name: "desk/finder", floor: 10.1, uses: []arrow{
		{"unit", "lengths and times in the visitor's units"},
		{"geom", "the place that is aimed at"},
		{"optics", "the ISO, the sharp range"},
		{"play", "the moments to photograph"},
		{"arena", "the holes and the light there"},
		{"kit", "lenses and bodies to choose from"},
		{"fit", "how a lens is set"},
		{"light", "the light on the ice"},
		{"frame", "the picture"},
	}},
	{name: "desk/blank", floor: 10.1, uses: []arrow{
		{"form", "problems with their places"},
		{"rink", "corners and landmarks to measure from"},
		{"glass", "materials to choose from"},
		{"arena", "the document that is asked about"},
		{"edit", "the edits that answers make"},
	}},
	{name: "desk", floor: 10.3, uses: []arrow{
		{"arena", "reads what a visitor sends"},
		{"unit", "tables print in the visitor's units"},
		{"arena", "the hole that a picture is taken through"},
		{"rules", "a finding's status"},
		{"light", "rows of the light table"},
		{"plan", "what the pages show"},
		{"chart", "the drawings' look on a page"},
		{"sheet", "the drawings' typeface"},
		{"revision", "the list of arenas"},
		{"desk/shelf", "the arenas"},
		{"desk/api", "the engine as JSON, for the pages' modules"},
		{"desk/door", "who may see and do what"},
		{"desk/parcel", "files to take away"},
		{"desk/finder", "which picture an address asks for"},
		{"frame", "the picture through the lens"},
		{"play", "the moments to photograph"},
		{"kit", "lenses and bodies to choose from"},
		{"arena", "the holes to look through and to choose from"},
		{"glass", "a hole turned off"},
		{"choose", "the choice of holes"},
		{"edit", "taking a choice over"},
		{"desk/bench", "choices beside the requests"},
		{"people", "roles"},
		{"form", "the line that is wrong in a document"},
		{"edit", "a text saved whole"},
	}, needs: []arrow{
		{"github.com/danielgtaylor/huma/v2", "the API's description, for the page that shows it"},
	}},

	{name: "frame", floor: 6, uses: []arrow{
		{"unit", "distances, angles, times"},
		{"geom", "points and directions"},
		{"rink", "markings, boards and goals to draw"},
		{"optics", "pixels on a subject, the panel's loss"},
		{"glass", "holes and low windows"},
		{"play", "who stands where"},
		{"arena", "the hall to draw"},
		{"kit", "lens and body"},
		{"fit", "the pose and the hole's shadow"},
	}},

	{name: "cmd/rinkpane", floor: 10.9, uses: []arrow{
		{"frame", "command frame"},
		{"form", "quotes what a user typed"},
		{"unit", "flags are quantities"},
		{"geom", "points in flags"},
		{"rink", "command rink"},
		{"optics", "commands optics and panel"},
		{"glass", "holes given by flags"},
		{"arena", "reads the user's file"},
		{"survey", "command survey"},
		{"kit", "reads the user's kit"},
		{"rules", "command check"},
		{"fit", "command fit"},
		{"light", "command light"},
		{"puck", "command puck"},
		{"cut", "command cut"},
		{"book", "command book"},
		{"play", "moments for command choose"},
		{"choose", "command choose"},
		{"sight", "command sight"},
		{"chart", "the reach map of command sight"},
		{"sheet", "the map's file"},
		{"plan", "command plan"},
		{"desk", "command desk"},
		{"desk/shelf", "stocks the desk with examples and the user's files"},
		{"store", "where the desk keeps what happens"},
		{"revision", "ids of imported arenas"},
		{"people", "command people"},
		{"examples", "the demo arena"},
	}, needs: []arrow{
		{"github.com/spf13/cobra", "commands, flags and help"},
		{"github.com/spf13/pflag", "the kind of error of a wrong flag, to say it once"},
		{"golang.org/x/sys", "a password typed unseen"},
	}},
}
