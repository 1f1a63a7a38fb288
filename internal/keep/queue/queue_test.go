package queue

import (
	"context"
	"errors"
	"os"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/keep/store/cluster"
)

// server is a real PostgreSQL that runs for the whole test.
var server *cluster.Cluster

func TestMain(m *testing.M) {
	if len(os.Args) > 2 && os.Args[1] == workerFlag {
		workForEver(os.Args[2])
		return
	}
	os.Exit(cluster.Run(m, &server))
}

// eachQueue runs one check against both databases, each fresh and empty.
func eachQueue(t *testing.T, check func(t *testing.T, q *Queue)) {
	t.Run("SQLite", func(t *testing.T) { check(t, inFolder(t, t.TempDir())) })
	t.Run("PostgreSQL", func(t *testing.T) { check(t, inDatabase(t, server.Database(t))) })
}

func inFolder(t *testing.T, folder string) *Queue {
	t.Helper()
	q, err := OpenFolder(t.Context(), folder, Options{Program: "test", Files: Folder(t.TempDir())})
	return open(t, q, err)
}

func inDatabase(t *testing.T, dsn string) *Queue {
	t.Helper()
	q, err := OpenDSN(t.Context(), dsn, Options{Program: "test", Files: Folder(t.TempDir())})
	return open(t, q, err)
}

func open(t *testing.T, q *Queue, err error) *Queue {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { q.Close() })
	return q
}

// working works pieces until the returned function is called, which waits for the end.
func working(t *testing.T, q *Queue, places int, kinds ...Doer) (stop func()) {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() { ended <- q.Work(ctx, places, kinds...) }()
	var once bool
	stop = func() {
		if once {
			return
		}
		once = true
		cancel()
		if err := <-ended; err != nil {
			t.Errorf("the worker ended with %v", err)
		}
	}
	t.Cleanup(stop)
	return stop
}

// become waits until a piece is in a state.
func become(t *testing.T, q *Queue, id string, s State) Piece {
	t.Helper()
	for {
		p, err := q.Piece(t.Context(), id)
		if err != nil && !errors.Is(err, revision.ErrDown) {
			t.Fatal(err)
		}
		if err == nil && p.State == s {
			return p
		}
		if err == nil && p.State.Ended() && s.Ended() {
			t.Fatalf("the piece is %s (%s), expected %s", p.State, p.Cause, s)
		}
		time.Sleep(10 * time.Millisecond)
	}
}

// echo answers with the question, after telling that it began; hold makes it wait.
func echo(began chan<- string, hold <-chan struct{}) Kind[string, string] {
	return Kind[string, string]{Name: "echo", Limit: time.Hour, Do: func(ctx context.Context, q string, b Bench) (string, error) {
		if began != nil {
			began <- q
		}
		b.Tell("echoing", 0.5)
		if hold != nil {
			select {
			case <-hold:
			case <-ctx.Done():
				return "", ctx.Err()
			}
		}
		return "echo of " + q, nil
	}}
}

