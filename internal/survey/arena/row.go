package arena

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/measure/form"
)

// A row is one line of the schedule for several equal panes side by side:
//
//	- {id: P007, width: 4 ft, count: 12}      P007, P008 ... P018
//
// The line's id is the first pane's; its number counts on.

// counted returns the id k places behind the first of a row: "P009" for P007 and
// 2. It is "" where the first id ends in no number.
func counted(first string, k int) string {
	head := strings.TrimRight(first, "0123456789")
	digits := first[len(head):]
	n, err := strconv.Atoi(digits)
	if err != nil {
		return ""
	}
	return fmt.Sprintf("%s%0*d", head, len(digits), n+k)
}

// Row is a line of the schedule that stands for equal panes.
type Row struct {
	Path string // of the line: "panes[P007]"
	IDs  []string
}

// Row returns the line that holds the pane of this id. A pane with a line of its
// own is a row of one.
func (d *Document) Row(id string) (Row, bool) {
	for _, at := range d.Items("panes") {
		r := Row{Path: at, IDs: []string{d.Value(at + ".id")}}
		n, err := strconv.Atoi(d.Value(at + ".count"))
		for k := 1; err == nil && k < min(n, MaxPanes); k++ {
			r.IDs = append(r.IDs, counted(r.IDs[0], k))
		}
		if slices.Contains(r.IDs, id) {
			return r, true
		}
	}
	return Row{}, false
}

// Apart returns the document in which a pane has a line of its own: a row that
// held it is cut before and behind it. What the panes are does not change.
func (d *Document) Apart(id string) (*Document, error) {
	r, ok := d.Row(id)
	if !ok {
		return nil, fmt.Errorf("no pane %s in the schedule; it may have been renamed or removed", form.Quote(id))
	}
	k, next, err := slices.Index(r.IDs, id), d, error(nil)
	cuts := []struct{ first, n int }{{k + 1, len(r.IDs) - k - 1}, {k, 1}} // behind it first: each goes right behind the line
	if k == 0 {
		cuts = cuts[:1]
	}
	for _, c := range cuts {
		if c.n == 0 {
			continue
		}
		if next, err = d.edited(next.form.Insert(r.Path, d.like(r.Path, r.IDs[c.first], c.n))); err != nil {
			return nil, err
		}
	}
	return next.sized(r.Path, max(k, 1))
}

// sized returns the document with a row of n panes.
func (d *Document) sized(row string, n int) (*Document, error) {
	switch at := row + ".count"; {
	case n > 1:
		return d.Set(at, form.Text(strconv.Itoa(n)))
	case d.Has(at):
		return d.Remove(at)
	}
	return d, nil
}

// words copies a group of single values of a pane.
func (d *Document) words(path string) form.Entry {
	var fields []form.Field
	for _, name := range paneFields {
		if v := d.Value(path + "." + name); v != "" {
			fields = append(fields, form.Field{Name: name, Value: form.Text(v)})
		}
	}
	return form.Fields(fields...)
}

// like writes a row of n panes that begins where the line before it ends and is
// otherwise as the one at path.
func (d *Document) like(path, id string, n int) form.Entry {
	fields := []form.Field{{Name: "id", Value: form.Text(id)}}
	for _, name := range paneFields {
		text := d.Value(path + "." + name)
		if name == "source" && d.IsGroup(path+".source") {
			fields = append(fields, form.Field{Name: name, Value: d.words(path + ".source")})
			continue
		}
		switch {
		case name == "count" && n > 1:
			text = strconv.Itoa(n)
		case name == "id" || name == "from" || name == "count" || text == "":
			continue
		}
		fields = append(fields, form.Field{Name: name, Value: form.Text(text)})
	}
	return form.Fields(fields...)
}
