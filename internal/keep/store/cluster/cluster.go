// Package cluster runs a real PostgreSQL from Debian for the time of a test: a
// cluster of its own in a temporary folder, reached by a socket only.
//
// It is for tests alone. Assumption: the server's programs lie below
// /usr/lib/postgresql, as Debian's package postgresql puts them.
package cluster

import (
	"context"
	"database/sql"
	"errors"
	"flag"
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

	_ "github.com/jackc/pgx/v5/stdlib" // the driver, named "pgx"
)

// Cluster is a running server.
type Cluster struct {
	folder    string // where the socket lies
	bin       string
	as        *syscall.SysProcAttr
	databases atomic.Int64
}

// start makes and starts a cluster. PostgreSQL refuses to run as root, so root
// lends it the account "postgres", which Debian's package makes.
func start() (*Cluster, error) {
	found, err := filepath.Glob("/usr/lib/postgresql/*/bin/pg_ctl")
	if err != nil || len(found) == 0 {
		return nil, errors.New("no pg_ctl below /usr/lib/postgresql: install Debian's package postgresql")
	}
	folder, err := os.MkdirTemp("", "rinkpane-pg")
	if err != nil {
		return nil, err
	}
	c := &Cluster{folder: folder, bin: filepath.Dir(slices.Max(found))}
	if c.as, err = servantOf(folder); err != nil {
		return nil, err
	}
	if err := c.run("initdb", "-D", c.data(), "-U", "rinkpane", "-A", "trust", "-N", "--encoding=UTF8", "--locale=C"); err != nil {
		return nil, err
	}
	return c, c.Up()
}

// Up starts the server of a cluster that is down.
func (c *Cluster) Up() error {
	options := fmt.Sprintf("-c listen_addresses='' -c unix_socket_directories='%s' -c fsync=off", c.folder)
	return c.run("pg_ctl", "-D", c.data(), "-w", "-t", "60", "-l", filepath.Join(c.folder, "log"), "-o", options, "start")
}

// Down stops the server as a restart does: it cuts connections, and keeps all it has.
func (c *Cluster) Down() error { return c.run("pg_ctl", "-D", c.data(), "-m", "fast", "stop") }

// Stop stops the server and removes all it kept.
func (c *Cluster) Stop() error {
	return errors.Join(c.run("pg_ctl", "-D", c.data(), "-m", "immediate", "stop"), os.RemoveAll(c.folder))
}

// Run runs a package's tests, for its TestMain, while a server of theirs is up. Under
// -short there is none.
func Run(m *testing.M, server **Cluster) int {
	flag.Parse()
	if testing.Short() {
		return m.Run()
	}
	c, err := start()
	if err != nil {
		fmt.Fprintln(os.Stderr, "these tests need a PostgreSQL:", err)
		return 1
	}
	*server = c
	code := m.Run()
	if err := c.Stop(); err != nil {
		fmt.Fprintln(os.Stderr, err)
	}
	return code
}

// Alone returns a server of a test's own, which it may take down; it is gone once what the
// test began after it has ended.
func Alone(t testing.TB) *Cluster {
	t.Helper()
	if testing.Short() {
		t.Skip("asks a PostgreSQL; make test does, make quick does not")
	}
	c, err := start()
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := c.Stop(); err != nil {
			t.Error(err)
		}
	})
	return c
}

// Database makes an empty database for a test and returns its address.
func (c *Cluster) Database(t testing.TB) string {
	t.Helper()
	if testing.Short() {
		t.Skip("asks a PostgreSQL; make test does, make quick does not")
	}
	ctx, cancel := context.WithTimeout(t.Context(), time.Minute)
	defer cancel()
	dsn, err := c.fresh(ctx)
	if err != nil {
		t.Fatal(err)
	}
	return dsn
}

func (c *Cluster) fresh(ctx context.Context) (string, error) {
	db, err := sql.Open("pgx", c.address("postgres"))
	if err != nil {
		return "", err
	}
	defer db.Close()
	name := fmt.Sprintf("t%d", c.databases.Add(1))
	_, err = db.ExecContext(ctx, "CREATE DATABASE "+name)
	return c.address(name), err
}

func (c *Cluster) address(database string) string {
	return "postgres://rinkpane@/" + database + "?host=" + c.folder
}

func (c *Cluster) data() string { return filepath.Join(c.folder, "data") }

func (c *Cluster) run(name string, args ...string) error {
	cmd := exec.Command(filepath.Join(c.bin, name), args...)
	cmd.Dir, cmd.SysProcAttr = c.folder, c.as
	if out, err := cmd.CombinedOutput(); err != nil {
		return fmt.Errorf("%s: %w: %s", name, err, out)
	}
	return nil
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
