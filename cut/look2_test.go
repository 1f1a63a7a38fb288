package cut

import "example.org/rinkpane/sheet"

func looks(p Plan, j Job, paper sheet.Paper) []*sheet.Drawing {
	tt, _ := p.Template(j, "a4")
	return []*sheet.Drawing{tt[0], p.panePage(j, paper), p.detailPage(j, paper), p.coverPage(j, paper), p.advisoryPage(j, paper)}
}
