-- +goose Up
CREATE TABLE person (
    name     TEXT PRIMARY KEY,
    role     TEXT NOT NULL,
    password TEXT NOT NULL,
    since_us BIGINT NOT NULL
);

CREATE TABLE session (
    token_key  TEXT PRIMARY KEY,
    person     TEXT NOT NULL REFERENCES person (name) ON DELETE CASCADE,
    expires_us BIGINT NOT NULL
);
CREATE INDEX session_person ON session (person);
CREATE INDEX session_expires ON session (expires_us);

-- +goose Down
DROP TABLE session;
DROP TABLE person;
