package book

import (
	"encoding/base64"
	"fmt"
	"html"
	"strings"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/tell/table"
)

// htmlFlow writes parts as the body of a page for a browser.
type htmlFlow struct {
	b      strings.Builder
	styles sheet.Stylesheet // of the drawings so far
}

func (f *htmlFlow) say(form string, args ...string) {
	escaped := make([]any, len(args))
	for i, a := range args {
		escaped[i] = html.EscapeString(a)
	}
	fmt.Fprintf(&f.b, form, escaped...)
}

func (f *htmlFlow) Heading(s string) { f.say("<h3>%s</h3>\n", s) }

func (f *htmlFlow) Notes(lines ...string) {
	for _, s := range lines {
		f.say("<p>%s</p>\n", s)
	}
}

func (f *htmlFlow) Numbered(lines ...string) {
	f.b.WriteString("<ol>\n")
	for _, s := range lines {
		f.say("<li>%s</li>\n", s)
	}
	f.b.WriteString("</ol>\n")
}

func (f *htmlFlow) Table(t table.Table, _ float64) {
	t = t.Shown()
	f.b.WriteString("<div class=\"wide\" tabindex=\"0\"><table>\n<thead><tr>")
	for _, c := range t.Columns {
		f.say("<th"+classOf(c, c.Head)+" scope=\"col\">%s</th>", c.Head)
	}
	f.b.WriteString("</tr></thead>\n<tbody>\n")
	for r, row := range t.Rows {
		class := ""
		if r < len(t.Strong) && t.Strong[r] {
			class = ` class="strong"`
		}
		f.b.WriteString("<tr" + class + ">")
		for i, c := range row {
			f.say("<td"+classOf(t.Columns[i], c.Text)+">%s</td>", c.Text)
		}
		f.b.WriteString("</tr>\n")
	}
	f.b.WriteString("</tbody></table></div>\n")
}

// classOf tells numbers, and sentences from what stands on one line.
func classOf(c table.Column, s string) string {
	const line = 20 // letters
	switch {
	case c.Right:
		return ` class="num"`
	case len(s) > line:
		return ` class="long"`
	}
	return ""
}

// pixelsPerMM is how large a drawing stands on the page: its smallest type of 2 mm is 9
// pixels high, on a phone as well, where it scrolls.
const pixelsPerMM = 4.4

func (f *htmlFlow) Figures(row ...figure) {
	f.b.WriteString("<div class=\"figures\">\n")
	for _, g := range row {
		d := g.draw(g.wide)
		f.styles = f.styles.Merge(d.Styles)
		fmt.Fprintf(&f.b, "<figure class=\"wide\" tabindex=\"0\"><div style=\"width:%.0fpx\">%s</div></figure>\n", d.W*pixelsPerMM, sheet.InlineSVG(d))
	}
	f.b.WriteString("</div>\n")
}

func (f *htmlFlow) Photos(row ...View) {
	f.b.WriteString("<div class=\"photos\">\n")
	for _, v := range row {
		size := v.photo.Img.Bounds().Size()
		fmt.Fprintf(&f.b, "<figure><img src=\"data:image/jpeg;base64,%s\" width=\"%d\" height=\"%d\" alt=\"%s\"><figcaption>%s</figcaption></figure>\n",
			base64.StdEncoding.EncodeToString(v.photo.JPEG), size.X, size.Y, html.EscapeString(v.alt), html.EscapeString(v.caption))
	}
	f.b.WriteString("</div>\n")
}

func (f *htmlFlow) Facts(facts ...fact) {
	f.b.WriteString("<dl class=\"facts\">\n")
	for _, x := range facts {
		f.say("<div><dt>%s</dt><dd>%s</dd></div>\n", x.name, x.value)
	}
	f.b.WriteString("</dl>\n")
}

// Signature sets the lines to sign on, for a browser's print.
func (f *htmlFlow) Signature(who signer) {
	f.say("<div class=\"sign\"><h4>%s</h4><p>%s</p><div class=\"lines\">", who.who, who.under)
	for _, line := range signed {
		f.say("<span>%s</span>", line.name)
	}
	f.b.WriteString("</div></div>\n")
}

// HTML returns the book as one file for a browser: text, tables, pictures,
// letters and style within, nothing fetched from elsewhere.
func (c Content) HTML() []byte {
	s := c.setter()
	var f, head htmlFlow
	s.masthead(&head)
	nav := &head
	nav.b.WriteString("<nav aria-label=\"Contents\"><ul>\n")
	for _, ch := range s.chapters() {
		nav.say("<li class=\"level"+fmt.Sprint(ch.level)+"\"><a href=\"#%s\">%s</a></li>\n", ch.id, ch.title)
		f.say("<section id=\"%s\">\n<h2>%s</h2>\n", ch.id, ch.title)
		for _, l := range ch.leaves {
			for _, col := range l.columns {
				for _, write := range col.parts {
					write(&f)
				}
			}
		}
		f.b.WriteString("</section>\n")
	}
	nav.b.WriteString("</ul></nav>\n")
	return []byte(c.document(f.styles, head.b.String(), f.b.String(), s.caution))
}

