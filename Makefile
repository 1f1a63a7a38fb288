# make quick  after a small change: what changed and what stands on it, no browser, no PostgreSQL
# make test   everything a change must pass, on a bare Debian machine with Go
# make soak   the properties on many new cases, for as long as that takes
# make bench  the benchmarks behind docs/performance.md
# make seen-to-fail  plants a defect per kind of check and expects each to turn red
# make release builds what is handed out, from a tagged tree: programs, packages, checksums
# make pictures  draws docs/pictures anew from the product

GO ?= go

# Files are named without this machine's folders, so that a copy of the tree in
# another folder (seen-to-fail) finds what was compiled before. Nobody opens the tests'
# programs in a debugger, and without what that needs they are linked in half the time.
export GOFLAGS := $(GOFLAGS) -trimpath -ldflags=-w

# As what is handed out is built; a test builds it, and then finds all of it compiled.
export CGO_ENABLED = 0

# Properties try the same cases on every run; make soak tries new ones.
export RAPID_SEED ?= 1

# Packages whose work is shared over cores or served to many at once: their
# tests run once more under the race detector, those of the browser apart.
RACE = $(sort $(dir $(shell grep -rlE --include=*.go --exclude=*_test.go '^[[:space:]]+go |"sync"|"sync/atomic"|"net/http"|"database/sql"' internal)))

# Packages with properties, tried on random cases.
SOAK = $(sort $(dir $(shell grep -rl --include=*_test.go 'pgregory.net/rapid' internal)))

# Not again under the race detector: what one visitor or one core computes, at length, to
# be held against another way of computing it.
RACE_SKIP = ReachBySampling|OcclusionMatchesRays|WedgeHoldsWhatIsSeen|TurnedAndMirroredHoles|MoreNeverSeesLess|PairsAreStatedBriefly|TooManyScores|FramingByBruteForce|FixedCamerasCount|EveryExamplePlans|MatchesCBC|CrewCutsBound|AnswersAreAsDescribed

# How long one package's tests may take: those of the desk drive a browser, and
# on a busy machine come near Go's own 10 minutes.
PATIENCE = -timeout 30m

.PHONY: quick test need format vet lint modules race unit soak bench seen-to-fail release pictures

quick:
	@GO="$(GO)" scripts/quick

# The order matters: cheap checks first, and go test's own lines last. Most of
# those between use one core for much of their time, so they run two at once.
test: need format vet
	@$(MAKE) --no-print-directory -j2 --output-sync=target race lint modules seen-to-fail
	@$(MAKE) --no-print-directory unit

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

# The longest first, so that no core waits for it at the end. What vet says, vet says above.
race: export CGO_ENABLED = 1
race:
	$(GO) test -vet=off -race -short -skip '$(RACE_SKIP)' $(PATIENCE) ./internal/decide/choose $(addprefix ./,$(RACE))

unit:
	$(GO) test -vet=off $(PATIENCE) ./internal/desk ./cmd/rinkpane ./internal/decide/choose ./...

# The seed is printed, so that what it finds can be made to happen again.
soak: export RAPID_SEED = $(shell date +%s)
soak: export RAPID_CHECKS = 2000
soak: export RINKPANE_SOAK = yes
soak:
	@echo "soak: RAPID_SEED=$(RAPID_SEED) RAPID_CHECKS=$(RAPID_CHECKS)"
	$(GO) test -timeout 4h -run 'Test' $(addprefix ./,$(SOAK))
	$(GO) test -timeout 1h -v -run 'TestPhonesWhileTheDeskIsKilled|TestListenersComeAndGo' ./cmd/rinkpane
	$(GO) test -timeout 1h -v -run 'TestEveryPieceEndsOnce' ./internal/keep/queue
	CGO_ENABLED=1 $(GO) test -timeout 1h -race -run 'TestPagesAskedTogether' ./internal/desk

bench:
	$(GO) test -run '^$$' -bench . -benchmem ./...

seen-to-fail:
	@scripts/seen-to-fail

release:
	@scripts/release

pictures:
	@scripts/pictures
