package pdffile

import (
	"fmt"
	"strings"
	"time"
	"unicode/utf16"
)

// String returns a text string object: plain when it is ASCII, UTF-16 otherwise.
func String(s string) string {
	for i := range len(s) {
		if s[i] < ' ' || s[i] > '~' {
			return wide(s)
		}
	}
	return "(" + strings.NewReplacer(`\`, `\\`, "(", `\(`, ")", `\)`).Replace(s) + ")"
}

func wide(s string) string {
	b := []byte("<FEFF")
	for _, u := range utf16.Encode([]rune(s)) {
		b = fmt.Appendf(b, "%04X", u)
	}
	return string(b) + ">"
}

// Date returns a date object: (D:20260102150405Z).
func Date(t time.Time) string { return "(D:" + t.UTC().Format("20060102150405") + "Z)" }
