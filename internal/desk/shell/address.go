package shell

import (
	"net/http"
	"net/url"
	"slices"
	"strconv"

	"example.org/rinkpane/internal/measure/unit"
)

// Address is the state that stands in the address of an arena's page: whatever
// can be picked there, so that every state can be bookmarked, mailed and reached
// by the way back.
type Address struct {
	Slug    string
	Hole    string
	Bare    bool    // no hole is picked, not even the one that is usual
	Lens    string  // id in the kit; "" is the one that serves the hole best
	Focal   float64 // millimetres, an end of the lens's range; 0 is its short end
	System  string  // "" prints in the document's own units
	Version int     // 0 is the newest
	Theme   theme   // "" is the visitor's own
	Heat    bool    // the reach map is shown
}

// longestWord is the most bytes of a name in an address: ids have 32.
const longestWord = 64

// ReadAddress reads the state that a query asks for; what makes no sense is an
// error in words for people.
func ReadAddress(slug string, q url.Values) (Address, error) {
	at := Address{Slug: slug, Hole: q.Get("hole"), Lens: q.Get("lens"), System: q.Get("units"), Theme: theme(q.Get("theme")), Heat: q.Get("heat") == "on", Bare: q.Get("hole") == "" && q.Get("pick") == "none"}
	if len(at.Hole) > longestWord || len(at.Lens) > longestWord {
		return at, astray("a name in this address is too long")
	}
	if at.System != "" {
		if _, err := unit.ParseSystem(at.System); err != nil {
			return at, astray("these units are not known; choose metric or imperial")
		}
	}
	if at.Theme != "" && !slices.Contains(themes, at.Theme) {
		return at, astray("this theme is not known; choose auto, dim or light")
	}
	var err error
	if text := q.Get("version"); text != "" {
		if at.Version, err = strconv.Atoi(text); err != nil || at.Version < 0 {
			return at, astray("a version is a whole number")
		}
	}
	if text := q.Get("focal"); text != "" {
		if at.Focal, err = strconv.ParseFloat(text, 64); err != nil || !(at.Focal >= 0 && at.Focal < longestFocal) {
			return at, astray("a focal length is a number of millimetres")
		}
	}
	return at, nil
}

// astray refuses an address that makes no sense.
func astray(why string) error {
	return Refuse(http.StatusBadRequest, "This address leads nowhere.", Sentence(why))
}

// longestFocal is beyond any lens, in millimetres.
const longestFocal = 10_000

// Query returns the state as a query, without what is as usual.
func (a Address) Query() url.Values {
	q := url.Values{}
	put := func(name, value string) {
		if value != "" {
			q.Set(name, value)
		}
	}
	put("hole", a.Hole)
	put("lens", a.Lens)
	put("units", a.System)
	put("theme", string(a.Theme))
	if a.Focal != 0 {
		put("focal", strconv.FormatFloat(a.Focal, 'f', -1, 64))
	}
	if a.Version != 0 {
		put("version", strconv.Itoa(a.Version))
	}
	if a.Heat {
		put("heat", "on")
	}
	if a.Bare {
		put("pick", "none")
	}
	return q
}

// URL returns the address as a link.
func (a Address) URL() string { return a.Page("") }

// Page returns the address of a page below the arena's, with the same state.
func (a Address) Page(below string) string {
	u := url.URL{Path: "/arena/" + a.Slug + below, RawQuery: a.Query().Encode()}
	return u.String()
}

// Pick returns the address with another hole picked.
func (a Address) Pick(id string) Address {
	a.Hole, a.Bare = id, false
	return a
}

// PickNone returns the address with no hole picked.
func (a Address) PickNone() Address {
	a.Hole, a.Bare, a.Lens, a.Focal = "", true, "", 0
	return a
}

// WithLens returns the address with another lens in the hole.
func (a Address) WithLens(id string, focal float64) Address {
	a.Lens, a.Focal = id, focal
	return a
}

// Newest returns the address of the newest version.
func (a Address) Newest() Address {
	a.Version = 0
	return a
}

// TurnHeat returns the address with the reach map turned over.
func (a Address) TurnHeat() Address {
	a.Heat = !a.Heat
	return a
}

// Paths of the pages beside the plan, with the units kept.

// Survey returns where the parts of the document are edited.
func (a Address) Survey() string { return a.Beside("/survey") }

// Versions returns where the versions are listed.
func (a Address) Versions() string { return a.Beside("/versions") }

// Compare returns where two plans stand side by side.
func (a Address) Compare() string { return a.Beside("/compare") }

// ThroughLens returns where the picture through a hole is seen.
func (a Address) ThroughLens() string {
	return Address{Slug: a.Slug, System: a.System, Theme: a.Theme, Hole: a.Hole}.Page("/picture")
}

// Choose returns where the best holes are looked for.
func (a Address) Choose() string { return a.Beside("/choose") }

// Take returns where everything of a version can be taken away, of the newest for 0.
func (a Address) Take(version int) string {
	if version == 0 {
		return a.Beside("/take")
	}
	return a.Beside("/take", "version", strconv.Itoa(version))
}

// Covers returns where the holes are minded once they are cut.
func (a Address) Covers() string { return a.Beside("/covers") }

// Games returns where games are seated.
func (a Address) Games() string { return a.Beside("/games") }

// Paper returns where everything is laid out for printing.
func (a Address) Paper() string { return a.Beside("/paper") }

// Guard is the page that tells what comes through the holes.
func (a Address) Guard() string { return a.Beside("/guard") }

// Shared returns what concerns every page of an arena: units and theme.
func (a Address) Shared() Address {
	return Address{Slug: a.Slug, System: a.System, Theme: a.Theme}
}

// SharedOf returns the units and theme that a query asks for, none where it makes no sense.
func SharedOf(slug string, q url.Values) Address {
	at, err := ReadAddress(slug, q)
	if err != nil {
		return Address{Slug: slug}
	}
	return at.Shared()
}

// AtVersion returns the plan as of a version.
func (a Address) AtVersion(n int) Address {
	a = a.Shared()
	a.Version = n
	return a
}

// Beside returns a page of the arena, with some fields of its own in the query.
func (a Address) Beside(below string, fields ...string) string {
	q := a.Shared().Query()
	for i := 0; i+1 < len(fields); i += 2 {
		q.Set(fields[i], fields[i+1])
	}
	u := url.URL{Path: "/arena/" + a.Slug + below, RawQuery: q.Encode()}
	return u.String()
}

// Units returns the system to print in; own is the document's.
func (a Address) Units(own unit.System) unit.System {
	if sys, err := unit.ParseSystem(a.System); err == nil && a.System != "" {
		return sys
	}
	return own
}

// State returns the state as a query without its mark, for forms to come back to.
func (a Address) State() string { return a.Query().Encode() }

// Part returns where a part of the document is edited, or one of its items.
func (a Address) Part(name, item string) string {
	if item == "" {
		return a.Beside("/survey/" + name)
	}
	return a.Beside("/survey/"+name, "item", item)
}

// HoleForm returns where everything of a hole is edited.
func (a Address) HoleForm(id string) string { return a.Part("holes", "holes["+id+"]") }
