package main

import (
	"fmt"

	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
)

// newMaker returns what makes plans with the rule sets and the kit named.
func newMaker(a *app, ruleNames []string, kitPath string) (plan.Maker, error) {
	sets, err := readRules(a, ruleNames)
	if err != nil {
		return plan.Maker{}, err
	}
	k, err := readKit(a, kitPath)
	return plan.Maker{Kit: k, Rules: sets}, err
}

// lacking warns of letters that drawings could not be given.
func lacking(a *app, l sheet.Lack) {
	if said := l.String(); said != "" {
		fmt.Fprintln(a.err, printable(said))
	}
}

// remark tells on standard error what an answer leaves out, and why.
func remark(a *app, remarks []say.Sentence, sys unit.System) {
	for _, r := range remarks {
		fmt.Fprintln(a.err, r.In(sys))
	}
}
