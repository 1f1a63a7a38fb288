package cut

import (
	"example.org/rinkpane/kit"
	"example.org/rinkpane/sheet"
)

func looks(p Plan, j Job, paper sheet.Paper) []*sheet.Drawing {
	tt, err := p.Template(j, paper.Name)
	if err != nil {
		panic(err)
	}
	out := append(tt, p.Sheets(j, paper)...)
	k, _ := kit.Default()
	for _, w := range p.Arena.Windows {
		wj, err := p.WindowJob(w, k)
		if err != nil {
			panic(err)
		}
		out = append(out, p.windowPage(wj, paper))
	}
	l, _ := p.List(DefaultOptions(), DefaultSpareOptions())
	out = append(out, p.listPages(l, paper)...)
	return append(out, p.CoverOutline(j))
}
