package game

import (
	"strings"

	"example.org/rinkpane/internal/measure/form"
)

// Part parses one field of a games document's text without the others, which takes a
// thousandth of the time where the season is long. Where the field does not stand in lines
// of its own, the whole text is parsed.
func Part(name, text, field string) (*form.Document, error) {
	var part strings.Builder
	inside := false
	for line := range strings.Lines(text) {
		if begins := !strings.ContainsAny(line[:1], " \t#-\r\n"); begins {
			name, _, _ := strings.Cut(line, ":")
			inside = strings.Trim(name, "\"' ") == field
		}
		if inside {
			part.WriteString(line)
		}
	}
	if part.Len() == 0 && strings.HasPrefix(text, "rinkpane:") { // a document in lines, without the field
		part.WriteString("rinkpane: " + Kind + "\n")
	}
	if part.Len() > 0 {
		if doc, err := form.Read(name, strings.NewReader(part.String()), MaxBytes); err == nil {
			return doc, nil
		}
	}
	return form.Read(name, strings.NewReader(text), MaxBytes)
}
