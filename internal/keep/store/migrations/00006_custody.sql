-- +goose Up
-- What happens to the holes of an arena. Events are only ever added. seq: from 1
-- without gaps for each arena, in the order in which they were kept; *_us:
-- microseconds, times since 1970, UTC; body: JSON.
CREATE TABLE event (
    id       TEXT PRIMARY KEY,
    arena    TEXT NOT NULL,
    seq      BIGINT NOT NULL CHECK (seq >= 1),
    told_us  BIGINT NOT NULL,
    ahead_us BIGINT NOT NULL,
    kept_us  BIGINT NOT NULL,
    who      TEXT NOT NULL,
    corrects TEXT NOT NULL,
    kind     TEXT NOT NULL,
    body     TEXT NOT NULL
);
CREATE UNIQUE INDEX event_seq ON event (arena, seq);

-- The last seq of each arena. Whoever keeps events holds this row until they are
-- durable, so that nobody reads a seq before those below it.
CREATE TABLE event_head (
    arena TEXT PRIMARY KEY,
    seq   BIGINT NOT NULL
);

-- Photos by their SHA-256, without metadata.
CREATE TABLE photo (
    id      TEXT NOT NULL,
    arena   TEXT NOT NULL,
    kind    TEXT NOT NULL,
    who     TEXT NOT NULL,
    kept_us BIGINT NOT NULL,
    body    BYTEA NOT NULL,
    PRIMARY KEY (arena, id)
);

-- +goose Down
DROP TABLE photo;
DROP TABLE event_head;
DROP TABLE event;
