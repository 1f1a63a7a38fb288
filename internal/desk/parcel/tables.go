package parcel

import (
	"bytes"
	"context"
	"encoding/csv"
	"fmt"
	"strconv"
	"time"

	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/draw/folder"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/wire"
)

// tables packs the tables of a plan, each as a CSV of its own, numbers in SI as
// scripts get them.
func tables(b shelf.Book, p plan.Plan, sys unit.System) ([]byte, error) {
	all, err := wire.Tables(wire.PlanOf(p, sys))
	if err != nil {
		return nil, err
	}
	var files []folder.File
	for _, t := range all {
		var out bytes.Buffer
		if err := t.CSV(&out); err != nil {
			return nil, fmt.Errorf("%s: %w", t.Title, err)
		}
		files = append(files, folder.File{Name: t.Title + ".csv", Data: out.Bytes()})
	}
	return zipOf(b, files)
}

// mostArchived is how many versions an archive holds at most, the newest of them.
const mostArchived = 1000

// archive packs the versions up to a book's as they were saved, and a list of them.
func (p *Packer) archive(ctx context.Context, b shelf.Book) ([]byte, error) {
	versions, err := p.shelf.Keeper().History(ctx, b.Document.ID, mostArchived)
	if err != nil {
		return nil, err
	}
	var list bytes.Buffer
	w := csv.NewWriter(&list)
	_ = w.Write([]string{"version", "made_from", "at", "who", "what"}) // a bytes.Buffer takes everything
	files := []folder.File{{Name: "versions.csv"}}
	for _, v := range versions {
		if v.Number > b.Version.Number {
			continue
		}
		whole, err := p.shelf.Keeper().Version(ctx, b.Document.ID, v.Number)
		if err != nil {
			return nil, err
		}
		_ = w.Write([]string{strconv.Itoa(v.Number), strconv.Itoa(v.Parent), v.At.UTC().Format(time.RFC3339), v.Who, v.What})
		files = append(files, folder.File{Name: fmt.Sprintf("v%d-arena.yaml", v.Number), Data: []byte(whole.Text)})
	}
	w.Flush()
	files[0].Data = list.Bytes()
	return zipOf(b, files)
}
