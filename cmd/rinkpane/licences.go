package main

import (
	_ "embed" // the texts are part of the program
	"strings"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/tell/wire"
)

// licenceTexts are the licences of everything that is linked into the program, each
// below a head; scripts/licences writes the file.
//
//go:embed licences.txt
var licenceTexts string

// licenceHead begins the line that names what a text is for.
const licenceHead = "==== "

func licencesCommand(a *app) *cobra.Command {
	return &cobra.Command{
		Use:     "licences",
		Short:   "Show the licences of what is built into the program",
		Long:    "Prints the licence texts of the modules, the fonts and the standard library that are built in.",
		Example: "  rinkpane licences > third-party.txt",
		Args:    noArgument,
		RunE: func(*cobra.Command, []string) error {
			var list []wire.Object
			for _, part := range strings.Split("\n"+licenceTexts, "\n"+licenceHead)[1:] {
				of, text, _ := strings.Cut(part, "\n")
				list = append(list, wire.Object{"of", of, "text", strings.TrimSpace(text)})
			}
			return a.print(wire.Object{"licences", list}, func() string { return licenceTexts })
		},
	}
}
