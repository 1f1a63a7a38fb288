package wire

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"example.org/rinkpane/internal/tell/table"
)

// Answer names the table of what stands in an answer beside its lists.
const Answer = "answer"

// Tables returns an answer's JSON as tables, so that whatever scripts may read
// as JSON they may read as CSV, under the same names and in full:
//
//	{"verdict": "pass", "findings": [{"rule": "apart", "margin": 2}]}
//	   |                    '-- table "findings": rule,margin
//	   '-- table "answer": verdict
//
// An object inside a row becomes columns ("dark.iso"), a list of plain values
// one cell, values parted by blanks, and a list of objects a table of its own
// ("holes.zones"), whose rows begin with the first field of the row it is of.
func Tables(v any) ([]table.Table, error) {
	data, err := json.Marshal(v)
	if err != nil {
		return nil, fmt.Errorf("writing JSON: %w", err)
	}
	dec := json.NewDecoder(bytes.NewReader(data))
	dec.UseNumber()
	root, err := readValue(dec)
	if err != nil {
		return nil, fmt.Errorf("reading JSON: %w", err)
	}
	f := flat{at: map[string]int{}}
	f.row(Answer, "", nil, root)
	return f.tables, nil
}

// value is one JSON value with its fields in order.
type value struct {
	plain string   // of a text, number or truth; "" for null
	keys  []string // of an object, beside items
	items []value
	kind  json.Delim // '{' or '[' or 0
}

func readValue(dec *json.Decoder) (value, error) {
	t, err := dec.Token()
	if err != nil {
		return value{}, err
	}
	open, nested := t.(json.Delim)
	if !nested {
		if t == nil {
			return value{}, nil
		}
		return value{plain: fmt.Sprint(t)}, nil
	}
	v := value{kind: open}
	for dec.More() {
		if open == '{' {
			key, err := dec.Token()
			if err != nil {
				return v, err
			}
			v.keys = append(v.keys, fmt.Sprint(key))
		}
		item, err := readValue(dec)
		if err != nil {
			return v, err
		}
		v.items = append(v.items, item)
	}
	_, err = dec.Token() // the closing delimiter
	return v, err
}

// field is one cell under its column's name.
type field struct{ name, text string }

// flat gathers tables, each under its name.
type flat struct {
	tables []table.Table
	at     map[string]int // name to index
}

// row adds the plain fields of v as a row of the table named, below those that
// it takes from its owner; lists of objects become tables below prefix.
func (f *flat) row(name, prefix string, owner []field, v value) {
	own := slices.Clone(owner)
	type list struct {
		name  string
		value value
	}
	var lists []list
	var walk func(prefix string, v value)
	walk = func(within string, v value) {
		for i, key := range v.keys {
			switch item := v.items[i]; {
			case item.kind == '{':
				walk(within+key+".", item)
			case item.kind == '[' && slices.ContainsFunc(item.items, func(x value) bool { return x.kind == '{' }):
				lists = append(lists, list{prefix + within + key, item})
			default:
				own = append(own, field{within + key, item.text()})
			}
		}
	}
	walk("", v)
	if len(own) > len(owner) || len(lists) == 0 {
		f.add(name, own)
	}
	first := own[:min(len(own), len(owner)+1)]
	if name == Answer {
		first = nil
	}
	for _, l := range lists {
		for _, item := range l.value.items {
			f.row(l.name, l.name+".", first, item)
		}
	}
}

// text is a plain value, or a list of them.
func (v value) text() string {
	if v.kind == 0 {
		return v.plain
	}
	parts := make([]string, len(v.items))
	for i, item := range v.items {
		parts[i] = item.text()
	}
	return strings.Join(parts, " ")
}

// add adds a row; a field that the table did not have becomes a column, empty
// in the rows before.
func (f *flat) add(name string, row []field) {
	i, met := f.at[name]
	if !met {
		i = len(f.tables)
		f.at[name] = i
		f.tables = append(f.tables, table.Table{Title: name})
	}
	t := &f.tables[i]
	cells := make([]table.Cell, len(t.Columns))
	for _, c := range row {
		at := slices.IndexFunc(t.Columns, func(k table.Column) bool { return k.Name == c.name })
		if at < 0 {
			at = len(t.Columns)
			t.Columns = append(t.Columns, table.Column{Head: c.name, Name: c.name})
			cells = append(cells, table.Cell{})
			for j := range t.Rows {
				t.Rows[j] = append(t.Rows[j], table.Cell{})
			}
		}
		cells[at] = table.Words(c.text)
	}
	t.Rows = append(t.Rows, cells)
}
