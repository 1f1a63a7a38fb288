package book

import (
	"encoding/base64"
	"fmt"
	"html"
	"strings"

	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/tell/table"
)

// htmlFlow writes a chapter as the body of a page for a browser.
type htmlFlow struct {
	b      strings.Builder
	styles sheet.Stylesheet // of the drawings so far
}

func (f *htmlFlow) Heading(s string) { fmt.Fprintf(&f.b, "<h3>%s</h3>\n", html.EscapeString(s)) }

func (f *htmlFlow) Notes(lines ...string) {
	for _, s := range lines {
		fmt.Fprintf(&f.b, "<p>%s</p>\n", html.EscapeString(s))
	}
}

func (f *htmlFlow) Numbered(lines ...string) {
	f.b.WriteString("<ol>\n")
	for _, s := range lines {
		fmt.Fprintf(&f.b, "<li>%s</li>\n", html.EscapeString(s))
	}
	f.b.WriteString("</ol>\n")
}

func (f *htmlFlow) Table(t table.Table, _ float64) {
	t = t.Shown()
	f.b.WriteString("<div class=\"table\"><table>\n<thead><tr>")
	for _, c := range t.Columns {
		fmt.Fprintf(&f.b, "<th%s scope=\"col\">%s</th>", numeric(c), html.EscapeString(c.Head))
	}
	f.b.WriteString("</tr></thead>\n<tbody>\n")
	for r, row := range t.Rows {
		class := ""
		if r < len(t.Strong) && t.Strong[r] {
			class = ` class="strong"`
		}
		fmt.Fprintf(&f.b, "<tr%s>", class)
		for i, c := range row {
			fmt.Fprintf(&f.b, "<td%s>%s</td>", numeric(t.Columns[i]), html.EscapeString(c.Text))
		}
		f.b.WriteString("</tr>\n")
	}
	f.b.WriteString("</tbody></table></div>\n")
}

func numeric(c table.Column) string {
	if c.Right {
		return ` class="num"`
	}
	return ""
}

func (f *htmlFlow) Drawing(d *sheet.Drawing) {
	f.styles = f.styles.Merge(d.Styles)
	fmt.Fprintf(&f.b, "<figure style=\"max-width:%.0fpx\">%s</figure>\n", d.W*pixelsPerMM, sheet.InlineSVG(d))
}

// pixelsPerMM is how large a drawing may grow on the page: its type of 2.9 mm
// stands a little under the text's 16 pixels.
const pixelsPerMM = 4.4

// Widths of the pictures on the page, mm: what their type is laid out for.
const (
	pageMap   = 260.0
	pageChart = 130.0
)

// HTML returns the book as one file for a browser: text, tables, drawings,
// letters and style within, nothing fetched from elsewhere.
func (c Content) HTML() []byte {
	s := c.setter()
	var f htmlFlow
	var nav strings.Builder
	section := func(id, title string, write func(flow)) {
		fmt.Fprintf(&nav, "<li><a href=\"#%s\">%s</a></li>\n", html.EscapeString(id), html.EscapeString(title))
		fmt.Fprintf(&f.b, "<section id=\"%s\">\n<h2>%s</h2>\n", html.EscapeString(id), html.EscapeString(title))
		write(&f)
		f.b.WriteString("</section>\n")
	}
	section("summary", "Summary", s.summary)
	section("plan", "Plan with stations", func(f flow) { f.Drawing(chart.PlanMap(chart.OfPlan(c.Plan, s.units(), ""), pageMap)) })
	section("boards", "Boards and glass, unrolled", func(f flow) {
		f.Drawing(chart.BoardsStrip(chart.OfPlan(c.Plan, s.units(), ""), pageMap, mostStripRows))
	})
	if c.Light != nil {
		section("light", lightTitle, func(f flow) { f.Drawing(s.lightMap(pageMap)) })
	}
	for _, h := range c.Plan.Holes {
		section("hole-"+h.ID, "Hole "+h.ID, func(f flow) { s.holeSection(f, h) })
	}
	section("kit", "Kit", s.kit)
	section("covers", "Covers and tethers", s.covers)
	section("rules", "Rule findings", s.rules)
	section("guard", "Guard: what an open hole lets through", func(f flow) {
		s.ranking(f)
		f.Drawing(chart.GuardMap(c.Arena, c.Plan.Guards, "", pageMap))
	})
	section("sign-off", "Cautions and sign-off", func(w flow) {
		s.cautions(w)
		w.Heading(signTitle + c.Mark)
		f.signatures()
	})
	return []byte(c.document(f.styles, nav.String(), f.b.String()))
}

