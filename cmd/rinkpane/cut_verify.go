package main

import (
	"errors"
	"fmt"
	"io"

	"example.org/rinkpane/internal/draw/cut"
	"example.org/rinkpane/internal/survey/arena"
)

// verifyAnswer says whether a drawing is of a plan.
type verifyAnswer struct {
	Drawing         string     `json:"drawing"`
	Format          cut.Format `json:"format"`
	DrawingRevision string     `json:"drawing_revision"` // short, as people read it
	PlanRevision    string     `json:"plan_revision"`
	DrawingSHA256   string     `json:"drawing_sha256"` // whole: what is compared
	PlanSHA256      string     `json:"plan_sha256"`
	OfThisPlan      bool       `json:"of_this_plan"`
}

// runVerify reads a drawing's revision and holds it against the arena file's.
func runVerify(a *app, args []string, f cutFlags) error {
	if f.out != "" || len(f.holes) > 0 {
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
	doc, _, err := readDocument(a, args[0])
	if err != nil {
		return err
	}
	v := verifyAnswer{
		Drawing: f.verify, Format: format, DrawingRevision: mark[:len(arena.Mark(nil))], PlanRevision: arena.Mark(doc.Bytes()),
		DrawingSHA256: mark, PlanSHA256: arena.Revision(doc.Bytes()),
	}
	v.OfThisPlan = v.DrawingSHA256 == v.PlanSHA256
	if err := a.print(v, func(out io.Writer) { writeVerify(out, v) }); err != nil {
		return err
	}
	if !v.OfThisPlan {
		return errAnswerNo
	}
	return nil
}

func writeVerify(out io.Writer, v verifyAnswer) {
	if v.OfThisPlan {
		fmt.Fprintf(out, "yes: the %s is of this plan, revision %s\n", v.Format, v.PlanRevision)
	} else {
		fmt.Fprintf(out, "no: the %s is of plan revision %s, this plan is %s; draw anew\n", v.Format, v.DrawingRevision, v.PlanRevision)
	}
	fmt.Fprintln(out, "It tells the plan that the drawing was made from, not whether anybody changed the drawing since.")
}
