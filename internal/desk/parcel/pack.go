package parcel

import (
	"archive/zip"
	"bytes"
	"cmp"
	"context"
	"errors"
	"fmt"
	"path"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/draw/book"
	"example.org/rinkpane/internal/draw/cut"
	"example.org/rinkpane/internal/draw/folder"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
)

func (p *Packer) pack(ctx context.Context, b shelf.Book, k Kind, w Wish, sys unit.System) ([]byte, error) {
	if k == Document {
		return b.Arena.Bytes(), nil
	}
	approval, err := p.approval(ctx, b)
	if err != nil {
		return nil, err
	}
	switch k {
	case Outline:
		return p.outline(b, w, sys, approval)
	case Cut:
		return p.cut(ctx, b, w, sys, approval)
	case Book, BookPage:
		return p.book(ctx, b, k, w, sys, approval)
	case Archive:
		return p.archive(ctx, b)
	}
	of := p.shelf.Plan
	if k == Folder || k == PlanJSON {
		of = p.shelf.Whole
	}
	made, err := of(ctx, b)
	if err != nil {
		return nil, err
	}
	made.Approval = approval
	if k == Tables {
		return tables(b, made, sys)
	}
	files, err := folder.Files(made, sys)
	if err != nil {
		return nil, err
	}
	if k == Folder {
		return zipOf(b, files)
	}
	for _, f := range files {
		if f.Name == string(k) {
			return f.Data, nil
		}
	}
	return nil, fmt.Errorf("the plan has no file %s", k)
}

// paper returns the paper wished for, or what is usual where the units are.
func paper(w Wish, sys unit.System) (sheet.Paper, error) {
	p, err := sheet.ParsePaper(cmp.Or(w.Paper, sheet.UsualPaper(sys)))
	if err != nil {
		return sheet.Paper{}, &Error{"paper: " + err.Error()}
	}
	return p, nil
}

func (p *Packer) outline(b shelf.Book, w Wish, sys unit.System, approval custody.Approval) ([]byte, error) {
	a, err := b.Arena.Check()
	if err != nil {
		return nil, err
	}
	a.Units = sys
	h, ok := a.Hole(w.Hole)
	if !ok {
		return nil, &Error{fmt.Sprintf("hole %.40q: the arena has none of that name", w.Hole)}
	}
	drawn := cut.NewShopOrder(a, b.Arena.Bytes(), p.shelf.Maker().Rules.Check(a).Findings)
	drawn.Approval = approval
	job, err := drawn.Job(h, cut.DefaultOptions())
	if refused := (*cut.Refusal)(nil); errors.As(err, &refused) {
		return nil, &Error{refused.Error()}
	}
	if err != nil {
		return nil, err
	}
	return sheet.DXF(drawn.PaneOutline(job)), nil
}

func (p *Packer) cut(ctx context.Context, b shelf.Book, w Wish, sys unit.System, approval custody.Approval) ([]byte, error) {
	a, err := b.Arena.Check()
	if err != nil {
		return nil, err
	}
	a.Units = sys
	on, err := paper(w, sys)
	if err != nil {
		return nil, err
	}
	order := cut.NewShopOrder(a, b.Arena.Bytes(), p.shelf.Maker().Rules.Check(a).Findings)
	order.Approval = approval
	made, err := order.Folder(ctx, cut.Request{
		Paper: on.Name, Options: cut.DefaultOptions(), Spares: cut.DefaultSpareOptions(), Kit: b.Maker.Kit, Creator: p.creator,
	})
	if err != nil {
		return nil, err
	}
	var files []folder.File
	for _, f := range made.Files {
		files = append(files, folder.File{Name: f.Path, Data: f.Data})
	}
	if said := refusals(made); said != "" {
		files = append(files, folder.File{Name: "not-drawn.txt", Data: []byte(said)})
	}
	return zipOf(b, files)
}

// refusals tells what the folder has no drawing of, and why.
func refusals(f cut.Folder) string {
	var out bytes.Buffer
	for _, r := range f.Refused {
		fmt.Fprintln(&out, r.Error())
	}
	for _, n := range f.Notes {
		fmt.Fprintln(&out, n)
	}
	if said := f.Lack.String(); said != "" {
		fmt.Fprintln(&out, said)
	}
	return out.String()
}

func (p *Packer) book(ctx context.Context, b shelf.Book, k Kind, w Wish, sys unit.System, approval custody.Approval) ([]byte, error) {
	on, err := paper(w, sys)
	if err != nil {
		return nil, err
	}
	content, err := book.Gather(ctx, b.Maker, b.Arena, book.Options{
		Units: sys, Paper: on, Cut: cut.DefaultOptions(), Spares: cut.DefaultSpareOptions(), Creator: p.creator,
	})
	if err != nil && ctx.Err() == nil {
		return nil, &Error{err.Error()} // an arena that no book can be made of
	}
	if err != nil {
		return nil, err
	}
	content.Plan.Approval = approval
	if k == BookPage {
		return content.HTML(), nil
	}
	print, err := content.PDF(ctx)
	return print.Data, err
}

// Lack says which letters of what drawings and book print of the arena's own words
// their fonts lack; "" when none.
func Lack(b shelf.Book) string {
	a, err := b.Arena.Check()
	if err != nil {
		return "" // nothing is drawn of it
	}
	texts := append(a.Openings(), a.Name, a.Place)
	for _, h := range a.Working() {
		texts = append(texts, h.Note)
	}
	for _, p := range a.Panes {
		texts = append(texts, p.ID)
	}
	for _, z := range a.Zones {
		texts = append(texts, z.ID)
	}
	return sheet.Lacking(texts...).String()
}

// zipOf packs files below one folder, the same to the byte for the same files.
func zipOf(b shelf.Book, files []folder.File) ([]byte, error) {
	var out bytes.Buffer
	z := zip.NewWriter(&out)
	for _, f := range files {
		w, err := z.CreateHeader(&zip.FileHeader{Name: path.Join(stem(b), f.Name), Method: zip.Deflate, Modified: b.Version.At})
		if err != nil {
			return nil, fmt.Errorf("%s: %w", f.Name, err)
		}
		if _, err := w.Write(f.Data); err != nil {
			return nil, fmt.Errorf("%s: %w", f.Name, err)
		}
	}
	if err := z.Close(); err != nil {
		return nil, fmt.Errorf("packing: %w", err)
	}
	return out.Bytes(), nil
}
