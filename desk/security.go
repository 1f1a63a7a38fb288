package desk

import (
	"net"
	"net/http"
	"strings"
)

// headers go out with every answer. The policy allows this server's own style
// sheets, modules and pictures and nothing else: no script or style inside a
// page, no request to anywhere.
var headers = map[string]string{
	"Content-Security-Policy": "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; " +
		"font-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'",
	"X-Content-Type-Options":       "nosniff",
	"Referrer-Policy":              "no-referrer",
	"Cross-Origin-Opener-Policy":   "same-origin",
	"Cross-Origin-Resource-Policy": "same-origin",
	"Permissions-Policy":           "camera=(), geolocation=(), microphone=()",
}

// guard puts the desk's pages behind their guards, outermost first: headers,
// the check of the host's name, the check that a change comes from our own
// pages, and a limit on what may be sent.
func guard(pages http.Handler) http.Handler {
	return withHeaders(ownHost(http.NewCrossOriginProtection().Handler(smallBody(pages))))
}

func withHeaders(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		for name, value := range headers {
			w.Header().Set(name, value)
		}
		next.ServeHTTP(w, r)
	})
}

// ownHost refuses a request that names another host: a page elsewhere could
// point its own name at this machine and read the plans through the browser.
func ownHost(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if !loopbackHost(r.Host) {
			http.Error(w, "This desk answers on this machine only: open http://127.0.0.1 with the port it named.", http.StatusMisdirectedRequest)
			return
		}
		next.ServeHTTP(w, r)
	})
}

// loopbackHost reports whether a host, with or without a port, is this machine.
func loopbackHost(host string) bool {
	if name, _, err := net.SplitHostPort(host); err == nil {
		host = name
	}
	host = strings.Trim(host, "[]")
	if strings.EqualFold(host, "localhost") {
		return true
	}
	ip := net.ParseIP(host)
	return ip != nil && ip.IsLoopback()
}

// mostBody is the most bytes that a form may send: it holds a few words.
const mostBody = 4 << 10

func smallBody(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if strings.HasPrefix(r.URL.Path, "/api/") { // each operation has its own limit
			next.ServeHTTP(w, r)
			return
		}
		r.Body = http.MaxBytesReader(w, r.Body, mostBody)
		next.ServeHTTP(w, r)
	})
}
