package letter

import (
	"bytes"
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/tell/words"
)

// chosen is a choice for the demo arena, made once.
var chosen = sync.OnceValues(func() (choose.Answer, error) {
	doc, err := arena.Demo()
	if err != nil {
		return choose.Answer{}, err
	}
	a, err := doc.Check()
	if err != nil {
		return choose.Answer{}, err
	}
	set, err := rules.Shipped(rules.Default)
	if err != nil {
		return choose.Answer{}, err
	}
	sets, err := rules.InForce(set)
	if err != nil {
		return choose.Answer{}, err
	}
	k, err := kit.Default()
	if err != nil {
		return choose.Answer{}, err
	}
	o := choose.DefaultOptions()
	o.Moments, o.Step, o.Plain, o.Ladder, o.Alternatives = 400, unit.Foot, true, true, 0
	return choose.ForArena(context.Background(), a, sets, k, o)
})

func answer(t *testing.T) choose.Answer {
	t.Helper()
	ans, err := chosen()
	if err != nil {
		t.Fatal(err)
	}
	return ans
}

func content(t *testing.T, ans choose.Answer, paper string, sys unit.System, best bool) (Content, error) {
	t.Helper()
	p, err := sheet.ParsePaper(paper)
	if err != nil {
		t.Fatal(err)
	}
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	step, err := Asked(ans, best)
	if err != nil {
		return Content{}, err
	}
	return Gather(t.Context(), ans, step, k, Options{Units: sys, Paper: p, Mark: "b9483f5a250a", Creator: "test"})
}

