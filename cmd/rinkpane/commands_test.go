package main

import (
	"bytes"
	"encoding/csv"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/spf13/cobra"
)

// helpWidth is the width that people's text keeps to (contract).
const helpWidth = 100

func everyCommand(t *testing.T) []*cobra.Command {
	t.Helper()
	var all []*cobra.Command
	var walk func(c *cobra.Command)
	walk = func(c *cobra.Command) {
		all = append(all, c)
		for _, k := range c.Commands() {
			walk(k)
		}
	}
	walk(rootCommand(&app{out: new(bytes.Buffer)}))
	if len(all) < 17 {
		t.Fatalf("only %d commands", len(all))
	}
	return all
}

func TestEveryCommandTakesJSONAndCSV(t *testing.T) {
	for _, c := range everyCommand(t) {
		for _, name := range []string{"json", "csv", "units"} {
			if c.Flag(name) == nil {
				t.Errorf("%s has no --%s", c.CommandPath(), name)
			}
		}
	}
}

func TestHelpFitsTheWidth(t *testing.T) {
	for _, c := range everyCommand(t) {
		var b bytes.Buffer
		c.SetOut(&b)
		if err := c.Help(); err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(b.String()) {
			if n := utf8.RuneCountInString(strings.TrimSuffix(line, "\n")); n > helpWidth {
				t.Errorf("%s --help: %d columns: %s", c.CommandPath(), n, line)
			}
		}
	}
}

// Every answer comes as CSV whose rows have as many cells as columns, and says
// no where its JSON says no.
func TestAnswersAsCSV(t *testing.T) {
	demo := filepath.Join("..", "..", "examples", "quillhaven.yaml")
	for _, args := range [][]string{
		{"rink", "--standard", "north-american"},
		{"survey", demo},
		{"check", demo},
		{"fit", "--hole-size", "5.5 in x 4.5 in", "--thick", "1/2 in", "--nose", "60 mm", "--focal", "200", "--stop", "4", "--pivot", "centre"},
		{"light", demo, "--hole", "B1"},
		{"optics", "--focal", "200", "--stop", "2.8", "--distance", "15 m"},
		{"panel", "--index", "1.49", "--thick", "12 mm"},
		{"puck", "--hole-size", "5.5 in x 4.5 in", "--thick", "1/2 in"},
		{"frame", demo, "--hole", "B1"},
	} {
		var out, err bytes.Buffer
		code := answer(t.Context(), append(args, "--csv"), strings.NewReader(""), &out, &err)
		if code == exitBad || out.Len() == 0 {
			t.Errorf("%v: exit %d: %s", args, code, err.String())
			continue
		}
		for i, block := range strings.Split(out.String(), "\n\n") {
			rows, err := csv.NewReader(strings.NewReader(block)).ReadAll()
			if err != nil || len(rows) < 2 {
				t.Errorf("%v, table %d: %d rows, %v", args, i, len(rows), err)
			}
		}
	}
}
