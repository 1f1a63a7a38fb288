package store

import (
	"context"
	"time"

	"example.org/rinkpane/internal/decide/custody"
)

// KeepPhoto keeps a photo; see [custody.Keeper].
func (s *Store) KeepPhoto(ctx context.Context, now time.Time, arena, who string, p custody.Photo) error {
	return s.do(ctx, `INSERT INTO photo (id, arena, kind, who, kept_us, body) VALUES ($1, $2, $3, $4, $5, $6) ON CONFLICT DO NOTHING`,
		p.Key(), arena, p.Kind, who, now.UnixMicro(), p.Data)
}

// Photo returns a photo; see [custody.Keeper].
func (s *Store) Photo(ctx context.Context, arena, key string) (p custody.Photo, err error) {
	if !storable(arena) || !storable(key) {
		return p, custody.ErrNoPhoto
	}
	err = s.db.QueryRowContext(ctx, `SELECT kind, body FROM photo WHERE arena = $1 AND id = $2`, arena, key).Scan(&p.Kind, &p.Data)
	return p, orNone(err, custody.ErrNoPhoto)
}
