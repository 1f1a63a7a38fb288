package store

import (
	"context"
	flags "flag"
	"fmt"
	"os"
	"testing"
	"time"

	"example.org/rinkpane/internal/keep/store/cluster"
)

// server is a real PostgreSQL that runs for the whole test.
var server *cluster.Cluster

func TestMain(m *testing.M) {
	if len(os.Args) > 2 && os.Args[1] == saverFlag {
		saveForEver(os.Args[2])
		return
	}
	flags.Parse()
	if testing.Short() {
		os.Exit(m.Run())
	}
	var err error
	if server, err = cluster.Start(); err != nil {
		fmt.Fprintln(os.Stderr, "store tests need a PostgreSQL:", err)
		os.Exit(1)
	}
	code := m.Run()
	if err := server.Stop(); err != nil {
		fmt.Fprintln(os.Stderr, err)
	}
	os.Exit(code)
}

// eachStore runs one check against both stores, each fresh and empty.
func eachStore(t *testing.T, check func(t *testing.T, s *Store)) {
	t.Run("SQLite", func(t *testing.T) {
		s, err := OpenFolder(t.Context(), t.TempDir())
		if err != nil {
			t.Fatal(err)
		}
		defer s.Close()
		check(t, s)
	})
	t.Run("PostgreSQL", func(t *testing.T) {
		s, err := OpenDSN(t.Context(), freshDatabase(t))
		if err != nil {
			t.Fatal(err)
		}
		defer s.Close()
		check(t, s)
	})
}

func freshDatabase(t *testing.T) string {
	t.Helper()
	if testing.Short() {
		t.Skip("asks a PostgreSQL; make test does, make quick does not")
	}
	ctx, cancel := context.WithTimeout(t.Context(), time.Minute)
	defer cancel()
	dsn, err := server.Fresh(ctx)
	if err != nil {
		t.Fatal(err)
	}
	return dsn
}
