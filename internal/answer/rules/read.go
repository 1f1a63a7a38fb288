package rules

import (
	"io"
	"slices"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/glass"
)

// What a rule set may hold; more is a mistake or an attack.
const (
	MaxBytes       = 1 << 20 // bytes of a document
	maxRules       = 200
	maxEntries     = 100 // of any list within a rule
	maxAssumptions = 50
)

// Kind is the format marker of a rule set: its first line reads
// "rinkpane: rules 1".
const Kind = "rules 1"

// Read reads one rule set; name stands in messages. Unknown fields are refused
// with the nearest known name, lengths must carry their units, and every error
// names file, line, column and field.
func Read(name string, r io.Reader) (Set, error) {
	doc, err := form.Read(name, r, MaxBytes)
	if err != nil {
		return Set{}, err
	}
	set := readSet(doc.Root())
	if err := doc.Err(); err != nil {
		return Set{}, err
	}
	return set, nil
}

func readSet(n form.Node) Set {
	m := n.Map("rinkpane", "id", "name", "status", "source", "example", "assumptions", "materials", "rules")
	form.Parse(m.At("rinkpane"), form.Words(Kind))
	set := Set{
		ID:     form.Parse(m.At("id"), form.ID),
		Name:   m.At("name").Text(),
		Status: m.At("status").Text(),
		Source: m.At("source").TextOr(""),
	}
	if m.Has("example") {
		set.Example = m.At("example").Bool()
	}
	if m.Has("assumptions") {
		for _, a := range m.At("assumptions").List(maxAssumptions) {
			set.Assumptions = append(set.Assumptions, a.Text())
		}
	}
	if m.Has("materials") {
		set.Materials = readMaterials(m.At("materials"))
	}
	seen := map[string]bool{}
	for _, r := range m.At("rules").List(maxRules) {
		rule := readRule(r)
		if seen[rule.ID] {
			r.Failf("a second rule with the id %s; give each rule its own id", form.Quote(rule.ID))
		}
		seen[rule.ID] = true
		set.Rules = append(set.Rules, rule)
	}
	if len(set.Rules) == 0 {
		m.At("rules").Failf("must hold at least one rule")
	}
	return set
}

func readMaterials(n form.Node) []glass.Material {
	var known []string
	for _, m := range glass.Materials() {
		known = append(known, string(m))
	}
	var out []glass.Material
	for _, e := range n.List(len(known)) {
		out = append(out, glass.Material(e.Choice(known...)))
	}
	if len(out) == 0 {
		n.Failf("must name a material: %s", form.Choices(known))
	}
	return out
}

// readRule reads one rule: its kind first, which tells the other fields.
func readRule(n form.Node) Rule {
	name := n.Peek("kind").Choice(Kinds()...)
	all := kinds()
	i := slices.IndexFunc(all, func(k kind) bool { return k.name == name })
	if i < 0 {
		return Rule{}
	}
	k := all[i]
	fields := append([]string{"id", "kind", "note", "dispensation"}, k.fields...)
	if k.windows != never {
		fields = append(fields, "openings")
	}
	m := n.Map(fields...)
	rule := Rule{ID: name, Kind: name, Note: m.At("note").TextOr(""), holes: true, windows: k.windows == always}
	if m.Has("openings") {
		of := m.At("openings").Choice("holes", "low-windows", "both")
		rule.holes, rule.windows = of != "low-windows", of != "holes"
	}
	if m.Has("id") {
		rule.ID = form.Parse(m.At("id"), form.ID)
	}
	if m.Has("dispensation") {
		rule.Dispensable = m.At("dispensation").Bool()
	}
	rule.demand = k.read(m)
	return rule
}
