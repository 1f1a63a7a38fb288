package shell

import (
	"net/http"
	"slices"
	"strings"
	"unicode"
)

// A theme is how bright the desk is. A rink is dark, so the desk is dim unless
// the machine or the visitor asks for light.
type theme string

const (
	themeAuto  theme = "auto" // as the machine says
	themeDim   theme = "dim"
	themeLight theme = "light"
)

var themes = []theme{themeAuto, themeDim, themeLight}

const (
	themeCookie     = "rinkpane-theme"
	rememberSeconds = 365 * 24 * 3600
)

// themeOf returns the theme that the address asks for, else the visitor's from
// the cookie.
func themeOf(r *http.Request) theme {
	if asked := theme(r.URL.Query().Get("theme")); slices.Contains(themes, asked) {
		return asked
	}
	c, err := r.Cookie(themeCookie)
	if err != nil || !slices.Contains(themes, theme(c.Value)) {
		return themeAuto
	}
	return theme(c.Value)
}

// setTheme keeps the choice in a cookie and returns to the page it was made on.
func (s *Shell) setTheme(w http.ResponseWriter, r *http.Request) error {
	choice := theme(r.PostFormValue("theme"))
	if !slices.Contains(themes, choice) {
		return Refuse(http.StatusBadRequest, "That is no theme.", "Choose dim, light, or as the machine says.")
	}
	Remember(w, themeCookie, string(choice))
	return s.Goto(w, r, OwnPath(r.PostFormValue("back")))
}

// Remember keeps a visitor's taste in a cookie for a year; an empty one forgets it.
func Remember(w http.ResponseWriter, name, value string) {
	age := rememberSeconds
	if value == "" {
		age = -1
	}
	http.SetCookie(w, &http.Cookie{Name: name, Value: value, Path: "/", MaxAge: age, HttpOnly: true, SameSite: http.SameSiteStrictMode})
}

// OwnPath returns the path when it leads to a page of this desk, else the list
// of arenas: a form must not send a visitor elsewhere.
func OwnPath(p string) string {
	odd := func(r rune) bool { return r == '\\' || unicode.IsControl(r) } // browsers drop tabs and breaks: "/\t/" is "//"
	if !strings.HasPrefix(p, "/") || strings.HasPrefix(p, "//") || strings.ContainsFunc(p, odd) {
		return "/"
	}
	return p
}
