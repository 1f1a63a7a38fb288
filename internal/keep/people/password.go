package people

import (
	"crypto/sha256"
	"crypto/subtle"
	"encoding/base64"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"unicode/utf8"

	"golang.org/x/crypto/argon2"
)

// Argon2id settings: the second recommended option of RFC 9106, section 4
// (3 passes, 64 MiB), with as many lanes as this program's smallest machine
// has cores.
const (
	argonPasses = 3
	argonKiB    = 64 << 10
	argonLanes  = 2
	argonKey    = 32 // bytes
	argonSalt   = 16 // bytes
)

// Least and most length of a password: NIST SP 800-63B asks for 8 at least
// and 64 at least allowed.
const (
	minPassword = 10
	maxPassword = 200
)

// CheckPassword refuses a password that is too short or too long to use.
func CheckPassword(password string) error {
	if n := utf8.RuneCountInString(password); n < minPassword || n > maxPassword {
		return fmt.Errorf("the password has %d characters: use %d to %d", n, minPassword, maxPassword)
	}
	return nil
}

// Hash returns the encoded Argon2id hash of a password, with a salt from random.
func Hash(password string, random io.Reader) (string, error) {
	salt := make([]byte, argonSalt)
	if _, err := io.ReadFull(random, salt); err != nil {
		return "", fmt.Errorf("salt: %w", err)
	}
	key := argon2.IDKey([]byte(password), salt, argonPasses, argonKiB, argonLanes, argonKey)
	b64 := base64.RawStdEncoding
	return fmt.Sprintf("$argon2id$v=%d$m=%d,t=%d,p=%d$%s$%s", argon2.Version, argonKiB, argonPasses, argonLanes,
		b64.EncodeToString(salt), b64.EncodeToString(key)), nil
}

// errHash says that a kept hash cannot be read.
var errHash = errors.New("the kept password cannot be read: set it anew with rinkpane people change NAME --password")

// Matches reports whether the password is the one of the encoded hash.
func Matches(encoded, password string) (bool, error) {
	var version, kib, passes, lanes int
	var rest string
	if _, err := fmt.Sscanf(encoded, "$argon2id$v=%d$m=%d,t=%d,p=%d$%s", &version, &kib, &passes, &lanes, &rest); err != nil {
		return false, errHash
	}
	salt, key, err := saltAndKey(rest)
	if err != nil || version != argon2.Version || kib < 8 || kib > 1<<20 || passes < 1 || passes > 16 || lanes < 1 || lanes > 16 {
		return false, errHash
	}
	got := argon2.IDKey([]byte(password), salt, uint32(passes), uint32(kib), uint8(lanes), uint32(len(key)))
	return subtle.ConstantTimeCompare(got, key) == 1, nil
}

func saltAndKey(s string) (salt, key []byte, err error) {
	b64 := base64.RawStdEncoding
	for i := range len(s) {
		if s[i] != '$' {
			continue
		}
		if salt, err = b64.DecodeString(s[:i]); err != nil {
			return nil, nil, err
		}
		key, err = b64.DecodeString(s[i+1:])
		if len(key) < 16 || len(key) > 64 {
			return nil, nil, errHash
		}
		return salt, key, err
	}
	return nil, nil, errHash
}

// Token returns a new session token (256 bits from random) and its key.
func Token(random io.Reader) (token, key string, err error) {
	raw := make([]byte, 32)
	if _, err := io.ReadFull(random, raw); err != nil {
		return "", "", fmt.Errorf("token: %w", err)
	}
	token = base64.RawURLEncoding.EncodeToString(raw)
	return token, KeyOf(token), nil
}

// KeyOf returns the key under which a token's session is kept.
func KeyOf(token string) string {
	sum := sha256.Sum256([]byte(token))
	return hex.EncodeToString(sum[:])
}
