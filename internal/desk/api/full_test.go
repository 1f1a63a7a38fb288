package api_test

import (
	"context"
	"testing"

	"example.org/rinkpane/internal/desk/api"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/keep/store"
)

// fullDisk is a store whose disk has filled up: what a full disk does to the
// store itself is tested there.
type fullDisk struct {
	*store.Store
	full bool
}

func (f *fullDisk) Save(ctx context.Context, id, name string, base int, next revision.Draft) (revision.Version, error) {
	if f.full {
		return revision.Version{}, revision.ErrFull
	}
	return f.Store.Save(ctx, id, name, base, next)
}

func (f *fullDisk) Add(ctx context.Context, kind revision.Kind, id, name string, first revision.Draft) (revision.Version, error) {
	if f.full {
		return revision.Version{}, revision.ErrFull
	}
	return f.Store.Add(ctx, kind, id, name, first)
}

// TestFullDiskLosesNothing: the answer says so, and the same request passes once
// there is room.
func TestFullDiskLosesNothing(t *testing.T) {
	keeper := &fullDisk{Store: folderStore(t)}
	c := call(t, keeper)
	edit := `{"base": 1, "edits": [{"do": "set", "path": "boards.ledge", "value": "10 in"}]}`
	text := c.text("quillhaven", 0)
	keeper.full = true
	for path, body := range map[string]string{
		demo + "/edits": edit, demo + "/restore": `{"base": 1, "version": 1}`, "/api/arenas": `{"text": ` + quote(text) + `}`,
	} {
		if p := want[api.Problem](c, 507, "POST", path, body); p.Detail != revision.ErrFull.Error() {
			t.Errorf("%s: %s", path, p.Detail)
		}
	}
	keeper.full = false
	if s := want[api.Saved](c, 200, "POST", demo+"/edits", edit); s.Version.Number != 2 {
		t.Errorf("%+v", s)
	}
}