func ask[A any](t *testing.T, k Kind[string, A], q *Queue, by Asker, question string) Piece {
	t.Helper()
	p, err := k.Ask(t.Context(), q, by, "about "+question, question)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// TestWhatIsForgottenIsWorkedAgain takes an answer away and asks again.
func TestWhatIsForgottenIsWorkedAgain(t *testing.T) {
	eachQueue(t, func(t *testing.T, q *Queue) {
		began := make(chan string, 2)
		k := echo(began, nil)
		p := ask(t, k, q, Asker{}, "a")
		working(t, q, 1, k)
		become(t, q, p.ID, Done)
		if err := q.Forget(t.Context(), p.ID); err != nil {
			t.Fatal(err)
		}
		if _, err := k.Answer(t.Context(), q, p.ID); !errors.Is(err, ErrNone) {
			t.Errorf("an answer that was forgotten: %v", err)
		}
		for p.State != Done { // River may not know yet that the first is over
			time.Sleep(10 * time.Millisecond)
			p = ask(t, k, q, Asker{}, "a")
		}
		if len(began) != 2 || p.Took(p.Answered) <= 0 {
			t.Errorf("worked %d times, %+v", len(began), p)
		}
	})
}

// TestTheSameQuestionIsWorkedOnce asks twice before, while and after it is worked.
func TestTheSameQuestionIsWorkedOnce(t *testing.T) {
	eachQueue(t, func(t *testing.T, q *Queue) {
		began, hold := make(chan string, 10), make(chan struct{})
		k := echo(began, hold)
		first, again := ask(t, k, q, Asker{}, "a"), ask(t, k, q, Asker{Owner: "bo"}, "a")
		if first.State != Waiting || again.ID != first.ID || again.job != first.job {
			t.Errorf("asked %+v, then %+v", first, again)
		}
		if _, err := k.Answer(t.Context(), q, first.ID); !errors.Is(err, ErrNone) {
			t.Errorf("an answer before there is one: %v", err)
		}
		working(t, q, 2, k)
		<-began
		if at := become(t, q, first.ID, AtWork); at.Tries != 1 || at.About != "about a" || at.Kind != "echo" {
			t.Errorf("at work: %+v", at)
		}
		ask(t, k, q, Asker{}, "a")
		close(hold)
		become(t, q, first.ID, Done)
		if p := ask(t, k, q, Asker{}, "a"); p.State != Done {
			t.Errorf("asked after it was done: %+v", p)
		}
		if got, err := k.Answer(t.Context(), q, first.ID); got != "echo of a" || err != nil {
			t.Errorf("answer %q, %v", got, err)
		}
		other := Kind[string, string]{Name: "other", Limit: time.Hour, Do: k.Do}
		if p := ask(t, other, q, Asker{}, "a"); p.ID == first.ID {
			t.Error("another kind of question has the same id")
		}
		if len(began) > 0 {
			t.Errorf("%d more were begun", len(began))
		}
	})
}

// TestAFailedTryIsBegunAnew fails once by an error, once by a panic and once by taking too
// long; then it is answered. Another fails for ever, until it has failed.
func TestAFailedTryIsBegunAnew(t *testing.T) {
	eachQueue(t, func(t *testing.T, q *Queue) {
		q.hurry = true // each try waits longer than the one before
		n := make(chan int, 1)
		n <- 0
		k := Kind[string, string]{Name: "faulty", Limit: time.Hour, Do: func(ctx context.Context, question string, _ Bench) (string, error) {
			if question == "never" {
				return "", errors.New("the ice melted")
			}
			i := <-n
			n <- i + 1
			switch i {
			case 0:
				return "", errors.New("the ice melted")
			case 1:
				panic("thin ice")
			}
			return "at last", nil
		}}
		late := Kind[string, string]{Name: "late", Limit: time.Millisecond, Do: func(ctx context.Context, _ string, _ Bench) (string, error) {
			<-ctx.Done()
			return "", ctx.Err()
		}}
		working(t, q, 3, k, late)
		some, never, slow := ask(t, k, q, Asker{}, "some"), ask(t, k, q, Asker{}, "never"), ask(t, late, q, Asker{}, "x")
		if p := become(t, q, some.ID, Done); p.Cause != "" {
			t.Errorf("done, and yet %q", p.Cause)
		}
		for id, cause := range map[string]string{never.ID: "the ice melted", slow.ID: "it took longer than 1ms"} {
			if p := become(t, q, id, Failed); p.Cause != cause {
				t.Errorf("failed by %q, expected %q", p.Cause, cause)
			}
		}
		if p := ask(t, k, q, Asker{}, "never"); p.State != Waiting {
			t.Errorf("asked again after it failed: %+v", p)
		}
	})
}

// TestGivenUp gives up a piece that waits, one at work, and one that is done.
func TestGivenUp(t *testing.T) {
	eachQueue(t, func(t *testing.T, q *Queue) {
		began, hold := make(chan string, 10), make(chan struct{})
		k := echo(began, hold)
		waits := ask(t, k, q, Asker{}, "waits")
		if err := q.GiveUp(t.Context(), waits.ID); err != nil {
			t.Fatal(err)
		}
		become(t, q, waits.ID, GivenUp)
		working(t, q, 1, k)
		works := ask(t, k, q, Asker{}, "works")
		<-began
		if err := q.GiveUp(t.Context(), works.ID); err != nil {
			t.Fatal(err)
		}
		become(t, q, works.ID, GivenUp)
		if p := ask(t, k, q, Asker{}, "works"); p.State != Waiting {
			t.Errorf("asked again: %+v", p)
		}
		close(hold)
		become(t, q, works.ID, Done)
		if err := q.GiveUp(t.Context(), works.ID); err != nil {
			t.Fatal(err)
		}
		become(t, q, works.ID, Done)
		if err := q.GiveUp(t.Context(), "nobody's"); !errors.Is(err, ErrNone) {
			t.Errorf("nobody's piece: %v", err)
		}
	})
}

// TestAWorkerThatStopsGivesBack: what it was at waits again, and costs no try.
func TestAWorkerThatStopsGivesBack(t *testing.T) {
	eachQueue(t, func(t *testing.T, q *Queue) {
		began, hold := make(chan string, 10), make(chan struct{})
		k := echo(began, hold)
		stop := working(t, q, 1, k)
		p := ask(t, k, q, Asker{}, "a")
		<-began
		stop()
		if p := become(t, q, p.ID, Waiting); p.Tries != 0 || p.Cause != "" {
			t.Errorf("given back: %+v", p)
		}
		close(hold)
		working(t, q, 1, k)
		become(t, q, p.ID, Done)
	})
}

// TestOwnersTakeTurns: who asked for much waits behind who asked for one, also when the
// others were asked for earlier, and what somebody waits for has a place of its own.
func TestOwnersTakeTurns(t *testing.T) {
	eachQueue(t, func(t *testing.T, q *Queue) {
		began, hold := make(chan string), make(chan struct{})
		k := echo(began, hold)
		var order []string
		next := func() { order = append(order, <-began) }
		for _, question := range []string{"a1", "a2", "a3", "a4"} {
			ask(t, k, q, Asker{Owner: "ada"}, question)
		}
		ask(t, k, q, Asker{Owner: "bo"}, "b1")
		working(t, q, 1, k)
		next() // a1
		ask(t, k, q, Asker{Owner: "cy"}, "c1")
		ask(t, k, q, Asker{Owner: "cy"}, "c2")
		ask(t, k, q, Asker{Owner: "dee", Waits: true}, "now")
		next() // while a1 is at work
		for range 6 {
			hold <- struct{}{}
			if order[len(order)-1] == "now" { // it or a1 ended, and only one of them lets another begin
				hold <- struct{}{}
			}
			next()
		}
		close(hold)
		if got := strings.Join(order, " "); got != "a1 now b1 a2 c1 a3 c2 a4" {
			t.Errorf("began in the order %s", got)
		}
	})
}

// TestANewerQueueIsLeftAlone opens tables that a newer program has brought further, River's
// or this package's: they are refused in one line.
func TestANewerQueueIsLeftAlone(t *testing.T) {
	folder, dsn := t.TempDir(), server.Database(t)
	o := Options{Program: "test"}
	for name, again := range map[string]func() (*Queue, error){
		"SQLite":     func() (*Queue, error) { return OpenFolder(t.Context(), folder, o) },
		"PostgreSQL": func() (*Queue, error) { return OpenDSN(t.Context(), dsn, o) },
	} {
		for _, newer := range []string{
			`INSERT INTO river_migration (line, version) VALUES ('main', 99)`,
			`INSERT INTO piece_db_version (version_id, is_applied) SELECT 99, is_applied FROM piece_db_version LIMIT 1`,
		} {
			q, err := again()
			if err != nil {
				t.Fatal(name, err)
			}
			if _, err := q.db.ExecContext(t.Context(), newer); err != nil {
				t.Fatal(name, err)
			}
			refused, err := again()
			if err == nil {
				refused.Close()
				t.Fatalf("%s: a newer queue was opened", name)
			}
			for _, word := range []string{"newer rinkpane", "version 99", "another store"} {
				if !strings.Contains(err.Error(), word) || strings.Contains(err.Error(), "\n") {
					t.Errorf("%s: %v: expected %q in one line", name, err, word)
				}
			}
			if _, err := q.db.ExecContext(t.Context(), `DELETE FROM river_migration WHERE version = 99`); err != nil {
				t.Fatal(name, err)
			}
			q.Close()
		}
	}
}

// TestWorkFindsTheValuesOfItsContext: a worker's owner tells the work something that no
// question holds, as how many cores it may take.
func TestWorkFindsTheValuesOfItsContext(t *testing.T) {
	type key struct{}
	q := inFolder(t, t.TempDir())
	k := Kind[string, string]{Name: "ask", Limit: time.Minute, Do: func(ctx context.Context, _ string, _ Bench) (string, error) {
		found, _ := ctx.Value(key{}).(string)
		return found, nil
	}}
	p := ask(t, k, q, Asker{}, "what is said?")
	ctx, stop := context.WithCancel(context.WithValue(context.Background(), key{}, "take one core"))
	ended := make(chan error, 1)
	go func() { ended <- q.Work(ctx, 1, k) }()
	become(t, q, p.ID, Done)
	if said, err := k.Answer(t.Context(), q, p.ID); said != "take one core" || err != nil {
		t.Errorf("%q, %v", said, err)
	}
	stop()
	if err := <-ended; err != nil {
		t.Error(err)
	}
}
