package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/draw/folder"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

// demoFolder is where the demo's plan goes; mostFolders bounds the search for a
// free name beside it.
const (
	demoFolder  = "rinkpane-plan"
	mostFolders = 99
)

type planFlags struct {
	source
	out    target
	record record
	short  bool
}

func planCommand(a *app) *cobra.Command {
	var f planFlags
	c := &cobra.Command{
		Use:   "plan [ARENA]",
		Short: "Survey, check, fit, light and map an arena; write its folder",
		Long: "Works out every answer for one arena, prints a summary and writes a folder: the plan map and\n" +
			"the boards strip as drawings, tables as text, and plan.json. Without ARENA it plans the demo\n" +
			"arena that the program carries.\n\n" +
			"Nothing is overwritten. Without --out the folder is named for the arena's file (rinkpane-plan\n" +
			"for the demo); when that name is taken by another plan, the next free one is used, such as\n" +
			"rinkpane-plan-2. With --out the folder's files must not exist yet, unless --force is given.\n" +
			"A broken rule is part of the answer: the exit code stays 0 (rinkpane check tells it by its own).\n" +
			"A lens that the kit does not know is left out, and said.",
		Example: "  rinkpane plan\n" +
			"  rinkpane plan my-rink.yaml --out plans/spring --kit my-bag.yaml\n" +
			"  rinkpane plan my-rink.yaml --rules common-practice,tempered-glass --out plans/spring --force",
		Args: atMostOne,
		RunE: func(c *cobra.Command, args []string) error {
			return runPlan(c.Context(), a, strings.Join(args, ""), f) // one at most
		},
	}
	f.out.flags(c, "out", "folder to write (default: named for the arena)")
	f.record.flags(c)
	f.kitFlag(c)
	f.rulesFlag(c)
	c.Flags().BoolVar(&f.short, "without-choice", false, "leave out the best legal set of holes, which takes a second or two")
	return c
}

// planned is what plan prints under --json: the plan and where it was written.
type planned struct {
	Folder string   `json:"folder"`
	Files  []string `json:"files"`
	wire.Plan
}

func runPlan(ctx context.Context, a *app, path string, f planFlags) error {
	if err := f.open(a, path); err != nil {
		return err
	}
	ctx, end := a.watched(ctx)
	defer end()
	p, err := f.Make(ctx, f.doc)
	if err != nil {
		return err
	}
	sys := f.arena.Units
	if p, err = f.Whole(ctx, p, !f.short); err != nil {
		return err
	}
	if p.Approval, err = f.record.of(ctx, f.doc); err != nil {
		return err
	}
	end()
	if a.json { // else the summary tells them
		remark(a, p.Remarks, sys)
	}
	files, err := folder.Files(p, sys)
	if err != nil {
		return err
	}
	to := planFolder(path)
	note, err := writePlan(&to, files, f.out)
	if err != nil {
		return err
	}
	answer := planned{Folder: to, Plan: wire.PlanOf(p, sys)}
	var lack sheet.Lack
	for _, made := range files {
		answer.Files = append(answer.Files, made.Name)
		lack = lack.And(made.Lack)
	}
	lacking(a, lack)
	return a.print(answer, func() string {
		return fmt.Sprintf("%s\n%s %s%c\n%s", words.Summary(p, sys), note, to, filepath.Separator, folder.LookFirst)
	})
}

// planFolder is what an arena's folder is called by default.
func planFolder(path string) string {
	base := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	switch {
	case path == "":
		return demoFolder
	case path == "-" || base == "":
		return "arena-plan"
	}
	return base + "-plan"
}

// writePlan writes the folder and says what happened. Without --out it takes
// the first name that is free, or that holds this very plan already.
func writePlan(to *string, made []folder.File, out target) (string, error) {
	files := make([]outFile, len(made))
	for i, m := range made {
		files[i] = outFile{m.Name, m.Data}
	}
	if out.path != "" {
		*to = out.path
		return "Wrote", writeFolder(out.path, files, out.force)
	}
	base := *to
	for n := 1; n <= mostFolders; n++ {
		if n > 1 {
			*to = fmt.Sprintf("%s-%d", base, n)
		}
		switch _, err := os.Lstat(*to); {
		case errors.Is(err, os.ErrNotExist) || out.force:
			return "Wrote", writeFolder(*to, files, out.force)
		case err != nil:
			return "", plainPathError(err)
		case holds(*to, files):
			return "The same plan is already in", nil
		}
	}
	return "", fmt.Errorf("%s to %s exist already: say where to write with --out, or --force to replace %s", base, *to, base)
}

// holds reports whether a folder holds these files, each the same to the byte.
func holds(dir string, files []outFile) bool {
	for _, f := range files {
		data, err := os.ReadFile(filepath.Join(dir, f.name))
		if err != nil || !bytes.Equal(data, f.data) {
			return false
		}
	}
	return true
}
