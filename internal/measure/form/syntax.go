package form

import (
	"bytes"
	"regexp"
	"strconv"
	"strings"
)

var (
	yamlLine   = regexp.MustCompile(`^yaml: line (\d+): `)
	yamlPrefix = regexp.MustCompile(`^yaml: (line \d+: )?`)
)

// cures answers the parser's complaints in words of the trade.
var cures = []struct{ says, cure string }{
	{"tab character", "indent with spaces, not with tabs"},
	{"cannot start any token", "put the value in quotes"},
	{"mapping values are not allowed", "indent the line like those around it, or put a value that holds a colon in quotes"},
	{"expected ',' or", "close the bracket, with a comma between its values"},
	{"unexpected end of stream", "close the quote"},
	{"expected key", "start the fields of one item in the same column, each as name: value"},
	{"'-' indicator", "start the items of one list in the same column, each with a dash and a space"},
	{"could not find expected ':'", "write the field as name: value"},
	{"max depth", "the file is nested far too deep to be a form"},
}

// syntax turns the parser's error into a Problem at the line that it cannot take.
func (d *Document) syntax(err error) *Problem {
	says := yamlPrefix.ReplaceAllString(err.Error(), "")
	cure := "compare the line with those around it"
	for _, c := range cures {
		if strings.Contains(says, c.says) {
			cure = c.cure
			break
		}
	}
	line := d.failingLine()
	if m := yamlLine.FindStringSubmatch(err.Error()); m != nil {
		if own, _ := strconv.Atoi(m[1]); own > line { // digits by the expression
			line = own
		}
	}
	if d.tabbed(line) {
		cure = cures[0].cure
	}
	return &Problem{File: d.name, Line: line, Column: d.firstColumn(line), Text: "not valid YAML: " + says + "; " + cure}
}

// tabbed reports whether a line is indented with a tab, whatever the parser calls it.
func (d *Document) tabbed(line int) bool {
	if line < 1 || line > len(d.lines) {
		return false
	}
	return bytes.HasPrefix(bytes.TrimLeft(d.text[d.lines[line-1]:d.lineEnd(line)], " "), []byte{'\t'})
}

// failingLine returns the first line that the parser cannot take: the text
// before it is readable, with it no longer. The parser's own line is often
// that of the list around, far above.
//
// Readable prefixes may lie beyond an unreadable one (inside a bracket that a
// later line closes), so the search looks on a little past each answer. Work is
// bounded; a text too large for it is searched less exactly.
func (d *Document) failingLine() int {
	const lookOn = 24
	budget := 1 << 20 // bytes to parse in all: a fraction of a second
	ok := func(lines int) bool {
		end := d.lineEnd(lines)
		budget -= end
		_, err := parse(d.text[:end])
		return err == nil
	}
	good, bad := 0, len(d.lines)
	for bad-good > 1 && budget > 0 {
		if mid := (good + bad) / 2; ok(mid) {
			good = mid
		} else {
			bad = mid
		}
	}
	for k := good + 2; k <= min(good+lookOn, len(d.lines)) && budget > 0; k++ {
		if ok(k) {
			good = k
		}
	}
	return good + 1
}

// secondDocument returns the line of the marker that ends the first document.
func (d *Document) secondDocument() int {
	seen := false
	for i := range d.lines {
		line := bytes.TrimSpace(d.text[d.lines[i]:d.lineEnd(i+1)])
		marker := bytes.HasPrefix(line, []byte("---"))
		if marker && seen {
			return i + 1
		}
		if marker || len(line) > 0 && line[0] != '#' && line[0] != '%' {
			seen = true
		}
	}
	return 1
}

// firstColumn returns the column of the line's first character that is no space.
func (d *Document) firstColumn(line int) int {
	if line < 1 || line > len(d.lines) {
		return 1
	}
	text := d.text[d.lines[line-1]:d.lineEnd(line)]
	for i, b := range text {
		if b != ' ' {
			return i + 1
		}
	}
	return 1
}
