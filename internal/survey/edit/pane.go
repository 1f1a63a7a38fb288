package edit

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// paneOf returns the pane that a path begins with, and what of it is meant.
func paneOf(path string) (id, field string) {
	in, is := strings.CutPrefix(path, "panes[")
	id, field, closed := strings.Cut(in, "]")
	if !is || !closed || strings.HasPrefix(id, "#") {
		return "", ""
	}
	return id, strings.TrimPrefix(field, ".")
}

// pane changes one pane of the schedule, which gets a line of its own where a row
// holds it. When its width, number or start changes, the panes beside it move
// along, with the stations written for them, as far as the next open piece of boards.
func pane(doc *arena.Document, one Edit, id string) (*arena.Document, string, error) {
	line := "panes[" + id + "]"
	if !doc.Has(line) {
		var err error
		if doc, err = doc.Apart(id); err != nil {
			return nil, "", err
		}
	}
	next, what, err := plain(doc, one)
	if err != nil {
		return nil, "", err
	}
	a, sound := doc.Check()
	by := moved(doc, next, line)
	if _, field := paneOf(one.Path); by == 0 || sound != nil || !slices.Contains([]string{"", "from", "width", "count"}, field) {
		return next, what, nil
	}
	behind := beside(doc, a, line)
	if next, err = along(doc, next, behind, by, a.Units); err != nil {
		return nil, "", err
	}
	n := 0
	for _, r := range behind {
		n += len(r.IDs)
	}
	if n > 0 {
		way := "on"
		if by < 0 {
			way = "back"
		}
		what += fmt.Sprintf(", %d panes beside it move %s by %s", n, way, max(by, -by).Format(a.Units))
	}
	return next, what, nil
}

// moved returns how far on an edit moves the end of a line's panes.
func moved(was, is *arena.Document, line string) unit.Length {
	before, known := reach(was, line)
	after, sound := reach(is, line)
	if !known || !sound {
		return 0
	}
	return after - before
}

// reach returns how long a line's panes are, with the station that the line states.
// A line that is gone has none.
func reach(doc *arena.Document, line string) (unit.Length, bool) {
	if !doc.Has(line) {
		return 0, true
	}
	width, err := unit.ParseLength(doc.Value(line + ".width"))
	if err != nil {
		return 0, false
	}
	if n, err := strconv.Atoi(doc.Value(line + ".count")); err == nil && n >= 1 && n <= arena.MaxPanes {
		width *= unit.Length(n)
	}
	if from, err := unit.ParseLength(doc.Value(line + ".from")); err == nil {
		width += from
	}
	return width, true
}

// beside returns the rows behind a line that stand side by side with it.
func beside(doc *arena.Document, a arena.Arena, line string) []arena.Row {
	var out []arena.Row
	end := unit.Length(0)
	for _, at := range doc.Items("panes") {
		r, _ := doc.Row(doc.Value(at + ".id"))
		first, _ := a.Pane(r.IDs[0])
		last, _ := a.Pane(r.IDs[len(r.IDs)-1])
		switch {
		case at == line:
			out = []arena.Row{}
		case out != nil && first.From-end > glass.WidestPost:
			return out
		case out != nil:
			out = append(out, r)
		}
		end = last.To()
	}
	return out
}

// along moves the stations that rows state.
func along(was, doc *arena.Document, rows []arena.Row, by unit.Length, sys unit.System) (*arena.Document, error) {
	var at []arena.Placed
	for _, r := range rows {
		from := r.Path + ".from"
		if was.IsGroup(from) {
			return nil, fmt.Errorf("%s is told from a landmark, so it does not move along; write it as a station, or leave it out", from)
		}
		if s, err := unit.ParseLength(was.Value(from)); err == nil {
			at = append(at, arena.Placed{Path: from, Text: (s + by).Measured(sys).Exact(sys)})
		}
	}
	if len(at) == 0 {
		return doc, nil
	}
	return doc.SetEach(at)
}
