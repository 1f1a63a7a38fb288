package main

import (
	"bytes"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/form"
)

// target is where a command writes, when a flag names it.
type target struct {
	flag, path string
	force      bool
}

// flags adds the flag, and --force for what is there already.
func (t *target) flags(c *cobra.Command, name, usage string) {
	t.flag = name
	c.Flags().StringVar(&t.path, name, "", usage)
	c.Flags().BoolVar(&t.force, "force", false, "replace what is there already")
}

// kind is the end of the file's name, in lower case.
func (t target) kind() string { return strings.ToLower(filepath.Ext(t.path)) }

// may says before the work whether the file can be written, under a name that ends
// as asked; without a path it always may.
func (t target) may(ends ...string) error {
	if t.path == "" {
		return nil
	}
	if len(ends) > 0 && !slices.Contains(ends, t.kind()) {
		return fmt.Errorf("--%s %s: the name must end in %s", t.flag, form.Quote(t.path), strings.Join(ends, " or "))
	}
	if err := mayWrite(t.path, t.force); err != nil {
		return fmt.Errorf("--%s: %w", t.flag, err)
	}
	return nil
}

// write writes the file, when one is named.
func (t target) write(data []byte) error {
	if t.path == "" {
		return nil
	}
	return writeFile(t.path, data, t.force)
}

// writeBy writes what a function writes.
func (t target) writeBy(write func(io.Writer) error) error {
	if t.path == "" {
		return nil
	}
	var b bytes.Buffer
	err := write(&b)
	if err == nil {
		err = t.write(b.Bytes())
	}
	if err != nil {
		return fmt.Errorf("--%s: %w", t.flag, err)
	}
	return nil
}

// A map's width on paper and how finely a PNG shows it.
const (
	mapWidthMM = 260
	mapDPI     = 150
)

// draw writes a map as its file's name asks: .svg or .png.
func (t target) draw(a *app, d *sheet.Drawing) error {
	lacking(a, d.Lacking())
	if t.kind() == ".svg" {
		return t.write(sheet.SVG(d))
	}
	data, err := sheet.PNG(d, mapDPI)
	if err != nil {
		return fmt.Errorf("--%s %s: %w", t.flag, t.path, err)
	}
	return t.write(data)
}

// lacking warns of letters that drawings could not be given.
func lacking(a *app, l sheet.Lack) {
	if said := l.String(); said != "" {
		fmt.Fprintln(a.err, printable(said))
	}
}
