package unit

import "encoding/json"

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

// IsZero reports that the quantity is unknown.
func (m Maybe[T]) IsZero() bool { return !m.ok }

// MarshalJSON writes the quantity, or null when it is unknown.
func (m Maybe[T]) MarshalJSON() ([]byte, error) {
	if !m.ok {
		return []byte("null"), nil
	}
	return json.Marshal(m.v)
}

// UnmarshalJSON reads what MarshalJSON writes.
func (m *Maybe[T]) UnmarshalJSON(data []byte) error {
	*m = Maybe[T]{}
	if string(data) == "null" {
		return nil
	}
	if err := json.Unmarshal(data, &m.v); err != nil {
		return err
	}
	m.ok = true
	return nil
}
