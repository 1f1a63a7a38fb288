package unit

import (
	"encoding/json"

	"go.yaml.in/yaml/v3"
)

// Maybe is a quantity that a survey may lack. Its zero value is unknown.
type Maybe[T any] struct {
	v  T
	ok bool
}

// Known returns a Maybe that holds v.
func Known[T any](v T) Maybe[T] { return Maybe[T]{v: v, ok: true} }

// Get returns the quantity and whether it is known.
func (m Maybe[T]) Get() (T, bool) { return m.v, m.ok }

// Or returns the quantity, or fallback when it is unknown.
func (m Maybe[T]) Or(fallback T) T {
	if m.ok {
		return m.v
	}
	return fallback
}

// IsZero reports that the quantity is unknown; encoders with omitzero leave it out.
func (m Maybe[T]) IsZero() bool { return !m.ok }

// MarshalJSON writes the quantity, or null when it is unknown.
func (m Maybe[T]) MarshalJSON() ([]byte, error) {
	if !m.ok {
		return []byte("null"), nil
	}
	return json.Marshal(m.v)
}

// UnmarshalJSON reads the quantity; null is unknown.
func (m *Maybe[T]) UnmarshalJSON(b []byte) error {
	if string(b) == "null" {
		*m = Maybe[T]{}
		return nil
	}
	var v T
	if err := json.Unmarshal(b, &v); err != nil {
		return err
	}
	*m = Known(v)
	return nil
}

// UnmarshalYAML reads the quantity; null is unknown.
func (m *Maybe[T]) UnmarshalYAML(n *yaml.Node) error {
	if n.Kind == yaml.ScalarNode && n.Tag == "!!null" {
		*m = Maybe[T]{}
		return nil
	}
	var v T
	if err := n.Decode(&v); err != nil {
		return err
	}
	*m = Known(v)
	return nil
}

// MarshalYAML writes the quantity, or null when it is unknown.
func (m Maybe[T]) MarshalYAML() (any, error) {
	if !m.ok {
		return nil, nil
	}
	return m.v, nil
}
