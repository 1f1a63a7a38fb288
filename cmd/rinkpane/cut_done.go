package main

import (
	"fmt"
	"path"
	"path/filepath"
	"strings"

	"example.org/rinkpane/internal/draw/cut"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/tell/table"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

// cutDone is what command cut drew, and what it did not.
type cutDone struct {
	cut.Folder
	mark, dir string
	sys       unit.System
}

// stamped are holes that are drawn with a stamp across each sheet.
type stamped struct {
	stamp string
	holes []*cut.Refusal
}

func (d cutDone) marked() []stamped {
	return []stamped{{"NOT PASSED", d.Marked}, {"NOT PROVED", d.Doubted}}
}

func (d cutDone) write(force bool) error {
	if len(d.Files) == 0 {
		return nil
	}
	files := make([]outFile, len(d.Files))
	for i, f := range d.Files {
		files[i] = outFile{f.Path, f.Data}
	}
	return writeFolder(d.dir, files, force)
}

// at is where a file of the folder lies.
func (d cutDone) at(f cut.File) string {
	return filepath.ToSlash(filepath.Join(d.dir, filepath.FromSlash(f.Path)))
}

// json is the answer in the contract's names.
func (d cutDone) json() wire.Object {
	reasons := func(list []*cut.Refusal) []wire.Object {
		return wire.Each(list, func(r *cut.Refusal) wire.Object {
			return wire.Object{"hole", r.Hole, "reasons", say.All(r.Reasons, r.Units)}
		})
	}
	out := wire.Object{
		"files", wire.Each(d.Files, func(f cut.File) wire.Object {
			return wire.Object{"path", d.at(f), "kind", f.Kind, "hole", f.Hole}
		}),
		"refused", reasons(d.Refused), "not_passed", reasons(d.Marked), "not_proved", reasons(d.Doubted), "notes", d.Notes, "revision", d.mark,
	}
	if d.List != nil {
		out = append(out, "cut_list", listJSON(*d.List, d.sys))
	}
	return out
}

func listJSON(l cut.List, sys unit.System) wire.Object {
	kinds := func(name string, list []cut.Alike) []wire.Object {
		return wire.Each(list, func(k cut.Alike) wire.Object {
			return wire.Object{name, k.What.In(sys), "holes", k.Holes, "in_use", k.InUse(), "existing", k.Exist, "to_make", k.Make, "spares", k.Spares, "mass_kg", k.Piece}
		})
	}
	work := func(w cut.Sum) wire.Object {
		return wire.Object{"holes", w.Holes, "panes", w.Panes, "covers", w.Covers, "drilled_mass_kg", w.MassKG}
	}
	toMake, existing := l.Sums()
	panes, covers := l.Spares()
	return wire.Object{
		"panes", toMake.Panes + existing.Panes, "covers", toMake.Covers + existing.Covers, "drilled_mass_kg", toMake.MassKG + existing.MassKG,
		"to_make", work(toMake), "existing", work(existing), "spare_panes", panes, "spare_covers", covers,
		"certainty", l.Options.Certainty, "certainty_reached", l.Reached, "kinds", kinds("pane", l.Panes), "cover_kinds", kinds("cover", l.Covers),
	}
}

// listText says in sentences what exists, what is to be made, and what to keep.
func listText(l cut.List) string {
	counts := func(w cut.Sum) string {
		return fmt.Sprintf("%s, %s (%.0f kg drilled), %s", say.Count(w.Holes, "hole"), say.Count(w.Panes, "pane"), w.MassKG, say.Count(w.Covers, "cover"))
	}
	toMake, existing := l.Sums()
	panes, covers := l.Spares()
	return words.Lines("To make: "+counts(toMake)+".", "Exist already: "+counts(existing)+".",
		fmt.Sprintf("To keep for a season, at %g %% certainty for all kinds together: %s and %s.",
			100*l.Options.Certainty, say.Count(panes, "spare pane"), say.Count(covers, "spare cover")))
}

func (d cutDone) text() string {
	var b strings.Builder
	if len(d.Files) == 0 {
		fmt.Fprintf(&b, "plan revision %s: nothing is drawn, and no folder is made\n", d.mark)
	} else {
		fmt.Fprintf(&b, "plan revision %s, %d files in %s\n\n", d.mark, len(d.Files), d.dir)
	}
	last := ""
	for _, f := range d.Files {
		if dir := path.Dir(d.at(f)); dir != last {
			fmt.Fprintf(&b, "%s/\n", dir)
			last = dir
		}
		fmt.Fprintf(&b, "  %-20s %s\n", path.Base(f.Path), kindOf(f.Kind))
	}
	b.WriteString("\n")
	for _, part := range append([]stamped{{"", d.Refused}}, d.marked()...) {
		how := ", not drawn: "
		if part.stamp != "" {
			how = ", drawn and marked " + part.stamp + ": "
		}
		for _, no := range part.holes {
			b.WriteString(table.Wrap("hole "+no.Hole+how+no.Words(), "  "))
		}
	}
	b.WriteString(words.Lines(d.Notes...))
	if d.List != nil {
		b.WriteString(listText(*d.List))
	}
	b.WriteString(words.Lines("Measure the template's check bars before anything is cut.") + words.Lines(glass.Cautions()...))
	return b.String()
}

// kindOf says what a file shows, and whether it is in the older release of its format.
func kindOf(k cut.Kind) string {
	if of, old := strings.CutSuffix(string(k), "-r12"); old {
		return kindWords[cut.Kind(of)] + ", release 12"
	}
	return kindWords[k]
}

// kindWords says what each kind of file shows.
var kindWords = map[cut.Kind]string{
	cut.DrawingPDF: "pane with all its holes, outline, section, route, cover, what holds it, corner radius", cut.TemplatePDF: "template at full size, with check bars",
	cut.PaneDXF: "pane with its holes, for a machine", cut.CoverDXF: "plug or flange, for a machine",
	cut.HoldDXF: "what keeps the cover in, for a machine", cut.PaneSVG: "pane from both sides",
	cut.TemplateSVG: "template at full size", cut.WindowPDF: "opening in the boards, clear patch of a low window", cut.WindowDXF: "the patch, for a plotter",
	cut.CutListPDF: "panes, covers, spares", cut.CutListTable: "the list for a spreadsheet", cut.TableCSV: "a table for a spreadsheet",
}
