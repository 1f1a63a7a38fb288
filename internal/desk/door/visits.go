package door

import (
	"net"
	"net/http"
	"time"
)

// Own choice: a hand that drags asks 30 times a second; a rink's whole press may sit
// behind one address.
var (
	perSession = pace{600, time.Second / 60}
	perNetwork = pace{3000, time.Second / 600}
)

// tooFast answers a visitor who asks faster than anybody's hand: 429, and when to come
// back. It looks at nothing that is kept, so that refusing costs little. A server
// before the desk that names no visitors is not held for one.
func (d *Door) tooFast(w http.ResponseWriter, r *http.Request) bool {
	at := d.addressOf(r)
	var paces []limit
	if key := sessionKey(r); key != "" {
		paces = append(paces, limit{"session " + key, perSession})
	}
	if net.ParseIP(at) != nil && !d.handsOn(at) {
		paces = append(paces, limit{"network " + networkOf(at), perNetwork})
	}
	if d.visits.all(paces) {
		d.visits.take(paces)
		return false
	}
	w.Header().Set("Retry-After", "1")
	http.Error(w, "Too many requests at once: nothing was done. Wait a second and try again.", http.StatusTooManyRequests)
	return true
}
