package edit

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"

	"example.org/rinkpane/internal/measure/form"
)

// Value is what a field shall hold: a text, a list, or fields in their order.
// In JSON it is a string, an array, or an object; numbers and booleans are
// refused, since a document's values are texts with their units.
type Value struct {
	kind   valueKind
	text   string
	items  []Value
	fields []namedValue
}

type valueKind int

const (
	single valueKind = iota
	list
	group
)

type namedValue struct {
	name  string
	value Value
}

// One returns a value of one text: "5.5 in x 4.5 in".
func One(text string) *Value { return &Value{text: text} }

// deepest is how deep values may nest: a list of holes with places needs 3.
const deepest = 6

// UnmarshalJSON reads a value and keeps the order of an object's fields.
func (v *Value) UnmarshalJSON(data []byte) error {
	d := json.NewDecoder(bytes.NewReader(data))
	got, err := read(d, 0)
	if err != nil {
		return fmt.Errorf("value: %w", err)
	}
	*v = got
	return nil
}

func read(d *json.Decoder, depth int) (Value, error) {
	t, err := d.Token()
	if err != nil {
		return Value{}, err
	}
	switch t := t.(type) {
	case string:
		return Value{text: t}, nil
	case json.Delim:
		if depth == deepest {
			return Value{}, errors.New("nested too deep")
		}
		if t == '[' {
			return readList(d, depth+1)
		}
		return readGroup(d, depth+1)
	}
	return Value{}, fmt.Errorf("write %v as text with its unit, in quotes", t)
}

func readList(d *json.Decoder, depth int) (Value, error) {
	out := Value{kind: list}
	for d.More() {
		item, err := read(d, depth)
		if err != nil {
			return Value{}, err
		}
		out.items = append(out.items, item)
	}
	_, err := d.Token()
	return out, err
}

func readGroup(d *json.Decoder, depth int) (Value, error) {
	out := Value{kind: group}
	for d.More() {
		name, err := d.Token()
		if err != nil {
			return Value{}, err
		}
		value, err := read(d, depth)
		if err != nil {
			return Value{}, err
		}
		out.fields = append(out.fields, namedValue{fmt.Sprint(name), value})
	}
	_, err := d.Token()
	return out, err
}

// MarshalJSON writes the value as UnmarshalJSON reads it.
func (v Value) MarshalJSON() ([]byte, error) {
	switch v.kind {
	case list:
		return json.Marshal(append([]Value{}, v.items...))
	case group:
		var b bytes.Buffer
		b.WriteByte('{')
		for i, f := range v.fields {
			name, err := json.Marshal(f.name)
			if err != nil {
				return nil, err
			}
			value, err := f.value.MarshalJSON()
			if err != nil {
				return nil, err
			}
			if i > 0 {
				b.WriteByte(',')
			}
			b.Write(name)
			b.WriteByte(':')
			b.Write(value)
		}
		b.WriteByte('}')
		return b.Bytes(), nil
	}
	return json.Marshal(v.text)
}

// entry returns the value as the document's writer takes it.
func (v Value) entry() form.Entry {
	switch v.kind {
	case list:
		items := make([]form.Entry, len(v.items))
		for i, item := range v.items {
			items[i] = item.entry()
		}
		return form.Items(items...)
	case group:
		fields := make([]form.Field, len(v.fields))
		for i, f := range v.fields {
			fields[i] = form.Field{Name: f.name, Value: f.value.entry()}
		}
		return form.Fields(fields...)
	}
	return form.Text(v.text)
}
