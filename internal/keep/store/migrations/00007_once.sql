-- +goose Up
-- The mark under which a page sent a version, so that it is saved once though it is sent
-- twice: "QUEUE.N"; '' for none.
ALTER TABLE version ADD COLUMN once TEXT NOT NULL DEFAULT '';

-- +goose Down
ALTER TABLE version DROP COLUMN once;
