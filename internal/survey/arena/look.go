package arena

// Value returns the text of the single value at a path as the document has it,
// "" where there is none.
func (d *Document) Value(path string) string { return d.form.Value(path) }

// IsGroup reports whether fields stand at a path.
func (d *Document) IsGroup(path string) bool { return d.form.IsGroup(path) }

// Items returns the paths of the items of the list at a path: "panes[P7]",
// "light.readings[#3]".
func (d *Document) Items(path string) []string { return d.form.Items(path) }

// Differ returns the paths of what two documents hold otherwise: each hole for
// itself, "holes[H3]", else a field with all that is in it, "boards".
func (d *Document) Differ(other *Document) []string { return d.form.Differ(other.form, "holes") }
