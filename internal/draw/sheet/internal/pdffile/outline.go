package pdffile

import "fmt"

// Bookmark is an entry of the outline that readers show beside the pages.
type Bookmark struct {
	Title string
	Level int // 0 at the top; one deeper than the entry before at most
	Page  Ref
	Top   float64 // height on the page, points from its foot
}

// Outline writes the bookmarks as a tree and returns its root, 0 when there are none.
func Outline(f *File, marks []Bookmark) Ref {
	if len(marks) == 0 {
		return 0
	}
	root := f.Reserve()
	refs := make([]Ref, len(marks))
	for i := range marks {
		refs[i] = f.Reserve()
	}
	links := family(marks)
	for i, m := range marks {
		parent := root
		if p := links[i].parent; p >= 0 {
			parent = refs[p]
		}
		b := fmt.Sprintf("<</Title %s /Parent %v /Dest [%v /XYZ null %.2f null]", String(m.Title), parent, m.Page, m.Top)
		for _, e := range []struct {
			key string
			at  int
		}{{"Prev", links[i].prev}, {"Next", links[i].next}, {"First", links[i].first}, {"Last", links[i].last}} {
			if e.at >= 0 {
				b += fmt.Sprintf(" /%s %v", e.key, refs[e.at])
			}
		}
		if links[i].count > 0 {
			b += fmt.Sprintf(" /Count %d", -links[i].count) // negative: shown closed
		}
		f.Set(refs[i], b+">>")
	}
	last := len(marks) - 1
	for links[last].parent >= 0 {
		last = links[last].parent
	}
	top := 0
	for i := range marks {
		if links[i].parent < 0 {
			top++
		}
	}
	f.Set(root, fmt.Sprintf("<</Type /Outlines /First %v /Last %v /Count %d>>", refs[0], refs[last], top))
	return root
}

// kin holds an entry's neighbours in the tree as indices, -1 for none.
type kin struct{ parent, prev, next, first, last, count int }

func family(marks []Bookmark) []kin {
	out := make([]kin, len(marks))
	var path []int // the open entry of each level
	for i, m := range marks {
		level := min(max(m.Level, 0), len(path))
		k := kin{parent: -1, prev: -1, next: -1, first: -1, last: -1}
		if level < len(path) {
			k.prev = path[level]
			out[k.prev].next = i
		}
		if level > 0 {
			p := &out[path[level-1]]
			k.parent = path[level-1]
			if p.first < 0 {
				p.first = i
			}
			p.last = i
			p.count++
		}
		out[i] = k
		path = append(path[:level], i)
	}
	return out
}
