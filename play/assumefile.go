package play

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"go.yaml.in/yaml/v3"
)

// maxAssumeBytes is far above any file of assumptions written by hand.
const maxAssumeBytes = 1 << 20

// ReadAssumptions reads YAML over the shipped assumptions; what the file does
// not name keeps its default. name is used in messages, which give line and
// field. An example:
//
//	shares: {rush: 20, zone-play: 30, net-front: 25, face-off: 10, celebration: 10, bench: 5}
//	weights: {celebration: 6}
//	home_share: 0.5
//	home_weight: 2
//	stature_m: {mean: 1.6285, deviation: 0.0642}
func ReadAssumptions(name string, in io.Reader) (Assumptions, error) {
	a := DefaultAssumptions()
	text, err := io.ReadAll(io.LimitReader(in, maxAssumeBytes+1))
	if err != nil {
		return a, fmt.Errorf("%s: %w", name, err)
	}
	if len(text) > maxAssumeBytes {
		return a, fmt.Errorf("%s: larger than 1 MB: that is no file of assumptions", name)
	}
	var doc yaml.Node
	if err := yaml.Unmarshal(text, &doc); err != nil {
		return a, fmt.Errorf("%s: %s", name, strings.TrimPrefix(err.Error(), "yaml: "))
	}
	if len(doc.Content) == 0 {
		return a, fmt.Errorf("%s: empty: write shares, weights, home_share, home_weight or stature_m", name)
	}
	if err := a.read(doc.Content[0]); err != nil {
		return a, fmt.Errorf("%s: %w", name, err)
	}
	if err := a.Check(); err != nil {
		return a, fmt.Errorf("%s: %w", name, err)
	}
	return a, nil
}

func (a *Assumptions) read(n *yaml.Node) error {
	return fields(n, "", map[string]func(*yaml.Node) error{
		"shares":      func(v *yaml.Node) error { return perPhase(v, "shares", &a.Share) },
		"weights":     func(v *yaml.Node) error { return perPhase(v, "weights", &a.Weight) },
		"home_share":  func(v *yaml.Node) error { return number(v, "home_share", &a.HomeShare) },
		"home_weight": func(v *yaml.Node) error { return number(v, "home_weight", &a.HomeWeight) },
		"stature_m": func(v *yaml.Node) error {
			return fields(v, "stature_m.", map[string]func(*yaml.Node) error{
				"mean":      func(v *yaml.Node) error { return number(v, "stature_m.mean", &a.Stature.Mean) },
				"deviation": func(v *yaml.Node) error { return number(v, "stature_m.deviation", &a.Stature.SD) },
			})
		},
		"equipment_m": func(v *yaml.Node) error { return number(v, "equipment_m", &a.Equipment) },
	})
}

func perPhase(n *yaml.Node, field string, to *[phases]float64) error {
	read := map[string]func(*yaml.Node) error{}
	for _, p := range Phases() {
		read[p.String()] = func(v *yaml.Node) error { return number(v, field+"."+p.String(), &to[p]) }
	}
	return fields(n, field+".", read)
}

// fields reads a mapping whose keys are all known.
func fields(n *yaml.Node, prefix string, read map[string]func(*yaml.Node) error) error {
	if n.Kind != yaml.MappingNode {
		return fmt.Errorf("line %d: %s: write a mapping of names to numbers", n.Line, strings.TrimSuffix(prefix, "."))
	}
	var seen []string
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, value := n.Content[i], n.Content[i+1]
		f, ok := read[key.Value]
		if !ok {
			return fmt.Errorf("line %d: unknown field %s%s: write one of %s", key.Line, prefix, key.Value, known(read))
		}
		if slices.Contains(seen, key.Value) {
			return fmt.Errorf("line %d: field %s%s stands twice: keep one", key.Line, prefix, key.Value)
		}
		seen = append(seen, key.Value)
		if err := f(value); err != nil {
			return err
		}
	}
	return nil
}

func known(read map[string]func(*yaml.Node) error) string {
	var names []string
	for k := range read {
		names = append(names, k)
	}
	slices.Sort(names)
	return strings.Join(names, ", ")
}

var errNumber = errors.New("write a plain number")

func number(n *yaml.Node, field string, to *float64) error {
	if n.Kind != yaml.ScalarNode || (n.Tag != "!!float" && n.Tag != "!!int") || n.Decode(to) != nil {
		return fmt.Errorf("line %d: %s: %q: %w", n.Line, field, n.Value, errNumber)
	}
	return nil
}
