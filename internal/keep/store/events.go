package store

import (
	"context"
	"database/sql"
	"fmt"
	"maps"
	"slices"
	"strings"
	"time"

	"example.org/rinkpane/internal/decide/custody"
)

var _ custody.Keeper = (*Store)(nil)

// Append keeps events; see [custody.Keeper]. Those that are given while a transaction
// is being written go together into the next one, so that many wait for the disk once.
func (s *Store) Append(ctx context.Context, now time.Time, events []custody.Event) ([]custody.Receipt, error) {
	w := &waiting{now: now.UTC().Truncate(time.Microsecond), done: make(chan struct{})}
	for _, e := range events {
		r := custody.Receipt{ID: e.ID, Refused: e.Check()}
		if w.receipts = append(w.receipts, r); r.Refused == nil {
			w.events = append(w.events, e)
		}
	}
	if len(w.events) == 0 {
		return w.receipts, nil
	}
	s.together.add(w)
	for {
		select {
		case <-w.done:
			return w.receipts, w.err
		case <-ctx.Done():
			return nil, ctx.Err()
		case s.together.turn <- struct{}{}: // this one writes for all that wait
			s.write(s.together.take())
			<-s.together.turn
		}
	}
}

// Since returns an arena's events after a Seq; see [custody.Keeper].
func (s *Store) Since(ctx context.Context, arena string, after int64, most int) ([]custody.Event, error) {
	if !storable(arena) {
		return nil, nil
	}
	return list(ctx, s.db, scanEvent, `SELECT `+eventColumns+` FROM event WHERE arena = $1 AND seq > $2 ORDER BY seq LIMIT $3`, arena, after, most)
}

// Arenas lists the arenas that have events, by id.
func (s *Store) Arenas(ctx context.Context) ([]string, error) {
	return list(ctx, s.db, scanText, `SELECT arena FROM event_head WHERE seq > 0 ORDER BY arena`)
}

// write writes what waits in one transaction and lets those go who wait for it.
func (s *Store) write(all []*waiting) {
	if len(all) == 0 {
		return
	}
	ctx, cancel := context.WithTimeout(context.Background(), writeTimeout)
	defer cancel()
	var last map[string]int64
	keep := func(tx *sql.Tx) (err error) {
		last, err = writeEvents(ctx, tx, all)
		return err
	}
	err := s.inTx(ctx, keep)
	if isDuplicate(err) { // another program kept one of these in another arena at this moment
		err = s.inTx(ctx, keep)
	}
	endAll(all, Plain(err))
	if err == nil {
		s.lasts.tell(last)
	}
}

// writeTimeout is how long a transaction may take until those who wait are told that
// the database does not answer.
const writeTimeout = 30 * time.Second

// writeEvents keeps the events of all that wait and notes a receipt for each. It returns
// the last Seq of each of their arenas.
func writeEvents(ctx context.Context, tx *sql.Tx, all []*waiting) (map[string]int64, error) {
	heads, err := lockHeads(ctx, tx, all)
	if err != nil {
		return nil, err
	}
	kept, err := keptBefore(ctx, tx, all)
	if err != nil {
		return nil, err
	}
	var fresh []custody.Event
	for _, w := range all {
		for i := range w.receipts {
			w.receipts[i].Seq, w.receipts[i].Again = 0, false // of a transaction that failed
		}
		for _, e := range w.events {
			before, is := kept[e.ID]
			if !is {
				heads[e.Arena]++
				e.Seq, e.Kept = heads[e.Arena], w.now
				kept[e.ID], before = e, e
				fresh = append(fresh, e)
			}
			w.note(e, before, is)
		}
	}
	if len(fresh) == 0 {
		return heads, nil
	}
	for some := range slices.Chunk(fresh, rowsAtOnce) {
		if err := insertEvents(ctx, tx, some); err != nil {
			return nil, err
		}
	}
	for arena, seq := range heads {
		if _, err := tx.ExecContext(ctx, `UPDATE event_head SET seq = $1 WHERE arena = $2`, seq, arena); err != nil {
			return nil, err
		}
	}
	return heads, nil
}

// lockHeads returns the last Seq of each arena, and holds them until the transaction
// ends, in one order for all programs.
func lockHeads(ctx context.Context, tx *sql.Tx, all []*waiting) (map[string]int64, error) {
	heads := map[string]int64{}
	for _, w := range all {
		for _, e := range w.events {
			heads[e.Arena] = 0
		}
	}
	for _, arena := range slices.Sorted(maps.Keys(heads)) {
		var seq int64
		err := tx.QueryRowContext(ctx, `INSERT INTO event_head (arena, seq) VALUES ($1, 0)
			ON CONFLICT (arena) DO UPDATE SET seq = event_head.seq RETURNING seq`, arena).Scan(&seq)
		if err != nil {
			return nil, err
		}
		heads[arena] = seq
	}
	return heads, nil
}

// keptBefore returns the events of those ids that are kept already.
func keptBefore(ctx context.Context, tx *sql.Tx, all []*waiting) (map[custody.ID]custody.Event, error) {
	var ids []any
	for _, w := range all {
		for _, e := range w.events {
			ids = append(ids, string(e.ID))
		}
	}
	kept := map[custody.ID]custody.Event{}
	for some := range slices.Chunk(ids, idsAtOnce) {
		found, err := list(ctx, tx, scanEvent, `SELECT `+eventColumns+` FROM event WHERE id IN `+places(0, len(some)), some...)
		if err != nil {
			return nil, err
		}
		for _, e := range found {
			kept[e.ID] = e
		}
	}
	return kept, nil
}

// How many go into one statement: databases bound its parameters.
const (
	rowsAtOnce = 100
	idsAtOnce  = 1000
)

const eventColumns = `id, arena, seq, told_us, ahead_us, kept_us, who, corrects, kind, body`

func insertEvents(ctx context.Context, tx *sql.Tx, events []custody.Event) error {
	columns := strings.Count(eventColumns, ",") + 1
	var rows []string
	var args []any
	for i, e := range events {
		kind, body := custody.Encode(e.Fact)
		rows = append(rows, places(i, columns))
		args = append(args, string(e.ID), e.Arena, e.Seq, e.Told.UnixMicro(), e.Ahead.Microseconds(), e.Kept.UnixMicro(), e.Who, string(e.Corrects), kind, body)
	}
	_, err := tx.ExecContext(ctx, `INSERT INTO event (`+eventColumns+`) VALUES `+strings.Join(rows, ", "), args...)
	return err
}

// places returns the parameters of row i of a statement: "($11, $12, $13)".
func places(i, columns int) string {
	var b strings.Builder
	for c := range columns {
		fmt.Fprintf(&b, ", $%d", i*columns+c+1)
	}
	return "(" + b.String()[2:] + ")"
}

func scanEvent(row scanner) (custody.Event, error) {
	var e custody.Event
	var told, ahead, kept int64
	var kind, body string
	if err := row.Scan(&e.ID, &e.Arena, &e.Seq, &told, &ahead, &kept, &e.Who, &e.Corrects, &kind, &body); err != nil {
		return e, Plain(err)
	}
	e.Told, e.Kept, e.Ahead = time.UnixMicro(told).UTC(), time.UnixMicro(kept).UTC(), time.Duration(ahead)*time.Microsecond
	var err error
	if e.Fact, err = custody.Decode(kind, body); err != nil {
		return e, fmt.Errorf("store: event %s: %w", e.ID, err)
	}
	return e, nil
}

func scanText(row scanner) (s string, err error) { return s, Plain(row.Scan(&s)) }
