package words

import (
	"strings"

	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/tell/table"
)

// page is a text that is being written for a reader of one unit system.
type page struct {
	strings.Builder
	sys unit.System
}

// say writes a form with amounts in it, as [say.Make] sets it.
func (p *page) say(form string, args ...any) { p.WriteString(say.Make(form, args...).In(p.sys)) }

// lines writes sentences, each from a line's beginning, broken at words.
func (p *page) lines(list ...string) {
	for _, line := range list {
		p.WriteString(table.Wrap(line, "  "))
	}
}

// hang writes a text behind its head.
func (p *page) hang(head, form string, args ...any) {
	p.WriteString(table.Hang(head, say.Make(form, args...).In(p.sys)))
}

// assumed says what the answer rests on that the survey lacks, each once.
func (p *page) assumed(list []arena.Assumption) { p.lines(Assumed(list, p.sys)...) }

// Lines sets sentences, each from a line's beginning, broken at words.
func Lines(list ...string) string {
	var p page
	p.lines(list...)
	return p.String()
}
