package cut

import (
	"math"
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// A bad request draws nothing and says once what is wrong; a hole asked for
// twice is drawn once, and one that is off is not drawn at all.
func TestRequestIsCheckedBeforeDrawing(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*ShopOrder, *Request)
		files  int
		words  string
	}{
		{"one hole twice", func(_ *ShopOrder, r *Request) { r.Holes = []string{"flat", "flat"} }, 16, ""},
		{"an off hole", func(p *ShopOrder, r *Request) { p.Arena.Holes[0].State, r.Holes = glass.Off, []string{"flat"} }, 0, `hole "flat" is off in the plan, so nothing is made of it; set its state to planned, or write bent, order, bare, edge`},
		{"no temperature", func(_ *ShopOrder, r *Request) { r.Options.Cover.Warm = math.NaN() }, 0, "give cold below warm"},
		{"negative breaks", func(_ *ShopOrder, r *Request) { r.Spares.BreakRate = -1 }, 0, "break rate -1: give"},
		{"negative losses", func(_ *ShopOrder, r *Request) { r.Spares.CoverRate = math.NaN() }, 0, "cover rate NaN: give"},
		{"sure of all", func(_ *ShopOrder, r *Request) { r.Spares.Certainty = 1 }, 0, "certainty 1: give"},
	} {
		p := shopPlan(t, unit.Metric)
		r := Request{Paper: "a4", Options: DefaultOptions(), Spares: DefaultSpareOptions(), Kit: builtInKit(t)}
		c.change(&p, &r)
		f, err := p.Folder(t.Context(), r)
		switch {
		case len(f.Files) != c.files || len(f.Refused) != 0:
			t.Errorf("%s: %d files, %d refusals", c.name, len(f.Files), len(f.Refused))
		case c.words == "" && err != nil:
			t.Errorf("%s: %v", c.name, err)
		case c.words != "" && (err == nil || strings.Count(err.Error(), c.words) != 1):
			t.Errorf("%s: %v", c.name, err)
		}
	}
}
