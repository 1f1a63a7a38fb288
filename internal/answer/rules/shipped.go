package rules

import (
	"bytes"
	"embed"
	"fmt"

	"example.org/rinkpane/internal/measure/form"
)

//go:embed sets/*.yaml
var shipped embed.FS

// Default is the rule set in force when none is named.
const Default = "common-practice"

// Names returns the ids of the rule sets that ship with the program, the
// default first.
func Names() []string {
	return []string{Default, "international-2014", "tempered-glass", "example-loose"}
}

// Document returns a shipped rule set's document, with its comments: a start
// for one's own.
func Document(id string) ([]byte, error) {
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
