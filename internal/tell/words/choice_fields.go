package words

import (
	"fmt"
	"strings"

	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/decide/solve"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/table"
)

// ChosenHoles are the columns of a chosen set.
var ChosenHoles = table.Fields[choose.Choice]{
	text("hole", "hole", func(h choose.Choice, sys unit.System) string {
		if h.New {
			return "new"
		}
		return h.Hole.ID
	}),
	text("place", "place", func(h choose.Choice, sys unit.System) string { return h.Place.Name(sys) }),
	text("pane", "pane", func(h choose.Choice, _ unit.System) string { return h.Hole.Pane }),
	length("height", "height_m", func(h choose.Choice) unit.Length { return h.Hole.Height }),
	text("state", "state", func(h choose.Choice, _ unit.System) string { return h.State() }),
	number("worth", "worth", "%.4f", func(h choose.Choice) float64 { return h.Worth }),
	{Column: table.Column{Head: "loss", Name: "loss", Right: true}, Cell: func(h choose.Choice, _ unit.System) table.Cell {
		if loss, ok := h.Loss.Get(); ok {
			return table.Number(fmt.Sprintf("%.4f", loss), loss)
		}
		return table.None()
	}},
	{Column: table.Column{Head: "best view", Name: "best_view_share", Right: true}, Cell: func(h choose.Choice, _ unit.System) table.Cell {
		return table.Number(fmt.Sprintf("%.0f %%", 100*h.Best), h.Best)
	}},
}

// worker is a hole that is worked in a phase of play; the phase is told once to people.
type worker struct {
	choose.Crew
	hole choose.Candidate
	next bool // of the same crew as the row above
}

var workers = table.Fields[worker]{
	once(text("phase", "phase", func(w worker, _ unit.System) string { return w.Phase.String() })),
	once(number("% of the news", "news_percent", "%.0f", func(w worker) float64 { return 100 * w.Share })),
	once(number("value", "value", "%.4f", func(w worker) float64 { return w.Value })),
	text("worked at once", "hole", func(w worker, sys unit.System) string { return w.hole.Say(sys) }),
}

// once leaves a field's text out below the first row of a crew.
func once(f table.Field[worker]) table.Field[worker] {
	of := f.Cell
	f.Cell = func(w worker, sys unit.System) table.Cell {
		c := of(w, sys)
		if w.next {
			c.Text = ""
		}
		return c
	}
	return f
}

// ChoiceCrews returns the table of who works in which phase of play.
func ChoiceCrews(crews []choose.Crew, sys unit.System) table.Table {
	var rows []worker
	for _, c := range crews {
		for k, h := range c.Holes {
			rows = append(rows, worker{c, h, k > 0})
		}
	}
	return workers.Of("Who works at once, phase by phase", rows, sys)
}

var options = table.Fields[option]{
	number("next best", "next_best", "%.0f", func(o option) float64 { return float64(o.number) }),
	valued(func(o option) (value, bound float64) { return o.Value, o.Bound }),
	number("lost", "lost", "%.4f", func(o option) float64 { return o.Lost }),
	list("without", "without", namesWidth, func(o option) []string { return o.without }),
	list("with instead", "with_instead", namesWidth, func(o option) []string { return o.instead }),
}

// ChoicePrices are the columns of what each constraint costs.
var ChoicePrices = table.Fields[choose.Price]{
	text("without this rule or wish", "rule", func(p choose.Price, _ unit.System) string { return p.Rule }),
	valued(func(p choose.Price) (value, bound float64) { return p.Value, p.Bound }),
	number("gain", "gain", "%+.4f", func(p choose.Price) float64 { return p.Gain }),
	number("holes", "holes", "%.0f", func(p choose.Price) float64 { return float64(len(p.Holes)) }),
}

var causes = table.Fields[choose.Cause]{
	text("panes without a place, because of", "cause", func(c choose.Cause, _ unit.System) string { return c.Cause }),
	number("panes", "panes", "%.0f", func(c choose.Cause) float64 { return float64(len(c.Panes)) }),
	list("", "which", 30, func(c choose.Cause) []string { return c.Panes }),
}

// namesWidth is how wide a column of names of places may be, in letters.
const namesWidth = 31

// The kinds of columns.

func text[T any](head, name string, of func(T, unit.System) string) table.Field[T] {
	return table.Field[T]{Column: table.Column{Head: head, Name: name}, Cell: func(row T, sys unit.System) table.Cell { return table.Words(of(row, sys)) }}
}

func number[T any](head, name, form string, of func(T) float64) table.Field[T] {
	return table.Field[T]{Column: table.Column{Head: head, Name: name, Right: true}, Cell: func(row T, _ unit.System) table.Cell {
		return table.Number(fmt.Sprintf(form, of(row)), of(row))
	}}
}

func length[T any](head, name string, of func(T) unit.Length) table.Field[T] {
	return table.Field[T]{Column: table.Column{Head: head, Name: name, Right: true}, Cell: func(row T, sys unit.System) table.Cell {
		return table.Number(of(row).Format(sys), of(row).Metres())
	}}
}

// list tells names as far as they fit, all of them to programs.
func list[T any](head, name string, width int, of func(T) []string) table.Field[T] {
	return table.Field[T]{Column: table.Column{Head: head, Name: name}, Cell: func(row T, _ unit.System) table.Cell {
		return table.Cell{Text: shorten(of(row), width), Value: strings.Join(of(row), "; ")}
	}}
}

// valued is a value, or the range in which it lies when its search was cut short.
func valued[T any](of func(T) (value, bound float64)) table.Field[T] {
	return table.Field[T]{Column: table.Column{Head: "value", Name: "value", Right: true}, Cell: func(row T, _ unit.System) table.Cell {
		value, bound := of(row)
		words := fmt.Sprintf("%.4f", value)
		if bound-value > 10*solve.Tolerance {
			words += fmt.Sprintf(" to %.4f", bound)
		}
		return table.Number(words, value)
	}}
}
