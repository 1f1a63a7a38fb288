package shell

import (
	"errors"
	"net/http"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/edit"
)

// Sentence makes a message one that begins with a capital and ends with a stop.
func Sentence(text string) string {
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

// SentenceOf makes an error a sentence for a page.
func SentenceOf(err error) string {
	text := err.Error()
	return strings.ToUpper(text[:1]) + text[1:] + "."
}

// WhyNot says to people why a change cannot be made, without file and line.
func WhyNot(err error) string {
	var at *form.Problem
	var fault *edit.Fault
	switch {
	case errors.As(err, &at) && at.Field == "":
		return Sentence(at.Text)
	case errors.As(err, &at):
		return Sentence(at.Field + ": " + at.Text)
	case errors.As(err, &fault):
		return Sentence(fault.Err.Error())
	}
	return Sentence(err.Error())
}

// CutShort takes what is beyond so many characters off a text.
func CutShort(text string, most int) string {
	if r := []rune(text); len(r) > most {
		return string(r[:most-1]) + "…"
	}
	return text
}

// Metres prints metres, or millimetres of a drawing, for a data attribute.
func Metres(v float64) string { return strconv.FormatFloat(v, 'f', 3, 64) }

// Option is one of several ways to see a page.
type Option struct {
	Name, URL string
	Chosen    bool
}

// Choice is one value of a list to choose from.
type Choice struct {
	Value, Name string
	Chosen      bool
}

// Fact is one line of a list of facts.
type Fact struct{ Name, Value string }

// Rows tells every bad row of a file, each with its place.
func Rows(err error) error {
	var several interface{ Unwrap() []error }
	if !errors.As(err, &several) || len(several.Unwrap()) < 2 {
		return err
	}
	var lines []string
	for _, one := range several.Unwrap() {
		lines = append(lines, Sentence(one.Error()))
	}
	return Refuse(http.StatusUnprocessableEntity, strconv.Itoa(len(lines))+" rows cannot be read; nothing was taken in.", strings.Join(lines, " "))
}
