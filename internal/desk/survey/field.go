package survey

import (
	"slices"

	"example.org/rinkpane/internal/desk/shell"
)

// field is one question of a form with its answers and what is wrong with them.
type field struct {
	Question
	Value   string
	From    string // of a place: what it is measured from
	Inner   []field
	Options []shell.Choice
	Wrong   string
	// Described lists the ids of the hint and the message, for aria-describedby; "".
	Described string
}

// fieldsOf makes a form's fields.
func fieldsOf(p Part, a Answers, wrong map[string]string) []field {
	var out []field
	for _, q := range p.Questions {
		f := field{Question: q, Value: a.One(q.Name), From: a.One(q.Name + ".from"), Wrong: wrong[q.Name]}
		if q.Hint != "" {
			f.Described = "hint-" + q.Name
		}
		if f.Wrong != "" {
			f.Wrong = shell.Sentence(f.Wrong)
			f.Described = joinWords(f.Described, "wrong-"+q.Name)
		}
		f.Options = optionsOf(q.Options, chosenOf(q, f, a))
		if q.Kind == Cover {
			f.Inner = coverFields(a)
		}
		out = append(out, f)
	}
	return out
}

// chosenOf returns the answers that are chosen among a question's options.
func chosenOf(q Question, f field, a Answers) []string {
	switch q.Kind {
	case Ticks:
		return a[q.Name]
	case Where:
		return []string{f.From}
	}
	return []string{f.Value}
}

// optionsOf marks the options that are chosen. An answer that no option has is kept
// as one of its own, so that showing a form loses nothing.
func optionsOf(options []Option, chosen []string) []shell.Choice {
	var out []shell.Choice
	for _, o := range options {
		out = append(out, shell.Choice{Value: o.Value, Name: o.Label, Chosen: slices.Contains(chosen, o.Value)})
	}
	for _, c := range chosen {
		known := slices.ContainsFunc(options, func(o Option) bool { return o.Value == c })
		if !known && c != "" && len(options) > 0 {
			out = append(out, shell.Choice{Value: c, Name: c, Chosen: true})
		}
	}
	return out
}

// coverFields are the questions about a cover that is there.
func coverFields(a Answers) []field {
	var out []field
	for _, of := range []struct {
		name, label string
		options     []Option
	}{
		{"cover.material", "of", Materials()},
		{"cover.tether", "on a tether", []Option{{Value: "", Label: "not said"}, {Value: "yes", Label: "yes"}, {Value: "no", Label: "no"}}},
	} {
		f := field{Question: Question{Name: of.name, Label: of.label, Kind: Choice}}
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