func whole(t *testing.T, ans choose.Answer, paper string, sys unit.System, best bool) Content {
	t.Helper()
	c, err := content(t, ans, paper, sys, best)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func tool(t *testing.T, name string, args ...string) string {
	t.Helper()
	out, err := exec.Command(name, args...).Output()
	if err != nil {
		t.Fatalf("%s %v: %v", name, args, err)
	}
	return strings.Join(strings.Fields(string(out)), " ")
}

// The letter read back with poppler: one page of the paper, with all that a manager
// must be told before signing.
func TestLetterByPoppler(t *testing.T) {
	for _, v := range []struct {
		paper, size string
		sys         unit.System
		best        bool
	}{{"letter", "(letter)", unit.Imperial, false}, {"a4", "(A4)", unit.Metric, true}} {
		c := whole(t, answer(t), v.paper, v.sys, v.best)
		print, err := c.PDF(t.Context())
		if err != nil {
			t.Fatal(err)
		}
		path := filepath.Join(t.TempDir(), "letter.pdf")
		if err := os.WriteFile(path, print.Data, 0o600); err != nil {
			t.Fatal(err)
		}
		info, text := tool(t, "pdfinfo", path), tool(t, "pdftotext", "-layout", path, "-")
		for _, want := range []string{"Pages: 1 ", v.size, "Photo holes at Tidewater Pavilion"} {
			if !strings.Contains(info, want) {
				t.Errorf("%s: pdfinfo lacks %q:\n%s", v.paper, want, info)
			}
		}
		flat := tool(t, "pdftotext", path, "-") // column by column
		for _, want := range append([]string{
			words.AskedInShort(c.Answer, c.Step), words.StepWhy(c.Step), words.GainInShort(c.Gains), words.RiskInShort(c.Guards, v.sys),
			words.CostNote(c.Answer), words.HowSure(c.Answer, c.Step),
		}, append(glass.Cautions(), words.WhomToAsk()...)...) {
			if !strings.Contains(flat, want) {
				t.Errorf("%s: the page lacks %q:\n%s", v.paper, want, flat)
			}
		}
		for _, h := range c.Step.Cut() {
			if !strings.Contains(text, words.Spoken(h, v.sys)) {
				t.Errorf("%s: %s is not asked for:\n%s", v.paper, words.Spoken(h, v.sys), text)
			}
		}
		for _, want := range []string{"costs are invented", "400 moments", "agreed", "name, signature", "date", "arena text b9483f5a250a"} {
			if !strings.Contains(text, want) {
				t.Errorf("%s: the page lacks %q", v.paper, want)
			}
		}
	}
}

// The letter asks for the best step that keeps every hole, or, when told so, for the
// best set of all; what is asked stands out in the table of steps.
func TestWhatIsAsked(t *testing.T) {
	keep, best := whole(t, answer(t), "letter", unit.Imperial, false), whole(t, answer(t), "letter", unit.Imperial, true)
	if n := len(keep.Step.GivenUp); n != 0 || keep.Step.Kind != choose.KeepStep || len(keep.Step.Cut()) == 0 {
		t.Errorf("gives up %d, %s", n, keep.Step.Kind)
	}
	if ans := answer(t); best.Step.Value != ans.Value || len(best.Step.GivenUp) == 0 {
		t.Errorf("worth %g, the best %g", best.Step.Value, ans.Value)
	}
	for _, c := range []Content{keep, best} {
		table, strong := words.StepsThatMatter(c.Answer, c.Step, unit.Imperial), 0
		for i, is := range table.Strong {
			if is {
				strong++
				if row := table.Rows[i]; len(c.Step.GivenUp) == 0 != strings.HasPrefix(row[0].Text, "keep all") {
					t.Errorf("asked for: %v", row)
				}
			}
		}
		if strong != 1 || len(table.Rows) != 3 {
			t.Errorf("%d of %d steps asked for", strong, len(table.Rows))
		}
		if len(c.Gains) != len(c.Step.Cut()) || len(c.Guards) != len(c.Step.Holes) {
			t.Errorf("%d gains, %d guards of %d holes", len(c.Gains), len(c.Guards), len(c.Step.Holes))
		}
	}
}

// No two texts lie on one another, none leaves the paper, and none is too small; on larger
// paper they are larger.
func TestLetterCanBeRead(t *testing.T) {
	texts := 0
	larger := whole(t, answer(t), "a4", unit.Metric, false)
	larger.Options.Paper, _ = sheet.ParsePaper("tabloid")
	for _, c := range []Content{whole(t, answer(t), "letter", unit.Imperial, true), whole(t, answer(t), "a4", unit.Metric, false), larger} {
		d, ok := c.page()
		if !ok {
			t.Fatal("no room")
		}
		boxes := d.TextBoxes()
		texts += len(boxes)
		if high := boxes[slices.IndexFunc(boxes, func(b sheet.TextBox) bool { return b.S == "Cost" })].Box.H; c.Options.Paper.Name == "tabloid" && high < 3.8 {
			t.Errorf("a heading on tabloid is %.2f mm high", high)
		}
		for _, b := range boxes {
			if paper := (sheet.Rect{W: d.W, H: d.H}); !paper.Inset(8).Contains(b.Box) {
				t.Errorf("%q leaves the page: %+v", b.S, b.Box)
			}
			if least := 1.4; b.Box.H < least {
				t.Errorf("%q is %.2f mm high", b.S, b.Box.H)
			}
		}
		for _, pair := range sheet.Collisions(boxes, 0.2) {
			t.Errorf("%q lies on %q", pair[1].S, pair[0].S)
		}
	}
	if texts < 150 {
		t.Errorf("only %d texts met", texts)
	}
}

// Holes that stay, are new and are given up have a sign each, told by shape.
func TestSignsOnTheMap(t *testing.T) {
	c := whole(t, answer(t), "letter", unit.Imperial, false)
	c.Step.GivenUp, c.Step.Holes = c.Step.Kept()[:2], append(c.Step.Kept()[2:], c.Step.Cut()...)
	d, _ := c.page()
	svg := string(sheet.SVG(d))
	discs, plus := len(regexp.MustCompile(`class="hole hole-stays"`).FindAllString(svg, -1)), strings.Count(svg, `class="fate-sign"`)
	if want := len(c.Step.Kept()) + 1; discs != want || want < 3 { // the key's is one
		t.Errorf("%d holes stay, want %d", discs, want)
	}
	if want := 2 * (len(c.Step.Cut()) + 1 + len(c.Step.GivenUp) + 1); plus != want {
		t.Errorf("%d strokes of pluses and crosses, want %d", plus, want)
	}
}

func TestLetterIsReproducible(t *testing.T) {
	one, err1 := whole(t, answer(t), "a4", unit.Metric, false).PDF(t.Context())
	two, err2 := whole(t, answer(t), "a4", unit.Metric, false).PDF(t.Context())
	if err1 != nil || err2 != nil || !bytes.Equal(one.Data, two.Data) || len(one.Data) > 1<<20 {
		t.Errorf("%d and %d bytes, %v, %v", len(one.Data), len(two.Data), err1, err2)
	}
}

func TestLetterRefuses(t *testing.T) {
	for want, change := range map[string]func(*choose.Answer){
		"no set of holes":          func(a *choose.Answer) { a.Holes = nil },
		"not proved (gap 50.00 %)": func(a *choose.Answer) { a.Ladder, a.Bound = nil, 2*a.Value },
		"nothing to ask for":       func(a *choose.Answer) { a.Ladder = a.Ladder[:1] },
	} {
		ans := answer(t)
		change(&ans)
		if _, err := content(t, ans, "a4", unit.Metric, false); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %s", err, want)
		}
	}
	if _, err := whole(t, answer(t), "a5", unit.Metric, false).PDF(t.Context()); err == nil || !strings.Contains(err.Error(), "a5: too small") {
		t.Error(err)
	}
	c := whole(t, answer(t), "a4", unit.Metric, false)
	for range 5 {
		c.Step.Story.Each = append(c.Step.Story.Each, c.Step.Story.Each...)
	}
	if _, err := c.PDF(t.Context()); err == nil || !strings.Contains(err.Error(), "too many new holes for one page") {
		t.Error(err)
	}
}

// Letters that the fonts lack are told, as on every drawing.
func TestLackingLetters(t *testing.T) {
	ans := answer(t)
	ans.Arena.Name = "रिंक"
	print, err := whole(t, ans, "a4", unit.Metric, false).PDF(t.Context())
	if err != nil || !strings.Contains(print.Lack.String(), "रिंक") {
		t.Errorf("%v, lacking %q", err, print.Lack)
	}
}

// Panes of a material that nobody recorded have no gain to tell.
func TestNoMaterialNoGain(t *testing.T) {
	ans := answer(t)
	ans.Arena.Panes = append([]glass.Pane(nil), ans.Arena.Panes...)
	for i := range ans.Arena.Panes {
		ans.Arena.Panes[i].Material = unit.Maybe[glass.Material]{}
	}
	c := whole(t, ans, "a4", unit.Metric, false)
	if said := words.GainInShort(c.Gains); !strings.Contains(said, "not surveyed") {
		t.Error(said)
	}
}
