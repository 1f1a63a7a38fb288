package main

import (
	"cmp"
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/draw/book"
	"example.org/rinkpane/internal/draw/cut"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

// bookFlags are the flags of command book.
type bookFlags struct {
	source
	out         target
	html, paper string
	date        string
	record      record
}

func bookCommand(a *app) *cobra.Command {
	var f bookFlags
	c := &cobra.Command{
		Use:   "book ARENA --out FILE.pdf",
		Short: "Set everything about one arena as a book to sign",
		Long: `Writes one PDF: a cover with the arena's best picture, what is to be mended, the
plan, the boards strip and the light, a spread for each hole with the picture
through it by its usual lenses, its place, verdict, guard, lenses, light and reach,
then the kit, covers and tethers, the rule findings with margins, the cautions and
the lines on which rink operator, glass contractor, league and photographer sign.
The PDF is tagged for those who have it read out. With --html also one file for a browser that needs
nothing else.`,
		Example: `  rinkpane book arena.yaml --out book.pdf
  rinkpane book arena.yaml --out book.pdf --html book.html --paper a4 --rules common-practice`,
		Args: oneArena,
		RunE: func(c *cobra.Command, args []string) error { return runBook(c, a, args[0], f) },
	}
	f.out.flags(c, "out", "the PDF to write")
	c.Flags().StringVar(&f.html, "html", "", "also write the book as one HTML file")
	c.Flags().StringVar(&f.paper, "paper", "", "paper of the PDF: a4, a3, letter, tabloid ... (default: a4, letter in imperial plans)")
	c.Flags().StringVar(&f.date, "date", "", "the book's date, as it is to be printed, best as in 2027-01-09 (default: none)")
	f.record.flags(c)
	f.kitFlag(c)
	f.rulesFlag(c)
	return c
}

// page is the HTML file.
func (f bookFlags) page() target { return target{"html", f.html, f.out.force} }

func runBook(c *cobra.Command, a *app, path string, f bookFlags) error {
	if f.out.path == "" {
		return errors.New("book needs --out FILE.pdf")
	}
	if err := errors.Join(f.out.may(".pdf"), f.page().may(".html", ".htm")); err != nil {
		return err
	}
	if err := f.open(a, path); err != nil {
		return err
	}
	sys := f.arena.Units
	paper, err := sheet.ParsePaper(cmp.Or(f.paper, sheet.UsualPaper(sys)))
	if err != nil {
		return fmt.Errorf("--paper: %w", err)
	}
	ctx, end := a.watched(c.Context())
	defer end()
	content, err := book.Gather(ctx, f.Maker, f.doc, book.Options{
		Units: sys, Paper: paper, Cut: cut.DefaultOptions(), Spares: cut.DefaultSpareOptions(), Creator: "rinkpane " + release, Date: f.date,
	})
	if err != nil {
		return err
	}
	if content.Plan.Approval, err = f.record.of(ctx, f.doc); err != nil {
		return err
	}
	print, err := content.PDF(ctx)
	if err != nil {
		return err
	}
	end()
	remark(a, content.Plan.Remarks, sys)
	files := []outFile{{f.out.path, print.Data}}
	answer := wire.Object{"pages", print.Pages, "path", f.out.path}
	said := fmt.Sprintf("%s: %d pages, plan revision %s\n", f.out.path, print.Pages, content.Mark)
	if f.html != "" { // both or neither
		files = append(files, outFile{f.html, content.HTML()})
		answer = append(answer, "html", f.html)
		said += f.html + ": the same for a browser\n"
	}
	if err := writeFiles(files, f.out.force); err != nil {
		return err
	}
	lacking(a, print.Lack)
	return a.print(append(answer, "revision", content.Mark), func() string { return said + "\n" + words.Lines(glass.Cautions()...) })
}

// remark tells on standard error what an answer leaves out, and why.
func remark(a *app, remarks []say.Sentence, sys unit.System) {
	for _, r := range remarks {
		fmt.Fprintln(a.err, r.In(sys))
	}
}
