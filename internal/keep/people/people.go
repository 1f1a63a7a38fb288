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
	"errors"
	"fmt"
	"regexp"
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

// May reports whether the role allows the act. An unknown role may nothing.
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

var nameForm = regexp.MustCompile(`^[\pL\pN][\pL\pN ._'-]{0,62}$`)

// CheckName refuses a name that could not be told from another on a page.
func CheckName(name string) error {
	if !nameForm.MatchString(name) || name[len(name)-1] == ' ' {
		return fmt.Errorf("name %.80q: start with a letter or digit, then letters, digits, space . _ ' - (63 at most)", name)
	}
	return nil
}

// SessionLength is how long a session lasts without being renewed.
const SessionLength = 14 * time.Hour // a game day: morning practice to lock-up

// Session is one signed-in browser.
type Session struct {
	Key     string // SHA-256 of the token, hexadecimal
	Person  string
	Expires time.Time
}

// The errors of a Register.
var (
	ErrNone  = errors.New("no such person or session")
	ErrTaken = errors.New("this name is taken")
)

// Register keeps people and sessions.
type Register interface {
	// People lists everybody by name.
	People(ctx context.Context) ([]Person, error)
	// Person returns one person, or ErrNone.
	Person(ctx context.Context, name string) (Person, error)
	// AddPerson keeps a new person, or ErrTaken.
	AddPerson(ctx context.Context, p Person) error
	// ChangePerson sets the role and password of a person and closes the
	// person's sessions, or ErrNone.
	ChangePerson(ctx context.Context, p Person) error
	// RemovePerson removes a person with all sessions, or ErrNone.
	RemovePerson(ctx context.Context, name string) error
	// OpenSession keeps a session of a person who exists, or ErrNone; it
	// drops sessions that expired before now.
	OpenSession(ctx context.Context, s Session, now time.Time) error
	// Session returns the person of a session that has not expired, or ErrNone.
	Session(ctx context.Context, key string, now time.Time) (Person, error)
	// CloseSession ends a session; closing one that is gone is no error.
	CloseSession(ctx context.Context, key string) error
}