func (s setter) holeSection(f flow, h plan.Hole) {
	s.place(f, h)
	s.findings(f, h)
	s.guard(f, h)
	s.leftOut(f)
	s.lenses(f, h, pageChart)
	s.reach(f, h, pageChart)
	s.light(f, h)
}

// signatures sets the lines to sign on, for a browser's print.
func (f *htmlFlow) signatures() {
	for _, who := range signers() {
		fmt.Fprintf(&f.b, "<div class=\"sign\"><h4>%s</h4><p>%s</p><div class=\"lines\"><span>name</span><span>signature</span><span>date</span></div></div>\n",
			html.EscapeString(who.who), html.EscapeString(who.under))
	}
}

// summary is the front page's sentence and table.
func (s setter) summary(f flow) {
	f.Notes(s.sentence())
	f.Table(s.holeTable(), sheet.SizeTable)
}

// document puts head, style and cautions round the body.
func (c Content) document(styles sheet.Stylesheet, nav, body string) string {
	var b strings.Builder
	name := html.EscapeString(c.Arena.Name)
	b.WriteString("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
	fmt.Fprintf(&b, "<meta name=\"keywords\" content=\"%s\">\n<title>Arena book: %s</title>\n<style>\n%s%s%s</style>\n</head>\n<body>\n", c.stamp(), name, fontFaces(), styles.CSS(".sheet"), pageCSS)
	fmt.Fprintf(&b, "<header><h1>%s</h1><p>%s</p><p>Arena book, plan revision <code>%s</code></p></header>\n", name, html.EscapeString(c.Arena.Place), c.Mark)
	fmt.Fprintf(&b, "<nav aria-label=\"Contents\"><ul>\n%s</ul></nav>\n<main>\n%s</main>\n", nav, body)
	fmt.Fprintf(&b, "<footer><p>%s</p></footer>\n</body>\n</html>\n", html.EscapeString(c.setter().caution))
	return b.String()
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

// pageCSS is the page's own style: one column of text, tables that scroll on
// a narrow screen, sections that start a sheet in print.
const pageCSS = `body{margin:0;font:16px/1.5 Go,"Helvetica Neue",Arial,sans-serif;color:#1c2730;background:#fff}
header,main,footer,nav{max-width:72rem;margin:0 auto;padding:0 1rem}
header{padding-top:2rem}h1{margin:0;font-size:2.2rem}h2{border-top:2px solid #1c2730;padding-top:.6rem;margin-top:2.5rem}
h3{margin:1.4rem 0 .4rem}nav ul{columns:3 14rem;padding-left:1.1rem}a{color:#1f5f8b}
.table{overflow-x:auto}table{border-collapse:collapse;font-size:.9rem}th,td{padding:.25rem .6rem;text-align:left;border-bottom:1px solid #b4c2cc;vertical-align:top}
thead th{background:#ecf4f8;border-bottom:1px solid #1c2730}.num{text-align:right;white-space:nowrap}tr.strong td{font-weight:700}
figure{margin:.6rem 0}svg.sheet{display:block;width:100%;height:auto;background:#fff}
svg.sheet text{font-kerning:none;white-space:pre}
.sign{margin:1rem 0}.sign h4{margin:0}.lines{display:flex;gap:1rem;margin-top:2.5rem}.lines span{flex:1;border-top:1px solid #1c2730;font-size:.8rem;color:#556673}
footer{border-top:2px solid #1c2730;margin-top:2rem;padding-bottom:2rem;font-style:italic}
code{font-family:"Go Mono",monospace}
@media print{section{break-before:page}nav{display:none}.sign,figure,tr{break-inside:avoid}}
`
