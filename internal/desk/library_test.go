package desk

import (
	"strings"
	"testing"

	"example.org/rinkpane/internal/answer/rules"
)

// TestAKitAndRulesOfOnesOwn adds a kit and a rule set, wrongly and rightly, lets an
// arena name them, changes one, and puts away what nobody names.
func TestAKitAndRulesOfOnesOwn(t *testing.T) {
	muchComputed(t)
	h, d, _ := ownDesk(t, false)
	says(t, ask(t, h, "GET", "/library", ""), 200, "House bag", "common-practice", "Add a rule set")
	begin := ask(t, h, "GET", "/library/rules?from=common-practice", "")
	says(t, begin, 200, "most-per-corner", "A new rule set")
	text, err := rules.Document("common-practice")
	if err != nil {
		t.Fatal(err)
	}
	own := strings.Replace(string(text), "id: common-practice", "id: our-league", 1)
	own = strings.Replace(own, "name: Common practice", "name: Our league's rules, common practice", 1)
	own = strings.Replace(own, "most: 8", "most: 4", 1)
	says(t, fillIn(t, h, "/library/rules", map[string]string{"text": strings.Replace(own, "most: 4", "most: many", 1)}), 422, "most: many", `class="here"`)
	w := fillIn(t, h, "/library/rules", map[string]string{"text": own})
	if to := w.Header().Get("Location"); w.Code != 303 || to != "/library/rules/our-league" {
		t.Fatalf("%d to %q: %.300s", w.Code, to, w.Body)
	}
	says(t, fillIn(t, h, "/library/rules", map[string]string{"text": own}), 409, "already")
	says(t, ask(t, h, "GET", "/library/rules/our-league", ""), 200, "No arena names it yet")

	says(t, ask(t, h, "GET", demoPage, ""), 200, allKept)
	w = ask(t, h, "POST", demoPage+"/survey/outfit", "base=1&kit=house-bag&rules=our-league")
	if w.Code != 303 {
		t.Fatalf("naming them: %d %.400s", w.Code, w.Body)
	}
	says(t, ask(t, h, "GET", demoPage, ""), 200, "our-league", "The rink has no more holes than allowed")
	if page := ask(t, h, "GET", demoPage, "").Body.String(); strings.Contains(page, allKept) {
		t.Error("eight holes keep a rule of four")
	}
	says(t, ask(t, h, "POST", demoPage+"/survey/outfit", "base=2&kit=no-bag"), 422, "keeps no kit")

	one := "/library/rules/our-league"
	says(t, ask(t, h, "GET", one, ""), 200, "In use at Tidewater Pavilion")
	says(t, ask(t, h, "POST", one+"/away", "away=yes"), 409, "in use at Tidewater")
	says(t, fillIn(t, h, one, map[string]string{"base": "1", "text": strings.Replace(own, "id: our-league", "id: other", 1)}), 422, "arenas name this rule set")
	says(t, fillIn(t, h, one, map[string]string{"base": "1", "text": strings.Replace(own, "most: 4", "most: 8", 1), "what": "eight again"}), 303)
	says(t, ask(t, h, "GET", demoPage, ""), 200, allKept)
	theirs := fillIn(t, h, one, map[string]string{"base": "1", "text": own + "# mine\n"})
	says(t, theirs, 409, "eight again", "# mine", "most: 8", `name="base" value="2"`)

	says(t, ask(t, h, "POST", demoPage+"/survey/outfit", "base=2"), 303)
	says(t, ask(t, h, "POST", one+"/away", "away=yes"), 303)
	says(t, ask(t, h, "GET", "/library", ""), 200, "put away")
	if doc, err := d.shell.Shelf.Keeper().Document(t.Context(), "our-league"); err != nil || !doc.Away {
		t.Errorf("%+v, %v", doc, err)
	}
	says(t, ask(t, h, "GET", "/library/rules/none", ""), 404)
	says(t, ask(t, h, "GET", "/library/shoes", ""), 404)
	says(t, ask(t, h, "GET", "/library/rules?from=none", ""), 404)
	says(t, ask(t, h, "GET", "/arena/house-bag", ""), 404)
}
