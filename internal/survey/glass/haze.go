package glass

import (
	"fmt"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/measure/form"
)

// Haze is what a pane scatters of the light passed (ASTM D1003): a measured share, or
// a word for how it looks. Dirt and fog count as haze.
type Haze struct {
	Word  string  // "clean", "scuffed", "dirty", "fogged"; "" for a measured share
	Share float64 // from 0 to below 1, without unit; of a clean or scuffed pane its material's
}

// Hazes lists the words. Dirty and fogged are invented figures, not measured ones.
func Hazes() []Haze { return []Haze{{"clean", 0}, {"scuffed", 0}, {"dirty", 0.2}, {"fogged", 0.6}} }

// ParseHaze reads a word, or a percentage such as "4 %".
func ParseHaze(s string) (Haze, error) {
	var words []string
	for _, h := range Hazes() {
		if h.Word == s {
			return h, nil
		}
		words = append(words, h.Word)
	}
	number, percent := strings.CutSuffix(strings.TrimSpace(s), "%")
	v, err := strconv.ParseFloat(strings.TrimSpace(number), 64)
	if !percent || err != nil || !(v >= 0 && v < 100) {
		return Haze{}, fmt.Errorf("%s: write %s, or a percentage by ASTM D1003 from 0 to below 100, as 4 %%", form.Quote(s), form.Choices(words))
	}
	return Haze{Share: v / 100}, nil
}

// Of returns the share for a pane of a material, from 0 to below 1, without unit.
func (h Haze) Of(m Properties) float64 {
	switch h.Word {
	case "clean":
		return m.HazeNew
	case "scuffed":
		return m.HazeWorn
	}
	return h.Share
}
