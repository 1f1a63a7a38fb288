package custody

import "testing"

// The token's bytes, as Python's hmac, hashlib and base64 modules give them for the
// same JSON: links that people have in hand stay good.
func TestSignedTokenToTheByte(t *testing.T) {
	what := struct {
		Season string `json:"s"`
	}{"quillhaven"}
	const want = "eyJzIjoicXVpbGxoYXZlbiJ9.mOKoHz065x8hFJmLcVdMrEiJS-u-LOVYl8cYHvrK2fM"
	if got := Sign("rinkpane card link\n", what, "secret"); got != want {
		t.Errorf("%s; want %s", got, want)
	}
	if Signed("rinkpane day link\n", want, "secret", &what) || Signed("rinkpane card link\n", want, "other", &what) || !Signed("rinkpane card link\n", want, "secret", &what) {
		t.Error("a token opens for its own use and secret only")
	}
}
