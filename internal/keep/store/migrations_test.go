package store

import (
	"io/fs"
	"regexp"
	"strings"
	"testing"
)

// TestMigrationsOnlyAdd holds every migration to what a program of before, still at
// work on the same database, goes on with: tables and indexes are added, and columns
// that have a default; nothing is dropped, renamed or tightened.
func TestMigrationsOnlyAdd(t *testing.T) {
	added := regexp.MustCompile(`^(CREATE (UNIQUE )?(TABLE|INDEX) |INSERT INTO |ALTER TABLE \w+ ADD COLUMN \w+ .*DEFAULT )`)
	files, err := fs.Glob(migrations, "migrations/*.sql")
	if err != nil || len(files) < 8 {
		t.Fatalf("%d migrations, %v", len(files), err)
	}
	for _, name := range files {
		data, err := migrations.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		up, _, both := strings.Cut(string(data), "-- +goose Down")
		if !both {
			t.Errorf("%s: no way back", name)
		}
		statements := 0
		for statement := range strings.SplitSeq(regexp.MustCompile(`(?m)--.*$`).ReplaceAllString(up, ""), ";") {
			if statement = strings.TrimSpace(statement); statement == "" {
				continue
			}
			if statements++; !added.MatchString(statement) {
				t.Errorf("%s: a desk of before may not go on after: %s", name, statement)
			}
		}
		if statements == 0 {
			t.Errorf("%s does nothing", name)
		}
	}
}
