// Package people says who may do what on a shared desk: people with a role
// and a password, and the sessions that signing in opens.
//
//	viewer < photographer < steward < planner
//	 reads    asks for seats  minds covers  changes plans and people
//
// Passwords are kept as Argon2id hashes (RFC 9106); a session's token is
// random and only its SHA-256 is kept, so a copied store opens no door.
package people

import (
	"context"
	"fmt"
	"slices"
	"time"
)

// Role is what a person may do.
type Role string

// The roles, each of which may do all that those before it may.
const (
	Viewer       Role = "viewer"
	Photographer Role = "photographer"
	Steward      Role = "steward"
	Planner      Role = "planner"
)

// Roles lists the roles from the least to the most.
func Roles() []Role { return []Role{Viewer, Photographer, Steward, Planner} }

// ParseRole reads a role's name.
func ParseRole(s string) (Role, error) {
	if slices.Contains(Roles(), Role(s)) {
		return Role(s), nil
	}
	return "", fmt.Errorf("role %q: write viewer, photographer, steward or planner", s)
}

// Act is something done at the desk.
type Act int

// The acts, each with the least role that may do it.
const (
	Read       Act = iota // look at arenas, pictures, books: viewer
	Ask                   // ask for a seat: photographer
	MindCovers            // write cover events: steward
	Plan                  // change, add, restore, put away arenas: planner
)

// May reports whether the role allows the act. An unknown role may do nothing.
func (r Role) May(a Act) bool {
	rank := slices.Index(Roles(), r)
	return rank >= 0 && rank >= int(a)
}

// Person is somebody who may sign in.
type Person struct {
	Name     string
	Role     Role
	Password string // encoded hash, see Hash
	Since    time.Time
}

// SessionLength is how long a session lasts without being renewed.
const SessionLength = 14 * time.Hour // a game day: morning practice to lock-up

// Session is one signed-in browser.
type Session struct {
	Key     string // SHA-256 of the token, hexadecimal
	Person  string
	Since   time.Time // zero for one that an earlier program opened
	Expires time.Time
	From    string // network address at the sign-in; "" like Since
	Device  Device
}

// Device is what kind of machine a browser says that it runs on.
type Device string

// The devices; "" is unknown.
const (
	Phone    Device = "phone"
	Computer Device = "computer" // or a tablet: many of those say so
)

// SessionsListed is how many of a person's sessions are listed, the newest first.
const SessionsListed = 50

// Register keeps people, their sessions and the log of both.
type Register interface {
	// People lists everybody by name.
	People(ctx context.Context) ([]Person, error)
	// Person returns one person, or ErrNone.
	Person(ctx context.Context, name string) (Person, error)
	// Alter makes an edit in one transaction and writes it down. Who is gone or
	// has changed loses all sessions. Errors: those of the edit.
	Alter(ctx context.Context, e Edit, note Entry) error
	// OpenSession keeps a session of a person who exists, or ErrNone, and writes
	// it down. It drops the session of the same browser before it, by its key,
	// and those that expired before the entry's time.
	OpenSession(ctx context.Context, s Session, before string, note Entry) error
	// Session returns the person of a session that has not expired, or ErrNone.
	Session(ctx context.Context, key string, now time.Time) (Person, error)
	// Sessions lists a person's sessions that have not expired, the newest first,
	// at most [SessionsListed].
	Sessions(ctx context.Context, name string, now time.Time) ([]Session, error)
	// CloseSession ends a session; closing one that is gone is no error.
	CloseSession(ctx context.Context, key string) error
	// CloseSessions ends every session of a person.
	CloseSessions(ctx context.Context, name string) error
	// Secret returns the register's own secret, which is fresh the first time
	// and the same ever after.
	Secret(ctx context.Context, fresh string) (string, error)
	// Write writes an entry into the log.
	Write(ctx context.Context, note Entry) error
	// Log returns the newest entries first, at most so many.
	Log(ctx context.Context, most int) ([]Entry, error)
}
