package store

import (
	"errors"
	"io/fs"
	"testing"

	"github.com/pressly/goose/v3"

	"example.org/rinkpane/internal/keep/revision"
)

// TestKindsAreListedApart keeps one document of each kind: each list has its own,
// and no id stands for two.
func TestKindsAreListedApart(t *testing.T) {
	eachStore(t, func(t *testing.T, s *Store) {
		ctx := t.Context()
		for kind, id := range map[revision.Kind]string{revision.Arena: "east", revision.Kit: "bag", revision.RuleSet: "league"} {
			if _, err := s.Add(ctx, kind, id, "Name of "+id, draft("first", "text")); err != nil {
				t.Fatal(err)
			}
			got, err := s.Documents(ctx, kind, true)
			if err != nil || len(got) != 1 || got[0].ID != id || got[0].Kind != kind {
				t.Errorf("%s: %+v, %v", kind, got, err)
			}
			if d, err := s.Document(ctx, id); err != nil || d.Kind != kind {
				t.Errorf("%s: %+v, %v", id, d, err)
			}
		}
		if _, err := s.Add(ctx, revision.Kit, "east", "x", draft("x", "x")); !errors.Is(err, revision.ErrTaken) {
			t.Errorf("a kit called like an arena: %v", err)
		}
	})
}

// TestOlderStoresKeepTheirArenas brings a store of the tables before kinds up to
// date: what was kept is an arena, with its versions.
func TestOlderStoresKeepTheirArenas(t *testing.T) {
	folder, dsn := t.TempDir(), server.Database(t)
	for name, open := range map[string]func() (*Store, error){
		"SQLite":     func() (*Store, error) { return OpenFolder(t.Context(), folder) },
		"PostgreSQL": func() (*Store, error) { return OpenDSN(t.Context(), dsn) },
	} {
		t.Run(name, func(t *testing.T) {
			ctx := t.Context()
			s, err := open()
			if err != nil {
				t.Fatal(err)
			}
			files, err := fs.Sub(migrations, "migrations")
			if err != nil {
				t.Fatal(err)
			}
			dialect := goose.DialectPostgres
			if s.sqlite {
				dialect = goose.DialectSQLite3
			}
			p, err := goose.NewProvider(dialect, s.db, files)
			if err != nil {
				t.Fatal(err)
			}
			if _, err := p.DownTo(ctx, 3); err != nil {
				t.Fatal(err)
			}
			for _, old := range []string{
				`INSERT INTO document (id, name, head) VALUES ('old-hall', 'Old Hall', 1)`,
				`INSERT INTO version (document, number, parent, at_us, who, what, body) VALUES ('old-hall', 1, 0, 1, 'Ada', 'first', 'text')`,
			} {
				if _, err := s.db.ExecContext(ctx, old); err != nil {
					t.Fatal(err)
				}
			}
			s.Close()
			if s, err = open(); err != nil {
				t.Fatal(err)
			}
			defer s.Close()
			got, err := s.Documents(ctx, revision.Arena, false)
			if err != nil || len(got) != 1 || got[0].Name != "Old Hall" {
				t.Fatalf("%+v, %v", got, err)
			}
			if v, err := s.Version(ctx, "old-hall", 0); err != nil || v.Text != "text" || v.Who != "Ada" {
				t.Errorf("%+v, %v", v, err)
			}
		})
	}
}
