// Package rinkpane is the house that holds the packages; it has no code of its
// own. Its tests keep the house's rules: which package may stand on which, what
// exported names must say, how long a file may grow, and that the documents
// tell the truth. CONTRIBUTING.md holds the map.
package rinkpane
