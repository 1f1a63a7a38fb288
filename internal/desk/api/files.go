package api

import (
	"context"
	"fmt"

	"github.com/danielgtaylor/huma/v2"

	"example.org/rinkpane/internal/desk/parcel"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/survey/arena"
)

// FileLine is one file that can be taken away.
type FileLine struct {
	Kind parcel.Kind `json:"kind"`
	What string      `json:"what"`
	Name string      `json:"name" doc:"Under which it is saved: arena, version and mark stand in it."`
	Path string      `json:"path"`
}

type fileList struct {
	ID      string     `json:"id"`
	Version int        `json:"version"`
	Mark    string     `json:"mark"`
	Files   []FileLine `json:"files"`
}

// download is a file to keep.
type download struct {
	Type        string `header:"Content-Type"`
	Disposition string `header:"Content-Disposition"`
	Version     int    `header:"Rinkpane-Version" doc:"The version it was made from."`
	Mark        string `header:"Rinkpane-Mark" doc:"The mark of that version's text."`
	Body        []byte
}

func (s *server) files() {
	asFile := func(op *huma.Operation) {
		op.Responses = map[string]*huma.Response{"200": {
			Description: "The file",
			Content:     map[string]*huma.MediaType{"application/octet-stream": {Schema: &huma.Schema{Type: huma.TypeString, Format: "binary"}}},
		}}
	}
	route(s, "GET /api/arenas/{id}/text", "export-arena", "The arena document as a file, comments kept", s.text, asFile)
	ofBook(s, "GET /api/arenas/{id}/files", "list-files", "The files that can be taken away from a version", s.fileList)
	route(s, "GET /api/arenas/{id}/files/{kind}", "get-file", "A file: cut folder, book, drawings, results", s.file, asFile)
}

func (s *server) fileList(_ context.Context, b shelf.Book, _ *AtVersion) (fileList, error) {
	out := fileList{b.Document.ID, b.Version.Number, b.Mark, nil}
	for _, k := range parcel.Kinds() {
		out.Files = append(out.Files, FileLine{
			k, k.Words(), parcel.Name(b, k), fmt.Sprintf("/api/arenas/%s/files/%s?version=%d", b.Document.ID, k, b.Version.Number),
		})
	}
	return out, nil
}

func (s *server) file(ctx context.Context, in *struct {
	AtVersion
	Kind  string `path:"kind" enum:"arena.yaml,plan.json,plan-map.svg,boards-strip.svg,hole.dxf,cut.zip,book.pdf,book.html,plan.zip,tables.zip,versions.zip"`
	Hole  string `query:"hole" doc:"hole.dxf: the hole."`
	Paper string `query:"paper" doc:"cut.zip, book.pdf: a4, letter ...; as is usual where the units are without it."`
	Units string `query:"units" enum:"metric,imperial" doc:"The document's own without it."`
}) (*download, error) {
	b, err := s.Shelf.Open(ctx, in.ID.ID, in.Version)
	if err != nil {
		return nil, err
	}
	p, err := s.Packer.Pack(ctx, b, parcel.Kind(in.Kind), parcel.Wish{Hole: in.Hole, Paper: in.Paper, Units: in.Units})
	return &download{p.Media, fmt.Sprintf(`attachment; filename="%s"`, p.Name), b.Version.Number, b.Mark, p.Data}, err
}

// text serves a version's text as it was saved, even one that no longer reads.
func (s *server) text(ctx context.Context, in *AtVersion) (*download, error) {
	v, err := s.Shelf.Keeper().Version(ctx, in.ID.ID, in.Version)
	mark := arena.Mark([]byte(v.Text))
	return &download{
		"application/yaml; charset=utf-8", fmt.Sprintf(`attachment; filename="%s-v%d-%s-arena.yaml"`, v.Document, v.Number, mark),
		v.Number, mark, []byte(v.Text),
	}, err
}
