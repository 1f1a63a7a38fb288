package shelf_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/kit"
)

// TestArenasArePlannedWithWhatTheyName: the kit and the rule sets that a document
// names, the desk's own before the program's; and what it does not name is as the
// desk was started.
func TestArenasArePlannedWithWhatTheyName(t *testing.T) {
	s, ctx := fresh(t), t.Context()
	text := string(kit.DefaultYAML())
	text = strings.Replace(text, "name: Lenses and bodies by class", "name: My bag", 1)
	text = strings.Replace(text, "id: full-24", "id: my-body", 1)
	if v, err := s.AddOwn(ctx, revision.Kit, text, "Ada", "x"); err != nil || v.Document != "my-bag" {
		t.Fatalf("%+v, %v", v, err)
	}
	loose, err := rules.Document("example-loose")
	if err != nil {
		t.Fatal(err)
	}
	own := strings.Replace(string(loose), "id: example-loose", "id: our-league", 1)
	if _, err := s.AddOwn(ctx, revision.RuleSet, own, "Ada", "x"); err != nil {
		t.Fatal(err)
	}
	const plain = "units: imperial"
	for id, naming := range map[string]string{"one": "kit: my-bag\nrules: [our-league]\n", "two": ""} {
		if _, err := s.Add(ctx, id, document(t, plain, naming+plain), "Ada", "x"); err != nil {
			t.Fatalf("%s: %v", id, err)
		}
	}
	one, err := s.Open(ctx, "one", 0)
	if err != nil {
		t.Fatal(err)
	}
	if _, has := one.Maker.Kit.Body("my-body"); !has || !slices.Equal(one.Maker.Rules.IDs(), []string{"our-league", "trade"}) {
		t.Errorf("one is planned with %d bodies and %d rule sets", len(one.Maker.Kit.Bodies), len(one.Maker.Rules.IDs()))
	}
	p, err := s.Plan(ctx, one)
	if err != nil || len(p.RuleSets) != 2 {
		t.Errorf("rule sets %v, %v", p.RuleSets, err)
	}
	two, err := s.Open(ctx, "two", 0)
	if err != nil {
		t.Fatal(err)
	}
	if _, has := two.Maker.Kit.Body("my-body"); has || !slices.Equal(two.Maker.Rules.IDs(), []string{rules.Default, "trade"}) {
		t.Error("two is planned with what it does not name")
	}
	if _, err := s.SaveOwn(ctx, revision.Kit, "my-bag", 1, strings.Replace(text, "my-body", "our-body", 1), "Bo", "x"); err != nil {
		t.Fatal(err)
	}
	if again, err := s.Open(ctx, "one", 0); err != nil || again.Key == one.Key {
		t.Errorf("a changed kit counts at once: %v", err)
	} else if _, has := again.Maker.Kit.Body("our-body"); !has {
		t.Error("the changed kit is not in force")
	}
	for _, x := range []struct {
		kind revision.Kind
		id   string
		want int
	}{{revision.Kit, "my-bag", 1}, {revision.RuleSet, "our-league", 1}, {revision.RuleSet, "common-practice", 0}} {
		if users, err := s.Users(ctx, x.kind, x.id); err != nil || len(users) != x.want {
			t.Errorf("%s is used by %v, %v", x.id, users, err)
		}
	}
}

// TestNamesThatNobodyKeeps are refused where they are written, with their field.
func TestNamesThatNobodyKeeps(t *testing.T) {
	s, ctx := fresh(t), t.Context()
	if _, err := s.AddOwn(ctx, revision.Kit, string(kit.DefaultYAML()), "Ada", "x"); err != nil {
		t.Fatal(err)
	}
	for field, naming := range map[string]string{"kit": "kit: no-bag", "rules": "rules: [no-league]"} {
		_, err := s.Add(ctx, "rink", document(t, "units: imperial", naming+"\nunits: imperial"), "Ada", "x")
		var at *form.Problem
		if !errors.As(err, &at) || at.Field != field {
			t.Errorf("%s: %v", naming, err)
		}
	}
	if _, err := s.Open(ctx, "lenses-and-bodies-by-class", 0); !errors.Is(err, revision.ErrNone) {
		t.Errorf("a kit opened as an arena: %v", err)
	}
	trade, err := rules.Document(rules.Trade)
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range []struct {
		kind       revision.Kind
		text, says string
	}{{revision.Kit, strings.Replace(string(kit.DefaultYAML()), "name: Lenses and bodies by class\n", "", 1), "name: is missing"}, {revision.Kit, "nonsense", "must be fields"}, {revision.RuleSet, "rinkpane: kit 1\n", "rules"}, {revision.RuleSet, string(trade), "always in force"}} {
		if _, err := s.AddOwn(ctx, x.kind, x.text, "Ada", "x"); err == nil || !strings.Contains(err.Error(), x.says) {
			t.Errorf("%.30q: %v", x.text, err)
		}
	}
}