// masthead is the cover of the page.
func (s setter) masthead(f *htmlFlow) {
	f.b.WriteString("<header>\n")
	if v, ok := s.c.Cover.Get(); ok {
		f.Photos(v)
	}
	f.say("<h1>%s</h1>\n", s.c.Arena.Name)
	if s.c.Arena.Place != "" {
		f.say("<p>%s</p>\n", s.c.Arena.Place)
	}
	f.Facts(s.standing()...)
	f.b.WriteString("</header>\n")
}

// document puts style and cautions round head and body.
func (c Content) document(styles sheet.Stylesheet, head, body, caution string) string {
	var f htmlFlow
	f.b.WriteString("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
	f.say("<meta name=\"keywords\" content=\"%s\">\n<title>Arena book: %s</title>\n", c.stamp(), c.Arena.Name)
	f.b.WriteString("<style>\n" + fontFaces() + styles.CSS(".sheet") + pageCSS + "</style>\n</head>\n<body>\n" + head + "<main>\n" + body + "</main>\n")
	f.say("<footer><p>%s</p></footer>\n</body>\n</html>\n", caution)
	return f.b.String()
}

// fontFaces embeds the letters that drawings and text are set in.
func fontFaces() string {
	var b strings.Builder
	for _, f := range []struct {
		face   sheet.Face
		weight string
		style  string
	}{{sheet.Regular, "400", "normal"}, {sheet.Bold, "700", "normal"}, {sheet.Italic, "400", "italic"}} {
		fmt.Fprintf(&b, "@font-face{font-family:Go;font-weight:%s;font-style:%s;src:url(data:font/ttf;base64,%s)}\n",
			f.weight, f.style, base64.StdEncoding.EncodeToString(f.face.FontFile()))
	}
	return b.String()
}

// pageCSS is the page's own style: one column of text, tables and drawings that
// scroll on a narrow screen, sections that start a sheet in print.
const pageCSS = `body{margin:0;font:16px/1.5 Go,"Helvetica Neue",Arial,sans-serif;color:#1c2730;background:#fff}
header,main,footer,nav{max-width:72rem;margin:0 auto;padding:0 1rem}
h1{margin:1rem 0 0;font-size:clamp(1.8rem,6vw,3rem);line-height:1.15}h2{border-top:2px solid #1c2730;padding-top:.6rem;margin-top:2.5rem}
h3{margin:1.6rem 0 .4rem}nav ul{columns:3 14rem;padding-left:1.1rem}a{color:#1f5f8b}nav li{padding:.15rem 0}
.level1{margin-left:1rem}main p,main ol{max-width:44rem}
.wide{overflow-x:auto}table{border-collapse:collapse;font-size:.9rem}th,td{padding:.25rem .6rem;text-align:left;border-bottom:1px solid #b4c2cc;vertical-align:top}
thead th{background:#ecf4f8;border-bottom:1px solid #1c2730}th,td{white-space:nowrap}.num{text-align:right}.long{white-space:normal;min-width:min(10rem,36vw)}tr.strong td{font-weight:700}
.figures{display:flex;flex-wrap:wrap;gap:0 2rem}.figures figure{max-width:100%}
figure{margin:.8rem 0}svg.sheet{display:block;width:100%;height:auto;background:#fff}
svg.sheet text{font-kerning:none;white-space:pre}
.photos{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,20rem),1fr));gap:0 1rem}.photos img{display:block;width:100%;height:auto}
figcaption{font-size:.85rem;color:#556673;padding-top:.3rem}
.facts{display:flex;flex-wrap:wrap;gap:.6rem 2rem;margin:1rem 0}.facts div{display:flex;flex-direction:column-reverse}.facts dd{margin:0;font-weight:700;font-size:1.25rem;color:#1f5f8b}
.facts dt{font-size:.85rem;color:#556673}
.sign{margin:1rem 0}.sign h4{margin:0}.lines{display:flex;gap:1rem;margin-top:2.5rem}.lines span{flex:1;border-top:1px solid #1c2730;font-size:.8rem;color:#556673}
footer{border-top:2px solid #1c2730;margin-top:2rem;padding-bottom:2rem;font-style:italic}
@media print{section{break-before:page}nav{display:none}.sign,figure,tr{break-inside:avoid}}
`
