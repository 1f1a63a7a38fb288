package book

import (
	"bytes"
	"context"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/draw/cut"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
)

const smallArena = `rinkpane: arena 1
name: Test Rink
place: Nowhere
units: metric
rink: {standard: international}
boards: {height: 1.07 m, ledge: 200 mm, setback: 30 mm}
glass: {height: 1.8 m, thickness: 12 mm, material: acrylic}
panes:
  - {id: P1, from: 20 m, width: 2 m}
  - {id: P2, from: 24 m, width: 2 m, curved: yes}
holes:
  - {id: H1, place: 21 m, height: 1.5 m, size: 140 mm x 115 mm, corner-radius: 12 mm, rounding: 3 mm, cover: {material: acrylic, tether: yes}}
  - {id: H2, place: 25 m, height: 1.5 m, size: 90 mm x 60 mm, note: "A <narrow> one & low."}
dispensations:
  - {rule: no-opening, by: The league, reference: "L-17", date: 2026-01-31}
lenses: [70-200]
`

func document(t testing.TB, text string) *arena.Document {
	t.Helper()
	doc, err := arena.Read("test.yaml", strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

func maker(t testing.TB) plan.Maker {
	t.Helper()
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	set, err := rules.Shipped("common-practice")
	if err != nil {
		t.Fatal(err)
	}
	sets, err := rules.InForce(set)
	if err != nil {
		t.Fatal(err)
	}
	return plan.Maker{Kit: k, Rules: sets}
}

func options(t testing.TB, paper string) Options {
	t.Helper()
	p, err := sheet.ParsePaper(paper)
	if err != nil {
		t.Fatal(err)
	}
	return Options{Paper: p, Cut: cut.DefaultOptions(), Spares: cut.DefaultSpareOptions(), Creator: "test"}
}

// content is an arena's book. Books are gathered once each: pictures cost time, and
// no test may change what it is given.
func content(t testing.TB, text, paper string, sys unit.System) Content {
	t.Helper()
	made.Lock()
	defer made.Unlock()
	c, ok := made.books[asked{text, sys}]
	if !ok {
		c = fresh(t, text, paper, sys)
		made.books[asked{text, sys}] = c
	}
	c.Options.Paper = options(t, paper).Paper
	return c
}

type asked struct {
	text string
	sys  unit.System
}

var made = struct {
	sync.Mutex
	books map[asked]Content
}{books: map[asked]Content{}}

func fresh(t testing.TB, text, paper string, sys unit.System) Content {
	t.Helper()
	o := options(t, paper)
	o.Units = sys
	c, err := Gather(context.Background(), maker(t), document(t, text), o)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// example is the text of one of the example arenas.
func example(t testing.TB, name string) string {
	t.Helper()
	text, err := os.ReadFile("../../../examples/" + name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func chaptersOf(t testing.TB, c Content) []bound {
	t.Helper()
	out, err := c.bind(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func TestGatherRefuses(t *testing.T) {
	bare := smallArena[:strings.Index(smallArena, "holes:")]
	if _, err := Gather(context.Background(), maker(t), document(t, bare), options(t, "a4")); err == nil || !strings.Contains(err.Error(), "no working hole") {
		t.Errorf("no holes: %v", err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := Gather(ctx, maker(t), document(t, smallArena), options(t, "a4")); !errors.Is(err, context.Canceled) {
		t.Errorf("cancelled: %v", err)
	}
	if _, err := content(t, smallArena, "a4", unit.Metric).PDF(ctx); !errors.Is(err, context.Canceled) {
		t.Errorf("setting the pages, cancelled: %v", err)
	}
}

// The book's own text keeps clear of itself and inside the frame on every
// paper; pictures are held to that by package chart.
func TestNoTextOverlaps(t *testing.T) {
	texts := 0
	for _, c := range []Content{content(t, smallArena, "a4", unit.Metric), content(t, smallArena, "letter", unit.Imperial), content(t, smallArena, "tabloid", unit.Imperial)} {
		for _, ch := range chaptersOf(t, c) {
			for _, d := range ch.pages {
				texts += checkWords(t, d)
			}
		}
	}
	if texts < 1000 {
		t.Fatalf("only %d texts met", texts)
	}
}

func checkWords(t *testing.T, d *sheet.Drawing) int {
	t.Helper()
	type words struct {
		text string
		box  sheet.Rect
	}
	var all []words
	var follow func([]*sheet.Element, sheet.Style)
	follow = func(items []*sheet.Element, base sheet.Style) {
		for _, e := range items {
			style := d.Styles.Resolve(e.Class, base)
			switch s := e.Shape.(type) {
			case *sheet.Group:
				if s.Offset == (sheet.Point{}) { // what is placed elsewhere is a picture
					follow(s.Items, style)
				}
			case sheet.Text:
				all = append(all, words{s.S, s.Box(style)})
			}
		}
	}
	follow(d.Items, sheet.Style{})
	paper := sheet.Rect{W: d.W, H: d.H}
	for i, a := range all {
		if !paper.Contains(a.box) {
			t.Errorf("%s: %q leaves the paper: %+v", d.Title, a.text, a.box)
		}
		for _, b := range all[:i] {
			if a.box.Inset(0.15).Overlaps(b.box.Inset(0.15)) {
				t.Errorf("%s: %q lies on %q", d.Title, a.text, b.text)
			}
		}
	}
	return len(all)
}

// What does not fit a column goes on behind the page, as wide as the column was.
func TestColumnsRunOver(t *testing.T) {
	s := content(t, smallArena, "a4", unit.Metric).setter()
	var wide, right []float64
	long := func(f flow) {
		for range 60 {
			f.Notes("One sentence after another until the column is full, and then some more of them.")
			wide = append(wide, f.(paperFlow).Room().W)
		}
	}
	short := func(f flow) {
		f.Notes("short")
		right = append(right, f.(paperFlow).Room().X-s.grid.area.X-wide[0])
	}
	set := s.set(chapter{id: "x", title: "Columns", leaves: []leaf{{columns: []column{{0.4, []part{long}}, {0.6, []part{short}}}}}})
	if n := len(set.pages); n < 2 || slices.Min(wide) != slices.Max(wide) {
		t.Errorf("%d pages, columns %g to %g mm wide", n, slices.Min(wide), slices.Max(wide))
	}
	if gap := right[0]; math.Abs(gap-columnGap) > 1e-9 {
		t.Errorf("gap %g mm", gap)
	}
	if title := set.pages[1].Title; title != "Columns, continued" {
		t.Errorf("second page %q", title)
	}
}

func TestBookIsReproducible(t *testing.T) {
	first, second := fresh(t, smallArena, "a4", unit.Metric), fresh(t, smallArena, "a4", unit.Metric)
	one, err1 := first.PDF(t.Context())
	two, err2 := second.PDF(t.Context())
	if err1 != nil || err2 != nil || one.Pages != two.Pages || !bytes.Equal(one.Data, two.Data) {
		t.Errorf("two books differ: %d and %d pages, %v, %v", one.Pages, two.Pages, err1, err2)
	}
	if len(one.Data) > 2<<20 {
		t.Errorf("the book has %d bytes", len(one.Data))
	}
	mark, _, err := cut.Verify(one.Data)
	if err != nil || mark != arena.Revision([]byte(smallArena)) {
		t.Errorf("mark %q, %v", mark, err)
	}
	if a, b := first.HTML(), second.HTML(); !bytes.Equal(a, b) {
		t.Error("two pages differ")
	}
}

// The HTML file is well formed, fetches nothing, escapes what people wrote,
// and every entry of its contents leads somewhere.
// TestBookSpeaksTheAskedUnits sets a metric arena in inches and an imperial one in
// metric: no length of the other system stands in the book. Lenses are in mm.
func TestBookSpeaksTheAskedUnits(t *testing.T) {
	inches, metres := regexp.MustCompile(`[\s"(>][0-9][0-9/ ]* (in|ft)[\s,.;<]`), regexp.MustCompile(`[0-9] m[\s,.;<]`)
	for text, c := range map[string]struct {
		sys     unit.System
		foreign *regexp.Regexp
	}{example(t, "quillhaven"): {unit.Metric, inches}, smallArena: {unit.Imperial, metres}} {
		html := content(t, text, "a4", c.sys).HTML()
		if !bytes.Contains(html, []byte("too wide to enter")) {
			t.Errorf("in %s: no lens is told to be too wide for a hole", c.sys)
		}
		if at := c.foreign.FindIndex(html); at != nil {
			t.Errorf("in %s: %q", c.sys, html[max(0, at[0]-60):min(len(html), at[1]+20)])
		}
	}
}

func TestHTMLStandsAlone(t *testing.T) {
	page := string(content(t, smallArena, "a4", unit.Metric).HTML())
	dec := xml.NewDecoder(strings.NewReader(page))
	dec.Strict, dec.AutoClose, dec.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	ids, links, tags := map[string]int{}, []string{}, 0
	for {
		tok, err := dec.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		start, ok := tok.(xml.StartElement)
		if !ok {
			continue
		}
		tags++
		for _, a := range start.Attr {
			switch {
			case a.Name.Local == "id":
				ids[a.Value]++
			case a.Name.Local == "href" && start.Name.Local == "a":
				links = append(links, a.Value)
			case (a.Name.Local == "src" || a.Name.Local == "href") && !strings.HasPrefix(a.Value, "data:") && !strings.HasPrefix(a.Value, "#"):
				t.Errorf("%s fetches %.60q", start.Name.Local, a.Value)
			}
		}
	}
	if tags < 500 || len(links) < 9 {
		t.Fatalf("%d tags, %d links", tags, len(links))
	}
	for _, l := range links {
		if ids[strings.TrimPrefix(l, "#")] != 1 {
			t.Errorf("link %s leads to %d places", l, ids[strings.TrimPrefix(l, "#")])
		}
	}
	for id, n := range ids {
		if n > 1 {
			t.Errorf("id %q stands %d times", id, n)
		}
	}
	if strings.Contains(page, "<narrow>") || !strings.Contains(page, "A &lt;narrow&gt; one &amp; low.") {
		t.Error("what people wrote is not escaped")
	}
	if m := regexp.MustCompile(`url\((?:[^d#]|d[^a])`).FindString(page); m != "" {
		t.Errorf("a style fetches: %q", m)
	}
	for _, w := range append(glass.Cautions(), "Sign-off", "Dispensations", "L-17") {
		if !strings.Contains(page, w) {
			t.Errorf("the page lacks %q", w)
		}
	}
}

func Example() {
	doc, err := arena.Demo()
	if err != nil {
		fmt.Println(err)
		return
	}
	k, _ := kit.Default()
	set, _ := rules.Shipped("common-practice")
	sets, _ := rules.InForce(set)
	paper, _ := sheet.ParsePaper("a4")
	c, err := Gather(context.Background(), plan.Maker{Kit: k, Rules: sets}, doc, Options{
		Paper: paper, Cut: cut.DefaultOptions(), Spares: cut.DefaultSpareOptions(),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	print, err := c.PDF(context.Background())
	fmt.Println(print.Pages > 20, err)
	// Output: true <nil>
}

func BenchmarkBook(b *testing.B) {
	doc, err := arena.Demo()
	if err != nil {
		b.Fatal(err)
	}
	m, o := maker(b), options(b, "a4")
	for b.Loop() {
		c, err := Gather(context.Background(), m, doc, o)
		if err != nil {
			b.Fatal(err)
		}
		if _, err := c.PDF(b.Context()); err != nil {
			b.Fatal(err)
		}
	}
}
