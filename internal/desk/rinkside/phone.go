package rinkside

import (
	"fmt"
	"net/http"
	"strings"
	"time"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/desk/shell"
)

// phonePage is the page at the glass. It holds no state: a phone keeps it and opens it
// without a network.
type phonePage struct {
	shell.Frame
	pass
	States  []custody.State
	Phases  []custody.Phase
	Until   time.Time
	Mishaps string // where an incident is told; "" for who came by a day link
}

func (d area) phonePage(w http.ResponseWriter, r *http.Request, p pass) error {
	page := phonePage{Frame: d.Frame(r, p.Name+": covers").Dim(), pass: p, States: custody.States(), Until: p.until()}
	if p.Link == nil {
		page.Phases = custody.Phases()
	}
	return d.Page(w, r, http.StatusOK, "phone.tmpl", page)
}

// Modules are those that phone.js stands on: all are fetched at once, not one after the
// other as they are met.
func (phonePage) Modules() []string {
	return []string{"glass.js", "marks.js", "queue.js", "sending.js"}
}

// phoneFiles are what the page needs to open without a network, and the card of a game
// (package night), which the same worker keeps.
var phoneFiles = []string{"theme.css", "phone.css", "icon.svg", "phone.js", "glass.js", "marks.js", "sending.js", "queue.js", "card.css", "sheet.css", "card.js", "worker.js"}

// worker answers GET /phone.js: the service worker, which stands at the top so that it
// may serve every page at the glass. It names the files to keep by their addresses, so
// it changes when they do.
func (d area) worker(w http.ResponseWriter, r *http.Request) error {
	addresses := make([]string, len(phoneFiles))
	for i, name := range phoneFiles {
		at, err := d.Asset(name)
		if err != nil {
			return err
		}
		addresses[i] = fmt.Sprintf("%q", at)
	}
	text := fmt.Sprintf("import { serve } from %s;\nserve([%s]);\n", addresses[len(addresses)-1], strings.Join(addresses, ", "))
	w.Header().Set("Cache-Control", "no-cache")
	shell.Send(w, r, http.StatusOK, "text/javascript; charset=utf-8", []byte(text), nil)
	return nil
}
