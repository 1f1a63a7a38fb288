package sheet

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"strings"

	"example.org/rinkpane/internal/draw/sheet/internal/pdffile"
	"example.org/rinkpane/internal/measure/cores"
)

// Info is what a PDF says of itself.
type Info = pdffile.Info

// Page is one page of a PDF.
type Page struct {
	Drawing *Drawing
	// Bookmarks are the entries of the reader's outline that lead to this page.
	Bookmarks []Bookmark
}

// Bookmark is an entry of a PDF's outline.
type Bookmark struct {
	Title string
	Level int     // 0 at the top; one deeper than the entry before at most
	Y     float64 // where on the page, in millimetres from its top
}

// pointsPerMM is the PDF's unit: 72 points to the inch of 25.4 mm (ISO 32000-1, 8.3.2.3).
const pointsPerMM = 72 / 25.4

// fewPages are packed at once, and not worth a word on how far the work is.
const fewPages = 40

var errNoPages = errors.New("a PDF needs at least one page")

// PDF returns the pages as one PDF 1.7 file. A page is as large as its drawing,
// one millimetre of the drawing is 72/25.4 points; readers are asked to print
// without scaling. Text is set in embedded subsets of the Go fonts and can be
// searched. It fails when there is no page, and with ctx's error when ctx ends.
func PDF(ctx context.Context, info Info, pages ...Page) ([]byte, error) {
	if len(pages) == 0 {
		return nil, errNoPages
	}
	w := &pdfWriter{glyphs: glyphUse{}, tree: 0}
	if info.Tagged {
		w.tags = newTags()
	}
	w.tree = w.f.Reserve()
	w.resources = w.f.Reserve()
	for range pages {
		w.pages = append(w.pages, w.f.Reserve())
	}
	var marks []pdffile.Bookmark
	for i, p := range pages {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		if len(pages) > fewPages {
			cores.Tell(ctx, "packing the pages", float64(i)/float64(len(pages)))
		}
		p.Drawing = p.Drawing.printable()
		w.page(w.pages[i], p.Drawing)
		for _, m := range p.Bookmarks {
			marks = append(marks, pdffile.Bookmark{
				Title: m.Title, Level: m.Level, Page: w.pages[i], Top: (p.Drawing.H - m.Y) * pointsPerMM})
		}
	}
	w.f.Set(w.tree, fmt.Sprintf("<</Type /Pages /Count %d /Kids [%s]>>", len(pages), refs(w.pages)))
	w.f.Set(w.resources, w.resourceDict())
	return w.close(info, marks), nil
}

type pdfWriter struct {
	f         pdffile.File
	tree      pdffile.Ref
	resources pdffile.Ref
	pages     []pdffile.Ref
	glyphs    glyphUse
	alphas    [256]bool     // opacities in use, one graphics state each
	pictures  []pdffile.Ref // in order of use
	tags      *tags         // nil: the file has no structure
}

func (w *pdfWriter) close(info Info, marks []pdffile.Bookmark) []byte {
	infoRef, xmp := info.Add(&w.f)
	catalog := fmt.Sprintf("<</Type /Catalog /Pages %v /Metadata %v /Lang %s"+
		" /ViewerPreferences <</PrintScaling /None /DisplayDocTitle true /PickTrayByPDFSize true>>",
		w.tree, xmp, pdffile.String(cmp.Or(info.Lang, "en")))
	if o := pdffile.Outline(&w.f, marks); o != 0 {
		catalog += fmt.Sprintf(" /Outlines %v /PageMode /UseOutlines", o)
	}
	if w.tags != nil {
		catalog += fmt.Sprintf(" /MarkInfo <</Marked true>> /StructTreeRoot %v", w.tags.write(&w.f))
	}
	return w.f.Bytes(w.f.Add(catalog+info.Labels()+">>"), infoRef)
}

func (w *pdfWriter) page(ref pdffile.Ref, d *Drawing) {
	c := &pdfPage{w: w, at: []placed{{scale: 1}}, height: d.H, tags: w.tags.page(ref)}
	// One user unit is a millimetre from here on, y down from the top left corner.
	c.ops("%.10f 0 0 %.10f 0 %.6f cm 1 j\n", pointsPerMM, -pointsPerMM, d.H*pointsPerMM)
	walk(d, c)
	c.untag()
	content := w.f.Stream("", c.b)
	annots := ""
	if len(c.links) > 0 {
		annots = fmt.Sprintf(" /Annots [%s]", refs(c.links))
	}
	annots += c.tags.entry()
	w.f.Set(ref, fmt.Sprintf("<</Type /Page /Parent %v /MediaBox [0 0 %s %s] /Resources %v /Contents %v%s>>",
		w.tree, points(d.W), points(d.H), w.resources, content, annots))
}

// embed packs a picture; one that comes packed is taken as it is.
func (w *pdfWriter) embed(m Image) pdffile.Ref {
	if m.JPEG != nil {
		return pdffile.Photo(&w.f, m.JPEG, m.Img.Bounds().Size())
	}
	return pdffile.Picture(&w.f, m.Img)
}

func points(mm float64) string { return string(appendRounded(nil, mm*pointsPerMM, 4)) }

func refs(list []pdffile.Ref) string {
	s := make([]string, len(list))
	for i, r := range list {
		s[i] = r.String()
	}
	return strings.Join(s, " ")
}

// resourceDict names the fonts, opacities and pictures for all pages.
func (w *pdfWriter) resourceDict() string {
	var b strings.Builder
	b.WriteString("<</Font <<")
	for f := Regular; f <= Mono; f++ {
		if len(w.glyphs[f]) > 0 {
			ref := pdffile.Font(&w.f, f.font(), w.glyphs.glyphs(f), w.glyphs[f])
			fmt.Fprintf(&b, "/F%d %v ", f, ref)
		}
	}
	b.WriteString(">> /ExtGState <<")
	for a, used := range w.alphas {
		if used {
			fmt.Fprintf(&b, "/A%d <</ca %.4f /CA %.4f>> ", a, float64(a)/255, float64(a)/255)
		}
	}
	b.WriteString(">> /XObject <<")
	for i, r := range w.pictures {
		fmt.Fprintf(&b, "/I%d %v ", i, r)
	}
	b.WriteString(">>>>")
	return b.String()
}
