package shell

import (
	"strings"

	"example.org/rinkpane/internal/draw/sheet"
)

// The drawings are set in the Go fonts, and so are the pages around them. A
// browser loads the letters of plain English first; accents and other alphabets
// only when a page has any (unicode-range in fonts.css).
var (
	plainLetters = letters(' ', '~') + "–—‘’“”…×·°±½¼¾⅛⅜⅝⅞→←↑↓−"
	otherLetters = letters(0xa0, 0x24f) + letters(0x370, 0x52f)
)

func letters(from, to rune) string {
	var b strings.Builder
	for r := from; r <= to; r++ {
		b.WriteRune(r)
	}
	return b.String()
}

// fontFiles returns the fonts by the names that fonts.css uses.
func fontFiles() map[string][]byte {
	return map[string][]byte{
		"go-regular.ttf":       sheet.Regular.WebFont(plainLetters),
		"go-bold.ttf":          sheet.Bold.WebFont(plainLetters),
		"go-regular-other.ttf": sheet.Regular.WebFont(otherLetters),
		"go-bold-other.ttf":    sheet.Bold.WebFont(otherLetters),
	}
}
