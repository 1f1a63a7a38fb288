package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"strings"
	"time"

	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/measure/cores"
)

// progress shows how far long work is: a bar that redraws itself on a
// terminal, a plain line each few seconds elsewhere.
type progress struct {
	w        io.Writer
	terminal bool
	last     time.Time
	drawn    bool
}

// How often a bar is drawn anew, and a line written where there is no terminal, the
// first one sooner.
const (
	redrawEvery = 100 * time.Millisecond
	lineEvery   = 3 * time.Second
	firstLine   = time.Second
	barWidth    = 30
)

func newProgress(w io.Writer) *progress {
	p := &progress{w: w, last: time.Now().Add(firstLine - lineEvery)}
	if f, ok := w.(*os.File); ok {
		info, err := f.Stat()
		p.terminal = err == nil && info.Mode()&os.ModeCharDevice != 0
	}
	return p
}

// watched returns a context in which long work shows on standard error how far it
// is, and what takes the bar away; call it before anything else is written there.
func (a *app) watched(ctx context.Context) (context.Context, func()) {
	bar := newProgress(a.err)
	return cores.Told(ctx, func(stage string, share float64) { bar.tell(choose.Report{Stage: stage, Share: share}) }), bar.end
}

// tell shows a report, not each one.
func (p *progress) tell(r choose.Report) {
	every := lineEvery
	if p.terminal {
		every = redrawEvery
	}
	if time.Since(p.last) < every {
		return
	}
	p.last = time.Now()
	text := reportText(r)
	if !p.terminal {
		fmt.Fprintln(p.w, text)
		return
	}
	full := min(barWidth, max(0, int(r.Share*barWidth)))
	fmt.Fprintf(p.w, "\r[%s%s] %-60s", strings.Repeat("#", full), strings.Repeat(".", barWidth-full), text)
	p.drawn = true
}

// end clears the bar.
func (p *progress) end() {
	if p.drawn {
		fmt.Fprintf(p.w, "\r%s\r", strings.Repeat(" ", barWidth+63))
		p.drawn = false
	}
}

func reportText(r choose.Report) string {
	if r.Bound == 0 {
		return fmt.Sprintf("%s: %.0f %%", r.Stage, 100*r.Share)
	}
	return fmt.Sprintf("%s: value %.5f, bound %.5f, gap %.3f %%", r.Stage, r.Value, r.Bound, 100*(1-r.Value/r.Bound))
}
