package door

import (
	"net"
	"net/http"
	"net/netip"
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

// addressOf returns the address a request comes from. A server before this one
// on the same machine is believed when it names another.
func addressOf(r *http.Request) string {
	host, _, err := net.SplitHostPort(r.RemoteAddr)
	if err != nil {
		host = r.RemoteAddr
	}
	if ahead := r.Header.Get("X-Forwarded-For"); ahead != "" && LoopbackHost(host) {
		last := strings.TrimSpace(ahead[strings.LastIndexByte(ahead, ',')+1:])
		if ip := net.ParseIP(last); ip != nil {
			return ip.String()
		}
	}
	return host
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
