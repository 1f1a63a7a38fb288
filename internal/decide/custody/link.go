package custody

import (
	"errors"
	"time"
)

// Link opens the covers of one arena on one day to somebody without an account.
type Link struct {
	ID    string    `json:"id"`
	Arena string    `json:"arena"`
	Name  string    `json:"name"` // of the steward it is for
	Day   string    `json:"day"`  // "2026-11-28"
	From  time.Time `json:"from"`
	Until time.Time `json:"until"` // it expires
}

// LinkFor makes a link for a day; id is drawn by lot by the caller.
func LinkFor(id, arena, name string, day Window) Link {
	return Link{id, arena, name, day.Date(), day.From.UTC(), day.To.UTC()}
}

func (l Link) check() error {
	if !l.From.Before(l.Until) {
		return errors.New("a day link must end after it begins")
	}
	return errors.Join(name("link", l.ID), name("arena", l.Arena), name("name", l.Name), name("day", l.Day))
}

// What is wrong with a link that opens nothing.
var (
	ErrLinkForged  = errors.New("this link is not one of ours: ask for a new one at the rink's desk")
	ErrLinkEnded   = errors.New("this link's day is over: ask for one for today at the rink's desk")
	ErrLinkRevoked = errors.New("this link was revoked: ask at the rink's desk")
)

// Token writes the link as it stands in an address, [Sign]ed with the desk's secret.
func (l Link) Token(secret string) string { return Sign(linkUse, l, secret) }

// OpenLink reads a token that [Link.Token] wrote and says why it opens nothing: it is
// not signed by the secret, its day is over. Whether it was revoked the history tells.
func OpenLink(token, secret string, now time.Time) (Link, error) {
	var l Link
	if !Signed(linkUse, token, secret, &l) {
		return Link{}, ErrLinkForged
	}
	if !now.Before(l.Until) {
		return Link{}, ErrLinkEnded
	}
	return l, nil
}

// linkUse keeps these signatures apart from all else that the secret signs.
const linkUse = "rinkpane day link\n"

// Revoked reports whether a link was revoked.
func (h History) Revoked(l Link) (yes bool) {
	Facts(h, func(_ Entry, f LinkRevoked) { yes = yes || f.Link == l.ID })
	return yes
}
