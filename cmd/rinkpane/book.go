package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/draw/book"
	"example.org/rinkpane/internal/draw/cut"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/glass"
)

// bookFlags are the flags of command book.
type bookFlags struct {
	out, html, paper, kit string
	rules                 []string
	force                 bool
}

func bookCommand(a *app) *cobra.Command {
	var f bookFlags
	c := &cobra.Command{
		Use:   "book ARENA --out FILE.pdf",
		Short: "Set everything about one arena as a book to sign",
		Long: `Writes one PDF with the plan, the boards strip, each hole's place, rules, guard,
lenses, light and reach, the kit, covers and tethers, the rule findings with
margins, the cautions and the lines on which rink operator, glass contractor,
league and photographer sign. With --html also one file for a browser that needs
nothing else.`,
		Example: `  rinkpane book arena.yaml --out book.pdf
  rinkpane book arena.yaml --out book.pdf --html book.html --paper a4 --rules common-practice`,
		Args: oneArena,
		RunE: func(c *cobra.Command, args []string) error { return runBook(c, a, args[0], f) },
	}
	c.Flags().StringVar(&f.out, "out", "", "the PDF to write")
	c.Flags().StringVar(&f.html, "html", "", "also write the book as one HTML file")
	c.Flags().StringVar(&f.paper, "paper", "", "paper of the PDF: a4, a3, letter, tabloid ... (default: a4, letter in imperial plans)")
	c.Flags().StringVar(&f.kit, "kit", "", "kit file (default: the built-in kit)")
	c.Flags().BoolVar(&f.force, "force", false, "replace files that exist")
	rulesFlag(c, &f.rules)
	return c
}

// may says before the work whether the files can be written.
func (f bookFlags) may() error {
	switch {
	case f.out == "":
		return errors.New("book needs --out FILE.pdf")
	case !strings.EqualFold(filepath.Ext(f.out), ".pdf"):
		return fmt.Errorf("--out %s: the name must end in .pdf; a page for a browser goes to --html", form.Quote(f.out))
	}
	if err := mayWrite(f.out, f.force); err != nil {
		return err
	}
	if f.html == "" {
		return nil
	}
	if ext := strings.ToLower(filepath.Ext(f.html)); ext != ".html" && ext != ".htm" {
		return fmt.Errorf("--html %s: the name must end in .html", form.Quote(f.html))
	}
	return mayWrite(f.html, f.force)
}

// write writes the PDF and, when it is asked for, the HTML file: both or neither.
func (f bookFlags) write(pdf []byte, content book.Content) error {
	if f.html == "" {
		return writeFile(f.out, pdf, f.force)
	}
	return writeFiles([]outFile{{f.out, pdf}, {f.html, content.HTML()}}, f.force)
}

func runBook(c *cobra.Command, a *app, path string, f bookFlags) error {
	if err := f.may(); err != nil {
		return err
	}
	doc, ar, err := readDocument(a, path)
	if err != nil {
		return err
	}
	maker, err := newMaker(a, f.rules, f.kit)
	if err != nil {
		return err
	}
	paper, err := sheet.ParsePaper(cmp.Or(f.paper, sheet.UsualPaper(ar.Units)))
	if err != nil {
		return fmt.Errorf("--paper: %w", err)
	}
	ctx, end := a.watched(c.Context())
	defer end()
	content, err := book.Gather(ctx, maker, doc, book.Options{
		Units: ar.Units, Paper: paper, Cut: cut.DefaultOptions(), Spares: cut.DefaultSpareOptions(), Creator: "rinkpane " + release,
	})
	if err != nil {
		return err
	}
	remark(a, content.Plan.Remarks, ar.Units)
	print, err := content.PDF(ctx)
	end()
	if err != nil {
		return err
	}
	if err := f.write(print.Data, content); err != nil {
		return err
	}
	lacking(a, print.Lack)
	answer := struct {
		Pages    int    `json:"pages"`
		Path     string `json:"path"`
		HTML     string `json:"html,omitempty"`
		Revision string `json:"revision"`
	}{print.Pages, f.out, f.html, content.Mark}
	return a.print(answer, func(out io.Writer) {
		fmt.Fprintf(out, "%s: %d pages, plan revision %s\n", f.out, print.Pages, content.Mark)
		if f.html != "" {
			fmt.Fprintf(out, "%s: the same for a browser\n", f.html)
		}
		fmt.Fprintln(out)
		writeLines(out, glass.Cautions())
	})
}
