package main

import (
	"errors"
	"fmt"
	"io"

	"example.org/rinkpane/internal/draw/cut"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/tell/wire"
)

// runVerify reads a drawing's revision and holds it against the arena file's.
func runVerify(a *app, args []string, f cutFlags) error {
	if f.out.path != "" || len(f.Holes) > 0 {
		return errors.New("--verify draws nothing; leave --out and --hole out")
	}
	var mark string
	var format cut.Format
	err := withInput(a, f.verify, func(name string, r io.Reader) error {
		data, err := io.ReadAll(io.LimitReader(r, cut.MaxDrawing+1))
		switch {
		case err != nil:
			return fmt.Errorf("%s: %w", name, err)
		case len(data) > cut.MaxDrawing:
			return fmt.Errorf("%s: larger than %d MB; that is no drawing of ours", name, cut.MaxDrawing>>20)
		}
		if mark, format, err = cut.Verify(data); err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
		return nil
	})
	if err != nil {
		return err
	}
	if len(args) == 0 {
		return fmt.Errorf("the drawing is of plan revision %s; name the arena file to hold it against", mark[:len(arena.Mark(nil))])
	}
	var from source
	if err := from.open(a, args[0]); err != nil {
		return err
	}
	text := from.doc.Bytes()
	yes, short, own := mark == arena.Revision(text), mark[:len(arena.Mark(nil))], arena.Mark(text)
	return a.verdict(yes, wire.Object{
		"drawing", f.verify, "format", format, "drawing_revision", short, "plan_revision", own, // short, as people read them
		"drawing_sha256", mark, "plan_sha256", arena.Revision(text), // whole: what is compared
		"of_this_plan", yes,
	}, func() string {
		said := fmt.Sprintf("no: the %s is of plan revision %s, this plan is %s; draw anew\n", format, short, own)
		if yes {
			said = fmt.Sprintf("yes: the %s is of this plan, revision %s\n", format, own)
		}
		return said + "It tells the plan that the drawing was made from, not whether anybody changed the drawing since.\n"
	})
}
