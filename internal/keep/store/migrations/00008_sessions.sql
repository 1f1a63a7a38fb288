-- +goose Up
-- What tells a person's sessions apart. A program of before opens sessions without it.
ALTER TABLE session ADD COLUMN since_us BIGINT NOT NULL DEFAULT 0;
ALTER TABLE session ADD COLUMN address TEXT NOT NULL DEFAULT '';
ALTER TABLE session ADD COLUMN device TEXT NOT NULL DEFAULT '';

-- +goose Down
ALTER TABLE session DROP COLUMN device;
ALTER TABLE session DROP COLUMN address;
ALTER TABLE session DROP COLUMN since_us;
