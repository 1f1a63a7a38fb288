-- +goose Up
-- What a document is: "arena", "kit" or "rules". All that are older are arenas.
ALTER TABLE document ADD COLUMN kind TEXT NOT NULL DEFAULT 'arena';

-- +goose Down
ALTER TABLE document DROP COLUMN kind;
