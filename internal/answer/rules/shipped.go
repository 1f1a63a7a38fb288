package rules

import (
	"bytes"
	"embed"
	"fmt"
	"slices"

	"example.org/rinkpane/internal/measure/form"
)

//go:embed sets/*.yaml
var shipped embed.FS

// Default is the rule set in force when none is named.
const Default = "common-practice"

// Names returns the ids of the rule sets that ship with the program, the
// default first.
func Names() []string {
	return []string{Default, "international-2014", Trade, "example-loose"}
}

// Trade is the rule set that is always in force beside the others: what a
// workshop or a factory asks before it makes a hole.
const Trade = "trade"

// formerTrade was the name of the part of Trade on tempered panes, when it had
// to be asked for.
const formerTrade = "tempered-glass"

// InForce returns the sets named with the trade's, each once.
func InForce(named ...Set) (Sets, error) {
	trade, err := Shipped(Trade)
	if err != nil {
		return Sets{}, err
	}
	var out Sets
	for _, s := range append(slices.Clone(named), trade) {
		if !slices.ContainsFunc(out.list, func(o Set) bool { return o.ID == s.ID }) {
			out.list = append(out.list, s)
		}
	}
	return out, nil
}

// Document returns a shipped rule set's document, with its comments: a start
// for one's own.
func Document(id string) ([]byte, error) {
	if id == formerTrade {
		id = Trade
	}
	text, err := shipped.ReadFile("sets/" + id + ".yaml")
	if err != nil {
		if near := form.Nearest(id, Names()); near != "" {
			return nil, fmt.Errorf("no rule set %s ships with the program; did you mean %q?", form.Quote(id), near)
		}
		return nil, fmt.Errorf("no rule set %s ships with the program; there are %s", form.Quote(id), form.Choices(Names()))
	}
	return text, nil
}

// Shipped returns a rule set that ships with the program.
func Shipped(id string) (Set, error) {
	text, err := Document(id)
	if err != nil {
		return Set{}, err
	}
	return Read(id+".yaml", bytes.NewReader(text))
}
