package desk

import (
	"errors"
	"net/url"
	"slices"
	"strconv"

	"example.org/rinkpane/internal/measure/unit"
)

// address is the state that stands in the address of an arena's page: whatever
// can be picked there, so that every state can be bookmarked, mailed and reached
// by the way back.
type address struct {
	slug    string
	hole    string
	lens    string  // id in the kit; "" is the one that serves the hole best
	focal   float64 // millimetres, an end of the lens's range; 0 is its short end
	system  string  // "" prints in the document's own units
	version int     // 0 is the newest
	theme   theme   // "" is the visitor's own
	heat    bool    // the reach map is shown
}

// longestWord is the most bytes of a name in an address: ids have 32.
const longestWord = 64

// readAddress reads the state that a query asks for; what makes no sense is an
// error in words for people.
func readAddress(slug string, q url.Values) (address, error) {
	at := address{slug: slug, hole: q.Get("hole"), lens: q.Get("lens"), system: q.Get("units"), theme: theme(q.Get("theme")), heat: q.Get("heat") == "on"}
	if len(at.hole) > longestWord || len(at.lens) > longestWord {
		return at, errors.New("a name in this address is too long")
	}
	if at.system != "" {
		if _, err := unit.ParseSystem(at.system); err != nil {
			return at, errors.New("these units are not known; choose metric or imperial")
		}
	}
	if at.theme != "" && !slices.Contains(themes, at.theme) {
		return at, errors.New("this theme is not known; choose auto, dim or light")
	}
	var err error
	if text := q.Get("version"); text != "" {
		if at.version, err = strconv.Atoi(text); err != nil || at.version < 0 {
			return at, errors.New("a version is a whole number")
		}
	}
	if text := q.Get("focal"); text != "" {
		if at.focal, err = strconv.ParseFloat(text, 64); err != nil || !(at.focal >= 0 && at.focal < longestFocal) {
			return at, errors.New("a focal length is a number of millimetres")
		}
	}
	return at, nil
}

// longestFocal is beyond any lens, in millimetres.
const longestFocal = 10_000

// query returns the state as a query, without what is as usual.
func (a address) query() url.Values {
	q := url.Values{}
	put := func(name, value string) {
		if value != "" {
			q.Set(name, value)
		}
	}
	put("hole", a.hole)
	put("lens", a.lens)
	put("units", a.system)
	put("theme", string(a.theme))
	if a.focal != 0 {
		put("focal", strconv.FormatFloat(a.focal, 'f', -1, 64))
	}
	if a.version != 0 {
		put("version", strconv.Itoa(a.version))
	}
	if a.heat {
		put("heat", "on")
	}
	return q
}

// URL returns the address as a link.
func (a address) URL() string { return a.page("") }

// page returns the address of a page below the arena's, with the same state.
func (a address) page(below string) string {
	u := url.URL{Path: "/arena/" + a.slug + below, RawQuery: a.query().Encode()}
	return u.String()
}

// Hole returns the address with another hole picked.
func (a address) Hole(id string) address {
	a.hole = id
	return a
}

// Lens returns the address with another lens in the hole.
func (a address) Lens(id string, focal float64) address {
	a.lens, a.focal = id, focal
	return a
}

// Newest returns the address of the newest version.
func (a address) Newest() address {
	a.version = 0
	return a
}

// Heat returns the address with the reach map turned over.
func (a address) Heat() address {
	a.heat = !a.heat
	return a
}

// Paths of the pages beside the plan, with the units kept.

// Survey returns where the parts of the document are edited.
func (a address) Survey() string { return a.beside("/survey") }

// Versions returns where the versions are listed.
func (a address) Versions() string { return a.beside("/versions") }

// Compare returns where two plans stand side by side.
func (a address) Compare() string { return a.beside("/compare") }

// ThroughLens returns where the picture through a hole is seen.
func (a address) ThroughLens() string {
	return address{slug: a.slug, system: a.system, theme: a.theme, hole: a.hole}.page("/picture")
}

// Choose returns where the best holes are looked for.
func (a address) Choose() string { return a.beside("/choose") }

// Paper returns where everything is laid out for printing.
func (a address) Paper() string { return a.beside("/paper") }

// shared returns what concerns every page of an arena: units and theme.
func (a address) shared() address {
	return address{slug: a.slug, system: a.system, theme: a.theme}
}

// sharedOf returns the units and theme that a query asks for, none where it makes no sense.
func sharedOf(slug string, q url.Values) address {
	at, err := readAddress(slug, q)
	if err != nil {
		return address{slug: slug}
	}
	return at.shared()
}

// Version returns the plan as of a version.
func (a address) Version(n int) address {
	a = a.shared()
	a.version = n
	return a
}

// beside returns a page of the arena, with some fields of its own in the query.
func (a address) beside(below string, fields ...string) string {
	q := a.shared().query()
	for i := 0; i+1 < len(fields); i += 2 {
		q.Set(fields[i], fields[i+1])
	}
	u := url.URL{Path: "/arena/" + a.slug + below, RawQuery: q.Encode()}
	return u.String()
}

// units returns the system to print in; own is the document's.
func (a address) units(own unit.System) unit.System {
	if sys, err := unit.ParseSystem(a.system); err == nil && a.system != "" {
		return sys
	}
	return own
}

// Slug returns the arena's id.
func (a address) Slug() string { return a.slug }

// State returns the state as a query without its mark, for forms to come back to.
func (a address) State() string { return a.query().Encode() }

// HeatOn reports whether the reach map is shown.
func (a address) HeatOn() bool { return a.heat }

// Units returns the units asked for, "" for the document's own.
func (a address) Units() string { return a.system }

// HoleForm returns where everything of a hole is edited.
func (a address) HoleForm(id string) string { return a.part("holes", "holes["+id+"]") }
