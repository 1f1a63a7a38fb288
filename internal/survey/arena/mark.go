package arena

import (
	"crypto/sha256"
	"encoding/hex"
)

// markDigits is how many hexadecimal digits of a revision stand on a drawing:
// 48 bits, so that two texts with one mark do not come about by accident.
const markDigits = 12

// Revision names a document's text: its SHA-256 in hexadecimal, as results
// carry it. Two texts with one revision are the same to the byte.
func Revision(text []byte) string {
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:])
}

// Mark is the short form of a text's revision that drawings, files and versions
// carry: its first twelve digits. Any change of the text, be it of a comment,
// gives another mark.
func Mark(text []byte) string { return Revision(text)[:markDigits] }
