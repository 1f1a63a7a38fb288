package main

import (
	"context"
	"fmt"
	"io"
	"net/http"
	"os"
	"os/exec"
	"runtime"
	"strings"
	"time"
)

// pressed reports whether the program was started from a window: Windows tells it; on
// other systems there is a screen and no terminal. A file manager of macOS starts
// programs in a terminal of their own, which looks like typing.
func pressed() bool {
	if runtime.GOOS == "windows" {
		return byExplorer()
	}
	screen := os.Getenv("DISPLAY") != "" || os.Getenv("WAYLAND_DISPLAY") != ""
	return screen && !isTerminal(os.Stdin) && !isTerminal(os.Stdout)
}

// browsers are the commands that open an address in the user's browser.
func browsers() [][]string {
	switch runtime.GOOS {
	case "windows":
		return [][]string{{"rundll32", "url.dll,FileProtocolHandler"}}
	case "darwin":
		return [][]string{{"open"}}
	}
	return [][]string{{"xdg-open"}, {"sensible-browser"}, {"x-www-browser"}}
}

// showInBrowser opens an address in the user's browser; an error says that the user has
// to do it.
func showInBrowser(url string) error {
	for _, b := range browsers() {
		path, err := exec.LookPath(b[0])
		if err != nil {
			continue
		}
		c := exec.Command(path, append(b[1:], url)...)
		if err := c.Start(); err != nil {
			continue
		}
		go func() { _ = c.Wait() }() // some browsers stay until they are closed
		return nil
	}
	return fmt.Errorf("no browser was found: open %s yourself", url)
}

// openAlready reports whether a desk answers at an address.
func openAlready(ctx context.Context, addr string) bool {
	ctx, stop := context.WithTimeout(ctx, 2*time.Second)
	defer stop()
	ask, err := http.NewRequestWithContext(ctx, http.MethodGet, "http://"+addr+"/", nil)
	if err != nil {
		return false
	}
	answer, err := http.DefaultClient.Do(ask)
	if err != nil {
		return false
	}
	defer answer.Body.Close()
	page, err := io.ReadAll(io.LimitReader(answer.Body, 64<<10))
	return err == nil && strings.Contains(string(page), "· Rinkpane</title>")
}
