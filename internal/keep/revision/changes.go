package revision

import (
	"context"
	"fmt"
	"strings"

	"github.com/rogpeppe/go-internal/diff"
)

// Diff returns what changed between two texts in the unified form that
// programmers read, with three lines around each change; empty when nothing did.
//
// Lines that stand once in each text hold the two together, and what lies between
// is matched from both its ends. So the work grows as n log n with the lines of
// both texts, whatever they hold; a least difference would take n squared.
func Diff(from, to, fromName, toName string) string {
	text := string(diff.Diff(fromName, []byte(from), toName, []byte(to)))
	_, text, _ = strings.Cut(text, "\n") // the command that would have made it
	return text
}

// Comparison is what differs between two texts.
type Comparison struct {
	Text string // as of [Diff]
	// Gone and Come are the lines that went and that came, for a sentence to people.
	Gone, Come []string
}

// Compare compares two texts once. Its work grows as that of [Diff]: with two texts
// as long as a document may be it is a second of one core at most, at the end of
// which ctx is asked again. The error is ctx's.
func Compare(ctx context.Context, from, to, fromName, toName string) (Comparison, error) {
	if err := ctx.Err(); err != nil {
		return Comparison{}, err
	}
	out := Comparison{Text: Diff(from, to, fromName, toName), Gone: []string{}, Come: []string{}}
	lines := strings.SplitAfter(from, "\n")
	for _, c := range changesIn(out.Text) {
		if err := ctx.Err(); err != nil {
			return Comparison{}, err
		}
		out.Gone = append(out.Gone, trimmed(lines[c.from:c.to])...)
		out.Come = append(out.Come, trimmed(c.with)...)
	}
	return out, nil
}

func trimmed(lines []string) []string {
	var out []string
	for _, l := range lines {
		if l = strings.TrimSpace(l); l != "" {
			out = append(out, l)
		}
	}
	return out
}

// A change replaces lines from..to of a text by with.
type change struct {
	from, to int
	with     []string
}

// changesOf returns what makes side out of base, in order.
func changesOf(base, side string) []change { return changesIn(Diff(base, side, "", "")) }

// changesIn reads the changes from the lines of a difference.
func changesIn(diff string) []change {
	var out []change
	at, open := 0, false // the line of base, and whether the last change goes on
	lines := strings.SplitAfter(diff, "\n")
	for i, line := range lines[min(2, len(lines)):] { // without the names
		if line == "" {
			break
		}
		if (line[0] == '-' || line[0] == '+') && !open {
			out, open = append(out, change{from: at, to: at}), true
		}
		switch line[0] {
		case '@':
			at, open = startOf(line), false
		case ' ':
			at, open = at+1, false
		case '-':
			at++
			out[len(out)-1].to = at
		case '+':
			last := &out[len(out)-1]
			if strings.HasPrefix(lines[i+3], `\`) { // "No newline at end of file"
				line = strings.TrimSuffix(line, "\n")
			}
			last.with = append(last.with, line[1:])
		}
	}
	return out
}

// startOf reads where a part of a difference begins in the old text: of
// "@@ -7,3 +7,4 @@" line 7, counted from 1; line 0 stands before an empty text.
func startOf(head string) int {
	var start, lines int
	if _, err := fmt.Sscanf(head, "@@ -%d,%d", &start, &lines); err != nil || lines == 0 {
		return start
	}
	return start - 1
}
