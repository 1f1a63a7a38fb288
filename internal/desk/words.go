package desk

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// sentence makes a message one that begins with a capital and ends with a stop.
func sentence(text string) string {
	text = strings.TrimSpace(text)
	first, n := utf8.DecodeRuneInString(text)
	if n == 0 {
		return ""
	}
	// A field's name at the beginning stays as it is written in the file.
	if head, _, is := strings.Cut(text, ": "); !is || strings.ContainsRune(head, ' ') {
		text = string(unicode.ToUpper(first)) + text[n:]
	}
	if !strings.HasSuffix(text, ".") {
		text += "."
	}
	return text
}

// longestWhat is the most runes of what a version says of itself.
const longestWhat = 160

// shortened cuts what a version says of itself.
func shortened(text string) string {
	return cutShort(text, longestWhat)
}

// cutShort takes what is beyond so many characters off a text.
func cutShort(text string, most int) string {
	if r := []rune(text); len(r) > most {
		return string(r[:most-1]) + "…"
	}
	return text
}
