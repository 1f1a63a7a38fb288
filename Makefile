# make quick  after a small change: what changed and what stands on it, no browser, no PostgreSQL
# make test   everything a change must pass, on a bare Debian machine with Go
# make bench  the benchmarks behind docs/performance.md
# make seen-to-fail  plants a defect per kind of check and expects each to turn red
# make pictures  draws docs/pictures anew from the product

GO ?= go

# Packages whose work is shared over cores or served to many at once: their
# tests run once more under the race detector.
RACE = ./internal/decide/choose ./internal/draw/cut ./internal/desk/... ./internal/answer/fit ./internal/answer/frame ./internal/decide/plan ./internal/survey/play ./internal/answer/puck ./internal/answer/sight ./internal/keep/store

# How long one package's tests may take: those of the desk drive a browser, and
# on a busy machine under the race detector come near Go's own 10 minutes.
PATIENCE = -timeout 30m

.PHONY: quick test need format vet lint modules race unit bench seen-to-fail pictures

quick:
	@GO="$(GO)" scripts/quick

# The order matters: cheap checks first, and go test's own lines last.
test: need format vet lint modules seen-to-fail race unit

need:
	@scripts/need
	@scripts/axe >/dev/null

format:
	@scripts/check-format

vet:
	$(GO) vet ./...

lint:
	$(GO) tool staticcheck ./...

modules:
	@scripts/check-modules

race:
	$(GO) test -race $(PATIENCE) $(RACE)

unit:
	$(GO) test $(PATIENCE) ./...

bench:
	$(GO) test -run '^$$' -bench . -benchmem ./...

seen-to-fail:
	@scripts/seen-to-fail

pictures:
	@scripts/pictures
