-- +goose Up
-- Holes that a version renames, as JSON: [{"from": "B1", "to": "B9"}]; '' for none.
ALTER TABLE version ADD COLUMN renames TEXT NOT NULL DEFAULT '';

-- +goose Down
ALTER TABLE version DROP COLUMN renames;
