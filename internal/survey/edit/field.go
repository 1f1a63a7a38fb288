package edit

import (
	"errors"
	"fmt"
	"strings"
	"unicode"

	"example.org/rinkpane/internal/survey/arena"
)

// longestPath is the most bytes of a path: "dispensations[#200].reference" has 29.
const longestPath = 200

func field(doc *arena.Document, one Edit) (*arena.Document, string, error) {
	if len(one.Path) > longestPath {
		return nil, "", fmt.Errorf("path: longer than %d characters", longestPath)
	}
	if id, _ := paneOf(one.Path); id != "" && one.Do != Append {
		return pane(doc, one, id)
	}
	return plain(doc, one)
}

// plain makes an edit of a field or list item where it stands.
func plain(doc *arena.Document, one Edit) (*arena.Document, string, error) {
	if one.Do == Remove {
		next, err := doc.Remove(one.Path)
		return next, "remove " + one.Path, err
	}
	if one.Value == nil {
		return nil, "", errors.New("value: is missing")
	}
	if one.Do == Append {
		next, err := doc.Append(one.Path, one.Value.entry())
		return next, "add to " + one.Path, err
	}
	next, err := doc.Set(one.Path, one.Value.entry())
	what := "set " + one.Path
	if one.Value.kind == single {
		what += " to " + one.Value.text
	}
	return next, what, err
}

func rewrite(doc *arena.Document, one Edit) (*arena.Document, string, error) {
	if one.Text == "" {
		return nil, "", errors.New("text: is missing")
	}
	next, err := arena.Read(doc.Name(), strings.NewReader(one.Text))
	return next, "edit the text", err
}

// longestSaid is the most characters of what several edits did, in a line.
const longestSaid = 160

// sentence joins what edits did in one line, without control characters.
func sentence(said []string) string {
	line := oneLine(strings.Join(said, "; "))
	if len(line) > longestSaid && len(said) > 1 {
		line = oneLine(said[0])
		more := fmt.Sprintf(" and %d more changes", len(said)-1)
		return cut(line, longestSaid-len(more)) + more
	}
	return cut(line, longestSaid)
}

func oneLine(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return ' '
		}
		return r
	}, s)
}

// cut returns at most so many characters of a line.
func cut(s string, most int) string {
	r := []rune(s)
	if len(r) <= most {
		return s
	}
	return string(r[:most-1]) + "…"
}
