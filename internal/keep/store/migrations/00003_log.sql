-- +goose Up
-- Who came in and who let them. at_us: microseconds since 1970, UTC.
CREATE TABLE log_entry (
    kind   TEXT NOT NULL,
    at_us  BIGINT NOT NULL,
    who    TEXT NOT NULL,
    what   TEXT NOT NULL,
    origin TEXT NOT NULL
);
CREATE INDEX log_entry_at ON log_entry (kind, at_us);

-- One row: what the marks of known browsers are signed with.
CREATE TABLE secret (
    name  TEXT PRIMARY KEY,
    value TEXT NOT NULL
);

-- +goose Down
DROP TABLE secret;
DROP TABLE log_entry;
