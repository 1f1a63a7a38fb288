package people

import (
	"crypto/rand"
	"strings"
	"testing"
)

func TestRoles(t *testing.T) {
	may := map[Role][]Act{
		Viewer: {Read}, Photographer: {Read, Ask}, Steward: {Read, Ask, MindCovers},
		Planner: {Read, Ask, MindCovers, Plan}, "": {}, "owner": {},
	}
	for role, acts := range may {
		for _, a := range []Act{Read, Ask, MindCovers, Plan} {
			want := false
			for _, x := range acts {
				want = want || x == a
			}
			if role.May(a) != want {
				t.Errorf("%q may %d: %v", role, a, !want)
			}
		}
	}
	if _, err := ParseRole("owner"); err == nil || !strings.Contains(err.Error(), "planner") {
		t.Errorf("ParseRole(owner): %v, want the roles named", err)
	}
}

func TestPasswords(t *testing.T) {
	h, err := Hash("red line blue line", rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	if strings.Contains(h, "red line") {
		t.Fatal("the hash holds the password")
	}
	for pw, want := range map[string]bool{"red line blue line": true, "red line blue lin": false, "": false} {
		if got, err := Matches(h, pw); err != nil || got != want {
			t.Errorf("Matches(%q) = %v, %v, want %v", pw, got, err, want)
		}
	}
	for _, bad := range []string{"", "x", "$argon2id$v=19$m=1,t=1,p=1$$", "$argon2id$v=19$m=99999999,t=3,p=2$AAAA$AAAAAAAAAAAAAAAAAAAAAAAA", h[:len(h)-40]} {
		if ok, err := Matches(bad, "red line blue line"); ok || err == nil {
			t.Errorf("Matches with broken hash %q: %v, %v", bad, ok, err)
		}
	}
	if CheckPassword("short") == nil || CheckPassword(strings.Repeat("x", 201)) == nil || CheckPassword("long enough now") != nil {
		t.Error("password lengths")
	}
}

func TestTokens(t *testing.T) {
	a, ka, err := Token(rand.Reader)
	b, kb, err2 := Token(rand.Reader)
	if err != nil || err2 != nil || a == b || ka == kb || KeyOf(a) != ka || len(a) < 40 {
		t.Errorf("tokens %q %q keys %q %q", a, b, ka, kb)
	}
	if _, _, err := Token(strings.NewReader("too short")); err == nil {
		t.Error("a token from too little randomness")
	}
}
