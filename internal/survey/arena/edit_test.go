package arena_test

import (
	"fmt"
	"io/fs"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/rink"
)

// example reads one of the examples.
func example(t rapid.TB, name string) *arena.Document {
	t.Helper()
	f, err := examples.Files.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	d, err := arena.Read(name, f)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func checked(t rapid.TB, d *arena.Document) arena.Arena {
	t.Helper()
	a, err := d.Check()
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func names(t rapid.TB) []string {
	t.Helper()
	list, err := fs.Glob(examples.Files, "*.yaml")
	if err != nil || len(list) < 3 {
		t.Fatalf("examples: %v, %v", list, err)
	}
	return list
}

// changed counts the lines that differ between two texts outside their common
// head and tail.
func changed(before, after []byte) (gone, come int) {
	a, b := strings.Split(string(before), "\n"), strings.Split(string(after), "\n")
	for len(a) > 0 && len(b) > 0 && a[0] == b[0] {
		a, b = a[1:], b[1:]
	}
	for len(a) > 0 && len(b) > 0 && a[len(a)-1] == b[len(b)-1] {
		a, b = a[:len(a)-1], b[:len(b)-1]
	}
	return len(a), len(b)
}

func TestUntouchedDocumentKeepsItsBytes(t *testing.T) {
	for _, name := range names(t) {
		want, err := fs.ReadFile(examples.Files, name)
		if err != nil {
			t.Fatal(err)
		}
		if got := example(t, name).Bytes(); string(got) != string(want) {
			t.Errorf("%s: read and written it differs", name)
		}
	}
}

// Any field of any hole, pane or zone set anew changes one line, and the arena
// read back has just that.
func TestEditChangesItsLineOnly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := example(t, rapid.SampledFrom(names(t)).Draw(t, "example"))
		before := checked(t, d)
		if len(before.Holes) == 0 {
			t.Fatal("an example without holes")
		}
		i := rapid.IntRange(0, len(before.Holes)-1).Draw(t, "hole")
		h := before.Holes[i]
		e := rapid.SampledFrom([]struct{ field, text string }{
			{"state", "off"}, {"rounding", "2 mm"}, {"note", "new: with a colon # and a sign"},
			{"size", "100 x 90 mm"}, {"corner-radius", "7 mm"}, {"height", h.Height.Exact(unit.Metric)},
		}).Draw(t, "edit")
		next, err := d.Set(fmt.Sprintf("holes[%s].%s", h.ID, e.field), form.Text(e.text))
		if err != nil {
			t.Fatal(err)
		}
		after := checked(t, next)
		if gone, come := changed(d.Bytes(), next.Bytes()); gone > 1 || come > 1 {
			t.Fatalf("%s of %s: %d lines went, %d came", e.field, h.ID, gone, come)
		}
		want := before.Holes[i]
		switch e.field {
		case "state":
			want.State = glass.Off
		case "rounding":
			want.Rounding = unit.Known(2 * unit.Millimetre)
		case "note":
			want.Note = e.text
		case "size":
			want.Size = unit.Size{W: 0.1, H: 0.09}
		case "corner-radius":
			want.Corner = unit.Known(unit.Length(0.007))
		}
		if got := after.Holes[i]; got != want {
			t.Fatalf("%s of %s: got %+v, want %+v", e.field, h.ID, got, want)
		}
	})
}

func TestAddedHoleReadsBack(t *testing.T) {
	for _, name := range names(t) {
		d := example(t, name)
		a := checked(t, d)
		p := a.Panes[2]
		h := glass.Hole{
			ID: "new", Height: 58 * unit.Inch, Size: unit.Size{W: 5.5 * unit.Inch, H: 4.5 * unit.Inch},
			Corner: unit.Known(unit.Inch / 2), Rounding: unit.Known(unit.Inch / 8),
			Cover: unit.Known(glass.Cover{Present: true, Material: glass.Acrylic, Tether: unit.Known(true)}),
			State: glass.Planned, Note: "put here by hand",
		}
		next, err := d.AddHole(h, a.PlaceOf(p.From+p.Width/2), a.Units)
		if err != nil {
			t.Fatal(err)
		}
		if gone, come := changed(d.Bytes(), next.Bytes()); gone > 0 || come < 9 {
			t.Errorf("%s: %d lines went, %d came", name, gone, come)
		}
		got, _ := checked(t, next).Hole("new")
		if off := got.Station - (p.From + p.Width/2); max(off, -off) > 1e-9 {
			t.Errorf("%s: the new hole stands %g m from its place", name, off.Metres())
		}
		h.Station, h.Pane = got.Station, p.ID
		if got != h {
			t.Errorf("%s: got %+v, want %+v", name, got, h)
		}
		back, err := next.RemoveHole("new")
		if err != nil {
			t.Fatal(err)
		}
		if string(back.Bytes()) != string(d.Bytes()) && strings.Count(string(back.Bytes()), "\n")-strings.Count(string(d.Bytes()), "\n") > 1 {
			t.Errorf("%s: added and removed it differs by more than a blank line", name)
		}
	}
}

func TestMovedHole(t *testing.T) {
	d := example(t, "brennholm.yaml")
	cases := []struct {
		hole string
		to   arena.Place
		line string
	}{
		{"A-T", arena.FromLandmark(rink.ABench, rink.CircleTop, -0.75), "place: {corner: A-bench, landmark: circle-top, offset: -750 mm}"},
		{"old-A", arena.AtStation(99), "station: 99 m "},
		{"old-A", arena.FromLandmark(rink.ABox, rink.CircleTop, -1), "place: {corner: A-box, landmark: circle-top, offset: -1 m}"},
		{"B-G", arena.AtStation(27), "place: 27 m"},
	}
	for _, c := range cases {
		next, err := d.MoveHole(c.hole, c.to, unit.Metric)
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(string(next.Bytes()), c.line) {
			t.Errorf("%s: no line %q", c.hole, c.line)
		}
		got, _ := checked(t, next).Hole(c.hole)
		if want, ok := c.to.Station.Get(); ok && got.Station != want {
			t.Errorf("%s stands at %v", c.hole, got.Station)
		}
	}
}

// Without the hole a dispensation names alone, it would cover every hole.
func TestRemovedHoleLeavesItsDispensations(t *testing.T) {
	d := example(t, "brennholm.yaml")
	one, err := d.RemoveHole("B-T")
	if err != nil {
		t.Fatal(err)
	}
	if got := checked(t, one).Dispensations; len(got) != 1 || !slices.Equal(got[0].Holes, []string{"B-G"}) {
		t.Errorf("after one hole: %+v", got)
	}
	none, err := one.RemoveHole("B-G")
	if err != nil {
		t.Fatal(err)
	}
	if got := checked(t, none).Dispensations; len(got) != 0 {
		t.Errorf("after both: %+v", got)
	}
}

func TestPlaceOfFindsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := checked(t, example(t, rapid.SampledFrom(names(t)).Draw(t, "example")))
		s := unit.Length(rapid.Float64Range(0, 0.9999).Draw(t, "share")) * a.Rink.Perimeter()
		p := a.PlaceOf(s)
		got, ok := p.Station.Get()
		if !ok {
			var err error
			if got, err = a.Rink.FromLandmark(p.Corner, p.Landmark, p.Offset); err != nil {
				t.Fatal(err)
			}
		}
		if off := got - s; max(off, -off) > 1e-9 {
			t.Fatalf("station %v told as %s lies %g m off", s, p.Say(unit.Metric), off.Metres())
		}
	})
}
