package arena_test

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/arena"
)

const start = "rinkpane: arena 1\nname: x\nunits: metric\nrink: {standard: international}\nboards: {height: 1 m}\n"

// endless is a file that never ends; it counts what was taken of it.
type endless struct{ taken int }

func (e *endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = 'a'
	}
	e.taken += len(p)
	return len(p), nil
}

func TestHugeFileIsNotReadWhole(t *testing.T) {
	e := new(endless)
	_, err := arena.Read("huge.yaml", e)
	if err == nil || !strings.Contains(err.Error(), "huge.yaml: is larger than") {
		t.Errorf("got %v", err)
	}
	if e.taken > 2*arena.MaxBytes {
		t.Errorf("took %d bytes of it", e.taken)
	}
}

func TestListsHaveLimits(t *testing.T) {
	lists := map[string]struct {
		most int
		item string
	}{
		"panes":         {arena.MaxPanes, "{id: P%d, width: 60 mm, height: 1 m}"},
		"holes":         {arena.MaxHoles, "{id: H%d}"},
		"low-windows":   {arena.MaxWindows, "{id: W%d}"},
		"zones":         {arena.MaxZones, "{id: Z%d}"},
		"dispensations": {arena.MaxDispensations, "{rule: r%d}"},
		"lenses":        {arena.MaxLenses, "l%d"},
	}
	for name, l := range lists {
		var b strings.Builder
		b.WriteString(start + name + ":\n")
		for i := range l.most + 1 {
			fmt.Fprintf(&b, "  - "+l.item+"\n", i)
		}
		problem(t, b.String(), name, fmt.Sprintf("has %d entries; at most %d are read", l.most+1, l.most))
	}
}

// problem asserts that a text is refused with a field and words.
func problem(t *testing.T, text, field, words string) {
	t.Helper()
	d, err := arena.Read("my.yaml", strings.NewReader(text))
	if err == nil {
		_, err = d.Check()
	}
	var p *form.Problem
	if !errors.As(err, &p) {
		t.Errorf("%s: got %v", field, err)
		return
	}
	if p.Line == 0 || p.Column == 0 || p.Field != field || !strings.Contains(p.Text, words) {
		t.Errorf("got %v, want field %s and %q", p, field, words)
	}
}

