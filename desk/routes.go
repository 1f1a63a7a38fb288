package desk

import (
	"context"
	"net/http"

	"example.org/rinkpane/desk/api"
)

// routes is the table of every address.
func (d *Desk) routes() http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("GET /{$}", d.listPage)
	mux.HandleFunc("GET /arena/{slug}", d.arenaPage)
	mux.HandleFunc("POST /theme", d.setTheme)
	mux.HandleFunc("GET /assets/{hash}/{name}", d.asset)
	mux.HandleFunc("GET /favicon.ico", d.icon)
	mux.HandleFunc("/", d.nowhere)
	api.Mount(mux, api.Options{
		Shelf: d.shelf, Who: func(context.Context) string { return "desk" }, Version: d.version, Log: d.log,
	})
	return mux
}
