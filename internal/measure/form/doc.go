// Package form reads a YAML document strictly, as one reads a filled-in form:
// every field must be a known one, every value must parse, and what is wrong is
// said with its file, line, column and field, the value seen and the cure.
//
//	my.yaml:12:11: holes[H3].size: "5.5 x 4.5" ...
//	   file line column    field     value seen and the cure
//
// A [Document] remembers the first [Problem] of its fields; after it every
// reading returns zero values, so that a reader is written straight down and
// asks [Document.Err] once at the end:
//
//	doc, err := form.Read("my.yaml", r, 1<<20)
//	...
//	m := doc.Root().Map("name", "size")
//	name, size := m.At("name").Text(), m.At("size").Size()
//	if err := doc.Err(); err != nil { ... }
//
// Edits ([Document.Set], [Document.Append], [Document.Remove]) splice the text
// where a value stands and leave every other byte alone; they return a new
// document, whose values are proved to be the ones meant. A path names the value,
// as in messages: "holes[H3].size", "light.readings[#4].x".
//
// Refused: more bytes than the limit, anything that is not UTF-8 text, more
// than one document, aliases and merge keys (a file of a few lines could ask
// for gigabytes through them), a field written twice.
package form