func TestProblemsNameTheirField(t *testing.T) {
	pane := "panes:\n  - {id: P1, width: 2 m, height: 1.8 m}\n"
	cases := []struct{ text, field, words string }{
		{start + "panes:\n  - {id: P1, width: 2 m}\n", "panes[P1].height", "for all of them as height: under glass"},
		{start + "panes:\n  - {id: P1, from: 170 m, width: 2 m, height: 1 m}\n", "panes[P1].from", "past the boards' end"},
		{start + "panes:\n  - {id: P1, from: 30 m, width: 2 m, height: 1 m}\n  - {id: P2, from: 3 m, width: 2 m, height: 1 m}\n", "panes[P2].from", "starts at 3 m, 29 m before pane P1 ends"},
		{start + "panes:\n  - {id: P/1, width: 2 m, height: 1 m}\n", "panes[P/1].id", "cannot be an id"},
		{start + "panes:\n  - {width: 2 m, height: 1 m}\n", "panes[#1].id", "missing"},
		{start + "panes:\n  - {id: P1, width: 2 m, height: 1 m, material: glas}\n", "panes[P1].material", "write acrylic"},
		{start + pane + "holes:\n  - {id: H1, station: 1 m, height: 1.4 m, size: 2 m x 1 m}\n", "holes[H1].size", "out of range"},
		{start + pane + "holes:\n  - {id: H1, station: 1 m, height: 1.4 m, size: 100 mm x 80 mm, corner-radius: 41 mm}\n", "holes[H1].corner-radius", "write at most 40 mm"},
		{start + pane + "holes:\n  - {id: H1, height: 1.4 m, size: 100 mm x 80 mm}\n", "holes[H1].place", "is missing; write place"},
		{start + pane + "holes:\n  - {id: H1, place: 1 m, station: 1 m, height: 1.4 m, size: 100 mm x 80 mm}\n", "holes[H1].station", "keep one"},
		{start + pane + "holes:\n  - {id: H1, place: {corner: A-box, landmark: goal}, height: 1.4 m, size: 100 mm x 80 mm}\n", "holes[H1].place.landmark", "write goal-line"},
		{start + pane + "holes:\n  - {id: H1, place: 1 m, height: 1.03 m, size: 100 mm x 80 mm}\n", "holes[H1].height", "reaches 10 mm past the pane's bottom edge (the top of the boards); move it"},
		{start + pane + "holes:\n  - {id: H1, place: 1 m, height: 1.4 m, size: 100 mm x 80 mm, cover: maybe}\n", "holes[H1].cover", "none or yes"},
		{start + "low-windows:\n  - {id: W1, station: 1 m, height: 0.9 m, size: 300 x 300 mm, kind: opening}\n", "low-windows[W1].height", "between the ice and the boards' top"},
		{start + "zones:\n  - {id: Z1, kind: bench, from: 1 m, to: 1 m}\n", "zones[Z1].to", "ends where it starts"},
		{start + "light: {mains: 55 Hz}\n", "light.mains", "50 Hz or 60 Hz"},
		{start + "light: {readings: [{x: 40 m, y: 0 m, light: 800}]}\n", "light.readings[#1].x", "off the ice"},
		{start + "light: {readings: [{x: 0 m, y: 0 m, light: 0}]}\n", "light.readings[#1].light", "lx; write lux"},
		{start + "light: {readings: [{x: 1, y: 0 m, light: 10}]}\n", "light.readings[#1].x", "bare number"},
		{start + pane + "dispensations: [{rule: r, by: b, reference: c, date: 2026-13-01}]\n", "dispensations[#1].date", "no date"},
		{start + pane + "dispensations: [{rule: r, by: b, reference: c, date: 2026-03-01, holes: [H9]}]\n", "dispensations[#1].holes[#1]", "no hole"},
		{start + pane + "dispensations: [{rule: r, by: b, reference: c, date: 2026-03-01, holes: []}]\n", "dispensations[#1].holes", "is empty"},
		{start + "lenses: [a, b, a]\n", "lenses[#3]", "listed twice"},
		{strings.Replace(start, "{standard: international}", "{length: 60 m}", 1), "rink.width", "missing"},
		{strings.Replace(start, "{standard: international}", "{length: 60 m, width: 30 m, corner-radius: 20 m}", 1), "rink.corner-radius", "radius"},
		{strings.Replace(start, "{standard: international}", "{standard: international, markings: {goal-line: 31 m}}", 1), "rink.markings.goal-line", "goal"},
		{strings.Replace(start, "height: 1 m", "height: 9 m", 1), "boards.height", "out of range"},
		{strings.Replace(start, "arena 1", "arena 2", 1), "rinkpane", "arena 1"},
		{strings.Replace(start, "name: x", "name: ' '", 1), "name", "blank"},
		{strings.Replace(start, "name: x", "name: "+strings.Repeat("x", 3000), 1), "name", "keep it under"},
		{strings.Replace(start, "name: x", `name: "a\x1b[2Jb"`, 1), "name", "control character"},
	}
	for _, c := range cases {
		problem(t, c.text, c.field, c.words)
	}
}

// Junk of any kind gives an error; nothing panics.
func TestJunkIsRefused(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		junk := make([]byte, rnd.IntN(4096))
		for i := range junk {
			junk[i] = byte(rnd.UintN(256))
		}
		if _, err := arena.Read("junk", bytes.NewReader(junk)); err == nil && len(junk) > 8 {
			t.Fatalf("read %q", junk)
		}
	}
	if _, err := arena.Read("broken", io.MultiReader(strings.NewReader(start), brokenReader{})); err == nil || !strings.Contains(err.Error(), "broken: the disk is gone") {
		t.Errorf("got %v", err)
	}
}

type brokenReader struct{}

func (brokenReader) Read([]byte) (int, error) { return 0, errors.New("the disk is gone") }
