package starter

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
)

// Wish is what a person says of a rink's panes in a sentence:
//
//	126 panes of 4 ft, 6 ft at the ends, gates at 20 ft and 180 ft
type Wish struct {
	Count int                    // of panes in all; 0: not said
	Width unit.Length            // of most panes; 0: not said
	At    map[string]unit.Length // by stretch, see Stretches
	Gates []Gate
}

// Gate is a door in the glass with panes of its own.
type Gate struct {
	At    unit.Length // station of its middle
	Width unit.Length // 0: a usual door
}

// Stretches are the pieces of boards that a sentence may give a width of its own.
func Stretches() []string {
	return []string{"ends", "end A", "end B", "corners", "bench side", "box side", "sides"}
}

// Clauses of a sentence, divided by commas and semicolons.
var (
	manyPanes  = regexp.MustCompile(`^(?i)(?:(\d+)\s+)?(?:equal\s+)?panes?(?:\s+(?:of|each|at)?\s*(.+?))?(?:\s+(?:wide|each|all round))*$`)
	widthAt    = regexp.MustCompile(`^(?i)(.+?)\s+(?:at|on|in|along)\s+(?:the\s+)?(ends|end a|end b|corners|bench side|box side|sides)$`)
	gatesAt    = regexp.MustCompile(`^(?i)(?:an?\s+)?gates?(?:\s+of\s+(.+?))?\s+at\s+(.+)$`)
	gateDivide = regexp.MustCompile(`(?i)\s+and\s+`)
)

// sentenceShows is an example for who is told that a clause is not understood.
const sentenceShows = `write as in "126 panes of 4 ft, 6 ft at the ends, gates at 20 ft and 180 ft"`

// ReadWish reads a sentence about panes. An empty one wishes nothing. Errors name the
// clause, by its number and words.
func ReadWish(text string) (Wish, error) {
	w := Wish{At: map[string]unit.Length{}}
	if strings.TrimSpace(text) == "" {
		return w, nil
	}
	gates := false
	for i, clause := range strings.FieldsFunc(text, func(r rune) bool { return r == ',' || r == ';' }) {
		clause = strings.Trim(strings.Join(strings.Fields(clause), " "), ".")
		clause = strings.TrimPrefix(clause, "and ")
		// "gates at 20 ft, 180 ft": what follows a gate and is a length is one more.
		if at, err := unit.ParseLength(clause); err == nil && gates {
			w.Gates = append(w.Gates, Gate{At: at, Width: w.Gates[len(w.Gates)-1].Width})
			continue
		}
		gates = gatesAt.MatchString(clause)
		if err := w.clause(clause); err != nil {
			return w, fmt.Errorf("part %d, %s: %w", i+1, form.Quote(clause), err)
		}
	}
	return w, nil
}

func (w *Wish) clause(clause string) error {
	if m := gatesAt.FindStringSubmatch(clause); m != nil {
		return w.gates(m[1], m[2])
	}
	if m := widthAt.FindStringSubmatch(clause); m != nil {
		width, err := paneWidth(strings.TrimPrefix(m[1], "panes of "))
		for _, name := range Stretches() {
			if strings.EqualFold(name, m[2]) {
				w.At[name] = width
			}
		}
		return err
	}
	m := manyPanes.FindStringSubmatch(clause)
	if m == nil {
		if width, err := paneWidth(clause); err == nil {
			w.Width = width
			return nil
		}
		return fmt.Errorf("not understood; %s", sentenceShows)
	}
	if m[1] != "" {
		n, err := strconv.Atoi(m[1])
		if err != nil || n < 1 || n > mostPanes {
			return fmt.Errorf("%s panes: write a number from 1 to %d", m[1], mostPanes)
		}
		w.Count = n
	}
	if m[2] == "" {
		return nil
	}
	var err error
	w.Width, err = paneWidth(m[2])
	return err
}

// mostPanes is far above any schedule: the largest have some 140.
const mostPanes = 1000

func paneWidth(text string) (unit.Length, error) {
	return form.Within(LeastNominal, MostNominal)(text)
}

func (w *Wish) gates(width, places string) error {
	g := Gate{}
	var err error
	if width != "" {
		if g.Width, err = paneWidth(width); err != nil {
			return err
		}
	}
	for _, p := range gateDivide.Split(places, -1) {
		if g.At, err = unit.ParseLength(p); err != nil {
			return err
		}
		w.Gates = append(w.Gates, g)
	}
	return nil
}

// nominal returns the width that the wish gives a stretch.
func (w Wish) nominal(s stretch, otherwise unit.Length) unit.Length {
	names := map[bool][]string{true: {"corners"}}[s.curved]
	if !s.curved {
		side := strings.SplitN(s.title, ",", 2)[0]
		names = []string{side, "sides"}
		if strings.HasPrefix(side, "end ") {
			names = []string{side, "ends"}
		}
	}
	for _, n := range names {
		if l := w.At[n]; l > 0 {
			return l
		}
	}
	return otherwise
}
