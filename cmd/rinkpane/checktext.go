package main

import (
	"cmp"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"text/tabwriter"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/unit"
)

// textWidth is how wide people's text may be, in columns (contract).
const textWidth = 100

// checkText writes a report for people: the verdict, what is broken, unknown
// and kept, and last what the sets in force are.
type checkText struct {
	w       io.Writer
	units   unit.System
	all     bool
	several bool // several rule sets are in force: rules are told with their set
}

func (t checkText) report(name string, sets rules.Sets, rep rules.Report) {
	by := map[rules.Status][]rules.Finding{}
	for _, f := range rep.Findings {
		by[f.Status] = append(by[f.Status], f)
	}
	t.several = len(sets) > 1
	t.verdict(name, rep, by)
	t.open("Broken", by[rules.Fail])
	t.open("Unknown: the survey lacks something", by[rules.Unknown])
	for _, s := range sets {
		t.kept(s.ID, by[rules.Pass])
	}
	for _, n := range rep.Notes {
		fmt.Fprintln(t.w)
		t.wrap("Note: ", n)
	}
	for _, s := range sets {
		t.set(s)
	}
}

func (t checkText) verdict(name string, rep rules.Report, by map[rules.Status][]rules.Finding) {
	words := map[rules.Status]string{
		rules.Pass:    "PASS: every rule is kept",
		rules.Fail:    "FAIL: rules are broken",
		rules.Unknown: "UNKNOWN: nothing is broken, but the survey lacks something",
	}
	t.wrap("", fmt.Sprintf("%s - %s", name, words[rep.Verdict]))
	fmt.Fprintf(t.w, "%d broken, %d unknown, %d kept\n", len(by[rules.Fail]), len(by[rules.Unknown]), len(by[rules.Pass]))
	t.wrap("by the rules of ", strings.Join(rep.RuleSets, ", "))
}

func (t checkText) set(s rules.Set) {
	fmt.Fprintln(t.w)
	t.wrap("Rule set ", fmt.Sprintf("%s: %s", s.ID, s.Name))
	t.wrap("  status: ", s.Status)
	if s.Source != "" {
		t.wrap("  source: ", s.Source)
	}
	if len(s.Assumptions) > 0 {
		t.wrap("  assumed: ", strings.Join(s.Assumptions, " "))
	}
}

// open lists findings that ask for something to be done. What is said of
// several holes in the same words is said once.
func (t checkText) open(title string, list []rules.Finding) {
	if len(list) == 0 {
		return
	}
	fmt.Fprintf(t.w, "\n%s\n", title)
	said := map[string]int{}
	var firsts []rules.Finding
	var same [][]string
	for _, f := range list {
		words := f.Set + " " + f.Rule + strings.ReplaceAll(f.Say(t.units), "hole "+strings.Join(f.Holes, " ")+" ", "\x00")
		words = strings.ReplaceAll(words, "hole "+strings.Join(f.Holes, " ")+",", "\x00,")
		if i, ok := said[words]; ok && len(f.Holes) == 1 {
			same[i] = append(same[i], f.Holes[0])
			continue
		}
		said[words] = len(firsts)
		firsts, same = append(firsts, f), append(same, nil)
	}
	for i, f := range firsts {
		text, head := f.Say(t.units), fmt.Sprintf("  %-16s ", f.Rule)
		if len(same[i]) > 0 {
			text += " The same for " + strings.Join(same[i], ", ") + "."
		}
		if t.several {
			fmt.Fprintf(t.w, "  %s, of %s\n", f.Rule, f.Set)
			head = "    "
		}
		t.wrap(head, text)
	}
}

// kept tables what passes of one set: for each rule the finding with the least
// margin, or every finding.
func (t checkText) kept(set string, list []rules.Finding) {
	list = slices.DeleteFunc(slices.Clone(list), func(f rules.Finding) bool { return f.Set != set })
	if len(list) == 0 {
		return
	}
	title := "Kept"
	if t.several {
		title += " of " + set
	}
	fmt.Fprintf(t.w, "\n%s\n", title)
	tw := tabwriter.NewWriter(t.w, 0, 0, 2, ' ', 0)
	head := "findings\ttightest at"
	if t.all {
		head = "holes"
	}
	fmt.Fprintf(tw, "  rule\t%s\tmeasured\tlimit\tmargin\n", head)
	for _, group := range byRule(list) {
		if !t.all {
			f := tightest(group)
			fmt.Fprintf(tw, "  %s\t%d\t%s\t%s\n", f.Rule, len(group), holesText(f.Holes), t.numbers(f))
			continue
		}
		for _, f := range group {
			fmt.Fprintf(tw, "  %s\t%s\t%s\n", f.Rule, holesText(f.Holes), t.numbers(f))
		}
	}
	tw.Flush()
	if !t.all {
		fmt.Fprintln(t.w, "  (--all lists every finding)")
	}
}

// mostHolesShown is how many holes a row names.
const mostHolesShown = 4

func holesText(names []string) string {
	if len(names) > mostHolesShown {
		return fmt.Sprintf("%s +%d", strings.Join(names[:mostHolesShown], " "), len(names)-mostHolesShown)
	}
	return strings.Join(names, " ")
}

func (t checkText) numbers(f rules.Finding) string {
	return t.number(f.Measured) + "\t" + t.number(f.Limit) + "\t" + t.number(f.Margin)
}

func (t checkText) number(m unit.Maybe[rules.Amount]) string {
	a, ok := m.Get()
	switch {
	case !ok:
		return "-"
	case a.Of == rules.HoleCount:
		return fmt.Sprintf("%.0f", a.N)
	case a.Of == rules.Share:
		return fmt.Sprintf("%.3f", a.N)
	}
	return a.Say(t.units)
}

// byRule splits a set's findings by rule and unit, their order kept.
func byRule(list []rules.Finding) [][]rules.Finding {
	var out [][]rules.Finding
	at := map[string]int{}
	for _, f := range list {
		key := fmt.Sprintf("%s/%d", f.Rule, f.Of)
		i, ok := at[key]
		if !ok {
			i = len(out)
			at[key] = i
			out = append(out, nil)
		}
		out[i] = append(out[i], f)
	}
	return out
}

// tightest returns the finding with the least margin; one without a number
// only when none has one.
func tightest(list []rules.Finding) rules.Finding {
	margin := func(f rules.Finding) float64 { return f.Margin.Or(rules.Amount{N: math.Inf(1)}).N }
	return slices.MinFunc(list, func(f, g rules.Finding) int { return cmp.Compare(margin(f), margin(g)) })
}

func (t checkText) wrap(head, text string) { wrapText(t.w, head, text) }

// wrapText prints head and text in lines of at most textWidth, the text hanging
// behind the head.
func wrapText(w io.Writer, head, text string) {
	indent := strings.Repeat(" ", len([]rune(head)))
	line, width := head, len(indent)
	start := true
	for _, word := range strings.Fields(text) {
		n := len([]rune(word))
		if !start && width+1+n > textWidth {
			fmt.Fprintln(w, line)
			line, width, start = indent, len(indent), true
		}
		if !start {
			line, width = line+" ", width+1
		}
		line, width, start = line+word, width+n, false
	}
	fmt.Fprintln(w, line)
}
