package queue

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"testing"
	"time"
)

// workerFlag makes the test's own program a worker on a database, until it is killed.
const workerFlag = "-work-for-ever"

// slowly is work that takes a while, so that a kill meets it.
func slowly() Kind[string, string] {
	return Kind[string, string]{Name: "slowly", Limit: time.Minute, Do: func(ctx context.Context, q string, b Bench) (string, error) {
		for i := range 10 {
			b.Tell("waiting", float64(i)/10)
			select {
			case <-ctx.Done():
				return "", ctx.Err()
			case <-time.After(20 * time.Millisecond):
			}
		}
		return fmt.Sprintf("%s by %d", q, os.Getpid()), nil
	}}
}

func workForEver(dsn string) {
	q, err := OpenDSN(context.Background(), dsn, Options{Program: "test", hurry: true})
	if err == nil {
		err = q.Work(context.Background(), 2, slowly())
	}
	fmt.Fprintln(os.Stderr, err)
	os.Exit(1)
}

// worker starts a worker in a program of its own.
func startWorker(t *testing.T, dsn string) *exec.Cmd {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	c := exec.Command(self, workerFlag, dsn)
	c.Stderr = os.Stderr
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	return c
}

// loads are how many pieces are worked, and how many workers are killed meanwhile.
func loads() (pieces, kills int) {
	if os.Getenv("RINKPANE_SOAK") != "" {
		return 1500, 60
	}
	return 30, 4
}

// countAnswers makes the database count how often the answer of each piece is set.
func countAnswers(t *testing.T, q *Queue) {
	t.Helper()
	for _, sql := range []string{
		`CREATE TABLE effect (piece TEXT NOT NULL)`,
		`CREATE FUNCTION count_effect() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN INSERT INTO effect VALUES (NEW.id); RETURN NEW; END $$`,
		`CREATE TRIGGER effects AFTER UPDATE OF answer ON piece FOR EACH ROW EXECUTE FUNCTION count_effect()`,
	} {
		if _, err := q.db.ExecContext(t.Context(), sql); err != nil {
			t.Fatal(err)
		}
	}
}

// endedOnce waits for all pieces and fails unless each ended with one answer, kept once.
func endedOnce(t *testing.T, q *Queue, asked []Piece) {
	t.Helper()
	for _, p := range asked {
		become(t, q, p.ID, Done)
	}
	var effects, pieces int
	if err := q.db.QueryRowContext(t.Context(), `SELECT COUNT(*), COUNT(DISTINCT piece) FROM effect`).Scan(&effects, &pieces); err != nil {
		t.Fatal(err)
	}
	if effects != len(asked) || pieces != len(asked) {
		t.Errorf("%d answers were kept of %d pieces; %d were asked for", effects, pieces, len(asked))
	}
}

// TestEveryPieceEndsOnceThoughWorkersAreKilled: three workers on PostgreSQL, of which one
// after the other is killed in the middle of its work and another takes its place.
func TestEveryPieceEndsOnceThoughWorkersAreKilled(t *testing.T) {
	dsn := server.Database(t)
	q := inDatabase(t, dsn)
	countAnswers(t, q)
	pieces, kills := loads()
	workers := make([]*exec.Cmd, 3)
	for i := range workers {
		workers[i] = startWorker(t, dsn)
	}
	t.Cleanup(func() {
		for _, w := range workers {
			_ = w.Process.Kill()
			_ = w.Wait()
		}
	})
	var asked []Piece
	for i := range pieces {
		asked = append(asked, ask(t, slowly(), q, Asker{Owner: fmt.Sprint(i % 3)}, fmt.Sprint(i)))
	}
	for i := range kills {
		atWork(t, q) // so that the kill meets work
		w := workers[i%len(workers)]
		if err := w.Process.Kill(); err != nil {
			t.Fatal(err)
		}
		_ = w.Wait()
		workers[i%len(workers)] = startWorker(t, dsn)
	}
	endedOnce(t, q, asked)
}

// atWork waits until some piece is at work, or all are done.
func atWork(t *testing.T, q *Queue) {
	t.Helper()
	for {
		var running, open int
		err := q.db.QueryRowContext(t.Context(), `SELECT COUNT(*) FILTER (WHERE state = 'running'), COUNT(*) FILTER (WHERE state <> 'completed') FROM river_job`).Scan(&running, &open)
		if err != nil {
			t.Fatal(err)
		}
		if running > 0 || open == 0 {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
}

// TestADatabaseThatRestartsUnderLoad takes PostgreSQL down while pieces are at work: each
// ends once all the same.
func TestADatabaseThatRestartsUnderLoad(t *testing.T) {
	dsn := server.Database(t)
	q := inDatabase(t, dsn)
	q.hurry = true
	countAnswers(t, q)
	working(t, q, 4, slowly())
	var asked []Piece
	for i := range 20 {
		asked = append(asked, ask(t, slowly(), q, Asker{}, fmt.Sprint(i)))
	}
	for range 2 {
		atWork(t, q)
		if err := server.Down(); err != nil {
			t.Fatal(err)
		}
		if err := server.Up(); err != nil {
			t.Fatal(err)
		}
	}
	endedOnce(t, q, asked)
}
