package pdffile

import (
	"fmt"
	"strings"
)

// Node is a part of a document in its structure tree (ISO 32000-1, 14.7).
type Node struct {
	Role        string // a standard structure type
	Alt         string // of a figure
	HeadsColumn bool   // of a table's head
	Kids        []Kid  // in the order in which they are read
	ref         Ref
}

// Kid is what a node holds: another node, a sequence of a page's marked content, or
// an object on a page, such as a link.
type Kid struct {
	Node   *Node
	Page   Ref
	Mark   int
	Object Ref
}

// linkKeys is where the keys of links begin among those of the parent tree: no file has as many pages.
const linkKeys = 1 << 20

// LinkKey returns the number by which the parent tree knows a link.
func LinkKey(i int) int { return linkKeys + i }

// Structure writes the tree under a root and returns its object. marks are the
// nodes by page and number of marked content, links those by link.
func Structure(f *File, root *Node, marks [][]*Node, links []*Node) Ref {
	tree := f.Reserve()
	root.reserve(f)
	root.write(f, tree)
	var nums strings.Builder
	for page, nodes := range marks {
		fmt.Fprintf(&nums, "%d [", page)
		for _, n := range nodes {
			fmt.Fprintf(&nums, "%v ", n.ref)
		}
		nums.WriteString("] ")
	}
	for i, n := range links {
		fmt.Fprintf(&nums, "%d %v ", LinkKey(i), n.ref)
	}
	parents := f.Add("<</Nums [" + nums.String() + "]>>")
	f.Set(tree, fmt.Sprintf("<</Type /StructTreeRoot /K %v /ParentTree %v /ParentTreeNextKey %d>>", root.ref, parents, LinkKey(len(links))))
	return tree
}

func (n *Node) reserve(f *File) {
	n.ref = f.Reserve()
	for _, k := range n.Kids {
		if k.Node != nil {
			k.Node.reserve(f)
		}
	}
}

func (n *Node) write(f *File, parent Ref) {
	var b strings.Builder
	fmt.Fprintf(&b, "<</S /%s /P %v", n.Role, parent)
	if n.Alt != "" {
		b.WriteString(" /Alt " + String(n.Alt))
	}
	if n.HeadsColumn {
		b.WriteString(" /A <</O /Table /Scope /Column>>")
	}
	page := n.page()
	if page != 0 {
		fmt.Fprintf(&b, " /Pg %v", page)
	}
	b.WriteString(" /K [")
	for _, k := range n.Kids {
		switch {
		case k.Node != nil:
			fmt.Fprintf(&b, "%v ", k.Node.ref)
		case k.Object != 0:
			fmt.Fprintf(&b, "<</Type /OBJR /Obj %v /Pg %v>> ", k.Object, k.Page)
		case k.Page == page:
			fmt.Fprintf(&b, "%d ", k.Mark)
		default:
			fmt.Fprintf(&b, "<</Type /MCR /Pg %v /MCID %d>> ", k.Page, k.Mark)
		}
	}
	f.Set(n.ref, b.String()+"]>>")
	for _, k := range n.Kids {
		if k.Node != nil {
			k.Node.write(f, n.ref)
		}
	}
}

// page returns the page of the node's first marked content; 0 when it has none.
func (n *Node) page() Ref {
	for _, k := range n.Kids {
		if k.Node == nil && k.Object == 0 {
			return k.Page
		}
	}
	return 0
}
