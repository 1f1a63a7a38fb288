package shelf_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
)

// Two arenas whose texts differ and have one mark: their SHA-256 begin with the same
// twelve digits. They were found among 40 million texts that count up, in a minute.
const (
	twin = "rinkpane: arena 1\nname: Twin\nunits: metric\nrink: {standard: international}\nboards: {height: 1.07 m}\n" +
		"panes:\n  - {id: P1, from: 0 m, width: 1.2 m, height: 1.8 m}\n# "
	oneTwin, otherTwin = twin + "0014926f\n", twin + "00954371\n"
)

// TestOneMarkIsNotOneText: what follows from a text is kept under its whole hash, so
// that two texts with one mark are two to undo, to plans and to proofs.
func TestOneMarkIsNotOneText(t *testing.T) {
	if arena.Mark([]byte(oneTwin)) != arena.Mark([]byte(otherTwin)) || oneTwin == otherTwin {
		t.Fatal("the twins no longer share a mark")
	}
	s, ctx := fresh(t), t.Context()
	doc, err := s.Read("twin", oneTwin)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := s.Add(ctx, "twin", doc, "Ada", "x"); err != nil {
		t.Fatal(err)
	}
	b, err := s.Open(ctx, "twin", 0)
	if err != nil {
		t.Fatal(err)
	}
	if _, _, err := s.Edit(ctx, b, []edit.Edit{{Do: edit.Text, Text: otherTwin}}, "Ada", ""); err != nil {
		t.Fatal(err)
	}
	if to, err := s.Steps(ctx, "twin"); err != nil || to.Undo != 1 || to.Redo != 0 || to.Undoes == "" || to.Redoes != "" {
		t.Errorf("%+v, %v: the second text counts as the first", to, err)
	}
	for n, text := range map[int]string{1: oneTwin, 2: otherTwin} {
		b, err := s.Open(ctx, "twin", n)
		if err != nil || string(b.Arena.Bytes()) != text || b.Revision != arena.Revision([]byte(text)) {
			t.Errorf("version %d is the other twin, %v", n, err)
		}
		if p, err := s.Plan(ctx, b); err != nil || p.Revision != b.Revision {
			t.Errorf("the plan of version %d is of another text, %v", n, err)
		}
	}
}

// TestRenamesInFreeText: a text that is typed anew renames a hole only where that is
// certain. The demo's hole B1 stands alone at its place.
func TestRenamesInFreeText(t *testing.T) {
	for name, x := range map[string]struct {
		change []string
		want   []revision.Rename
	}{
		"another id":              {[]string{"id: B1", "id: Corner"}, []revision.Rename{{From: "B1", To: "Corner"}}},
		"two other ids":           {[]string{"id: B1", "id: Y", "id: B2", "id: X"}, []revision.Rename{{From: "B1", To: "Y"}, {From: "B2", To: "X"}}},
		"an id and its height":    {[]string{"id: B1", "id: Corner", "height: 58 in", "height: 59 in"}, nil},
		"two that change names":   {[]string{"id: B1", "id: B2", "id: B2", "id: B1"}, nil},
		"nothing but the ledge":   {[]string{"ledge: 9 in", "ledge: 10 in"}, nil},
		"an id, and the ledge":    {[]string{"id: B1", "id: Corner", "ledge: 9 in", "ledge: 10 in"}, []revision.Rename{{From: "B1", To: "Corner"}}},
		"an id with its mentions": {[]string{"B1", "Corner"}, []revision.Rename{{From: "B1", To: "Corner"}}},
	} {
		t.Run(name, func(t *testing.T) {
			s, ctx := fresh(t), t.Context()
			if _, err := s.Add(ctx, "rink", document(t), "Ada", "x"); err != nil {
				t.Fatal(err)
			}
			b, err := s.Open(ctx, "rink", 0)
			if err != nil {
				t.Fatal(err)
			}
			text := strings.NewReplacer(x.change...).Replace(b.Version.Text)
			if text == b.Version.Text {
				t.Fatal("the demo has changed: nothing was replaced")
			}
			_, v, err := s.Edit(ctx, b, []edit.Edit{{Do: edit.Text, Text: text}}, "Ada", "")
			if err != nil || !slices.Equal(v.Renames, x.want) {
				t.Errorf("%v, %v, expected %v", v.Renames, err, x.want)
			}
		})
	}
}
