package frames

import "errors"

// Cause is why a file is no frame.
type Cause string

// The causes.
const (
	NoPicture  Cause = "no-picture"      // not of a kind that is read
	RawKind    Cause = "raw-kind"        // a raw file of a kind that is not read
	Alone      Cause = "lone-sidecar"    // a sidecar without its picture
	Empty      Cause = "empty"           // no byte in it
	Broken     Cause = "broken"          // its data end too early or lead nowhere
	TooMuch    Cause = "too-much"        // more to read than a picture has
	NoTime     Cause = "no-time"         // it does not say when it was taken
	Unreadable Cause = "unreadable"      // the system gives an error
	LinkLost   Cause = "link-lost"       // a link in a circle, or to nothing
	LinkFolder Cause = "link-to-folder"  // links to folders are not followed
	NoFile     Cause = "no-regular-file" // a device, a pipe
)

// Trouble is a file that is no frame.
type Trouble struct {
	File  string
	Cause Cause
	Err   error // what the system or the reader said, nil where the cause says all
}

var errTooMuch = errors.New("more than a picture's data are")
