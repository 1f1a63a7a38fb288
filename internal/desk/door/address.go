package door

import (
	"fmt"
	"net"
	"net/http"
	"net/netip"
	"slices"
	"strings"
)

// forwarders are what servers before the desk add to a request (RFC 7239, and
// what was used before it).
var forwarders = []string{"Forwarded", "X-Forwarded-For", "X-Forwarded-Host", "Via"}

// forwarded reports whether a request came through another server.
func forwarded(r *http.Request) bool {
	for _, h := range forwarders {
		if r.Header.Get(h) != "" {
			return true
		}
	}
	return false
}

// ParseServers reads addresses ("10.0.0.5") and networks ("10.0.0.0/24") of servers
// before the desk.
func ParseServers(words []string) ([]netip.Prefix, error) {
	var out []netip.Prefix
	for _, w := range words {
		p, err := netip.ParsePrefix(w)
		if err != nil {
			var one netip.Addr
			if one, err = netip.ParseAddr(w); err == nil {
				p, err = one.Prefix(one.BitLen())
			}
		}
		if err != nil {
			return nil, fmt.Errorf("%q: write an address, such as 10.0.0.5, or a network, such as 10.0.0.0/24", w)
		}
		out = append(out, p.Masked())
	}
	return out, nil
}

// handsOn reports whether an address is that of a server before the desk whose word
// about visitors counts: one of this machine, or one of [Options].Behind.
func (d *Door) handsOn(address string) bool {
	ip, err := netip.ParseAddr(address)
	if err != nil {
		return false
	}
	ip = ip.Unmap()
	return ip.IsLoopback() || slices.ContainsFunc(d.Behind, func(p netip.Prefix) bool { return p.Contains(ip) })
}

// addressOf returns the address a request comes from: that of the connection, or, where
// a server hands it on whose word counts, the last that it names and that is none of
// these servers. Names before that may be anybody's.
func (d *Door) addressOf(r *http.Request) string {
	at, _, err := net.SplitHostPort(r.RemoteAddr)
	if err != nil {
		at = r.RemoteAddr
	}
	named := strings.Split(strings.Join(r.Header.Values("X-Forwarded-For"), ","), ",")
	for _, name := range slices.Backward(named) {
		ip := net.ParseIP(strings.TrimSpace(name))
		if ip == nil || !d.handsOn(at) {
			break
		}
		at = ip.String()
	}
	return at
}

// siteBits is how much of an IPv6 address names a site (RFC 4291, section 2.5.4):
// whoever has one has all addresses within.
const siteBits = 64

// networkOf returns what of an address one visitor cannot change at will.
func networkOf(address string) string {
	ip, err := netip.ParseAddr(address)
	if err != nil || ip.Unmap().Is4() {
		return address
	}
	site, err := ip.WithZone("").Prefix(siteBits)
	if err != nil {
		return address
	}
	return site.String()
}
