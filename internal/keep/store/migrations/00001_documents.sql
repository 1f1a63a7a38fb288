-- +goose Up
CREATE TABLE document (
    id   TEXT PRIMARY KEY,
    name TEXT NOT NULL,
    head BIGINT NOT NULL CHECK (head >= 1),
    away BIGINT NOT NULL DEFAULT 0 CHECK (away IN (0, 1))
);

-- Versions are only ever added. at_us: microseconds since 1970, UTC.
CREATE TABLE version (
    document TEXT NOT NULL REFERENCES document (id),
    number   BIGINT NOT NULL CHECK (number >= 1),
    parent   BIGINT NOT NULL,
    at_us    BIGINT NOT NULL,
    who      TEXT NOT NULL,
    what     TEXT NOT NULL,
    body     TEXT NOT NULL,
    PRIMARY KEY (document, number)
);

-- +goose Down
DROP TABLE version;
DROP TABLE document;
