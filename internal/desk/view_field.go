package desk

import (
	"slices"

	"example.org/rinkpane/internal/desk/blank"
)

// field is one question of a form with its answers and what is wrong with them.
type field struct {
	blank.Question
	Value   string
	From    string // of a place: what it is measured from
	Inner   []field
	Options []choiceView
	Wrong   string
	// Described lists the ids of the hint and the message, for aria-describedby; "".
	Described string
}

// choiceView is one of several answers.
type choiceView struct {
	Value, Label string
	Chosen       bool
}

// fieldsOf makes a form's fields.
func fieldsOf(p blank.Part, a blank.Answers, wrong map[string]string) []field {
	var out []field
	for _, q := range p.Questions {
		f := field{Question: q, Value: a.One(q.Name), From: a.One(q.Name + ".from"), Wrong: wrong[q.Name]}
		if q.Hint != "" {
			f.Described = "hint-" + q.Name
		}
		if f.Wrong != "" {
			f.Wrong = sentence(f.Wrong)
			f.Described = joinWords(f.Described, "wrong-"+q.Name)
		}
		f.Options = optionsOf(q.Options, chosenOf(q, f, a))
		if q.Kind == blank.Cover {
			f.Inner = coverFields(a)
		}
		out = append(out, f)
	}
	return out
}

// chosenOf returns the answers that are chosen among a question's options.
func chosenOf(q blank.Question, f field, a blank.Answers) []string {
	switch q.Kind {
	case blank.Ticks:
		return a[q.Name]
	case blank.Where:
		return []string{f.From}
	}
	return []string{f.Value}
}

// optionsOf marks the options that are chosen. An answer that no option has is kept
// as one of its own, so that showing a form loses nothing.
func optionsOf(options []blank.Option, chosen []string) []choiceView {
	var out []choiceView
	for _, o := range options {
		out = append(out, choiceView{o.Value, o.Label, slices.Contains(chosen, o.Value)})
	}
	for _, c := range chosen {
		known := slices.ContainsFunc(options, func(o blank.Option) bool { return o.Value == c })
		if !known && c != "" && len(options) > 0 {
			out = append(out, choiceView{c, c, true})
		}
	}
	return out
}

// coverFields are the questions about a cover that is there.
func coverFields(a blank.Answers) []field {
	var out []field
	for _, of := range []struct {
		name, label string
		options     []blank.Option
	}{
		{"cover.material", "of", blank.Materials()},
		{"cover.tether", "on a tether", []blank.Option{{Value: "", Label: "not said"}, {Value: "yes", Label: "yes"}, {Value: "no", Label: "no"}}},
	} {
		f := field{Question: blank.Question{Name: of.name, Label: of.label, Kind: blank.Choice}}
		f.Options = optionsOf(of.options, []string{a.One(of.name)})
		out = append(out, f)
	}
	return out
}

func joinWords(a, b string) string {
	if a == "" {
		return b
	}
	return a + " " + b
}
