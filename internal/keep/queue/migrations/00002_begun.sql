-- +goose Up
-- When the last try of a piece began, in microseconds since 1970; 0 where a worker of an
-- earlier version began it. The job queue's own time of that is renewed while it works.
ALTER TABLE piece ADD COLUMN begun_us BIGINT NOT NULL DEFAULT 0;

-- +goose Down
ALTER TABLE piece DROP COLUMN begun_us;
