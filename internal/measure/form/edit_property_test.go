package form_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.org/rinkpane/internal/measure/form"
)

// draft is a random document in a person's mixed style, with the paths of its
// single values, lists and items.
type draft struct {
	b                     strings.Builder
	values, lists, items  []string
	comments, indentation int
}

var scalarStyles = []string{"42 in", "5' 6\"", "'it''s'", `"a \"b\" # c"`, "x y  z", "-3 ft", "http://a", "é ½", "true", "null", "[]", "{}"}

func (w *draft) remark(t *rapid.T, pad string) {
	if rapid.Bool().Draw(t, "remark") {
		w.comments++
		fmt.Fprintf(&w.b, "%s# remark %d\n", pad, w.comments)
	}
	if rapid.Bool().Draw(t, "blank") {
		w.b.WriteString("\n")
	}
}

func (w *draft) tail(t *rapid.T) {
	if rapid.Bool().Draw(t, "tail") {
		w.comments++
		fmt.Fprintf(&w.b, "  # tail %d", w.comments)
	}
	w.b.WriteString("\n")
}

// fields writes a block of fields under a path.
func (w *draft) fields(t *rapid.T, path, pad string, depth int, first bool) {
	for i := range rapid.IntRange(1, 4).Draw(t, "fields") {
		if !first || i > 0 {
			w.remark(t, pad)
			w.b.WriteString(pad)
		}
		name := fmt.Sprintf("f%d", i)
		at := strings.TrimPrefix(path+"."+name, ".")
		w.b.WriteString(name + ":")
		switch kind := rapid.IntRange(0, 5).Draw(t, "kind"); {
		case kind == 4 && depth < 3:
			w.tail(t)
			w.fields(t, at, pad+strings.Repeat(" ", w.indentation), depth+1, false)
		case kind == 5 && depth < 3:
			w.tail(t)
			w.list(t, at, pad+"  ", depth)
		case kind == 3:
			w.b.WriteString(" {a: 1, b: x y}")
			w.values = append(w.values, at+".a", at+".b")
			w.tail(t)
		case kind == 2:
			w.values = append(w.values, at)
			w.tail(t)
		default:
			w.b.WriteString(" " + rapid.SampledFrom(scalarStyles).Draw(t, "scalar"))
			w.values = append(w.values, at)
			w.tail(t)
		}
	}
}

func (w *draft) list(t *rapid.T, path, pad string, depth int) {
	w.lists = append(w.lists, path)
	for i := range rapid.IntRange(1, 3).Draw(t, "items") {
		w.remark(t, pad)
		at := fmt.Sprintf("%s[#%d]", path, i+1)
		w.items = append(w.items, at)
		w.b.WriteString(pad + "- ")
		switch rapid.IntRange(0, 2).Draw(t, "item") {
		case 0:
			w.b.WriteString(rapid.SampledFrom(scalarStyles[:8]).Draw(t, "word"))
			w.tail(t)
		case 1:
			w.b.WriteString("{id: x, n: 1}")
			w.values = append(w.values, at+".n")
			w.tail(t)
		default:
			w.fields(t, at, pad+"  ", depth+1, true)
		}
	}
}

func drawDocument(t *rapid.T) (*draft, *form.Document) {
	w := &draft{indentation: rapid.SampledFrom([]int{2, 4}).Draw(t, "indent")}
	w.fields(t, "", "", 0, false)
	text := w.b.String()
	if rapid.Bool().Draw(t, "cut the last line end") {
		text = strings.TrimSuffix(text, "\n")
	}
	d, err := form.Read("r.yaml", strings.NewReader(text), 1<<20)
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	if string(d.Text()) != text {
		t.Fatal("an untouched document differs")
	}
	return w, d
}

// changed returns the lines of each text outside their common head and tail.
func changed(before, after []byte) (gone, come []string) {
	a, b := strings.Split(string(before), "\n"), strings.Split(string(after), "\n")
	for len(a) > 0 && len(b) > 0 && a[0] == b[0] {
		a, b = a[1:], b[1:]
	}
	for len(a) > 0 && len(b) > 0 && a[len(a)-1] == b[len(b)-1] {
		a, b = a[:len(a)-1], b[:len(b)-1]
	}
	return a, b
}

var newTexts = rapid.OneOf(rapid.SampledFrom([]string{"9 in", `3' 6"`, "", "# x", "a: b", "null", "- x", "[", "x\ny", " pad ", "\u2028"}), rapid.String())

func TestSetChangesOneLine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, d := drawDocument(t)
		if len(w.values) == 0 {
			return
		}
		path := rapid.SampledFrom(w.values).Draw(t, "path")
		got, err := d.Set(path, form.Text(newTexts.Draw(t, "new")))
		if err != nil {
			t.Fatalf("%v\n%s", err, d.Text())
		}
		if gone, come := changed(d.Text(), got.Text()); len(gone) > 1 || len(come) > 1 {
			t.Fatalf("set %s: %q became %q", path, gone, come)
		}
	})
}

func TestAppendThenRemoveIsNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, d := drawDocument(t)
		if len(w.lists) == 0 {
			return
		}
		list := rapid.SampledFrom(w.lists).Draw(t, "list")
		more, err := d.Append(list, fields("id", "new-one", "size", "5 in x 4 in"))
		if err != nil {
			t.Fatalf("%v\n%s", err, d.Text())
		}
		if gone, _ := changed(d.Text(), more.Text()); len(slices.DeleteFunc(gone, func(s string) bool { return s == "" })) > 1 {
			t.Fatalf("append to %s took %q", list, gone)
		}
		back, err := more.Remove(list + "[new-one]")
		if err != nil {
			t.Fatalf("%v\n%s", err, more.Text())
		}
		strip := func(b []byte) string { return strings.ReplaceAll(string(b), "\n", "") }
		if strip(back.Text()) != strip(d.Text()) {
			t.Fatalf("append and remove at %s:\n%s\nbecame\n%s", list, d.Text(), back.Text())
		}
	})
}

func TestRemoveKeepsOtherLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, d := drawDocument(t)
		if len(w.items) == 0 {
			return
		}
		path := rapid.SampledFrom(w.items).Draw(t, "path")
		got, err := d.Remove(path)
		if err != nil {
			t.Fatalf("%v\n%s", err, d.Text())
		}
		if _, come := changed(d.Text(), got.Text()); len(come) > 1 {
			t.Fatalf("remove %s wrote %q", path, come)
		}
	})
}
