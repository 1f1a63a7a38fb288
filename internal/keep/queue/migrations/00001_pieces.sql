-- +goose Up
-- Pieces of long work: what is asked, how far it is, what came of it. Who does a piece, when
-- and how often it is tried stands in the tables of the job queue, by the number in job.
CREATE TABLE piece (
	id          TEXT PRIMARY KEY, -- SHA-256 of kind, program and question
	kind        TEXT NOT NULL,
	about       TEXT NOT NULL,    -- for people
	owner       TEXT NOT NULL,    -- '' where nobody signs in
	question    TEXT NOT NULL,    -- JSON
	asked_us    BIGINT NOT NULL,
	job         BIGINT NOT NULL DEFAULT 0,
	stage       TEXT NOT NULL DEFAULT '',
	share       DOUBLE PRECISION NOT NULL DEFAULT 0,
	cause       TEXT NOT NULL DEFAULT '', -- why the last try failed
	failures    INTEGER NOT NULL DEFAULT 0,
	given_up    INTEGER NOT NULL DEFAULT 0,
	answer      TEXT NOT NULL DEFAULT '', -- JSON; '' until there is one
	answered_us BIGINT NOT NULL DEFAULT 0
);
CREATE INDEX piece_asked ON piece (asked_us);

-- Whose turn it is: the turn of each owner's last piece. The owner '' stands in the row
-- ':' and the turn that is being worked in the row '.'.
CREATE TABLE turn (
	owner TEXT PRIMARY KEY,
	tag   BIGINT NOT NULL
);

-- +goose Down
DROP TABLE turn;
DROP TABLE piece;
