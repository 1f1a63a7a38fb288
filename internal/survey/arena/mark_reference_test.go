package arena

import (
	"strings"
	"testing"
)

// TestRevisionOfAKnownText: the SHA-256 of "abc" is an example of FIPS 180-4's
// published test values (ba7816bf ... 15ad).
func TestRevisionOfAKnownText(t *testing.T) {
	const want = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
	if got := Revision([]byte("abc")); got != want {
		t.Errorf("revision %s, want %s", got, want)
	}
	if got := Mark([]byte("abc")); len(got) != markDigits || !strings.HasPrefix(want, got) {
		t.Errorf("mark %s, want the first %d digits of %s", got, markDigits, want)
	}
}
