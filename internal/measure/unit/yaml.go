package unit

import (
	"errors"
	"fmt"

	"go.yaml.in/yaml/v3"
)

// UnmarshalYAML reads a length; an error names its line and column.
func (l *Length) UnmarshalYAML(n *yaml.Node) error { return fromNode(n, "length", l) }

// MarshalYAML writes the shortest metric text that reads back the same.
func (l Length) MarshalYAML() (any, error) { return l.Exact(Metric), nil }

// UnmarshalYAML reads a length that may be negative; an error names its line and column.
func (o *Offset) UnmarshalYAML(n *yaml.Node) error { return fromNode(n, "length", o) }

// MarshalYAML writes the shortest metric text that reads back the same.
func (o Offset) MarshalYAML() (any, error) { return Length(o).Exact(Metric), nil }

// UnmarshalYAML reads a size; an error names its line and column.
func (s *Size) UnmarshalYAML(n *yaml.Node) error { return fromNode(n, "size", s) }

// MarshalYAML writes the shortest metric text that reads back the same.
func (s Size) MarshalYAML() (any, error) { return s.Exact(Metric), nil }

// UnmarshalYAML reads an angle; an error names its line and column.
func (a *Angle) UnmarshalYAML(n *yaml.Node) error { return fromNode(n, "angle", a) }

// UnmarshalYAML reads light; an error names its line and column.
func (e *Illuminance) UnmarshalYAML(n *yaml.Node) error { return fromNode(n, "illuminance", e) }

// UnmarshalYAML reads an exposure time; an error names its line and column.
func (t *Shutter) UnmarshalYAML(n *yaml.Node) error { return fromNode(n, "shutter", t) }

// UnmarshalYAML reads an f-number; an error names its line and column.
func (n *Stop) UnmarshalYAML(node *yaml.Node) error { return fromNode(node, "stop", n) }

// UnmarshalYAML reads a sensitivity; an error names its line and column.
func (i *ISO) UnmarshalYAML(n *yaml.Node) error { return fromNode(n, "ISO", i) }

// UnmarshalYAML reads a speed; an error names its line and column.
func (v *Speed) UnmarshalYAML(n *yaml.Node) error { return fromNode(n, "speed", v) }

// UnmarshalYAML reads "metric" or "imperial"; an error names its line and column.
func (s *System) UnmarshalYAML(n *yaml.Node) error { return fromNode(n, "units", s) }

type textReader interface{ UnmarshalText([]byte) error }

// fromNode reads one scalar node and puts its place into any error.
func fromNode(n *yaml.Node, what string, v textReader) error {
	place := n
	if n.Kind == yaml.AliasNode && n.Alias != nil {
		n = n.Alias
	}
	if n.Kind != yaml.ScalarNode {
		return &Error{What: what, Seen: kindName(n.Kind), Why: "not one value", Cure: "write one text",
			Line: place.Line, Column: place.Column}
	}
	err := v.UnmarshalText([]byte(n.Value))
	if err == nil {
		return nil
	}
	var e *Error
	if errors.As(err, &e) {
		at := *e
		at.Line, at.Column = place.Line, place.Column
		return &at
	}
	return fmt.Errorf("line %d, column %d: %w", place.Line, place.Column, err)
}

func kindName(k yaml.Kind) string {
	switch k {
	case yaml.MappingNode:
		return "a mapping"
	case yaml.SequenceNode:
		return "a list"
	default:
		return "no value"
	}
}
