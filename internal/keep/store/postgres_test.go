package store

import (
	"os"
	"testing"

	"example.org/rinkpane/internal/keep/store/cluster"
)

// server is a real PostgreSQL that runs for the whole test.
var server *cluster.Cluster

func TestMain(m *testing.M) {
	if len(os.Args) > 2 && os.Args[1] == saverFlag {
		saveForEver(os.Args[2])
		return
	}
	os.Exit(cluster.Run(m, &server))
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
		s, err := OpenDSN(t.Context(), server.Database(t))
		if err != nil {
			t.Fatal(err)
		}
		defer s.Close()
		check(t, s)
	})
}
