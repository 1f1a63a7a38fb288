package house

// houseRooms is the house, floor by floor. CONTRIBUTING.md shows the same as a
// map for people; a test compares the two.
var houseRooms = append([]room{
	{name: "measure/unit", floor: 1, needs: []arrow{
		{"go.yaml.in/yaml/v3", "quantities read themselves and name the line when they cannot"},
	}},
	{name: "measure/geom", floor: 1},
	{name: "measure/cores", floor: 1},
	{name: "measure/say", floor: 2, uses: []arrow{
		{"measure/unit", "lengths and sizes in a sentence"},
	}},
	{name: "tell/table", floor: 2, uses: []arrow{
		{"measure/unit", "cells are made for a unit system"},
	}},
	{name: "measure/chance", floor: 1, needs: []arrow{
		{"gonum.org/v1/gonum", "the incomplete gamma function"},
	}},

	{name: "examples", floor: 1},

	{name: "measure/form", floor: 2, uses: []arrow{
		{"measure/unit", "fields are quantities"},
	}, needs: []arrow{
		{"go.yaml.in/yaml/v3", "the nodes with their places"},
	}},
	{name: "survey/rink", floor: 2, uses: []arrow{
		{"measure/unit", "dimensions and stations are lengths"},
		{"measure/geom", "points and normals in the rink's frame"},
	}},
	{name: "answer/optics", floor: 2, uses: []arrow{
		{"measure/unit", "focal lengths, stops, shutter times, light"},
	}},

	{name: "survey/glass", floor: 3, uses: []arrow{
		{"measure/unit", "sizes, thicknesses, tolerances"},
		{"measure/say", "what a hole lacks, in words"},
		{"measure/form", "the materials as choices"},
	}},
	{name: "survey/play", floor: 3, uses: []arrow{
		{"measure/cores", "shares work over the cores"},
		{"measure/form", "reads the user's assumptions strictly"},
		{"measure/unit", "dimensions are lengths"},
		{"survey/rink", "where the boards, goals and spots are"},
	}},

	{name: "survey/arena", floor: 4, uses: []arrow{
		{"examples", "the demo arena that the program carries"},
		{"measure/form", "reads the document strictly"},
		{"measure/say", "why a length was assumed, in a sentence"},
		{"measure/unit", "what a survey writes down"},
		{"measure/geom", "places of light readings, holes on bent panes"},
		{"survey/rink", "stations, corners and landmarks"},
		{"survey/glass", "panes, holes, windows, covers"},
	}},
	{name: "survey/kit", floor: 4, uses: []arrow{
		{"measure/form", "reads the document strictly"},
		{"measure/unit", "sizes, focal lengths, stops"},
	}},

	{name: "survey/starter", floor: 5, uses: []arrow{
		{"measure/unit", "lengths on the grid they are written in"},
		{"survey/rink", "the boards to lay panes along, and the landmarks"},
		{"survey/glass", "the materials to choose from"},
		{"measure/form", "the materials as choices"},
		{"survey/arena", "the document begun, and the arena that lacks something"},
	}},
	{name: "answer/rules", floor: 5, uses: []arrow{
		{"measure/say", "what a finding asks to be done, in no units yet"},
		{"measure/form", "reads the document strictly"},
		{"measure/unit", "limits and margins"},
		{"survey/rink", "stretches between landmarks"},
		{"survey/glass", "holes, panes, materials"},
		{"survey/arena", "what is proved"},
	}},
	{name: "answer/fit", floor: 5, uses: []arrow{
		{"measure/cores", "shares work over the cores"},
		{"measure/unit", "lens and hole sizes, angles"},
		{"measure/geom", "clipping the pupil by the hole's outlines"},
		{"survey/arena", "the opening, with what was assumed of it"},
		{"survey/kit", "lens and body"},
	}},
	{name: "answer/light", floor: 5, uses: []arrow{
		{"measure/unit", "lux, shutter, stop"},
		{"measure/geom", "places on the ice"},
		{"survey/rink", "zones of the ice"},
		{"survey/arena", "the light survey"},
		{"survey/kit", "widest stops, highest ISO"},
		{"answer/optics", "exposure"},
	}},

	{name: "survey/edit", floor: 5, uses: []arrow{
		{"measure/unit", "numbers rounded to what people measure"},
		{"measure/form", "entries to write into the document"},
		{"survey/rink", "corners and landmarks"},
		{"survey/glass", "the hole that is added"},
		{"survey/arena", "the document that is edited"},
	}},
	{name: "answer/puck", floor: 5, uses: []arrow{
		{"measure/cores", "shares work over the cores"},
		{"measure/unit", "sizes, angles, speeds"},
		{"measure/geom", "axes of a tumbling puck, places of shots"},
		{"survey/rink", "where the boards stand, where the goals are"},
		{"survey/glass", "holes and panes"},
		{"survey/play", "where shots are taken"},
		{"survey/arena", "what is guarded"},
	}},

	{name: "answer/sight", floor: 6, uses: []arrow{
		{"measure/cores", "shares work over the cores"},
		{"measure/unit", "heights, grid step"},
		{"measure/geom", "sight lines"},
		{"survey/rink", "the ice that is mapped"},
		{"survey/glass", "hole and ledge"},
		{"survey/arena", "panes, boards, holes"},
		{"survey/kit", "the lenses that may be aimed"},
		{"answer/fit", "how far each lens may be aimed"},
		{"survey/play", "moments to score"},
	}},
	{name: "decide/solve", floor: 6.9, needs: []arrow{
		{"gonum.org/v1/gonum", "fast sums of rows in the simplex"},
	}},
	{name: "decide/choose", floor: 7, uses: []arrow{
		{"measure/cores", "moments and candidates shared over the cores"},
		{"decide/solve", "the search and its proof"},
		{"survey/edit", "the edits that take a choice over"},
		{"measure/say", "what clashes and what a hole is good for, names of places in them"},
		{"measure/geom", "where a hole stands, in the rink's frame"},
		{"measure/form", "the nearest name to one that is unknown"},
		{"measure/unit", "step, heights, edges"},
		{"survey/rink", "stations and corners"},
		{"survey/glass", "panes and holes"},
		{"survey/play", "moments of a game"},
		{"survey/arena", "where holes may go"},
		{"survey/kit", "the lenses at hand"},
		{"answer/rules", "what a legal set is"},
		{"answer/sight", "scores"},
	}},

	{name: "tell/words", floor: 7.5, uses: []arrow{
		{"decide/solve", "why a search stopped"},
		{"measure/say", "sentences, set in a reader's units"},
		{"measure/unit", "quantities in a reader's units"},
		{"decide/choose", "the choice in words"},
		{"tell/table", "tables"},
	}},
	{name: "keep/revision", floor: 9, needs: []arrow{
		{"github.com/rogpeppe/go-internal", "differences between texts, line by line"},
	}},
	{name: "keep/people", floor: 9, needs: []arrow{
		{"golang.org/x/crypto", "Argon2id"},
		{"golang.org/x/text", "one writing of each name (Unicode's normal forms)"},
	}},
	{name: "keep/store", floor: 10, uses: []arrow{
		{"keep/revision", "documents and versions to keep"},
		{"keep/people", "people and sessions to keep"},
	}, needs: []arrow{
		{"modernc.org/sqlite", "the built-in store"},
		{"github.com/jackc/pgx/v5", "the shared store"},
		{"github.com/pressly/goose/v3", "migrations"},
	}},

	{name: "keep/store/cluster", floor: 10, needs: []arrow{
		{"github.com/jackc/pgx/v5", "makes databases for tests"},
	}},

	{name: "draw/sheet/internal/typeface", floor: 8, needs: []arrow{
		{"golang.org/x/image", "the Go fonts, and the reader of their widths and outlines"},
	}},
	{name: "draw/sheet/internal/dxffile", floor: 8},
	{name: "draw/sheet/internal/pdffile", floor: 8.1, uses: []arrow{
		{"draw/sheet/internal/typeface", "fonts to embed"},
	}},
	{name: "draw/sheet", floor: 8.2, uses: []arrow{
		{"measure/unit", "measures on dimensions, in both systems"},
		{"draw/sheet/internal/typeface", "room that text takes, outlines of letters, fonts to embed"},
		{"draw/sheet/internal/dxffile", "writes DXF"},
		{"draw/sheet/internal/pdffile", "writes PDF"},
	}, needs: []arrow{
		{"golang.org/x/image", "fills outlines on pictures"},
	}},
	{name: "draw/chart", floor: 8.3, uses: []arrow{
		{"decide/choose", "a chosen set of holes to draw"},
		{"measure/unit", "lengths and angles in words, in the arena's units"},
		{"measure/geom", "points of the rink's frame"},
		{"survey/rink", "boards, markings, corners and landmarks to draw"},
		{"survey/glass", "panes, holes and windows to draw"},
		{"survey/arena", "what is drawn"},
		{"answer/rules", "verdicts and permitted stretches"},
		{"answer/fit", "limits and losses of a lens in a hole"},
		{"draw/sheet", "draws"},
	}},

	{name: "draw/cut", floor: 8.4, uses: []arrow{
		{"measure/form", "the materials as choices"},
		{"measure/unit", "lengths on drawings, in both systems"},
		{"measure/chance", "spares by exact Poisson"},
		{"survey/rink", "which corner a hole stands in"},
		{"answer/optics", "refraction in a low window's panel, angle of view"},
		{"survey/glass", "panes, holes, covers, windows, materials"},
		{"survey/arena", "what is drawn"},
		{"survey/kit", "the lenses behind a low window"},
		{"draw/sheet", "draws and writes PDF, SVG, DXF"},
	}},

	{name: "decide/plan", floor: 9.1, uses: []arrow{
		{"measure/unit", "words for people print in their units"},
		{"survey/rink", "the landmark nearest to a hole"},
		{"survey/glass", "holes and panes"},
		{"survey/arena", "what is planned"},
		{"survey/kit", "the lenses tried"},
		{"answer/rules", "findings and verdict"},
		{"answer/fit", "limits of every lens in every hole"},
		{"answer/light", "the light table"},
		{"answer/sight", "reach"},
		{"decide/choose", "the best legal set of holes"},
		{"draw/chart", "plan map and boards strip"},
		{"answer/optics", "the exposure asked for"},
		{"draw/sheet", "writes the drawings as SVG"},
	}},

	{name: "desk/shelf", floor: 10.1, uses: []arrow{
		{"measure/form", "a name that a document gives and the desk does not keep"},
		{"survey/kit", "kits of the desk's own"},
		{"answer/rules", "rule sets of the desk's own"},
		{"survey/arena", "the documents on the shelf"},
		{"survey/edit", "changes to them"},
		{"decide/plan", "what follows from a document"},
		{"keep/revision", "versions, in a keeper that it does not know"},
	}},
	{name: "desk/parcel", floor: 10.15, uses: []arrow{
		{"tell/wire", "answers as JSON"},
		{"measure/unit", "files in the visitor's units"},
		{"draw/sheet", "paper sizes, DXF"},
		{"answer/puck", "the book's guard"},
		{"draw/cut", "the cut folder"},
		{"decide/plan", "the plan's folder"},
		{"draw/book", "the book"},
		{"desk/shelf", "the version that is packed"},
	}},
	{name: "desk/door", floor: 10.1, uses: []arrow{
		{"keep/people", "roles, passwords, and sessions in a register that it does not know"},
	}},

	{name: "draw/book", floor: 9.3, uses: []arrow{
		{"measure/unit", "lengths and angles in words"},
		{"measure/geom", "the corner of a reach map"},
		{"survey/glass", "the cautions, what stands on the boards"},
		{"survey/arena", "what the book is about"},
		{"survey/kit", "the kit table"},
		{"answer/rules", "a finding's answer"},
		{"answer/fit", "the loss table of the best lens"},
		{"answer/light", "rows of the light table"},
		{"answer/puck", "the guard of every hole"},
		{"answer/sight", "the reach map of every hole"},
		{"draw/chart", "plan map, boards strip, fit chart, guard map"},
		{"draw/sheet", "sets the pages, writes the PDF"},
		{"draw/cut", "covers, cut list, the plan's revision"},
		{"decide/plan", "everything else about the arena"},
	}},

	{name: "tell/wire", floor: 9.15, uses: []arrow{
		{"decide/choose", "the choice as JSON"},
		{"measure/say", "sentences, set in a reader's units"},
		{"survey/arena", "what was assumed"},
		{"measure/unit", "sentences and amounts in a reader's units"},
		{"answer/rules", "findings"},
		{"decide/plan", "plan.json"},
	}},
	{name: "decide/compare", floor: 9.2, uses: []arrow{
		{"measure/unit", "words for people print in their units"},
		{"answer/rules", "the answers before and after"},
		{"decide/plan", "the two plans"},
	}},

	{name: "desk/bench", floor: 10.1},

	{name: "answer/frame", floor: 6, uses: []arrow{
		{"measure/cores", "shares work over the cores"},
		{"measure/unit", "distances, angles, times"},
		{"measure/geom", "points and directions"},
		{"survey/rink", "markings, boards and goals to draw"},
		{"answer/optics", "pixels on a subject, the panel's loss"},
		{"survey/play", "who stands where"},
		{"survey/arena", "the hall to draw"},
		{"survey/kit", "lens and body"},
		{"answer/fit", "the pose and the hole's shadow"},
	}},

	{name: "cmd/rinkpane", floor: 10.9, uses: []arrow{
		{"decide/solve", "why a search stopped"},
		{"tell/words", "text of command choose"},
		{"tell/wire", "answers as JSON"},
		{"answer/frame", "command frame"},
		{"measure/form", "quotes what a user typed"},
		{"measure/unit", "flags are quantities"},
		{"measure/geom", "points in flags"},
		{"survey/rink", "command rink"},
		{"answer/optics", "commands optics and panel"},
		{"survey/glass", "holes given by flags"},
		{"survey/arena", "reads the user's file"},
		{"survey/starter", "command survey"},
		{"survey/kit", "reads the user's kit"},
		{"answer/rules", "command check"},
		{"answer/fit", "command fit"},
		{"answer/light", "command light"},
		{"answer/puck", "command puck"},
		{"draw/cut", "command cut"},
		{"draw/book", "command book"},
		{"survey/play", "moments for command choose"},
		{"decide/choose", "command choose"},
		{"answer/sight", "command sight"},
		{"draw/chart", "the reach map of command sight"},
		{"draw/sheet", "the map's file"},
		{"decide/plan", "command plan"},
		{"desk", "command desk"},
		{"desk/shelf", "stocks the desk with examples and the user's files"},
		{"keep/store", "where the desk keeps what happens"},
		{"keep/revision", "ids of imported arenas"},
		{"keep/people", "command people"},
		{"desk/door", "the code of the first sign-up"},
		{"examples", "the demo arena"},
	}, needs: []arrow{
		{"github.com/spf13/cobra", "commands, flags and help"},
		{"github.com/spf13/pflag", "the kind of error of a wrong flag, to say it once"},
		{"golang.org/x/sys", "a password typed unseen"},
	}},
}, deskRooms...)
