package edit_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
	"example.org/rinkpane/internal/survey/glass"
)

func demo(t testing.TB) *arena.Document {
	t.Helper()
	doc, err := arena.Demo()
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

// apply makes edits written in JSON, as they come over the wire.
func apply(t testing.TB, doc *arena.Document, edits string) (*arena.Document, string) {
	t.Helper()
	var row []edit.Edit
	if err := json.Unmarshal([]byte("["+edits+"]"), &row); err != nil {
		t.Fatal(err)
	}
	next, what, err := edit.Editor{Standard: standard}.Apply(doc, row)
	if err != nil {
		t.Fatalf("%s: %v", edits, err)
	}
	if _, err := next.Check(); err != nil {
		t.Fatalf("%s: %v", edits, err)
	}
	return next, what
}

func standard(arena.Arena) glass.Hole {
	return glass.Hole{Height: 1.5, Size: unit.Size{W: 5.5 * unit.Inch, H: 4.5 * unit.Inch}, Corner: unit.Known(unit.Inch / 2)}
}

// TestEditsChangeTheirLinesAlone compares the text before and after: the lines
// that went and came are those expected, all others stand as they were.
func TestEditsChangeTheirLinesAlone(t *testing.T) {
	doc := demo(t)
	for _, c := range []struct{ edits, gone, come, what string }{
		{`{"do":"move","hole":"B1","to":{"corner":"B-bench","landmark":"goal-line","offset_m":-1}}`,
			"place: {corner: B-bench, landmark: goal-line, offset: -42 in}", "place: {corner: B-bench, landmark: goal-line, offset: -39 3/8 in}",
			"move B1 to B-bench goal line, 39 3/8 in back"},
		{`{"do":"move","hole":"B1","to":{"height_m":1.6}}`, "height: 58 in", "height: 63 in", "move B1, 5 ft 3 in above the ice"},
		{`{"do":"turn","hole":"B1","state":"off"}`, "state: cut", "state: off", "turn B1 off"},
		{`{"do":"set","path":"boards.ledge","value":"10 in"}`, "ledge: 9 in                # depth of that top",
			"ledge: 10 in                # depth of that top", "set boards.ledge to 10 in"},
		{`{"do":"set","path":"boards.ledge","value":"9 1/2 in"},{"do":"set","path":"place","value":"Quill: haven"}`,
			"place: Quillhaven|ledge: 9 in                # depth of that top",
			`place: "Quill: haven"|ledge: 9 1/2 in                # depth of that top`, "set boards.ledge to 9 1/2 in; set place to Quill: haven"},
	} {
		next, what := apply(t, doc, c.edits)
		gone, come := lineChanges(string(doc.Bytes()), string(next.Bytes()))
		if gone != c.gone || come != c.come || what != c.what {
			t.Errorf("%s:\n gone %q\n come %q\n what %q", c.edits, gone, come, what)
		}
	}
}

// lineChanges returns the trimmed lines that only one text has, joined by |.
func lineChanges(a, b string) (gone, come string) {
	only := func(of, than string) string {
		count := map[string]int{}
		for line := range strings.SplitSeq(than, "\n") {
			count[line]++
		}
		var out []string
		for line := range strings.SplitSeq(of, "\n") {
			if count[line]--; count[line] < 0 && line != "" {
				out = append(out, strings.TrimSpace(line))
			}
		}
		return strings.Join(out, "|")
	}
	return only(a, b), only(b, a)
}

func TestAddCopyDelete(t *testing.T) {
	doc := demo(t)
	added, what := apply(t, doc, `{"do":"add","to":{"station_m":12.8},"value":{"note":"for the net","state":"planned"}}`)
	a, err := added.Check()
	if err != nil {
		t.Fatal(err)
	}
	h, ok := a.Hole("H1")
	if !ok || h.Note != "for the net" || h.Size.W != 5.5*unit.Inch || !strings.HasPrefix(what, "add H1 at ") {
		t.Fatalf("%+v, %s", h, what)
	}
	copied, _ := apply(t, added, `{"do":"copy","hole":"H1","as":"X","to":{"station_m":14.1,"height_m":1.4}}`)
	a, err = copied.Check()
	if err != nil {
		t.Fatal(err)
	}
	if x, ok := a.Hole("X"); !ok || x.Note != "for the net" || x.Size != h.Size || x.Height == h.Height {
		t.Errorf("%+v", x)
	}
	back, _ := apply(t, copied, `{"do":"delete","hole":"X"},{"do":"delete","hole":"H1"}`)
	if gone, come := lineChanges(string(doc.Bytes()), string(back.Bytes())); gone != "" || come != "" {
		t.Errorf("adding and deleting left %q, took %q", come, gone)
	}
}

// TestMovesStandWhereTheyWerePut drags holes anywhere on their panes: read back,
// the hole stands within half a mark of the place, and its text is short.
func TestMovesStandWhereTheyWerePut(t *testing.T) {
	doc := demo(t)
	a, err := doc.Check()
	if err != nil {
		t.Fatal(err)
	}
	moved := 0
	rapid.Check(t, func(t *rapid.T) {
		pane := a.Panes[rapid.IntRange(0, len(a.Panes)-1).Draw(t, "pane")]
		share := rapid.Float64Range(0.3, 0.7).Draw(t, "share")
		height := rapid.Float64Range(1.35, 1.75).Draw(t, "height")
		at := a.Rink.Wrap(pane.From + unit.Length(share)*(pane.To()-pane.From)).Metres()
		next, _, err := edit.Editor{}.Apply(doc, []edit.Edit{{Do: edit.Move, Hole: "B1", To: &edit.Spot{Station: &at, Height: &height}}})
		if err != nil {
			t.Fatal(err)
		}
		now, err := next.Check()
		if err != nil {
			return // the pane is too narrow there, or a gate
		}
		moved++
		h, _ := now.Hole("B1")
		half := unit.Inch.Metres()/32 + 1e-9
		off := h.Station.Metres() - at
		if per := a.Rink.Perimeter().Metres(); off > per/2 {
			off -= per
		}
		if off > half || off < -half || h.Height.Metres()-height > half || height-h.Height.Metres() > half {
			t.Fatalf("asked for %g at %g, stands at %g, %g", at, height, h.Station.Metres(), h.Height.Metres())
		}
		if _, come := lineChanges(string(doc.Bytes()), string(next.Bytes())); len(come) > 120 || strings.Contains(come, " m") {
			t.Fatalf("written as %q", come)
		}
	})
	if moved < 20 {
		t.Errorf("only %d moves were sound", moved)
	}
}

func TestValuesKeepTheirOrder(t *testing.T) {
	const text = `{"b":"1","a":["x",{"z":"2","y":"3"}],"c":{}}`
	var v edit.Value
	if err := json.Unmarshal([]byte(text), &v); err != nil {
		t.Fatal(err)
	}
	back, err := json.Marshal(v)
	if err != nil || string(back) != text {
		t.Errorf("%s, %v", back, err)
	}
	for _, bad := range []string{`5`, `true`, `null`, `{"a":5}`, `["a",null]`, strings.Repeat(`[`, 9) + strings.Repeat(`]`, 9)} {
		var v edit.Value
		if err := v.UnmarshalJSON([]byte(bad)); err == nil {
			t.Errorf("%s was read", bad)
		}
	}
}

func TestFaultsNameTheEdit(t *testing.T) {
	doc := demo(t)
	_, _, err := edit.Editor{}.Apply(doc, []edit.Edit{{Do: edit.Delete, Hole: "B1"}, {Do: "fly"}})
	if f, ok := err.(*edit.Fault); !ok || f.Number != 2 || !strings.Contains(err.Error(), "edit 2") {
		t.Errorf("%v", err)
	}
	if _, _, err := (edit.Editor{}).Apply(doc, nil); err == nil {
		t.Error("no edits passed")
	}
	if _, _, err := (edit.Editor{}).Apply(doc, make([]edit.Edit, edit.Most+1)); err == nil {
		t.Error("too many edits passed")
	}
	what := strings.Repeat("long ", 60)
	_, said, err := edit.Editor{}.Apply(doc, []edit.Edit{{Do: edit.Set, Path: "note", Value: edit.One(what + "\n\x1b[31m")}})
	if err == nil && (len([]rune(said)) > 160 || strings.ContainsAny(said, "\n\x1b")) {
		t.Errorf("%d characters: %q", len(said), said)
	}
}

func ExampleEditor_Apply() {
	doc, err := arena.Demo()
	if err != nil {
		fmt.Println(err)
		return
	}
	height := 1.5
	_, what, err := edit.Editor{}.Apply(doc, []edit.Edit{
		{Do: edit.Move, Hole: "B1", To: &edit.Spot{Height: &height}},
		{Do: edit.Set, Path: "boards.ledge", Value: edit.One("10 in")},
	})
	fmt.Println(what, err)
	// Output: move B1, 4 ft 11 in above the ice; set boards.ledge to 10 in <nil>
}

// TestARowIsBoundedByItsWork: each edit reads the whole document anew, so a large
// document takes fewer at once.
func TestARowIsBoundedByItsWork(t *testing.T) {
	text := string(demo(t).Bytes()) + strings.Repeat("# "+strings.Repeat("x", 98)+"\n", 3000)
	doc, err := arena.Read("large.yaml", strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	row := make([]edit.Edit, edit.Most)
	for i := range row {
		row[i] = edit.Edit{Do: edit.Set, Path: "note", Value: edit.One("x")}
	}
	_, _, err = edit.Editor{}.Apply(doc, row)
	var fault *edit.Fault
	if !errors.As(err, &fault) || !strings.Contains(err.Error(), "send at most 5") {
		t.Errorf("500 edits of %d bytes: %v", len(text), err)
	}
	if _, _, err := (edit.Editor{}).Apply(doc, row[:3]); err != nil {
		t.Errorf("three edits: %v", err)
	}
	// Who only tries is to have the answer within a second.
	if _, _, err = (edit.Editor{Trial: true}).Apply(doc, row[:20]); !errors.As(err, &fault) || !strings.Contains(err.Error(), "send at most 13") {
		t.Errorf("20 edits tried of %d bytes: %v", len(text), err)
	}
	// A small document that the first edit makes a large one.
	grow := append([]edit.Edit{{Do: edit.Text, Text: text}}, row[1:]...)
	if _, _, err := (edit.Editor{}).Apply(demo(t), grow); !errors.As(err, &fault) || fault.Number != 2 || !strings.Contains(err.Error(), "send at most 5") {
		t.Errorf("edits of a document that grew: %v", err)
	}
}
