package sheet

import (
	"fmt"
	"strconv"

	"example.org/rinkpane/internal/draw/sheet/internal/pdffile"
)

// tags gathers the structure of a file while its pages are painted.
type tags struct {
	root  pdffile.Node
	nodes map[*Part]*pdffile.Node
	marks [][]*pdffile.Node // by page and number of marked content
	links []*pdffile.Node   // by link
	pages []pdffile.Ref
}

func newTags() *tags {
	return &tags{root: pdffile.Node{Role: "Document"}, nodes: map[*Part]*pdffile.Node{}}
}

// node returns a part's node, made with those that it stands in at its first use.
func (t *tags) node(p *Part) *pdffile.Node {
	if p == nil {
		return &t.root
	}
	n := t.nodes[p]
	if n == nil {
		n = &pdffile.Node{Role: string(p.Role), Alt: p.Alt, HeadsColumn: p.Role == RoleHead}
		t.nodes[p] = n
		in := t.node(p.In)
		in.Kids = append(in.Kids, pdffile.Kid{Node: n})
	}
	return n
}

func (t *tags) page(ref pdffile.Ref) *pageTags {
	if t == nil {
		return nil
	}
	t.pages, t.marks = append(t.pages, ref), append(t.marks, nil)
	return &pageTags{tags: t, ref: ref, at: len(t.pages) - 1}
}

// write writes the tree. Keys of its parents are the pages' numbers, then the links'.
func (t *tags) write(f *pdffile.File) pdffile.Ref {
	return pdffile.Structure(f, &t.root, t.marks, t.links)
}

// pageTags knows which part a page is being painted for.
type pageTags struct {
	*tags
	ref   pdffile.Ref
	at    int // the page's number, from 0
	parts []*Part
	open  bool  // a sequence of marked content is begun
	now   *Part // of the sequence begun; nil: decoration
}

func (c *pdfPage) begin(p *Part) {
	if c.tags != nil {
		c.tags.parts = append(c.tags.parts, p)
		c.tags.node(p) // a cell without a word counts as well
	}
}

func (c *pdfPage) end() {
	if c.tags != nil {
		c.tags.parts = c.tags.parts[:len(c.tags.parts)-1]
	}
}

// tag begins the sequence of marked content that what follows belongs to, unless
// it is begun, and reports whether that is part of the document.
func (c *pdfPage) tag() bool {
	t := c.tags
	if t == nil {
		return false
	}
	var want *Part
	if n := len(t.parts); n > 0 {
		want = t.parts[n-1]
	}
	if t.open && t.now == want {
		return want != nil
	}
	c.untag()
	t.open, t.now = true, want
	if want == nil {
		c.op("/Artifact BMC")
		return false
	}
	n, marks := t.node(want), &t.marks[t.at]
	n.Kids = append(n.Kids, pdffile.Kid{Page: t.ref, Mark: len(*marks)})
	c.op("/" + string(want.Role) + " <</MCID " + strconv.Itoa(len(*marks)) + ">> BDC")
	*marks = append(*marks, n)
	return true
}

// untag ends the sequence begun.
func (c *pdfPage) untag() {
	if c.tags != nil && c.tags.open {
		c.op("EMC")
		c.tags.open = false
	}
}

// link joins a link to the part that it stands in and returns the entries that its
// dictionary needs for it.
func (t *pageTags) link(annot pdffile.Ref, to string) string {
	if t == nil || len(t.parts) == 0 {
		return ""
	}
	n := t.node(t.parts[len(t.parts)-1])
	n.Kids = append(n.Kids, pdffile.Kid{Page: t.ref, Object: annot})
	t.tags.links = append(t.tags.links, n)
	return fmt.Sprintf(" /Contents %s /StructParent %d", pdffile.String("leads to "+to), pdffile.LinkKey(len(t.tags.links)-1))
}

// entry returns the entries of a page's dictionary.
func (t *pageTags) entry() string {
	if t == nil {
		return ""
	}
	return fmt.Sprintf(" /StructParents %d /Tabs /S", t.at)
}
