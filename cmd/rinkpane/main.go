// Command rinkpane plans, proves, cuts, shares and minds the photo holes of
// an ice rink.
package main

import "os"

func main() {
	args := os.Args[1:]
	if len(args) == 0 && pressed() {
		args = []string{"desk", "--open"}
	}
	os.Exit(run(args, os.Stdin, os.Stdout, os.Stderr))
}
