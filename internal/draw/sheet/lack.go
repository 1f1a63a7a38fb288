package sheet

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/rinkpane/internal/measure/say"
)

// Lack is what the Go fonts do not hold of some text: whole writings such as
// Arabic, Chinese, Devanagari, Hebrew and Thai.
type Lack struct {
	Letters []rune   // each once, in the order of the text
	Words   []string // the words that have them, each once
}

// Lacking returns what the fonts lack of the texts.
func Lacking(texts ...string) Lack {
	var l Lack
	for _, text := range texts {
		for word := range strings.FieldsSeq(text) {
			l.read(strings.TrimFunc(word, unicode.IsPunct))
		}
	}
	return l
}

func (l *Lack) read(word string) {
	found := false
	for _, r := range word {
		if r < utf8.RuneSelf || Regular.font().Index(r) != 0 {
			continue
		}
		found = true
		if !slices.Contains(l.Letters, r) {
			l.Letters = append(l.Letters, r)
		}
	}
	if found && !slices.Contains(l.Words, word) {
		l.Words = append(l.Words, word)
	}
}

// Lacking returns what the fonts lack of the drawing's texts.
func (d *Drawing) Lacking() Lack { return Lacking(textsOf(d.Items)...) }

func textsOf(items []*Element) (out []string) {
	for _, e := range items {
		switch s := e.Shape.(type) {
		case Text:
			out = append(out, s.S)
		case *Group:
			out = append(out, textsOf(s.Items)...)
		}
	}
	return out
}

// And returns both lacks as one.
func (l Lack) And(more Lack) Lack { return Lacking(append(slices.Clone(l.Words), more.Words...)...) }

// String says for a person at a screen what is missing and how it looks; ""
// when nothing is.
func (l Lack) String() string {
	if len(l.Letters) == 0 {
		return ""
	}
	return fmt.Sprintf("the fonts of the drawings lack %s of: %s; PDF and PNG show boxes in their place, SVG a font of the viewer's, if it has one",
		say.Count(len(l.Letters), "letter"), firstOf(l.Words, mostTold))
}

// mostTold is how many words or letters are named one by one.
const mostTold = 12

func firstOf(list []string, most int) string {
	if len(list) > most {
		list = append(slices.Clone(list[:most]), fmt.Sprintf("and %d more", len(list)-most))
	}
	return strings.Join(list, " ")
}

// Where the line about missing letters stands, in millimetres: in the margin at
// a page's head, in a strip added to a picture's foot.
const (
	lackInset = 5.0
	lackStrip = 6.0
)

// printable returns a page with a line at its head that names the letters drawn
// as boxes, by their Unicode numbers: the page cannot show them.
func (d *Drawing) printable() *Drawing { return d.owning(lackInset, 0, Lack.boxes) }

// pictured returns a picture with the line in a strip below it.
func (d *Drawing) pictured(words func(Lack) string) *Drawing {
	return d.owning(d.H+lackStrip/2, lackStrip, words)
}

func (d *Drawing) owning(y, strip float64, words func(Lack) string) *Drawing {
	l := d.Lacking()
	if len(l.Letters) == 0 {
		return d
	}
	out, line := *d, words(l)
	out.H += strip
	out.Styles = append(slices.Clone(d.Styles), Rule{"lack", Style{Fill: Bad, Face: Regular, Size: SizeSmall}})
	out.Items = append(slices.Clone(d.Items), &Element{Class: "lack", Shape: Text{
		At: Pt(lackInset, y), S: line, Size: Regular.FitSize(line, SizeSmall, SizeSmall/2, d.W-2*lackInset), VAlign: Centre}})
	return &out
}

func (l Lack) boxes() string {
	codes := make([]string, len(l.Letters))
	for i, r := range l.Letters {
		codes[i] = fmt.Sprintf("%U", r)
	}
	return fmt.Sprintf("The fonts of this drawing lack %s, drawn as boxes: %s", say.Count(len(l.Letters), "letter"), firstOf(codes, mostTold))
}

func (l Lack) viewers() string {
	return fmt.Sprintf("The fonts in this drawing lack %s of: %s. A viewer takes them from a font of its own, or shows boxes.",
		say.Count(len(l.Letters), "letter"), firstOf(l.Words, mostTold))
}
