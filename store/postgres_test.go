package store

import (
	"context"
	"database/sql"
	"fmt"
	"os"
	"os/exec"
	"os/user"
	"path/filepath"
	"slices"
	"strconv"
	"sync/atomic"
	"syscall"
	"testing"
	"time"
)

// A real PostgreSQL from Debian runs for the whole test: a cluster of its own
// in a temporary folder, reached by a socket only.
var (
	postgresFolder string // where the socket lies
	databases      atomic.Int64
)

func TestMain(m *testing.M) {
	if len(os.Args) > 2 && os.Args[1] == saverFlag {
		saveForEver(os.Args[2])
		return
	}
	stop, err := startPostgres()
	if err != nil {
		fmt.Fprintln(os.Stderr, "store tests need Debian's postgresql (apt-get install postgresql):", err)
		os.Exit(1)
	}
	code := m.Run()
	stop()
	os.Exit(code)
}

// startPostgres makes and starts a cluster. PostgreSQL refuses to run as root,
// so root lends it the account "postgres", which Debian's package makes.
func startPostgres() (stop func(), err error) {
	found, err := filepath.Glob("/usr/lib/postgresql/*/bin/pg_ctl")
	if err != nil || len(found) == 0 {
		return nil, fmt.Errorf("no pg_ctl below /usr/lib/postgresql")
	}
	bin := filepath.Dir(slices.Max(found))
	folder, err := os.MkdirTemp("", "rinkpane-pg")
	if err != nil {
		return nil, err
	}
	as, err := servantOf(folder)
	if err != nil {
		return nil, err
	}
	data := filepath.Join(folder, "data")
	run := func(name string, args ...string) error {
		c := exec.Command(filepath.Join(bin, name), args...)
		c.Dir, c.SysProcAttr = folder, as
		if out, err := c.CombinedOutput(); err != nil {
			return fmt.Errorf("%s: %w: %s", name, err, out)
		}
		return nil
	}
	if err := run("initdb", "-D", data, "-U", "rinkpane", "-A", "trust", "-N", "--encoding=UTF8", "--locale=C"); err != nil {
		return nil, err
	}
	options := fmt.Sprintf("-c listen_addresses='' -c unix_socket_directories='%s' -c fsync=off", folder)
	if err := run("pg_ctl", "-D", data, "-w", "-t", "60", "-l", filepath.Join(folder, "log"), "-o", options, "start"); err != nil {
		return nil, err
	}
	postgresFolder = folder
	return func() {
		run("pg_ctl", "-D", data, "-m", "immediate", "stop")
		os.RemoveAll(folder)
	}, nil
}

func servantOf(folder string) (*syscall.SysProcAttr, error) {
	if os.Getuid() != 0 {
		return nil, nil
	}
	u, err := user.Lookup("postgres")
	if err != nil {
		return nil, err
	}
	uid, err1 := strconv.Atoi(u.Uid)
	gid, err2 := strconv.Atoi(u.Gid)
	if err1 != nil || err2 != nil {
		return nil, fmt.Errorf("account postgres has ids %q and %q", u.Uid, u.Gid)
	}
	if err := os.Chown(folder, uid, gid); err != nil {
		return nil, err
	}
	return &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: uint32(uid), Gid: uint32(gid)}}, nil
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
	dsn := func(name string) string {
		return "postgres://rinkpane@/" + name + "?host=" + postgresFolder
	}
	db, err := sql.Open("pgx", dsn("postgres"))
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	ctx, cancel := context.WithTimeout(t.Context(), time.Minute)
	defer cancel()
	name := fmt.Sprintf("t%d", databases.Add(1))
	if _, err := db.ExecContext(ctx, "CREATE DATABASE "+name); err != nil {
		t.Fatal(err)
	}
	return dsn(name)
}
