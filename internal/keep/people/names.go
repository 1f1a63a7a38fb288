package people

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// A name stands beside every change, so two people must not read as one. The
// model follows Unicode Technical Standard 39 as far as it matters here:
//
//   - one writing of each name: Unicode's composed form (NFC), and no letters
//     that only repeat others in another width or style (NFKC);
//   - the "highly restrictive" level of section 5.2: letters of one script, or
//     Latin beside those of Japanese, Chinese or Korean;
//   - section 4's skeleton for what one script can imitate of another, for
//     Latin, Cyrillic and Greek ([lookalikes]), and letters that differ by case.
//
// Not covered: look-alikes within other scripts, accents that are hard to see,
// digits of several scripts in one name, and joiners, which are refused.

// nameForm: a letter or digit, then those with their accents and vowel signs,
// blanks and . _ ' ’ -, 63 characters at most. It takes longer to compile than most
// commands take, so it is compiled when somebody is named.
var nameForm = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^[\pL\pN][\pL\pM\pN ._'’-]{0,62}$`)
})

// crowded finds blanks in a row, a blank at the end, and more marks on one
// letter than any script in use sets.
var crowded = regexp.MustCompile(`  | $|\pM{5}`)

// Tidy returns a name as it is kept: composed, without blanks around it.
func Tidy(name string) string { return norm.NFC.String(strings.TrimSpace(name)) }

// CheckName refuses a name that could not be told from another on a page.
func CheckName(name string) error {
	switch {
	case !nameForm().MatchString(name) || strings.ContainsFunc(name, unseen):
		return fmt.Errorf("name %.80q: start with a letter or digit, then letters, digits, space . _ ' - (63 at most)", name)
	case crowded.MatchString(name):
		return fmt.Errorf("name %.80q: one blank between words and none at the end", name)
	case !norm.NFKC.IsNormalString(name):
		return fmt.Errorf("name %.80q: write it in plain letters, as %q", name, norm.NFKC.String(name))
	}
	if s := scriptsOf(name); !together(s) {
		return fmt.Errorf("name %.80q: its letters are of several scripts (%s) and could imitate another name; use one", name, strings.Join(s, ", "))
	}
	return nil
}

// unseen reports letters and marks that show nothing.
func unseen(r rune) bool {
	return unicode.In(r, unicode.Other_Default_Ignorable_Code_Point, unicode.Variation_Selector)
}

// scriptsOf returns the scripts of a name's letters in the order of their first.
func scriptsOf(name string) []string {
	var out []string
	for _, r := range name {
		if unicode.In(r, unicode.Common, unicode.Inherited) || len(out) > 0 && unicode.Is(unicode.Scripts[out[len(out)-1]], r) {
			continue
		}
		for script, letters := range unicode.Scripts {
			if unicode.Is(letters, r) && !slices.Contains(out, script) {
				out = append(out, script)
			}
		}
	}
	return out
}

// together reports whether scripts may stand in one name (UTS 39, section 5.2).
func together(scripts []string) bool {
	if len(scripts) <= 1 {
		return true
	}
	for _, allowed := range []string{"Latin Han Hiragana Katakana", "Latin Han Bopomofo", "Latin Han Hangul"} {
		if !slices.ContainsFunc(scripts, func(s string) bool { return !strings.Contains(allowed, s) }) {
			return true
		}
	}
	return false
}

// Alike reports whether two names could be taken for each other: they differ by
// case only, or have the same skeleton.
func Alike(a, b string) bool {
	return strings.EqualFold(a, b) || lookalikes.Replace(a) == lookalikes.Replace(b)
}

// lookalikes turns a name into its skeleton: what looks the same becomes the
// same. Pairs of letters of Latin, Cyrillic and Greek from Unicode's
// confusables.txt (UTS 39, section 4), those that a common typeface sets alike.
var lookalikes = strings.NewReplacer(
	"I", "l", "1", "l", "0", "O", "m", "rn", "’", "'",
	"А", "A", "В", "B", "Е", "E", "Ѕ", "S", "І", "l", "Ј", "J", "К", "K", "М", "M", "Н", "H", "О", "O",
	"Р", "P", "С", "C", "Т", "T", "У", "Y", "Х", "X", "а", "a", "е", "e", "о", "o", "р", "p", "с", "c",
	"у", "y", "х", "x", "ѕ", "s", "і", "i", "ј", "j", "һ", "h", "ԁ", "d", "ԛ", "q", "ԝ", "w", "ѵ", "v",
	"Α", "A", "Β", "B", "Ε", "E", "Ζ", "Z", "Η", "H", "Ι", "l", "Κ", "K", "Μ", "M", "Ν", "N", "Ο", "O",
	"Ρ", "P", "Τ", "T", "Υ", "Y", "Χ", "X", "α", "a", "γ", "y", "ι", "i", "ν", "v", "ο", "o", "ρ", "p", "υ", "u",
)
