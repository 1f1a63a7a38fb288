package form

import (
	"sort"
	"unicode/utf8"
)

// lineStarts returns the byte offset of each line's start. Lines end with
// LF, CR LF or CR, as the YAML parser counts them.
func lineStarts(text []byte) []int {
	starts := []int{0}
	for i, b := range text {
		if b == '\n' || b == '\r' && (i+1 == len(text) || text[i+1] != '\n') {
			starts = append(starts, i+1)
		}
	}
	if n := len(starts); n > 1 && starts[n-1] == len(text) {
		starts = starts[:n-1]
	}
	return starts
}

// lineEnd returns the byte offset past the end of line n (from 1), its line
// end included; 0 for n = 0.
func (d *Document) lineEnd(n int) int {
	if n >= len(d.lines) {
		return len(d.text)
	}
	return d.lines[n]
}

// offset returns the byte offset of a line and column (from 1, in characters).
func (d *Document) offset(line, column int) int {
	if line < 1 || line > len(d.lines) {
		return len(d.text)
	}
	i := d.lines[line-1]
	if i == 0 && len(d.text) >= 3 && string(d.text[:3]) == "\ufeff" {
		i = 3 // the parser does not count the byte order mark
	}
	for ; column > 1 && i < len(d.text); column-- {
		_, n := utf8.DecodeRune(d.text[i:])
		i += n
	}
	return i
}

// placeOf returns the line and column, from 1, of a byte offset.
func (d *Document) placeOf(at int) (line, column int) {
	line = sort.SearchInts(d.lines, at+1)
	return line, utf8.RuneCount(d.text[d.lines[line-1]:at]) + 1
}

// line returns the text of a line, from 1, without its line end.
func (d *Document) line(n int) []byte { return d.text[d.lines[n-1]:d.contentEnd(n)] }

// contentEnd returns the byte offset of a line's end, before its line end.
func (d *Document) contentEnd(n int) int {
	at := d.lineEnd(n)
	for at > d.lines[n-1] && (d.text[at-1] == '\n' || d.text[at-1] == '\r') {
		at--
	}
	return at
}

// newline returns the line end that the text uses.
func (d *Document) newline() string {
	if end := d.text[d.contentEnd(1):d.lineEnd(1)]; len(end) > 0 {
		return string(end)
	}
	return "\n"
}

// lineOf returns the line, from 1, that holds a byte offset.
func (d *Document) lineOf(at int) int { return sort.SearchInts(d.lines, at+1) }
