package wire

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"

	"example.org/rinkpane/internal/measure/unit"
)

// Object is an answer as JSON: names and values in turn, which keep their order.
//
//	Object{"focal_mm", 200 * unit.Millimetre, "far_m", unit.Maybe[unit.Length]{}}
//	    {"focal_mm": 200, "far_m": null}
//
// A length is written in millimetres where its name ends with _mm, else in metres,
// an angle in degrees; what is not known is null, and an empty list of words []. Answers
// of the desk's API are structs instead: it publishes their schema.
type Object []any

// MarshalJSON writes the object; it fails on a name that is no text and on a name
// without a value.
func (o Object) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	b.WriteByte('{')
	for i := 0; i < len(o); i += 2 {
		name, ok := o[i].(string)
		if !ok || i+1 == len(o) {
			return nil, fmt.Errorf("field %d of an answer: %v is no name with a value", i/2, o[i])
		}
		if i > 0 {
			b.WriteByte(',')
		}
		if err := enc.Encode(name); err != nil {
			return nil, err
		}
		b.WriteByte(':')
		if err := enc.Encode(number(name, o[i+1])); err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// number turns quantities into plain numbers of the unit that a field's name says.
func number(name string, v any) any {
	switch v := v.(type) {
	case unit.Length:
		if strings.HasSuffix(name, "_mm") {
			return v.Millimetres()
		}
		return v.Metres()
	case unit.Angle:
		return v.Degrees()
	case unit.Size:
		return []any{number(name, v.W), number(name, v.H)}
	case unit.Maybe[unit.Length]:
		return known(name, v)
	case unit.Maybe[unit.Angle]:
		return known(name, v)
	case []string:
		return some(v)
	}
	return v
}

func known[T any](name string, m unit.Maybe[T]) any {
	v, ok := m.Get()
	if !ok {
		return nil
	}
	return number(name, v)
}
