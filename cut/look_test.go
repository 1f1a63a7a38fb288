package cut

import (
	"example.org/rinkpane/arena"
	"example.org/rinkpane/sheet"
	"os"
	"testing"
)

func TestLook(t *testing.T) {
	dir := os.Getenv("LOOK")
	if dir == "" {
		return
	}
	d, _ := arena.Demo()
	a, _ := d.Check()
	p := NewPlan(a, d.Bytes())
	name := os.Getenv("PAPER")
	if name == "" {
		name = "a4"
	}
	paper, _ := sheet.ParsePaper(name)
	id := os.Getenv("HOLE")
	if id == "" {
		id = "B1"
	}
	h, _ := a.Hole(id)
	j, err := p.Job(h, DefaultOptions())
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range looks(p, j, paper) {
		png, err := sheet.PNG(x, 120)
		if err != nil {
			t.Fatal(err)
		}
		os.WriteFile(dir+"/"+x.Name+".png", png, 0o644)
	}
}
