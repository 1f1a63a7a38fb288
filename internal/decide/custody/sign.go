package custody

import (
	"crypto/hmac"
	"crypto/sha256"
	"encoding/base64"
	"encoding/json"
	"strings"
)

// Sign writes what a link says as it stands in an address: HMAC-SHA256 (RFC 2104) over
// its JSON, both in base64 for addresses (RFC 4648, section 5). The use, a line of its
// own, keeps signatures for one purpose apart from all else that the secret signs.
func Sign(use string, what any, secret string) string {
	data, err := json.Marshal(what)
	if err != nil {
		return "" // a plain struct always encodes
	}
	said := base64.RawURLEncoding.EncodeToString(data)
	return said + "." + signature(use, said, secret)
}

// Signed reads a token that [Sign] wrote into what, and reports whether the secret
// signed it for this use.
func Signed(use, token, secret string, what any) bool {
	said, sign, _ := strings.Cut(token, ".")
	if !hmac.Equal([]byte(sign), []byte(signature(use, said, secret))) {
		return false
	}
	data, err := base64.RawURLEncoding.DecodeString(said)
	return err == nil && json.Unmarshal(data, what) == nil
}

func signature(use, said, secret string) string {
	mac := hmac.New(sha256.New, []byte(secret))
	mac.Write([]byte(use + said))
	return base64.RawURLEncoding.EncodeToString(mac.Sum(nil))
}
